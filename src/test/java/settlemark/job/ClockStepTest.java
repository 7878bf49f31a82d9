package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;

/** The step that clocks the meter, by presses of a person. */
final class ClockStepTest {
    private final Bench bench = new Bench();

    @BeforeEach
    void atHighFire() {
        bench.act(new Act.MeterDial("clock-high", 1));
        bench.settled(Role.MANIFOLD, 3.5);
        bench.pass(30);
    }

    private StepState step() {
        return bench.run.state().step("clock-high").orElseThrow();
    }

    private void turns(int turns, int seconds) {
        bench.act(new Act.PointerAtMark("clock-high"));
        for (int i = 0; i < turns; i++) {
            bench.pass(seconds);
            bench.act(new Act.PointerAtMark("clock-high"));
        }
    }

    private void run(int seconds) {
        turns(2, seconds);
        bench.act(new Act.EndRun("clock-high"));
        bench.pass(5);
    }

    @Test
    void twoRunsThatAgreeGiveTheInputAndItsVerdict() {
        run(46);
        assertThat(step().progress()).isEqualTo(Progress.OPEN);
        run(46);
        assertThat(step().progress()).isEqualTo(Progress.TAKEN);
        // 4 ft3 in 184 s: 78.26 ft3/h, times 1030 Btu/ft3 80,609 Btu/h; U is 1.7 % of it, so it reaches over 81,600
        Verdict verdict = step().verdicts().get(0);
        assertThat(verdict.subject()).isEqualTo("input");
        assertThat(verdict.value()).isBetween(80_608.0, 80_610.0);
        assertThat(verdict.outcome()).isEqualTo(Outcome.CLOSE_INSIDE);
        assertThat(verdict.limit().source()).contains("10 CFR 430");
        assertThat(step().remarks()).anyMatch(r -> r.contains("lie 0.0 % apart"));
    }

    @Test
    void runsThatDoNotAgreeAskForAnother() {
        run(46);
        run(50);
        assertThat(step().done()).isFalse();
        run(50);
        assertThat(step().done()).isTrue();
        assertThat(step().clocking().runs()).hasSize(3);
        assertThat(step().verdicts().get(0).outcome()).isEqualTo(Outcome.OUTSIDE);
        assertThat(step().remarks()).anyMatch(r -> r.contains("below the plate"));
    }

    @Test
    void tooMuchInputSaysWhereToLookFirst() {
        run(40);
        run(40);
        assertThat(step().verdicts().get(0).outcome()).isEqualTo(Outcome.OUTSIDE);
        assertThat(step().remarks())
                .anyMatch(r -> r.contains("never exceed the plate's input") && r.contains("check orifice"));
    }

    @Test
    void aRunWhileTheManifoldMovesDoesNotCount() {
        turns(1, 46);
        bench.moving(Role.MANIFOLD, 3.3);
        bench.pass(3);
        assertThat(step().waitingFor()).isEqualTo("this run will not count: the manifold moved while the meter turned");
        bench.settled(Role.MANIFOLD, 3.5);
        bench.pass(43);
        bench.act(new Act.PointerAtMark("clock-high"));
        bench.act(new Act.EndRun("clock-high"));
        assertThat(step().clocking().counting()).isEmpty();
        assertThat(step().clocking().runs())
                .singleElement()
                .satisfies(r -> assertThat(r.why()).isEqualTo("the manifold moved while the meter turned"));
        run(46);
        run(46);
        assertThat(step().done()).isTrue();
    }

    @Test
    void aRunAtAnotherStageDoesNotCount() {
        bench.settled(Role.MANIFOLD, 1.7);
        bench.pass(5);
        run(66);
        assertThat(step().clocking().counting()).isEmpty();
        assertThat(step().clocking().runs().get(0).why())
                .isEqualTo("the manifold stood at 1.70 inH\u2082O, which is not high fire");
    }

    @Test
    void withoutAManifoldProbeNothingStandsAgainstARun() {
        bench.channels.clear();
        run(46);
        assertThat(step().clocking().counting()).hasSize(1);
    }

    @Test
    void aPressIsTakenBackAndABouncingKeyIsNoTurn() {
        bench.act(new Act.PointerAtMark("clock-high"));
        bench.act(new Act.PointerAtMark("clock-high"));
        assertThat(step().clocking().runs().get(0).marksNanos()).hasSize(1);
        bench.pass(46);
        bench.act(new Act.PointerAtMark("clock-high"));
        assertThat(step().clocking().runs().get(0).turns()).isEqualTo(1);
        bench.act(new Act.Unmark("clock-high"));
        assertThat(step().clocking().runs().get(0).turns()).isZero();
        bench.act(new Act.Unmark("clock-high"));
        assertThat(step().clocking().runs()).isEmpty();
        bench.act(new Act.Unmark("clock-high"));
        assertThat(step().clocking().runs()).isEmpty();
    }

