package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import settlemark.session.SessionEvent.Clock;

final class SystemTickerTest {
    private long nanos = 123;
    private long bootNanos = 9_000_000_000L;
    private Instant wall = Instant.parse("2026-03-14T09:31:00Z");
    private int bootLooks;

    private final SystemTicker ticker = new SystemTicker(
            () -> nanos,
            () -> {
                bootLooks++;
                return OptionalLong.of(bootNanos);
            },
            () -> wall);

    @Test
    void countsFromItsStart() {
        assertThat(ticker.nanos()).isZero();
        run(5_000_000_000L);
        assertThat(ticker.nanos()).isEqualTo(5_000_000_000L);
        assertThat(ticker.events()).isEmpty();
    }

    @Test
    void theFirstTimeAskedAfterASleepHasItAlreadyAndOnce() {
        run(5_000_000_000L);
        bootNanos += 60_000_000_000L;
        wall = wall.plusSeconds(60);
        assertThat(ticker.nanos()).isEqualTo(65_000_000_000L);
        assertThat(ticker.nanos()).isEqualTo(65_000_000_000L);
        assertThat(ticker.events()).extracting(Clock::words).containsExactly("the computer slept 1 min 0 s");
        assertThat(ticker.events()).isEmpty();
        assertThat(ticker.nanos()).isEqualTo(65_000_000_000L);
    }

    @Test
    void aWallClockThatIsSetMovesNoTime() {
        run(5_000_000_000L);
        wall = wall.minusSeconds(3600);
        assertThat(ticker.nanos()).isEqualTo(5_000_000_000L);
        assertThat(ticker.events()).extracting(Clock::words).containsExactly("the clock was set back by 1 h 0 min");
        assertThat(ticker.wall()).isEqualTo(wall);
    }

    @Test
    void theBootClockIsNotAskedForEachTime() {
        for (int i = 0; i < 1000; i++) {
            run(1_000_000);
            ticker.nanos();
        }
        assertThat(bootLooks).isEqualTo(1);
    }

    @Test
    void readsTheUptimeOfTheSystem() {
        assertThat(SystemTicker.parse("350735.47 234388.90\n")).hasValue(350_735_470_000_000L);
        assertThat(SystemTicker.parse("")).isEmpty();
        assertThat(SystemTicker.parse("never 1")).isEmpty();
    }

    @Test
    void theRealClocksRunTogether() {
        SystemTicker real = new SystemTicker();
        long before = real.nanos();
        assertThat(real.events()).isEmpty();
        assertThat(real.nanos()).isBetween(before, before + 10_000_000_000L);
    }

    private void run(long stepNanos) {
        nanos += stepNanos;
        bootNanos += stepNanos;
        wall = wall.plusNanos(stepNanos);
    }
}
