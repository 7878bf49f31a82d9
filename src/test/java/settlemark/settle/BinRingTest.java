package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

final class BinRingTest {
    private static final double WIDTH_SECONDS = 2;
    private static final int CAPACITY = 5;

    private final BinRing ring = new BinRing(WIDTH_SECONDS, CAPACITY);

    /** Two samples a bin, one step apart about the bin's number. */
    private void fill(int bins) {
        for (int i = 0; i < bins; i++) {
            ring.add(2 * i + 0.5, i - 1);
            ring.add(2 * i + 1.5, i + 1);
        }
        ring.add(2 * bins + 0.5, 99);
    }

    @Test
    void aBinClosesWithTheFirstSampleOfTheNext() {
        assertThat(ring.add(0, 1)).isFalse();
        assertThat(ring.add(1.9, 3)).isFalse();
        assertThat(ring.size()).isZero();
        assertThat(ring.add(2, 7)).isTrue();
        assertThat(ring.size()).isEqualTo(1);
        assertThat(ring.meanValue(0)).isEqualTo(2);
        assertThat(ring.meanSeconds(0)).isEqualTo(0.95);
        assertThat(ring.leastValue(0)).isEqualTo(1);
        assertThat(ring.mostValue(0)).isEqualTo(3);
        assertThat(ring.firstSeconds(0)).isZero();
    }

    @Test
    void sumsOfDecimalFractionsDoNotMissTheEdgeOfABin() {
        ring.add(0, 1);
        assertThat(ring.add(2 - 1e-7, 1)).as("within the tolerance").isTrue();
        assertThat(ring.add(4 - 1e-5, 1)).as("outside").isFalse();
    }

    @Test
    void emptyBinsTakeNoPlace() {
        ring.add(0, 1);
        ring.add(100, 2);
        ring.add(102, 3);
        assertThat(ring.size()).isEqualTo(2);
        assertThat(ring.meanSeconds(1)).isEqualTo(100);
    }

    @Test
    void theNewestBinsAreKept() {
        fill(8);
        assertThat(ring.size()).isEqualTo(CAPACITY);
        for (int i = 0; i < CAPACITY; i++) {
            assertThat(ring.meanValue(i)).isEqualTo(3 + i);
            assertThat(ring.meanSeconds(i)).isEqualTo(2 * (3 + i) + 1);
            assertThat(ring.leastValue(i)).isEqualTo(2 + i);
            assertThat(ring.mostValue(i)).isEqualTo(4 + i);
            assertThat(ring.firstSeconds(i)).isEqualTo(2 * (3 + i) + 0.5);
        }
        assertThat(ring.startSeconds()).isEqualTo(6.5);
    }

    @Test
    void theFirstBinLaterThanATimeIsFoundBeforeAndAfterTheRingIsFull() {
        for (int bins : new int[] {0, 1, 2, 3, 5, 8}) {
            ring.clear();
            fill(bins);
            for (double seconds = -1; seconds < 20; seconds += 0.5) {
                int expected = 0;
                while (expected < ring.size() && !(ring.meanSeconds(expected) > seconds)) {
                    expected++;
                }
                assertThat(ring.firstAfter(seconds))
                        .as("%d bins, %s s", bins, seconds)
                        .isEqualTo(expected);
            }
        }
    }

    @Test
    void binsAreCopiedAcrossTheRingsEnd() {
        fill(8);
        double[] times = new double[CAPACITY];
        double[] values = new double[CAPACITY];
        ring.copy(1, times, values);
        assertThat(times).startsWith(9, 11, 13, 15);
        assertThat(values).startsWith(4, 5, 6, 7).endsWith(0);
        ring.copy(3, times, values);
        assertThat(values).startsWith(6, 7, 6, 7);
    }

    @Test
    void theRangeIsThatOfTheSamplesFromAnIndexOn() {
        fill(8);
        assertThat(ring.range(0)).isEqualTo(6);
        assertThat(ring.range(3)).isEqualTo(3);
        assertThat(ring.range(4)).isEqualTo(2);
    }

    @Test
    void whatIsNotLaterThanATimeIsDropped() {
        fill(8);
        ring.dropUntil(9);
        assertThat(ring.size()).isEqualTo(3);
        assertThat(ring.meanSeconds(0)).isEqualTo(11);
        ring.dropUntil(100);
        assertThat(ring.size()).isZero();
        assertThat(ring.startSeconds()).as("the open bin's first sample").isEqualTo(16.5);
    }

    @Test
    void nothingHasNoStart() {
        assertThat(ring.startSeconds()).isNaN();
        fill(2);
        ring.clear();
        assertThat(ring.startSeconds()).isNaN();
        assertThat(ring.size()).isZero();
    }

    /** A swing of 2 bins counts for 6 more, to the lesser side. */
    @Test
    void aSwingIsRememberedForThreeTimesItsLength() {
        BinRing swings = new BinRing(1, 40);
        double[] values = {0, 5, 0, -3, 0, 0, 0, 0, 0, 0, 0, 0, 0};
        for (int i = 0; i < values.length; i++) {
            swings.add(i, values[i]);
            if (i >= 4 && i <= 10) {
                assertThat(swings.swungBothWays(0, 1)).as("at %d s", i).isEqualTo(3);
            }
            if (i > 10) {
                assertThat(swings.swungBothWays(0, 1)).as("at %d s", i).isZero();
            }
        }
    }

    @Test
    void whatLiesOnOneSideIsNoSwing() {
        fill(4);
        assertThat(ring.swungBothWays(-1, 1)).isZero();
        assertThat(ring.swungBothWays(1.5, 2.5)).as("on the margin").isZero();
        assertThat(ring.swungBothWays(1.5, 2.4)).isCloseTo(2.5, within(1e-12));
    }
}
