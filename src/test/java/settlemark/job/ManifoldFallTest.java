package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

final class ManifoldFallTest {
    @Test
    void aValveThatTakesSecondsIsCalledSlow() {
        ManifoldFall fall = new ManifoldFall();
        for (int i = 0; i <= 60; i++) {
            double seconds = i * 0.1;
            fall.see(Bench.nanos(seconds), seconds < 1 ? 3.5 : 3.5 * Math.max(0, 1 - (seconds - 1) / 4));
        }
        assertThat(fall.seen()).isTrue();
        // A straight fall of 4 s passes from 9/10 to 1/10 in 8/10 of it; samples come every 0.1 s.
        assertThat(fall.seconds()).isCloseTo(3.2, within(0.15));
        assertThat(fall.words()).contains("closes slowly");
    }

    @Test
    void anOrdinaryFallIsNot() {
        ManifoldFall fall = new ManifoldFall();
        fall.see(0, 3.5);
        fall.see(Bench.nanos(0.1), 3.5);
        fall.see(Bench.nanos(0.2), 0.0);
        assertThat(fall.seconds()).isCloseTo(0.1, within(1e-9));
        assertThat(fall.words()).doesNotContain("slowly");
    }

    @Test
    void aManifoldThatStaysUpHasNotFallen() {
        ManifoldFall fall = new ManifoldFall();
        fall.see(0, 3.5);
        fall.see(Bench.nanos(60), 3.4);
        assertThat(fall.seen()).isFalse();
    }
}
