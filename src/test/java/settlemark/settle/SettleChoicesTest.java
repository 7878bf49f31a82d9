package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a person sets of the detectors, and what of it cannot work. */
final class SettleChoicesTest {
    private static final double NONE = Double.NaN;

    private static SettleAdjustment set(double drift, double band, double horizon, double dwell, double... windows) {
        return new SettleAdjustment(
                drift, band, horizon, java.util.Arrays.stream(windows).boxed().toList(), dwell, NONE);
    }

    private static List<String> problems(SettleAdjustment chosen, double resolution, double periodSeconds) {
        return SettleCheck.problems(SettleKind.GAS, chosen, 1, "inH₂O", resolution, periodSeconds);
    }

    @ParameterizedTest
    @EnumSource(SettleKind.class)
    void whatIsNotSetIsAsTheDefaults(SettleKind kind) {
        assertThat(SettleChoices.NONE.settings(kind)).isEqualTo(SettleSettings.defaults(kind));
        assertThat(SettleChoices.NONE.of(kind)).isEqualTo(SettleAdjustment.NONE);
        assertThat(new SettleChoices(Map.of(kind, SettleAdjustment.NONE)).isNone())
                .isTrue();
        assertThat(SettleCheck.problems(kind, SettleAdjustment.NONE, 1, "", NONE, NONE))
                .isEmpty();
    }

    @Test
    void whatIsSetReplacesTheDefault() {
        SettleSettings gas = set(0.01, 0.03, 40, 0, 15, 30).of(SettleSettings.defaults(SettleKind.GAS));
        assertThat(gas.driftLimit()).isEqualTo(0.01);
        assertThat(gas.band()).isEqualTo(0.03);
        assertThat(gas.horizonSeconds()).isEqualTo(40);
        assertThat(gas.windowSeconds()).containsExactly(15.0, 30.0);
        assertThat(gas.dwellSeconds()).isZero();
        assertThat(gas.gapSeconds()).isEqualTo(5);
        assertThat(new SettleChoices(Map.of(SettleKind.GAS, set(0.01, 0.03, 40, 0, 15, 30))).isNone())
                .isFalse();
    }

