package settlemark.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.job.Act;
import settlemark.job.ChannelNow;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleEvent;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleState;

/** Settings of what counts as settled that change while a session runs. */
final class SettingsInTheCourseTest {
    private static final String PROFILE = """
            language: 1
            id: plain
            name: Invented gauge that says two numbers a line
            simulated: true
            link: {serial: {baud: 9600}}
            framing: {line: {end: "\\n", maximum-bytes: 40}}
            columns: {separator: ",", count: 2}
            fields:
              - {name: pressure, column: 0, type: text, decimals: 3}
              - {name: supply, column: 1, type: text, decimals: 3}
            channels:
              - {id: p, label: P, field: pressure, unit: "mbar"}
              - {id: t, label: T, field: supply, unit: "[degF]"}
            """;
    private static final SettleChoices LONGER = new SettleChoices(Map.of(
            SettleKind.GAS, new SettleAdjustment(0.04, Double.NaN, Double.NaN, List.of(30.0, 60.0), 10, Double.NaN)));

    private static LiveSession session() {
        Profile profile = ProfileReader.read("test.yaml", PROFILE.getBytes(StandardCharsets.UTF_8))
                .orThrow();
        return new LiveSession(new SessionHeader(
                "key",
                "title",
                Instant.EPOCH,
                ZoneOffset.UTC,
                Unit.ucum("mbar"),
                Unit.FAHRENHEIT,
                List.of(new ProbeSetup(
                        "gauge",
                        new ProbeAddress("rig", "gauge"),
                        profile,
                        Map.of("p", Role.MANIFOLD, "t", Role.SUPPLY))),
                Optional.empty(),
                Optional.empty(),
                "test"));
    }

    private static void steady(LiveSession session, int from, int until) {
        for (int i = from; i < until; i++) {
            byte[] line = "8.750,120.000\n".getBytes(StandardCharsets.US_ASCII);
            session.take(new SessionEvent.Bytes(0, new Chunk(i * 1_000_000_000L, 0, line)));
        }
    }

    private static ChannelRun channel(LiveSession session, Role role) {
        return session.channels().stream()
                .filter(c -> c.role == role)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theyHoldFromThatMomentOnAndWhatStoodIsTakenBack() {
        LiveSession session = session();
        steady(session, 0, 100);
        session.take(new SessionEvent.Done(99_500_000_000L, new Act.Settings(SettleChoices.NONE, LONGER)));
        steady(session, 100, 160);
        List<SettleEvent> changes = channel(session, Role.MANIFOLD).changes();
        assertThat(changes).extracting(SettleEvent::settled).containsExactly(true, false, true);
        assertThat(changes.get(1).timeSeconds()).isEqualTo(99.5);
        assertThat(changes.get(1).reason()).isEqualTo("other settings of settled");
        // The shortest window of 30 s, filled to four fifths, and the dwell of 10 s.
        assertThat(changes.get(2).timeSeconds() - 100).isBetween(33.0, 37.0);
        assertThat(session.snapshot(Instant.EPOCH).channels().stream()
                        .filter(c -> c.role() == Role.MANIFOLD)
                        .findFirst()
                        .orElseThrow()
                        .settings()
                        .driftLimit())
                .as("in the channel's unit, 0.04 inH2O")
                .isBetween(0.0995, 0.0998);
    }

    @Test
    void kindsThatNothingChangesOfGoOn() {
        LiveSession session = session();
        steady(session, 0, 200);
        session.take(new SessionEvent.Done(199_500_000_000L, new Act.Settings(SettleChoices.NONE, LONGER)));
        steady(session, 200, 300);
        assertThat(channel(session, Role.SUPPLY).changes())
                .extracting(SettleEvent::settled)
                .containsExactly(true);
    }

    @Test
    void whatIsSetAgainAsItIsChangesNothing() {
        LiveSession session = session();
        steady(session, 0, 50);
        session.take(new SessionEvent.Done(49_500_000_000L, new Act.Settings(SettleChoices.NONE, SettleChoices.NONE)));
        steady(session, 50, 60);
        assertThat(channel(session, Role.MANIFOLD).changes()).hasSize(1);
    }

    @Test
    void whatTheJobHasSeenStaysAsItStoodUntilTheNextSample() {
        LiveSession undisturbed = session();
        steady(undisturbed, 0, 100);
        SettleState stood = channel(undisturbed, Role.MANIFOLD).now().settle();
        List<SessionEvent> breaks = List.of(
                new SessionEvent.Link(0, 99_500_000_000L, LinkChange.LOST, "unplugged"),
                new SessionEvent.Clock(99_500_000_000L, true, 5_000_000_000L, "slept"),
                new SessionEvent.Done(99_500_000_000L, new Act.Settings(SettleChoices.NONE, LONGER)));
        for (SessionEvent broken : breaks) {
            LiveSession session = session();
            steady(session, 0, 100);
            ChannelNow seen = channel(session, Role.MANIFOLD).now();
            session.take(broken);
            assertThat(seen.settle()).as(broken.toString()).isEqualTo(stood);
            steady(session, 100, 101);
            assertThat(channel(session, Role.MANIFOLD).now().settle().settled()).isFalse();
        }
    }
}
