package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.measure.Accuracy;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

final class JobRunTest {
    private final Bench bench = new Bench();

    @Test
    void aReadingTakesItselfOneShortestWindowAfterThePressAndTheNextStepOpensUnarmed() {
        bench.act(new Act.Confirm("plate"));
        bench.act(new Act.Confirm("probes"));
        bench.settled(Role.INLET, 0.03);
        bench.settled(Role.MANIFOLD, -0.02);
        bench.act(new Act.Confirm("zero"));
        bench.pass(19);
        assertThat(bench.step("zero").progress()).isEqualTo(Progress.ARMED);
        assertThat(bench.step("zero").waitingFor()).contains("1 s more");
        bench.pass(1);
        assertThat(bench.step("zero").progress()).isEqualTo(Progress.TAKEN);
        assertThat(bench.run.state().zeroOffsets()).containsEntry(Role.INLET, 0.03);
        assertThat(bench.run.state().currentStep().orElseThrow().progress()).isEqualTo(Progress.OPEN);
    }

    @Test
    void theZeroComesOffWhatIsReadAfterIt() {
        bench.untilLockUp();
        ChannelReading inlet = bench.step("lock-up")
                .reading()
                .orElseThrow()
                .channel(Role.INLET)
                .orElseThrow();
        assertThat(inlet.value()).isCloseTo(7.80, within(1e-12));
        assertThat(inlet.zeroOffset()).isEqualTo(0.03);
    }

    @Test
    void aZeroBeyondTheGaugesLimitIsRefusedInWordsAndSetsNothing() {
        bench.act(new Act.Confirm("plate"));
        bench.act(new Act.Confirm("probes"));
        bench.settled(Role.INLET, 0.62);
        bench.settled(Role.MANIFOLD, 0);
        bench.act(new Act.Confirm("zero"));
        bench.pass(21);
        assertThat(bench.step("zero").progress()).isEqualTo(Progress.OPEN);
        assertThat(bench.step("zero").remarks())
                .singleElement()
                .asString()
                .contains("inlet reads 0.62")
                .contains("0.10");
        assertThat(bench.run.state().zeroOffsets()).isEmpty();
    }

    @Test
    void aSupplyThatHasNotNoticedTheBurnerIsWaitedFor() {
        bench.untilLockUp();
        bench.settled(Role.SUPPLY, 70);
        bench.settled(Role.RETURN, 70);
        bench.act(new Act.Confirm("found-low"));
        bench.moving(Role.MANIFOLD, 1.7);
        bench.pass(3);
        bench.settled(Role.MANIFOLD, 1.7);
        bench.settled(Role.INLET, 6.93);
        bench.pass(120);
        assertThat(bench.step("found-low").progress()).isEqualTo(Progress.ARMED);
        assertThat(bench.step("found-low").waitingFor()).contains("supply has not answered");
        bench.moving(Role.SUPPLY, 90);
        bench.pass(60);
        bench.settled(Role.SUPPLY, 104);
        bench.pass(1);
        assertThat(bench.step("found-low").progress()).isEqualTo(Progress.TAKEN);
    }

    @Test
    void aStageIsNotReadWhileTheBurnerIsOut() {
        bench.untilLockUp();
        bench.act(new Act.Confirm("found-low"));
        bench.firing(-0.02, 70);
        bench.pass(400);
        assertThat(bench.step("found-low").progress()).isEqualTo(Progress.ARMED);
        assertThat(bench.step("found-low").waitingFor()).contains("burner is not on low fire");
    }

    @Test
    void thePressSaysItsTicksAndOneOfThemCanBeTakenBackWhileTheReadingWaits() {
        bench.untilLockUp();
        List<String> items = bench.step("found-low").step().ticks();
        assertThat(items).hasSize(3);
        List<Act> said = bench.step("found-low").saidWith(new Act.Confirm("found-low"));
        assertThat(said).hasSize(4).endsWith(new Act.Confirm("found-low"));
        said.forEach(bench::act);
        assertThat(bench.step("found-low").progress()).isEqualTo(Progress.ARMED);
        assertThat(bench.step("found-low").pressTicks()).isEmpty();
        bench.act(new Act.Tick("found-low", items.get(1), false));
        bench.firing(1.69, 104);
        bench.pass(61);
        StepState taken = bench.step("found-low");
        assertThat(taken.progress()).isEqualTo(Progress.TAKEN);
        assertThat(taken.ticked()).containsOnlyKeys(items.get(0), items.get(2));
        assertThat(taken.pressTicks()).containsExactly(items.get(1));
        assertThat(bench.step("close").saidWith(new Act.Confirm("close")))
                .as("ticked one by one")
                .containsExactly(new Act.Confirm("close"));
    }

