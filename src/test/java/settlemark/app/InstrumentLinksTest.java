package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.job.Act;
import settlemark.job.InstrumentCard;
import settlemark.job.JobPlan;
import settlemark.job.Plans;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.profile.ProfileLibrary;
import settlemark.session.Instruments.Kept;
import settlemark.session.LastUse;
import settlemark.session.LiveSession;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.Snapshot;

/** A probe that tells its serial number is linked by it, whatever a person says. */
final class InstrumentLinksTest {
    private static final Instant START = Instant.parse("2026-03-14T09:31:00Z");
    private static final int IDENTITY = 2;
    private static final InstrumentCard DUE = new InstrumentCard(
            "0042", "meter", "scpi-meter", Optional.empty(), Optional.of(LocalDate.of(2026, 3, 13)), List.of());

    private final List<String> said = new ArrayList<>();
    private final LiveSession session = new LiveSession(header());

    private static SessionHeader header() {
        JobPlan plan = Plans.get("supply-check");
        ProbeSetup probe = new ProbeSetup(
                "meter",
                new ProbeAddress("serial", "/dev/ttyS1"),
                ProfileLibrary.get("scpi-meter"),
                Map.of("pressure", Role.INLET));
        return new SessionHeader(
                "job",
                "job",
                START,
                ZoneOffset.UTC,
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                List.of(probe),
                Optional.of(plan),
                Optional.of(DemoScene.plate(plan)),
                "test");
    }

    private InstrumentLinks links(Map<String, String> named, InstrumentCard... cards) {
        List<Kept> known =
                List.of(cards).stream().map(c -> new Kept(c, LastUse.NEVER)).toList();
        return new InstrumentLinks(known, named, said::add);
    }

    private Snapshot tells(String serial) {
        byte[] line = ("TEST WORKS,PM-1," + serial + ",1.2.3\n").getBytes(StandardCharsets.UTF_8);
        session.take(new SessionEvent.Bytes(0, new Chunk(1_000_000_000L, IDENTITY, line)));
        return session.snapshot(START);
    }

    private void report(List<Act> acts) {
        acts.forEach(a -> session.take(new SessionEvent.Done(1_000_000_001L, a)));
    }

    @Test
    void whatAProbeTellsIsSaidOnceAndMarksItOverdue() {
        InstrumentLinks links = links(Map.of(), DUE);
        assertThat(links.told(session.snapshot(START))).isEmpty();
        List<Act> acts = links.told(tells("0042"));
        assertThat(acts).containsExactly(new Act.Instrument(DUE, Map.of(Role.INLET, "pressure"), true));
        report(acts);
        Snapshot now = session.snapshot(START);
        assertThat(links.told(now)).isEmpty();
        assertThat(now.probes().get(0).health())
                .hasValueSatisfying(h -> assertThat(h.words()).contains("calibration of 0042 was due on 2026-03-13"));
        assertThat(now.probes().get(0).serialNumber()).contains("0042");
    }

    @Test
    void anInstrumentThatNobodyKnowsMeasuresUnderItsOwnNumber() {
        List<Act> acts = links(Map.of()).told(tells(" 77 "));
        assertThat(acts)
                .containsExactly(new Act.Instrument(
                        InstrumentCard.unknown("77", "", "scpi-meter"), Map.of(Role.INLET, "pressure"), true));
        report(acts);
        assertThat(session.snapshot(START).probes().get(0).health()).isEmpty();
    }

    @Test
    void whatTheProbeTellsHoldsAgainstThePersonAndTheyHearOfIt() {
        InstrumentCard other = InstrumentCard.unknown("A-1", "", "demo-gauge");
        InstrumentLinks links = links(Map.of("meter", "A-1"), DUE, other);
        assertThat(links.fit(session.header())).isTrue();
        report(links.named(session.header()));
        assertThat(said).singleElement().asString().contains("speaks by profile demo-gauge");
        report(links.told(tells("0042")));
        assertThat(said).hasSize(2);
        assertThat(said.get(1)).contains("serial number is 0042, and you said A-1");
        assertThat(session.job().orElseThrow().instruments())
                .extracting(u -> u.card().serial())
                .containsExactly("A-1", "0042");
        assertThat(links.told(session.snapshot(START))).isEmpty();
    }

    @Test
    void aNumberThatCannotBePrintedIsNoNumber() {
        assertThat(links(Map.of()).told(tells("4\u202e2"))).isEmpty();
        assertThat(said).singleElement().asString().contains("printable").doesNotContain("\u202e");
    }
}
