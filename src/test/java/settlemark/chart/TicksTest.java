package settlemark.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

class TicksTest {
    private static final long SECOND = 1_000_000_000L;

    private static LaneView view(long from, long to, long now, TimeLabels labels) {
        return new LaneView(
                from * SECOND,
                to * SECOND,
                now * SECOND,
                labels,
                List.of(Lane.of("", new ValueRange(0, 1), List.of())),
                false);
    }

    /** New York, 1 November 2026: 01:00 to 02:00 comes twice. The axis keeps the offset that it began with. */
    @Test
    void ticksStayEvenOverTheEndOfDaylightSaving() {
        TimeLabels clock = new TimeLabels.WallClock(Instant.parse("2026-11-01T05:34:00Z"), ZoneOffset.ofHours(-4));
        List<Tick> ticks = TimeTicks.fitting(view(0, 2760, -1, clock), 600);
        assertThat(ticks.stream().map(Tick::label))
                .containsExactly("01:35", "01:40", "01:45", "01:50", "01:55", "02:00", "02:05", "02:10", "02:15");
        for (int i = 1; i < ticks.size(); i++) {
            assertThat(ticks.get(i).position() - ticks.get(i - 1).position()).isEqualTo(300);
        }
    }

    @Test
    void wallClockTicksStandOnWholeMinutesWhateverTheStart() {
        TimeLabels clock = new TimeLabels.WallClock(Instant.parse("2026-11-25T15:02:17.250Z"), ZoneOffset.ofHours(-5));
        List<Tick> ticks = TimeTicks.fitting(view(100, 340, -1, clock), 300);
        // 10:02:17.25 + 100 s = 10:03:57.25, so 10:04 is 2.75 s after the left edge.
        assertThat(ticks.get(0).label()).isEqualTo("10:04");
        assertThat(ticks.get(0).position()).isCloseTo(2.75, within(1e-9));
    }

    @Test
    void labelsNeverTouchNorLeaveTheAxis() {
        TimeLabels clock = new TimeLabels.WallClock(Instant.parse("2026-11-25T15:02:00Z"), ZoneOffset.ofHours(5));
        for (int span = 5; span < 200_000; span = span * 3 / 2) {
            for (int width : new int[] {120, 205, 640, 1500}) {
                double previous = Double.NEGATIVE_INFINITY;
                for (Tick tick : TimeTicks.fitting(view(0, span, -1, clock), width)) {
                    double half = Pen.width(tick.label(), Inter.regular(13)) / 2;
                    double x = tick.position() / span * width;
                    assertThat(x - half).isGreaterThan(previous);
                    assertThat(x + half).isLessThanOrEqualTo(width + 1.0);
                    previous = x + half;
                }
            }
        }
    }

    @Test
    void agoCountsBackFromNowAndLeavesTheFutureEmpty() {
        List<Tick> ticks = TimeTicks.fitting(view(40, 118, 100, new TimeLabels.Ago(100 * SECOND)), 500);
        assertThat(ticks.stream().map(Tick::label))
                .containsExactly("60 s", "50 s", "40 s", "30 s", "20 s", "10 s", "now");
    }

    @Test
    void theWordOfThePresentEndsAtTheEdgeWhereItsMiddleHasNoRoomAndOthersKeepClearOfIt() {
        String word = "a word that is long";
        double wide = Pen.width(word, Inter.regular(13));
        for (int width : new int[] {150, 240, 400, 900}) {
            List<Tick> ticks = TimeTicks.fitting(view(0, 66, 60, new TimeLabels.Ago(60 * SECOND, word)), width);
            Tick last = ticks.get(ticks.size() - 1);
            double x = last.position() / 66 * width;
            assertThat(last.label()).isEqualTo(word);
            assertThat(last.ending()).isEqualTo(x + wide / 2 > width);
            double left = x - (last.ending() ? wide : wide / 2);
            for (Tick tick : ticks.subList(0, ticks.size() - 1)) {
                double half = Pen.width(tick.label(), Inter.regular(13)) / 2;
                assertThat(tick.ending()).isFalse();
                assertThat(tick.position() / 66 * width + half).isLessThan(left);
            }
        }
    }

    @Test
    void valueTicksGoInOnesTwosAndFives() {
        assertThat(ValueTicks.within(new ValueRange(-0.5, 9), 5).stream().map(Tick::label))
                .containsExactly("0", "2", "4", "6", "8");
        assertThat(ValueTicks.within(new ValueRange(2.96, 3.46), 6).stream().map(Tick::label))
                .containsExactly("3.0", "3.1", "3.2", "3.3", "3.4");
        assertThat(ValueTicks.within(new ValueRange(-0.06, 0.06), 3).stream().map(Tick::label))
                .containsExactly("\u22120.05", "0.00", "0.05");
        assertThat(ValueTicks.within(new ValueRange(55, 138), 5).stream().map(Tick::label))
                .containsExactly("60", "80", "100", "120");
    }
}
