package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import settlemark.measure.Role;
import settlemark.measure.Unit;

/** Flue gas and static pressure: typed from an instrument, or from probes where there are some. */
final class TypedStepTest {
    private static final Unit PPM = Unit.ucum("[ppm]");
    private final Bench bench = new Bench();

    private void typed(String step, Role role, double value, Unit unit) {
        bench.act(new Act.Entered(step, role, value, unit, Double.NaN, "analyser 0815"));
    }

    private void lit() {
        bench.settled(Role.INLET, 6.9);
        bench.settled(Role.MANIFOLD, 3.5);
        bench.pass(30);
    }

    private void flue(double oxygen, double co) {
        lit();
        typed("combustion-high", Role.OXYGEN, oxygen, Unit.PERCENT);
        typed("combustion-high", Role.CARBON_MONOXIDE, co, PPM);
        typed("combustion-high", Role.STACK, 380, Unit.FAHRENHEIT);
        bench.act(new Act.Confirm("combustion-high"));
        bench.pass(2);
    }

    private StepState step(String key) {
        return bench.run.state().step(key).orElseThrow();
    }

    @Test
    void typedFlueGasIsJudgedAirFree() {
        flue(7, 50);
        StepState step = step("combustion-high");
        assertThat(step.progress()).isEqualTo(Progress.TAKEN);
        Verdict free = step.verdicts().get(0);
        // 50 x 20.9 / (20.9 - 7) = 75.2 ppm; CO x 20.9/(20.9 - O2), the common conversion
        assertThat(free.value()).isCloseTo(75.18, within(0.01));
        assertThat(free.limit().source()).isEqualTo("ANSI Z21.47-1993 2.8.1");
        assertThat(free.outcome()).isEqualTo(Outcome.INSIDE);
        // 7/(21 - 7) x 0.895 = 44.75 %, methane by stoichiometry
        assertThat(step.verdicts().get(1).value()).isCloseTo(44.75, within(0.05));
        assertThat(step.verdicts().get(1).limit().source()).isEqualTo("common practice");
        assertThat(step.reading().orElseThrow().channels())
                .allSatisfy(c -> assertThat(c.reason()).startsWith("typed, from analyser 0815; within"));
        assertThat(bench.run.state().notices()).isEmpty();
    }

    @Test
    void typedCarbonMonoxideOverItsLimitIsASafetyNotice() {
        flue(7, 300);
        assertThat(step("combustion-high").outcome()).contains(Outcome.OUTSIDE);
        assertThat(step("combustion-high").remarks()).anyMatch(r -> r.contains("shut off, tag"));
        assertThat(bench.run.state().alarm().orElseThrow().words())
                .startsWith("CO in the flue 451 ppm air-free: over its limit, 400 ppm");
        assertThat(bench.run.state().leftOutside()).isTrue();
    }

    @Test
    void aDilutedSampleIsSaid() {
        flue(17, 20);
        assertThat(step("combustion-high").remarks()).anyMatch(r -> r.contains("looks diluted by air"));
    }

    @Test
    void carbonDioxideStandsForOxygen() {
        lit();
        // CO2max of methane 11.73 %: two thirds of it is a third of 21 % oxygen
        typed("combustion-high", Role.CARBON_DIOXIDE, 7.82, Unit.PERCENT);
        typed("combustion-high", Role.CARBON_MONOXIDE, 50, PPM);
        typed("combustion-high", Role.STACK, 380, Unit.FAHRENHEIT);
        bench.act(new Act.Confirm("combustion-high"));
        bench.pass(2);
        assertThat(step("combustion-high").verdicts().get(0).value()).isCloseTo(75.18, within(0.05));
    }

    @Test
    void whatIsMissingIsWaitedForAndABurnerThatIsOutGivesNone() {
        lit();
        typed("combustion-high", Role.OXYGEN, 7, Unit.PERCENT);
        bench.act(new Act.Confirm("combustion-high"));
        bench.pass(5);
        assertThat(step("combustion-high").waitingFor()).isEqualTo("co has no probe: type it");
        bench.settled(Role.MANIFOLD, 0.01);
        typed("combustion-high", Role.CARBON_MONOXIDE, 20, PPM);
        typed("combustion-high", Role.STACK, 300, Unit.FAHRENHEIT);
        bench.pass(25);
        assertThat(step("combustion-high").waitingFor()).contains("the burner is not on high fire");
        assertThat(step("combustion-high").done()).isFalse();
    }

