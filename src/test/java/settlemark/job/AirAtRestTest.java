package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;

/** Supply and return before anything fires. */
final class AirAtRestTest {
    private final Bench bench = new Bench();

    private List<String> lockUpWith(double supply, double back) {
        bench.settled(Role.SUPPLY, supply);
        bench.settled(Role.RETURN, back);
        bench.untilLockUp();
        assertThat(bench.step("lock-up").progress()).isEqualTo(Progress.TAKEN);
        return bench.step("lock-up").remarks();
    }

    @Test
    void aReturnInColdAirIsSaidBeforeTheBurnerIsLit() {
        assertThat(lockUpWith(68, 55))
                .anyMatch(w -> w.startsWith("With nothing firing the supply stands 13.0 \u00b0F over the return."));
    }

    @Test
    void aSupplyInColdAirIsSaidAsWell() {
        assertThat(lockUpWith(60, 70)).anyMatch(w -> w.contains("stands 10.0 \u00b0F under the return."));
    }

    @Test
    void whatTheProbesMayBeOutByIsNoDifference() {
        assertThat(lockUpWith(69, 68)).noneMatch(w -> w.startsWith("With nothing firing the supply"));
    }

    @Test
    void aSupplyThatStillMovesIsNotCompared() {
        bench.moving(Role.SUPPLY, 90);
        bench.settled(Role.RETURN, 68);
        bench.untilLockUp();
        assertThat(bench.step("lock-up").remarks()).noneMatch(w -> w.startsWith("With nothing firing the supply"));
    }
}
