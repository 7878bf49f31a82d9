package settlemark.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.session.SessionEvent.Clock;

final class ClockWatchTest {
    private static final Instant START = Instant.parse("2026-03-14T09:31:00Z");

    /** Three clocks that a test moves, apart or together. */
    private static final class Clocks {
        private long monotonicNanos = 5_000;
        private long bootNanos = 777_000_000_000L;
        private Instant wall = START;
        private boolean boot = true;
        private final ClockWatch watch = new ClockWatch(monotonicNanos, boot(), wall);

        private OptionalLong boot() {
            return boot ? OptionalLong.of(bootNanos) : OptionalLong.empty();
        }

        void run(Duration duration) {
            monotonicNanos += duration.toNanos();
            sleep(duration);
        }

        void sleep(Duration duration) {
            bootNanos += duration.toNanos();
            wall = wall.plus(duration);
        }

        List<Clock> look() {
            return watch.look(monotonicNanos, boot(), wall);
        }
    }

    private final Clocks clocks = new Clocks();

    @Test
    void clocksThatRunTogetherAreNoEvent() {
        for (int i = 0; i < 1000; i++) {
            clocks.run(Duration.ofSeconds(1));
            assertThat(clocks.look()).isEmpty();
        }
        assertThat(clocks.watch.sleptNanos()).isZero();
    }

    @Test
    void aSleepIsOneEventAndCountedOnce() {
        clocks.run(Duration.ofSeconds(10));
        clocks.sleep(Duration.ofSeconds(723));
        assertThat(clocks.look())
                .containsExactly(new Clock(
                        733_000_005_000L, true, Duration.ofSeconds(723).toNanos(), "the computer slept 12 min 3 s"));
        clocks.run(Duration.ofSeconds(1));
        assertThat(clocks.look()).isEmpty();
        assertThat(clocks.watch.sleptNanos()).isEqualTo(723_000_000_000L);
        clocks.sleep(Duration.ofSeconds(60));
        assertThat(clocks.look()).extracting(Clock::words).containsExactly("the computer slept 1 min 0 s");
        assertThat(clocks.watch.sleptNanos()).isEqualTo(783_000_000_000L);
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
             3600,    the clock was set forward by 1 h 0 min
            -3600,    the clock was set back by 1 h 0 min
             2,       the clock was set forward by 2 s
            -86400,   the clock was set back by 1 d 0 h
            """)
    void aStepOfTheWallClockMovesNoSessionTime(long seconds, String words) {
        clocks.run(Duration.ofSeconds(10));
        clocks.wall = clocks.wall.plusSeconds(seconds);
        assertThat(clocks.look()).containsExactly(new Clock(10_000_005_000L, false, seconds * 1_000_000_000L, words));
        clocks.run(Duration.ofSeconds(1));
        assertThat(clocks.look()).isEmpty();
        assertThat(clocks.watch.sleptNanos()).isZero();
    }

    @Test
    void aSleepAndAStepAtOnceAreToldApart() {
        clocks.run(Duration.ofSeconds(10));
        clocks.sleep(Duration.ofMinutes(30));
        clocks.wall = clocks.wall.minus(Duration.ofHours(1));
        assertThat(clocks.look())
                .extracting(Clock::words)
                .containsExactly("the computer slept 30 min 0 s", "the clock was set back by 1 h 0 min");
        assertThat(clocks.watch.sleptNanos()).isEqualTo(Duration.ofMinutes(30).toNanos());
    }

    @Test
    void aClockDrawnIntoLineIsNoEvent() {
        for (int i = 0; i < 7200; i++) {
            clocks.run(Duration.ofSeconds(1));
            clocks.wall = clocks.wall.plusNanos(500_000);
            assertThat(clocks.look()).isEmpty();
        }
        clocks.run(Duration.ofHours(2));
        clocks.wall = clocks.wall.minusNanos(7200L * 500_000);
        assertThat(clocks.look()).isEmpty();
    }

    @Test
    void readingsThatLieApartByTheSchedulerAreNoSleep() {
        for (int i = 0; i < 100; i++) {
            clocks.run(Duration.ofSeconds(1));
            clocks.bootNanos += i % 2 == 0 ? 80_000_000 : -80_000_000;
            assertThat(clocks.look()).isEmpty();
        }
    }

    @Test
    void withoutABootClockAJumpForwardLeavesBothCausesOpen() {
        clocks.boot = false;
        clocks.run(Duration.ofSeconds(1));
        assertThat(clocks.look()).isEmpty();
        clocks.sleep(Duration.ofMinutes(5));
        assertThat(clocks.look())
                .extracting(Clock::words)
                .containsExactly("the clock was set forward by 5 min 0 s, or the computer slept");
        assertThat(clocks.watch.sleptNanos()).isZero();
    }
}