    @Test
    void oneChoiceGoesOverAnother() {
        SettleChoices plan = new SettleChoices(Map.of(SettleKind.GAS, set(0.01, NONE, NONE, NONE, 15, 30)));
        SettleChoices workspace = new SettleChoices(
                Map.of(SettleKind.GAS, set(0.04, 0.06, 45, 9, 40), SettleKind.AIR, set(NONE, NONE, 200, NONE)));
        SettleChoices both = plan.over(workspace);
        assertThat(both.of(SettleKind.GAS)).isEqualTo(set(0.01, 0.06, 45, 9, 15, 30));
        assertThat(both.of(SettleKind.AIR).horizonSeconds()).isEqualTo(200);
        assertThat(both.of(SettleKind.STACK)).isEqualTo(SettleAdjustment.NONE);
        assertThat(SettleChoices.NONE.over(both)).isEqualTo(both);
        assertThat(both.over(SettleChoices.NONE)).isEqualTo(both);
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> set(0, NONE, NONE, NONE)).hasMessage("drift must be above 0, got 0.0");
        assertThatThrownBy(() -> set(NONE, -1, NONE, NONE)).hasMessage("band must be above 0, got -1.0");
        assertThatThrownBy(() -> set(NONE, NONE, Double.POSITIVE_INFINITY, NONE))
                .hasMessageContaining("horizon");
        assertThatThrownBy(() -> set(NONE, NONE, NONE, -1))
                .hasMessageContaining("dwell must not be negative, got -1.0");
        assertThatThrownBy(() -> set(NONE, NONE, NONE, Double.POSITIVE_INFINITY))
                .hasMessageContaining("dwell");
        assertThatThrownBy(() -> set(NONE, NONE, NONE, NONE, 40, 20))
                .hasMessageContaining("the shortest first, got [40.0");
        assertThatThrownBy(() -> set(NONE, NONE, NONE, NONE, 20, Double.POSITIVE_INFINITY))
                .hasMessageContaining("windows must be seconds");
        assertThatThrownBy(() -> new SettleAdjustment(NONE, NONE, NONE, List.of(), NONE, 0))
                .hasMessage("hunting must be above 0, got 0.0");
    }

    @Test
    void aLimitUnderTheResolutionCannotWork() {
        assertThat(problems(set(0.005, NONE, NONE, NONE), 0.01, NONE))
                .containsExactly(
                        "gas drift 0.005 inH₂O is under the gauge's step of 0.01 inH₂O; expected at least 0.01:"
                                + " take a larger limit, or a gauge that shows finer steps");
        assertThat(problems(set(0.01, NONE, NONE, NONE), 0.01, NONE))
                .as("the step itself")
                .isEmpty();
        assertThat(problems(set(0.005, NONE, NONE, NONE), NONE, NONE))
                .as("not known")
                .isEmpty();
        assertThat(problems(set(0.1, 0.04, NONE, NONE), 0.1, NONE))
                .singleElement()
                .asString()
                .startsWith(
                        "gas band ±0.04 inH₂O is under half the gauge's step of 0.1 inH₂O; expected at least ±0.05");
        assertThat(problems(set(0.1, 0.05, NONE, NONE), 0.1, NONE)).isEmpty();
    }

    @Test
    void theResolutionIsHeldToTheLimitInItsOwnUnit() {
        // 0.02 inH2O is 4.98 Pa.
        SettleAdjustment chosen = set(0.02, NONE, NONE, NONE);
        assertThat(SettleCheck.problems(SettleKind.GAS, chosen, 249.08891, "Pa", 4.9, NONE))
                .isEmpty();
        assertThat(SettleCheck.problems(SettleKind.GAS, chosen, 249.08891, "Pa", 5, NONE))
                .singleElement()
                .asString()
                .contains("drift 4.98 Pa is under the gauge's step of 5 Pa");
    }

    @Test
    void aWindowUnderThreePeriodsOfHuntingCannotWork() {
        SettleAdjustment slow = new SettleAdjustment(NONE, NONE, NONE, List.of(20.0, 60.0), NONE, 21);
        assertThat(problems(slow, NONE, NONE))
                .containsExactly(
                        "gas window 60 s, the longest, is under three periods of hunting of 21 s; expected at least"
                                + " 63 s: add a longer window, or the swings are taken for drift");
        assertThat(problems(new SettleAdjustment(NONE, NONE, NONE, List.of(20.0, 60.0), NONE, 20), NONE, NONE))
                .isEmpty();
    }

    @Test
    void aWindowThatHoldsTooFewReadingsCannotWork() {
        assertThat(problems(set(NONE, NONE, NONE, NONE, 20, 60), NONE, 10)).isEmpty();
        assertThat(problems(set(NONE, NONE, NONE, NONE, 20, 60), NONE, 11))
                .singleElement()
                .asString()
                .contains("holds fewer than six readings of a gauge that gives one each 11 s; expected at least 66 s");
    }

    @Test
    void horizonAndDwellAreHeldToEachOther() {
        assertThat(problems(set(NONE, NONE, 20, NONE), NONE, NONE)).isEmpty();
        assertThat(problems(set(NONE, NONE, 19, NONE), NONE, NONE))
                .containsExactly(
                        "gas horizon 19 s is shorter than the shortest window of 20 s; expected at least 20 s: look"
                                + " further ahead, or take a shorter window");
        assertThat(problems(set(NONE, NONE, NONE, 30), NONE, NONE)).isEmpty();
        assertThat(problems(set(NONE, NONE, NONE, 31), NONE, NONE))
                .containsExactly(
                        "gas dwell 31 s is longer than the horizon of 30 s, for which a proof stands; expected at"
                                + " most 30 s: wait less, or look further ahead");
    }

    @Test
    void allProblemsAreSaidAtOnce() {
        SettleAdjustment bad = new SettleAdjustment(0.001, 0.001, 10, List.of(20.0), 15, 30);
        assertThat(problems(bad, 0.01, 60)).hasSize(6);
    }

    @Test
    void windowsThatTheDetectorRefusesAreAProblemToo() {
        assertThat(problems(set(NONE, NONE, NONE, NONE, 5), NONE, NONE))
                .singleElement()
                .asString()
                .startsWith("gas windows must grow, from over 8 to 120 bins of 1.0 s, got [5.0]");
    }

    @Test
    void aStageIsReadyTogetherSpoiledAndReadyAgain() {
        SettledTogether stage = new SettledTogether();
        assertThat(stage.see(0, "inlet", "moving")).as("it was never ready").isFalse();
        assertThat(stage.standing()).isEqualTo(SettledTogether.Standing.WAITING);
        assertThat(stage.sinceSeconds()).isNaN();
        assertThat(stage.see(1, "", "")).isTrue();
        assertThat(stage.words()).isEqualTo("all settled");
        assertThat(stage.see(2, "", "")).isFalse();
        assertThat(stage.see(3, "supply", "changed by 2")).isTrue();
        assertThat(stage.standing()).isEqualTo(SettledTogether.Standing.SPOILED);
        assertThat(stage.words()).isEqualTo("supply moved before the reading was taken: changed by 2");
        assertThat(stage.see(4, "inlet", "moving")).as("said once").isFalse();
        assertThat(stage.sinceSeconds()).isEqualTo(3);
        assertThat(stage.see(5, "", "")).isTrue();
        assertThat(stage.standing()).isEqualTo(SettledTogether.Standing.READY);
        stage.restart();
        assertThat(stage.standing()).isEqualTo(SettledTogether.Standing.WAITING);
        assertThat(stage.words()).isEmpty();
    }
}
