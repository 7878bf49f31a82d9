package settlemark.chart;

import java.util.List;
import java.util.Objects;

/**
 * Lanes on one time axis, as many as there are groups of things at the most.
 *
 * @param fromNanos session time at the left edge
 * @param toNanos session time at the right edge, after the left
 * @param nowNanos where the line of the present stands, negative for none
 * @param times what the axis says
 * @param lanes from top to bottom
 * @param simulated whether anything in it comes from the rig: then the chart says so itself
 */
public record LaneView(
        long fromNanos, long toNanos, long nowNanos, TimeLabels times, List<Lane> lanes, boolean simulated) {
    public LaneView {
        Objects.requireNonNull(times);
        lanes = List.copyOf(lanes);
        if (fromNanos >= toNanos) {
            throw new IllegalArgumentException("a chart runs forward in time, got " + fromNanos + " to " + toNanos);
        }
        if (lanes.isEmpty() || lanes.size() > LaneGroup.values().length) {
            throw new IllegalArgumentException(
                    "a chart has 1 to " + LaneGroup.values().length + " lanes, got " + lanes.size());
        }
    }

    boolean showsNow() {
        return nowNanos >= fromNanos && nowNanos <= toNanos && nowNanos >= 0;
    }
}
