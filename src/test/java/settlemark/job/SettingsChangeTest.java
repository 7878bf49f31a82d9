package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;

/** Other settings of what counts as settled, said in the course of a job. */
final class SettingsChangeTest {
    private static final double NONE = Double.NaN;
    private static final SettleChoices PLAN = SettleChoices.NONE;
    private static final SettleChoices TIGHTER =
            new SettleChoices(Map.of(SettleKind.GAS, new SettleAdjustment(0.01, NONE, 60, List.of(), NONE, 15)));
    private static final SettleChoices STACK_ALONE =
            new SettleChoices(Map.of(SettleKind.STACK, new SettleAdjustment(NONE, 6, NONE, List.of(), NONE, NONE)));

    @Test
    void eachSettingThatDiffersIsNamedWithWhatItWas() {
        SettleChoices all = new SettleChoices(
                Map.of(SettleKind.AIR, new SettleAdjustment(0.25, 0.8, 240, List.of(60.0, 120.0), 9, 40)));
        assertThat(new SettingsChange(0, PLAN, all, "").words())
                .containsExactly(
                        "air temperature, drift limit 0.25 °F instead of 0.5 °F",
                        "air temperature, band 0.8 °F instead of 1 °F",
                        "air temperature, look ahead 240 s instead of 180 s",
                        "air temperature, windows 60,120 s instead of 60,90,120,360 s",
                        "air temperature, dwell 9 s instead of 6 s",
                        "air temperature, slowest hunting 40 s instead of none");
        assertThat(new SettingsChange(0, TIGHTER, PLAN, "").words())
                .contains("gas pressure, drift limit 0.02 inH₂O instead of 0.01 inH₂O");
        assertThat(new SettingsChange(0, TIGHTER, TIGHTER, "").words()).isEmpty();
    }

    @Test
    void theJobKnowsWhoChangedWhatAndWhenAndMarksTheStep() {
        Bench bench = new Bench();
        bench.act(new Act.Person("M. Ostrander"));
        bench.seconds = 40;
        bench.act(new Act.Settings(PLAN, TIGHTER));
        bench.act(new Act.Settings(TIGHTER, TIGHTER));
        JobState state = bench.run.state();
        assertThat(state.settings())
                .containsExactly(new SettingsChange(Bench.nanos(40), PLAN, TIGHTER, "M. Ostrander"));
        assertThat(state.steps().get(0).marks())
                .containsExactly(new StepState.Mark(Bench.nanos(40), "other settings of settled"));
    }

    @Test
    void aReadingSaysByWhichOtherSettingsItSettledUntilTheyAreBack() {
        Bench bench = new Bench();
        bench.untilLockUp();
        bench.act(new Act.Settings(PLAN, TIGHTER));
        bench.firing(1.71, 118);
        bench.act(new Act.Confirm("found-low"));
        bench.pass(120);
        assertThat(bench.step("found-low").remarks())
                .contains(
                        "Settled by other settings than the job began with: gas pressure, drift limit 0.01 inH₂O"
                                + " instead of 0.02 inH₂O.",
                        "Settled by other settings than the job began with: gas pressure, look ahead 60 s instead of"
                                + " 30 s.");
        bench.act(new Act.Settings(TIGHTER, PLAN));
        bench.act(new Act.Repeat("found-low"));
        bench.act(new Act.Confirm("found-low#2"));
        bench.pass(120);
        assertThat(bench.step("found-low#2").progress()).isEqualTo(Progress.TAKEN);
        assertThat(bench.step("found-low#2").remarks()).noneMatch(r -> r.contains("other settings"));
    }

    /** What is set of the stack says nothing about a pressure. */
    @Test
    void onlyTheKindsThatWereReadAreNamed() {
        Bench bench = new Bench();
        bench.act(new Act.Settings(PLAN, STACK_ALONE));
        bench.untilLockUp();
        assertThat(bench.run.state().settings()).hasSize(1);
        assertThat(bench.run.state().steps())
                .filteredOn(s -> s.progress() == Progress.TAKEN)
                .isNotEmpty()
                .allSatisfy(s -> assertThat(s.remarks()).noneMatch(r -> r.contains("other settings")));
    }
}