    @Test
    void armingAnotherStepDisarmsTheOneLeftBehind() {
        bench.untilLockUp();
        bench.act(new Act.Confirm("found-low"));
        bench.act(new Act.Confirm("found-high"));
        bench.firing(3.48, 118);
        bench.pass(61);
        assertThat(bench.step("found-high").progress()).isEqualTo(Progress.TAKEN);
        assertThat(bench.step("found-low").progress()).isEqualTo(Progress.OPEN);
        assertThat(bench.step("found-low").readings()).isEmpty();
    }

    @Test
    void verdictsHoldTheReadingAgainstThePlate() {
        bench.untilLockUp();
        bench.act(new Act.Confirm("found-low"));
        bench.firing(1.28, 92);
        bench.pass(61);
        assertThat(bench.step("found-low").verdicts())
                .extracting(Verdict::subject, Verdict::outcome)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("inlet", Outcome.INSIDE),
                        org.assertj.core.groups.Tuple.tuple("manifold", Outcome.OUTSIDE),
                        org.assertj.core.groups.Tuple.tuple("rise", Outcome.OUTSIDE));
        assertThat(bench.step("found-low").outcome()).contains(Outcome.OUTSIDE);
    }

    @Test
    void cappingNotesTheAdjustedValueAndSaysWhatTheCapMoved() {
        bench.untilLockUp();
        bench.act(new Act.Adjust("left-low"));
        bench.firing(1.67, 104);
        bench.pass(10);
        bench.act(new Act.CapOn("left-low"));
        bench.firing(1.70, 104);
        bench.pass(61);
        StepState step = bench.step("left-low");
        assertThat(step.progress()).isEqualTo(Progress.TAKEN);
        assertThat(step.readings()).extracting(StageReading::purpose).containsExactly("adjusted", "left");
        assertThat(step.remarks())
                .singleElement()
                .asString()
                .contains("by +0.03")
                .contains("from 1.69 to 1.72");
        assertThat(step.marks()).extracting(StepState.Mark::words).contains("cap on");
    }

    @Test
    void aReadingByHandNeedsAReasonAndSaysThatItWasNotSettled() {
        bench.untilLockUp();
        bench.moving(Role.INLET, 6.9);
        bench.moving(Role.MANIFOLD, 1.6);
        bench.moving(Role.SUPPLY, 95);
        bench.moving(Role.RETURN, 70);
        bench.pass(1);
        bench.act(new Act.TakeNow("found-low", " "));
        assertThat(bench.step("found-low").readings()).isEmpty();
        bench.act(new Act.TakeNow("found-low", "customer is leaving"));
        StageReading reading = bench.step("found-low").reading().orElseThrow();
        assertThat(reading.byHand()).isTrue();
        assertThat(reading.handReason()).isEqualTo("customer is leaving");
        ChannelReading manifold = reading.channel(Role.MANIFOLD).orElseThrow();
        assertThat(manifold.settled()).isFalse();
        assertThat(manifold.reason()).startsWith("not settled");
        assertThat(manifold.standardUncertainty()).isGreaterThanOrEqualTo(0.2);
    }

    @Test
    void skippingNeedsAReasonAndKeepsIt() {
        bench.untilLockUp();
        bench.act(new Act.Skip("found-low", ""));
        assertThat(bench.step("found-low").progress()).isEqualTo(Progress.OPEN);
        bench.act(new Act.Skip("found-low", "stage locked out"));
        assertThat(bench.step("found-low").progress()).isEqualTo(Progress.SKIPPED);
        assertThat(bench.step("found-low").skipReason()).isEqualTo("stage locked out");
        assertThat(bench.run.state().currentStep().orElseThrow().key()).isEqualTo("found-high");
    }

    @Test
    void repeatingKeepsTheOldColumnBesideTheNewOne() {
        bench.untilLockUp();
        bench.act(new Act.Repeat("lock-up"));
        assertThat(bench.step("lock-up").superseded()).isTrue();
        assertThat(bench.step("lock-up").reading()).isPresent();
        assertThat(bench.run.state().currentStep().orElseThrow().key()).isEqualTo("lock-up#2");
    }

    @Test
    void closingNeedsTheZeroAndEveryTick() {
        Bench bench = new Bench(ShortPlan.twoStage());
        bench.untilLockUp();
        for (String key : new String[] {"found-low", "found-high", "left-low", "left-high", "shut"}) {
            bench.act(new Act.Skip(key, "test"));
        }
        bench.settled(Role.INLET, 0.05);
        bench.settled(Role.MANIFOLD, -0.09);
        bench.act(new Act.Confirm("close"));
        bench.pass(21);
        StepState close = bench.step("close");
        assertThat(close.progress()).isEqualTo(Progress.OPEN);
        assertThat(close.verdicts())
                .extracting(Verdict::subject, v -> v.outcome().accepted())
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("inlet zero drift", true),
                        org.assertj.core.groups.Tuple.tuple("manifold zero drift", false));
        close.step().ticks().forEach(item -> bench.act(new Act.Tick("close", item, true)));
        assertThat(bench.step("close").progress()).isEqualTo(Progress.TAKEN);
        assertThat(bench.run.state().leftOutside()).isTrue();
    }

    @Test
    void thePlateCannotBeChangedOnceSomethingWasJudgedByIt() {
        RatingPlate other =
                new RatingPlate("other", Fuel.PROPANE, Bench.PLATE.stages(), Bench.PLATE.inlet(), Bench.PLATE.rise());
        bench.untilLockUp();
        bench.act(new Act.Plate(other));
        assertThat(bench.run.state().plate()).isEqualTo(Bench.PLATE);
        Bench fresh = new Bench();
        fresh.act(new Act.Plate(other));
        assertThat(fresh.run.state().plate()).isEqualTo(other);
    }

    @Test
    void aFractionOfTheReadingIsOneOfWhatTheGaugeItselfShows() {
        bench.settled(Role.SUPPLY, 122);
        ChannelNow fahrenheit = java.util.Objects.requireNonNull(bench.channels.get(Role.SUPPLY));
        ChannelNow fromCelsius = new ChannelNow(
                fahrenheit.unit(),
                0,
                122,
                fahrenheit.status(),
                fahrenheit.look(),
                0,
                60,
                new Accuracy(0.01, 0, 0, 0),
                settlemark.measure.Unit.CELSIUS.to(settlemark.measure.Unit.FAHRENHEIT),
                0.1,
                Double.NaN,
                15,
                0);
        // 1 % of 50 °C is 0.5 K or 0.9 °F either way, rectangular.
        assertThat(fromCelsius.instrumentUncertainty(122)).isCloseTo(0.9 / Math.sqrt(3), within(1e-9));
    }

    @Test
    void aStepDoneBeforeOneThatComesFirstIsKnownAndOneDoneAgainIsNot() {
        JobRun run = new JobRun(Plans.get("supply-check"), Bench.PLATE);
        run.act(1, new Act.Confirm("plate"));
        run.act(2, new Act.Tick("staging", "Jumpers and service mode removed", true));
        run.act(2, new Act.Tick("staging", "Thermostat as it was found", true));
        run.act(3, new Act.Confirm("probes"));
        run.act(4, new Act.Repeat("plate"));
        run.act(5, new Act.Confirm("plate#2"));

        JobState job = run.state();
        StepState staging = job.step("staging").orElseThrow();
        assertThat(staging.progress()).isEqualTo(Progress.TAKEN);
        assertThat(job.doneBefore(staging)).map(StepState::key).hasValue("probes");
        assertThat(job.doneBefore(job.step("probes").orElseThrow())).isEmpty();
        StepState again = job.step("plate#2").orElseThrow();
        assertThat(again.corrects()).isEqualTo("plate");
        assertThat(job.doneBefore(again)).isEmpty();
    }
}