    @Test
    void aDroppedRunStaysWithItsReason() {
        turns(1, 46);
        bench.act(new Act.DropRun("clock-high", " "));
        assertThat(step().clocking().running()).isPresent();
        bench.act(new Act.DropRun("clock-high", "a burner was lit"));
        assertThat(step().clocking().running()).isEmpty();
        assertThat(step().clocking().runs().get(0).why()).isEqualTo("a burner was lit");
        bench.act(new Act.EndRun("clock-high"));
        assertThat(step().clocking().counting()).isEmpty();
    }

    @Test
    void aRunIsNotEndedBeforeAWholeTurn() {
        bench.act(new Act.PointerAtMark("clock-high"));
        bench.pass(20);
        bench.act(new Act.EndRun("clock-high"));
        assertThat(step().clocking().running()).isPresent();
    }

    @Test
    void oneRunIsTakenByHandOnlyWithAReason() {
        bench.act(new Act.TakeNow("clock-high", "no run yet"));
        assertThat(step().done()).isFalse();
        run(46);
        bench.act(new Act.TakeNow("clock-high", ""));
        assertThat(step().done()).isFalse();
        bench.act(new Act.TakeNow("clock-high", "the customer must leave"));
        assertThat(step().done()).isTrue();
        assertThat(step().remarks()).anyMatch(r -> r.equals("Taken by hand: the customer must leave."));
        assertThat(step().verdicts()).hasSize(1);
    }

    @Test
    void theDialAndTheSuppliersHeatCount() {
        bench.act(new Act.MeterDial("clock-high", 2));
        bench.act(new Act.Heat(new GasHeat(1000, 0.005, "gas supplier, March")));
        run(90);
        run(90);
        // 8 ft3 in 360 s: 80 ft3/h, times 1000 Btu/ft3
        assertThat(step().verdicts().get(0).value()).isBetween(79_999.0, 80_001.0);
    }

    @Test
    void theDialHoldsForTheStagesThatComeAndNotForThoseThatWereClocked() {
        bench.settled(Role.MANIFOLD, 1.7);
        bench.pass(5);
        bench.act(new Act.PointerAtMark("clock-low"));
        bench.act(new Act.MeterDial("clock-high", 5));
        assertThat(bench.run.state().step("clock-low").orElseThrow().clocking().dialCubicFeet())
                .isEqualTo(1);
        assertThat(step().clocking().dialCubicFeet()).isEqualTo(5);
    }

    @Test
    void aPlateWithoutAnInputJudgesNothingAndSaysSo() {
        RatingPlate plate = Bench.PLATE;
        List<StagePlate> stages = plate.stages().stream()
                .map(s -> new StagePlate(
                        s.key(), s.name(), s.manifoldTarget(), s.manifoldTolerance(), s.unit(), Double.NaN))
                .toList();
        bench.act(new Act.Plate(new RatingPlate(plate.appliance(), plate.fuel(), stages, plate.inlet(), plate.rise())));
        run(46);
        run(46);
        assertThat(step().verdicts()).isEmpty();
        assertThat(step().remarks()).anyMatch(r -> r.startsWith("The plate gives no input for high fire"));
    }

    @Test
    void aPlateOfAnotherFuelBringsItsHeatButNotOverWhatTheSupplierSaid() {
        RatingPlate plate = Bench.PLATE;
        RatingPlate propane =
                new RatingPlate(plate.appliance(), Fuel.PROPANE, plate.stages(), plate.inlet(), plate.rise());
        bench.act(new Act.Plate(propane));
        assertThat(step().clocking().heat()).isEqualTo(GasHeat.customary(Fuel.PROPANE));
        GasHeat said = new GasHeat(2488, 0.01, "gas supplier");
        bench.act(new Act.Heat(said));
        bench.act(new Act.Plate(plate));
        assertThat(step().clocking().heat()).isEqualTo(said);
    }

    @Test
    void confirmingAClockStepTakesNothing() {
        bench.act(new Act.Confirm("clock-high"));
        assertThat(step().done()).isFalse();
    }

    @Test
    void pressesOnOtherStepsClockNothing() {
        bench.act(new Act.PointerAtMark("left-high"));
        bench.act(new Act.PointerAtMark("nowhere"));
        assertThat(bench.run.state().steps())
                .allSatisfy(s -> assertThat(s.clocking().runs()).isEmpty());
    }
}
