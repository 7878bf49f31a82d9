package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.awt.EventQueue;
import java.awt.GraphicsEnvironment;
import java.awt.event.KeyEvent;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import settlemark.job.Act;
import settlemark.job.Fuel;
import settlemark.job.JobPlan;
import settlemark.job.Limit;
import settlemark.job.Plans;
import settlemark.job.Progress;
import settlemark.job.RatingPlate;
import settlemark.job.StagePlate;
import settlemark.job.StepKind;
import settlemark.link.RadioBench;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.LiveSession;
import settlemark.session.RecordForm;
import settlemark.session.RecordForm.Paper;
import settlemark.session.RecordForm.Units;
import settlemark.session.SessionHeader;
import settlemark.session.Snapshot;

/** Values that a person types, the two buttons beside the record, and readouts with a correction, in the real window. */
@Tag("display")
final class TypedAndRecordDisplayTest {
    private final FakeHost host = new FakeHost();

    @BeforeEach
    void needsADisplay() {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
    }

    @AfterEach
    void close() {
        WindowHands.closeAll();
    }

    private WindowHands open(FakeDesk desk) throws Exception {
        Desktop desktop = Desktop.open(
                desk,
                Optional.of(new FakeHands()),
                Optional.empty(),
                host,
                new DesktopOptions(false, Optional.empty(), 1280, 800));
        EventQueue.invokeAndWait(desktop::tick);
        WindowHands hands = new WindowHands();
        hands.awaitSeen("strip of the job");
        return hands;
    }

    /** A job of one step, the flue gas, without probes. */
    static Snapshot atTheFlue() {
        JobPlan whole = Plans.get("boiler-gas-side");
        JobPlan flue = new JobPlan(
                "flue",
                "flue gas alone",
                whole.fuels(),
                whole.stages(),
                whole.steps().stream()
                        .filter(s -> s.kind() == StepKind.COMBUSTION)
                        .toList(),
                whole.settle());
        RatingPlate plate = new RatingPlate(
                "boiler",
                Fuel.NATURAL_GAS,
                List.of(new StagePlate("high", "full fire", 3.5, 0.35, Unit.INCH_OF_WATER, 80_000)),
                new Limit(4.5, 10.5, Unit.INCH_OF_WATER, "plate"),
                new Limit(30, 60, Unit.FAHRENHEIT.difference(), "plate"));
        Instant began = Instant.parse("2026-03-14T09:31:00Z");
        SessionHeader header = new SessionHeader(
                "2026-03-14-0931-mill-lane",
                "Mill Lane 1",
                began,
                ZoneOffset.UTC,
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                List.of(),
                Optional.of(flue),
                Optional.of(plate),
                "test");
        return new LiveSession(header).snapshot(began.plusSeconds(60));
    }

    @Test
    void flueGasIsTypedWithItsInstrumentAndWhatIsNoNumberIsSaid() throws Exception {
        FakeDesk desk = new FakeDesk(atTheFlue());
        WindowHands hands = open(desk);
        hands.fill("Oxygen, O\u2082", "6.4");
        hands.fill("Carbon monoxide, CO", "twelve");
        hands.fill("instrument and its number", "analyser 4");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitWords("type a number such as 6.4, or 6.4 +- 0.2 with what it may be off by; got \"twelve\"");
        assertThat(desk.acts()).as("nothing of it is taken").isEmpty();
        for (int i = 0; i < 6; i++) {
            hands.click("Carbon monoxide, CO");
            hands.key(KeyEvent.VK_END);
            hands.key(KeyEvent.VK_BACK_SPACE);
        }
        hands.fill("Carbon monoxide, CO", "12");
        hands.fill("Stack", "380");
        hands.key(KeyEvent.VK_ENTER);
        RadioBench.await("what was typed", () -> desk.acts().size() >= 3);
        assertThat(desk.acts().subList(0, 3))
                .extracting(
                        a -> ((Act.Entered) a).role(),
                        a -> ((Act.Entered) a).value(),
                        a -> ((Act.Entered) a).instrument())
                .containsExactly(
                        tuple(Role.OXYGEN, 6.4, "analyser 4"),
                        tuple(Role.CARBON_MONOXIDE, 12.0, "analyser 4"),
                        tuple(Role.STACK, 380.0, "analyser 4"));
    }

    @Test
    void paperAndUnitsOfTheRecordAreChangedByAPress() throws Exception {
        WindowHands hands =
                open(new FakeDesk(new Showroom().at("record", Progress.OPEN, 20).snapshot()));
        hands.click("Paper: A4");
        hands.awaitSeen("Paper: Letter");
        assertThat(host.form).isEqualTo(new RecordForm(Paper.LETTER, Units.JOB));
        hands.click("Units on it: as the job");
        hands.awaitSeen("Units on it: inH\u2082O, \u00b0F");
        hands.click("Units on it: inH\u2082O, \u00b0F");
        hands.awaitSeen("Units on it: Pa, \u00b0C");
        assertThat(host.form).isEqualTo(new RecordForm(Paper.LETTER, Units.SI));
        hands.click("Paper: Letter");
        hands.awaitSeen("Paper: A4");
        assertThat(host.form).isEqualTo(new RecordForm(Paper.A4, Units.SI));
    }

    @Test
    void theInstrumentThatAProbeIsIsTypedByItsNumber() throws Exception {
        FakeDesk desk =
                new FakeDesk(new Showroom().at("probes", Progress.OPEN, 20).snapshot());
        WindowHands hands = open(desk);
        String probe = desk.snapshot().header().probes().get(0).name();
        hands.key(KeyEvent.VK_I);
        hands.awaitSeen("Which instrument is it");
        hands.type("0042");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitWords("Name the probe before the number: " + probe);
        hands.key(KeyEvent.VK_I);
        hands.awaitSeen("Which instrument is it");
        hands.type(probe + " 0815");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitWords("the workspace has no instrument 0815");
        assertThat(desk.acts()).isEmpty();
        hands.key(KeyEvent.VK_I);
        hands.awaitSeen("Which instrument is it");
        hands.type(probe + " 0042");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitWords(probe + " is instrument 0042 from now on");
        assertThat(desk.acts()).singleElement().isInstanceOfSatisfying(Act.Instrument.class, said -> {
            assertThat(said.card().serial()).isEqualTo("0042");
            assertThat(said.saidByProbe()).isFalse();
        });
    }

    @Test
    void aReadoutSaysThatItsValueIsCorrectedAndThePlaceOfTheProbesWhatIsIndicated() throws Exception {
        Showroom corrected = new Showroom().at("found-high", Progress.OPEN, 60).corrected(Role.MANIFOLD, "0042", 0.031);
        WindowHands hands = open(new FakeDesk(corrected.snapshot()));
        hands.awaitSeen("Manifold, corrected");
        assertThat(hands.seen()).noneMatch(n -> n.startsWith("Inlet, corrected"));
        WindowHands.closeAll();
        Showroom probes = new Showroom().at("probes", Progress.OPEN, 60).corrected(Role.MANIFOLD, "0042", 0.031);
        open(new FakeDesk(probes.snapshot())).awaitWords("+0.031 by 0042");
    }
}
