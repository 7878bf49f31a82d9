package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The rise from found to left against what the manifold alone makes of it: heat goes with the root of the pressure (Bernoulli). */
final class AirBetweenReadingsTest {
    private static final String CHANGED = "The air changed in between";
    private final Bench bench = new Bench();

    /** Low fire found at 1.50 with a rise of 32.5 degF, left at 1.70. */
    private List<String> leftWith(double supply) {
        bench.untilLockUp();
        bench.act(new Act.Confirm("found-low"));
        bench.firing(1.50, 102.5);
        bench.pass(61);
        bench.act(new Act.Adjust("left-low"));
        bench.firing(1.70, supply);
        bench.pass(10);
        bench.act(new Act.CapOn("left-low"));
        bench.firing(1.70, supply);
        bench.pass(61);
        assertThat(bench.step("left-low").progress()).isEqualTo(Progress.TAKEN);
        return JobPicture.of(bench.run.state());
    }

    @Test
    void aRiseThatFollowsTheManifoldSaysNothing() {
        // 32.5 x sqrt(1.70 / 1.50) = 34.6
        assertThat(leftWith(104.6)).noneMatch(w -> w.contains(CHANGED));
    }

    @Test
    void aRiseThatFellWithMoreGasIsOtherAir() {
        assertThat(leftWith(96))
                .anyMatch(w -> w.contains("the rise went from 32.5 to 26.0")
                        && w.contains("makes 34.6")
                        && w.contains(CHANGED));
    }

    @Test
    void aRiseThatGrewByMoreThanTheGasIsOtherAir() {
        assertThat(leftWith(115)).anyMatch(w -> w.contains("from 32.5 to 45.0") && w.contains(CHANGED));
    }
}