    @Test
    void probesGiveWhatIsNotTypedAndMustSettle() {
        lit();
        bench.settled(Role.OXYGEN, 6);
        bench.moving(Role.CARBON_MONOXIDE, 40);
        bench.settled(Role.STACK, 390);
        bench.act(new Act.Confirm("combustion-high"));
        bench.pass(70);
        assertThat(step("combustion-high").waitingFor()).contains("co has not settled");
        bench.settled(Role.CARBON_MONOXIDE, 40);
        bench.pass(70);
        assertThat(step("combustion-high").progress()).isEqualTo(Progress.TAKEN);
        // 40 x 20.9 / 14.9
        assertThat(step("combustion-high").verdicts().get(0).value()).isCloseTo(56.1, within(0.05));
    }

    @Test
    void aProbesCarbonMonoxideOverItsLimitIsNoticedAtAnyStep() {
        bench.moving(Role.CARBON_MONOXIDE, 300);
        bench.moving(Role.OXYGEN, 7);
        bench.pass(6);
        assertThat(bench.run.state().alarm().orElseThrow().words()).startsWith("CO in the flue 451 ppm air-free");
        assertThat(bench.run.state().alarm().orElseThrow().caution()).contains("Carbon monoxide kills");
        bench.moving(Role.CARBON_MONOXIDE, 20);
        bench.pass(10);
        assertThat(bench.run.state().notices()).singleElement().matches(SafetyNotice::cured);
        bench.moving(Role.ROOM_CARBON_MONOXIDE, 36);
        bench.pass(4);
        assertThat(bench.run.state().notices()).hasSize(1);
        bench.pass(3);
        assertThat(bench.run.state().notices())
                .last()
                .extracting(SafetyNotice::words)
                .asString()
                .contains("room 36");
    }

    @Test
    void staticsAreJudgedByThePlateAsTheSumOfBothSides() {
        JobRun run = new JobRun(
                Plans.get("two-stage-natural-gas"),
                new RatingPlate(
                        "furnace",
                        Fuel.NATURAL_GAS,
                        Bench.PLATE.stages(),
                        Bench.PLATE.inlet(),
                        Bench.PLATE.rise(),
                        new Limit(Double.NEGATIVE_INFINITY, 0.5, Unit.INCH_OF_WATER, "plate")));
        run.act(1, new Act.Entered("statics", Role.SUPPLY_STATIC, 0.31, Unit.INCH_OF_WATER, 0.01, "gauge 7"));
        run.act(2, new Act.Entered("statics", Role.RETURN_STATIC, -0.28, Unit.INCH_OF_WATER, 0.01, "gauge 7"));
        run.act(3, new Act.Confirm("statics"));
        run.observe(4, bench.channels);
        StepState step = run.state().step("statics").orElseThrow();
        assertThat(step.verdicts()).singleElement().satisfies(v -> {
            assertThat(v.subject()).isEqualTo("total static");
            // |return| + supply
            assertThat(v.value()).isCloseTo(0.59, within(1e-12));
            assertThat(v.outcome()).isEqualTo(Outcome.OUTSIDE);
            assertThat(v.limit().source()).isEqualTo("plate");
        });
    }

    @Test
    void withoutThePlatesMostItIsSaidThatNothingWasJudged() {
        typed("statics", Role.SUPPLY_STATIC, -0.2, Unit.INCH_OF_WATER);
        typed("statics", Role.RETURN_STATIC, 0.2, Unit.INCH_OF_WATER);
        bench.act(new Act.Confirm("statics"));
        bench.settled(Role.INLET, 7);
        bench.pass(1);
        assertThat(step("statics").verdicts()).isEmpty();
        assertThat(step("statics").remarks())
                .anyMatch(r -> r.contains("gives no most total external static"))
                .anyMatch(r -> r.contains("are the two hoses exchanged"));
    }

    @Test
    void aValueNeedsItsUnitAndItsInstrument() {
        assertThatThrownBy(() -> typed("statics", Role.SUPPLY_STATIC, 1, Unit.FAHRENHEIT))
                .hasMessageContaining("a unit of pressure");
        assertThatThrownBy(() -> new Act.Entered("statics", Role.OXYGEN, 6, Unit.PERCENT, Double.NaN, " "))
                .hasMessageContaining("names the instrument");
    }

    @Test
    void aJobThatGoesOnWaitsForThePersonAgain() {
        bench.untilLockUp();
        bench.act(new Act.Confirm("found-low"));
        bench.act(new Act.PointerAtMark("clock-high"));
        bench.act(new Act.Confirm("found-low"));
        assertThat(step("found-low").progress()).isEqualTo(Progress.ARMED);
        bench.act(new Act.GoOn("the program had ended for 60 s"));
        assertThat(step("found-low").progress()).isEqualTo(Progress.OPEN);
        assertThat(step("clock-high").clocking().runs())
                .singleElement()
                .satisfies(r -> assertThat(r.why()).contains("had ended for 60 s"));
        assertThat(step("lock-up").progress()).isEqualTo(Progress.TAKEN);
        assertThat(step("found-low").marks())
                .last()
                .extracting(StepState.Mark::words)
                .asString()
                .contains("had ended");
    }
}
