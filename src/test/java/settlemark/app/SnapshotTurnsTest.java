package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** When snapshots are published, in time that is only counted. */
class SnapshotTurnsTest {
    private static final long MILLI = 1_000_000;
    private static final long EVERY = 100 * MILLI;
    private static final long END = 20_000 * MILLI;

    /** The times at which snapshots are published while events come at these times, as the pipeline asks. */
    private static List<Long> published(long[] events) {
        SnapshotTurns turns = new SnapshotTurns(EVERY, 0);
        List<Long> all = new ArrayList<>();
        long now = 0;
        int next = 0;
        while (now < END) {
            long until = now + Math.min(50 * MILLI, turns.pauseNanos(now));
            boolean event = next < events.length && events[next] <= until;
            now = event ? Math.max(now, events[next++]) : until;
            if (event) {
                turns.news(now);
            }
            if (turns.due(now, !event)) {
                all.add(now);
            }
        }
        return all;
    }

    /** How long each event waits for the next snapshot; those of the last half second may have none. */
    private static List<Long> waits(long[] events, List<Long> published) {
        List<Long> waits = new ArrayList<>();
        int at = 0;
        for (long event : events) {
            while (at < published.size() && published.get(at) < event) {
                at++;
            }
            if (event < END - 500 * MILLI) {
                waits.add(published.get(at) - event);
            }
        }
        return waits;
    }

    @Test
    void probesThatAnswerTogetherTenTimesASecondAreShownAtOnceAndTogether() {
        // Four within a millisecond and a half, each burst up to 8 ms off its time; after some seconds, turns stand
        // after them.
        Random random = new Random(4);
        long[] events = LongStream.range(0, 190)
                .flatMap(i -> {
                    long at = i * EVERY + 37 * MILLI + (long) (random.nextDouble() * 8 * MILLI);
                    return LongStream.of(at, at + MILLI / 2, at + MILLI, at + 3 * MILLI / 2);
                })
                .toArray();
        List<Long> published = published(events);
        assertThat(waits(events, published).stream().skip(4 * 50)).allMatch(w -> w <= 13 * MILLI);
        assertThat(published).hasSizeBetween(190, 205);
    }

    @Test
    void whatComesAHundredTimesASecondIsShownTenTimes() {
        long[] events = LongStream.range(0, 2000).map(i -> i * 10 * MILLI).toArray();
        List<Long> published = published(events);
        assertThat(published).hasSizeBetween(199, 206);
        assertThat(waits(events, published)).allMatch(w -> w <= EVERY + 10 * MILLI);
    }

    @Test
    void whatNeverPausesIsShownTenTimesToo() {
        long[] events = LongStream.range(0, 20_000).map(i -> i * MILLI).toArray();
        List<Long> published = published(events);
        assertThat(published).hasSizeBetween(198, 206);
        assertThat(waits(events, published)).allMatch(w -> w <= EVERY + SnapshotTurns.LONGEST_BURST_NANOS);
    }

    @Test
    void whereNothingComesTimeGoesOn() {
        List<Long> published = published(new long[0]);
        assertThat(published).hasSizeBetween(160, 172);
    }

    @Test
    void afterAPauseThereIsNoRushToCatchUp() {
        SnapshotTurns turns = new SnapshotTurns(EVERY, 0);
        assertThat(turns.due(0, true)).isTrue();
        long late = 5_000 * MILLI;
        turns.news(late);
        assertThat(turns.due(late, true)).isTrue();
        turns.news(late);
        assertThat(turns.due(late + 48 * MILLI, true)).isFalse();
        assertThat(turns.due(late + 50 * MILLI, true)).isTrue();
        turns.news(late);
        assertThat(turns.due(late + 146 * MILLI, true)).isFalse();
    }
}
