package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import settlemark.settle.SpikeGate.Verdict;

final class SpikeGateTest {
    private final SampleRate rate = new SampleRate();
    private final SpikeGate gate = new SpikeGate(1);
    private double seconds;

    private Verdict judge(double value) {
        return gate.judge(seconds++, value, 0, rate);
    }

    @Test
    void theFirstFewAreHeldAgainstTheirMedianToo() {
        judge(0);
        judge(0.9);
        judge(0.3);
        assertThat(judge(-0.65)).isEqualTo(Verdict.ORDINARY);
        assertThat(judge(1.3)).as("from 0.15").isEqualTo(Verdict.WAITING);
    }

    @Test
    void twoOnOneSideAreAChangeAndOneOnEachAreNone() {
        for (int i = 0; i < 6; i++) {
            assertThat(judge(0)).isEqualTo(Verdict.ORDINARY);
        }
        assertThat(judge(5)).isEqualTo(Verdict.WAITING);
        assertThat(judge(-5)).isEqualTo(Verdict.WAITING);
        assertThat(judge(5)).isEqualTo(Verdict.WAITING);
        assertThat(gate.pendingCount()).isEqualTo(1);
        assertThat(judge(4)).isEqualTo(Verdict.CHANGED);
        assertThat(gate.pendingCount()).isEqualTo(2);
        assertThat(gate.pendingValue(0)).isEqualTo(5);
        assertThat(gate.pendingSeconds(1)).isEqualTo(9);
        assertThat(gate.changedBy()).isEqualTo(4);
    }

    @Test
    void afterAGapAnyLevelIsOrdinary() {
        for (int i = 0; i < 6; i++) {
            judge(0);
        }
        assertThat(judge(80)).isEqualTo(Verdict.WAITING);
        gate.forget();
        assertThat(judge(80)).isEqualTo(Verdict.ORDINARY);
        assertThat(gate.pendingCount()).isZero();
    }

    @Test
    void whereEveryThirdWouldBeASpikeTheyCount() {
        int waiting = 0;
        for (int i = 0; i < 60; i++) {
            boolean far = i > 10 && i % 3 == 0;
            Verdict verdict = judge(far ? 5 * (i % 2 == 0 ? 1 : -1) : 0);
            waiting += verdict == Verdict.WAITING ? 1 : 0;
        }
        assertThat(waiting).isBetween(4, 12);
        assertThat(gate.sigma()).as("the noise grows with them").isGreaterThan(0.5);
    }

    @Test
    void everyTenthMayBeASpikeForEver() {
        for (int i = 0; i < 400; i++) {
            boolean far = i > 10 && i % 10 == 0;
            assertThat(judge(far ? 5 : 0)).as("sample %d", i).isEqualTo(far ? Verdict.WAITING : Verdict.ORDINARY);
        }
    }
}
