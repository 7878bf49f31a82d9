package settlemark.chart;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the parts of a chart lie, all from the size and the labels.
 *
 * @param ribbon empty where nothing is simulated
 * @param lanes the data areas from top to bottom
 * @param axis the strip under the last lane
 * @param valueTicks the ticks of each lane
 */
record Layout(Rectangle2D ribbon, List<Rectangle2D> lanes, Rectangle2D axis, List<List<Tick>> valueTicks) {
    static final double RIBBON_PX = 16;
    private static final double AXIS_PX = 26;
    private static final double LANE_GAP_PX = 14;
    private static final double TICK_PX = 34;
    private static final double LEAST_TICK_PX = 17;
    private static final double FEW = 3.9;
    private static final double TOP_PX = 6;

    static Layout of(Rectangle2D area, LaneView view, double scale) {
        double ribbon = view.simulated() ? RIBBON_PX * scale : 0;
        double top = area.getY() + ribbon + TOP_PX * scale;
        double bottom = area.getMaxY() - AXIS_PX * scale;
        int count = view.lanes().size();
        double height = Math.max(1, (bottom - top - (count - 1) * LANE_GAP_PX * scale) / count);
        List<List<Tick>> ticks = new ArrayList<>();
        double gutter = 44 * scale;
        for (Lane lane : view.lanes()) {
            List<Tick> its = ValueTicks.within(lane.range(), most(height / scale));
            ticks.add(clearOfUnit(its, lane, height, scale));
            for (Tick tick : its) {
                gutter = Math.max(gutter, Pen.width(tick.label(), Inter.regular(13 * scale)) + 14 * scale);
            }
            gutter = Math.max(gutter, Pen.width(lane.unit(), Inter.regular(13 * scale)) + 10 * scale);
        }
        double left = area.getX() + gutter;
        double width = Math.max(1, area.getMaxX() - 2 * scale - left);
        List<Rectangle2D> lanes = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            lanes.add(new Rectangle2D.Double(left, top + i * (height + LANE_GAP_PX * scale), width, height));
        }
        return new Layout(
                new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), ribbon),
                lanes,
                new Rectangle2D.Double(left, bottom, width, AXIS_PX * scale),
                ticks);
    }

    /** As many as stand easily, and in a low lane three as long as they do not touch. */
    private static double most(double heightPx) {
        return Math.max(heightPx / TICK_PX, Math.min(FEW, heightPx / LEAST_TICK_PX));
    }

    /** The unit stands at the top of the axis, where no tick may be. */
    private static List<Tick> clearOfUnit(List<Tick> ticks, Lane lane, double height, double scale) {
        if (lane.unit().isEmpty()) {
            return ticks;
        }
        double perPx = lane.range().span() / height;
        double highest = lane.range().high() - 22 * scale * perPx;
        return ticks.stream().filter(t -> t.position() <= highest).toList();
    }
}
