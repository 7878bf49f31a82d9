package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** Pressures stand within seconds, the air that answers them within minutes: one reading of both, each with its own time. */
final class TakenFirstTest {
    private static final String LOW = "found-low";
    private final Bench bench = new Bench();

    /** Low fire is armed, its pressures stand and its supply still climbs. */
    private void armed() {
        bench.untilLockUp();
        bench.firing(1.71, 118);
        bench.moving(Role.SUPPLY, 95);
        bench.act(new Act.Confirm(LOW));
    }

    private StageReading reading() {
        return bench.step(LOW).reading().orElseThrow();
    }

    private ChannelReading part(Role role) {
        return reading().channel(role).orElseThrow();
    }

    @Test
    void thePressuresAreTakenWhenTheyStandAndTheAirWhenItDoes() {
        armed();
        bench.act(new Act.TakePressures(LOW));
        bench.pass(20);
        long taken = Bench.nanos(bench.seconds);
        assertThat(bench.step(LOW).pressuresTakenNanos()).isEqualTo(taken);
        assertThat(bench.step(LOW).progress()).isEqualTo(Progress.ARMED);
        assertThat(bench.step(LOW).waitingFor()).isEqualTo("supply has not settled (inlet, manifold taken)");
        bench.pass(160);
        bench.settled(Role.SUPPLY, 118);
        bench.pass(1);
        assertThat(bench.step(LOW).progress()).isEqualTo(Progress.TAKEN);
        assertThat(part(Role.MANIFOLD).toNanos()).isEqualTo(taken);
        assertThat(part(Role.INLET).toNanos()).isEqualTo(taken);
        assertThat(part(Role.SUPPLY).toNanos()).isEqualTo(taken + Bench.nanos(161));
        assertThat(reading().timeNanos()).isEqualTo(taken + Bench.nanos(161));
        assertThat(reading().byHand()).isFalse();
        assertThat(reading().channels()).extracting(ChannelReading::role).doesNotHaveDuplicates();
        assertThat(bench.step(LOW).remarks())
                .contains(
                        "The pressures were taken 161 s before the rest; none moved beyond its settled rule in between.");
    }

    /** Without the press nothing is taken before all stand: the plan does not ask for it. */
    @Test
    void withoutBeingAskedAllStandAtOneTime() {
        armed();
        bench.pass(180);
        assertThat(bench.step(LOW).pressuresTakenNanos()).isEqualTo(-1);
        bench.settled(Role.SUPPLY, 118);
        bench.pass(1);
        assertThat(part(Role.MANIFOLD).toNanos()).isEqualTo(part(Role.SUPPLY).toNanos());
    }

    @Test
    void aPressureThatSwingsOutOfItsProofAndStaysWhereItWasCounts() {
        armed();
        bench.act(new Act.TakePressures(LOW));
        bench.pass(20);
        // A drift of 0.02 and swings of 0.05 are allowed.
        bench.moving(Role.MANIFOLD, 1.77);
        bench.pass(60);
        bench.settled(Role.SUPPLY, 118);
        bench.pass(1);
        assertThat(bench.step(LOW).progress())
                .as("though the manifold is not settled now")
                .isEqualTo(Progress.TAKEN);
        assertThat(part(Role.MANIFOLD).value()).isCloseTo(1.73, within(1e-9));
    }

    @Test
    void aPressureThatMovesSpoilsThemAndItIsSaid() {
        armed();
        bench.act(new Act.TakePressures(LOW));
        bench.pass(20);
        bench.settled(Role.MANIFOLD, 1.79);
        bench.pass(5);
        assertThat(bench.step(LOW).remarks()).isEmpty();
        bench.pass(1);
        assertThat(bench.step(LOW).remarks())
                .singleElement()
                .asString()
                .isEqualTo(
                        "The pressures that were taken first do not count: the manifold moved by +0.08 inH\u2082O, from"
                                + " 1.73 to 1.81, before the rest had settled.");
        assertThat(bench.step(LOW).marks())
                .extracting(StepState.Mark::words)
                .containsExactly("pressures taken", "pressures dropped", "pressures taken");
        bench.pass(100);
        bench.settled(Role.SUPPLY, 118);
        bench.pass(1);
        assertThat(part(Role.MANIFOLD).value())
                .as("taken again where it stands")
                .isCloseTo(1.81, within(1e-9));
    }

    /** A drop-out, though the pressure may come back later. */
    @Test
    void aBurnerThatGoesOutSpoilsThem() {
        armed();
        bench.act(new Act.TakePressures(LOW));
        bench.pass(20);
        bench.moving(Role.MANIFOLD, -0.02);
        bench.pass(6);
        assertThat(bench.step(LOW).pressuresTakenNanos()).isEqualTo(-1);
        bench.settled(Role.SUPPLY, 118);
        bench.pass(300);
        assertThat(bench.step(LOW).readings()).isEmpty();
    }

    @Test
    void anotherStepThatIsArmedDropsThemAndSaysSo() {
        armed();
        bench.act(new Act.TakePressures(LOW));
        bench.pass(20);
        bench.act(new Act.Confirm("found-high"));
        bench.pass(1);
        assertThat(bench.step(LOW).remarks()).singleElement().asString().contains("the step was left");
        bench.act(new Act.Confirm(LOW));
        bench.pass(20);
        assertThat(bench.step(LOW).pressuresTakenNanos())
                .as("not asked for again")
                .isLessThan(bench.step(LOW).armedNanos());
    }

    @Test
    void takenByHandThePressuresStayThoseThatStood() {
        armed();
        bench.act(new Act.TakePressures(LOW));
        bench.pass(20);
        long taken = Bench.nanos(bench.seconds);
        bench.pass(30);
        bench.act(new Act.TakeNow(LOW, "customer leaves"));
        assertThat(reading().byHand()).isTrue();
        assertThat(part(Role.MANIFOLD).settled()).isTrue();
        assertThat(part(Role.MANIFOLD).toNanos()).isEqualTo(taken);
        assertThat(part(Role.SUPPLY).settled()).isFalse();
    }

    @Test
    void aPlanCanAskForItAtAStepThatReadsBoth() {
        String text = """
                language: 1
                id: mine
                title: mine
                stages:
                  - { key: low, name: low fire }
                steps:
                  - act: plate
                  - act: zero
                  - act: found
                    stage: low
                    pressures-first: true
                  - act: close
                  - act: record
                """;
        JobPlan plan = PlanReader.read("mine.yaml", text.getBytes(StandardCharsets.UTF_8))
                .orThrow();
        PlanStep found = plan.steps().get(2);
        assertThat(found.pressuresFirst()).isTrue();
        assertThat(Objects.requireNonNull(
                                plan.withSettledBy(SettledBy.PROOF).steps().get(2))
                        .pressuresFirst())
                .isTrue();
        PlanReading wrong = PlanReader.read(
                "mine.yaml",
                text.replace(
                                "    pressures-first: true\n",
                                "    pressures-first: true\n    required: [inlet, manifold]\n")
                        .getBytes(StandardCharsets.UTF_8));
        assertThat(wrong.problems())
                .singleElement()
                .asString()
                .contains("mine.yaml:9:5", "\"found-low\" reads no pressure beside something else");
    }
}
