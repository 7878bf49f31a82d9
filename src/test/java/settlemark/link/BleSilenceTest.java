package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import settlemark.link.BleSilence.State;

/** What silence leads to, one step after the other. */
final class BleSilenceTest {
    private static final long LIMIT_NANOS = 20_000_000;

    private static State next(BleSilence silence) {
        while (true) {
            State state = silence.look();
            if (state != State.FINE) {
                return state;
            }
            LockSupport.parkNanos(silence.dueNanos());
        }
    }

    @Test
    void itIsSaidThenAskedAnewThenGivenUp() {
        BleSilence silence = new BleSilence(LIMIT_NANOS);
        List<State> states = new ArrayList<>();
        while (!states.contains(State.DEAD)) {
            states.add(next(silence));
            assertThat(silence.seconds()).isGreaterThan(states.size() * LIMIT_NANOS / 1e9);
        }
        assertThat(states).containsExactly(State.STALE, State.FORGOTTEN, State.DEAD);
    }

    @Test
    void whatIsOnlyLateIsNotAskedAnew() {
        BleSilence silence = new BleSilence(LIMIT_NANOS);
        assertThat(next(silence)).isEqualTo(State.STALE);
        silence.restart();
        assertThat(silence.look()).isEqualTo(State.FINE);
        assertThat(next(silence)).isEqualTo(State.STALE);
    }
}
