package settlemark.chart;

import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Finds places for the names of traces where they cover nothing, and keeps them there as long as that is so. */
final class LabelPlacer {
    /** Where along the lane a label may stand, most liked first: left, right, then between. */
    private static final double[] ALONG = along();

    /** So many of them are tried first; the others only where each of these would cover other words. */
    private static final int USUAL = 9;

    private static final int FINE = 25;

    private static final int BAD = 1000;

    /**
     * Above, below, above the staple, which is farther away and less liked, and at the top of the lane, where all else
     * would cover something.
     */
    private static final int SIDES = 4;

    private final Map<String, Integer> kept = new ConcurrentHashMap<>();

    void place(LaneCanvas canvas) {
        for (int i = 0; i < canvas.lane.traces().size(); i++) {
            Lane.TraceLine trace = canvas.lane.traces().get(i);
            if (!trace.label().isEmpty()) {
                label(canvas, i, trace);
            }
        }
    }

    /** Whether every name would have a place that covers no other words, with all that is taken now. */
    boolean fits(LaneCanvas canvas) {
        int before = canvas.taken().size();
        boolean fits = true;
        for (int i = 0; i < canvas.lane.traces().size() && fits; i++) {
            Lane.TraceLine trace = canvas.lane.traces().get(i);
            fits = trace.label().isEmpty() || takes(canvas, i, trace);
        }
        canvas.giveBack(before);
        return fits;
    }

    private static boolean takes(LaneCanvas canvas, int index, Lane.TraceLine trace) {
        boolean ghost = trace.style() == LineStyle.GHOST;
        Font usual = ghost ? Inter.regular(canvas.pen.px(14)) : Inter.semiBold(canvas.pen.px(15));
        for (Font font : new Font[] {usual, narrow(trace.label(), ghost, canvas.pen)}) {
            double width = Pen.width(trace.label(), font);
            int best = best(canvas, index, width, -1);
            if (best < 0) {
                return true; // It has nothing in view, and needs no name.
            }
            Rectangle2D place =
                    within(canvas, candidate(canvas, index, width, best)).orElseThrow();
            if (!canvas.coversWords(place)) {
                canvas.takeWords(place);
                return true;
            }
        }
        return false;
    }

    private void label(LaneCanvas canvas, int index, Lane.TraceLine trace) {
        Pen pen = canvas.pen;
        boolean ghost = trace.style() == LineStyle.GHOST;
        Font usual = ghost ? Inter.regular(pen.px(14)) : Inter.semiBold(pen.px(15));
        double room = canvas.area.getWidth() - pen.px(20);
        boolean covers = covers(canvas, index, Pen.width(trace.label(), usual));
        Font name = covers ? narrow(trace.label(), ghost, pen) : Pen.fitting(trace.label(), usual, room);
        double nameWidth = Pen.width(trace.label(), name);
        double left = room - nameWidth - pen.px(8);
        Font small = Pen.fitting(trace.note(), Inter.regular(pen.px(13)), left);
        double note = Pen.width(trace.note(), small);
        double noteWidth = covers || trace.note().isEmpty() || note > left ? 0 : pen.px(8) + note;
        String key = canvas.lane.unit() + index + trace.label();
        int best = best(canvas, index, nameWidth + noteWidth, kept.getOrDefault(key, -1));
        if (best >= 0 && noteWidth > 0 && cost(canvas, index, nameWidth + noteWidth, best) >= BAD) {
            // The note stands elsewhere too: it gives way before the name covers anything.
            noteWidth = 0;
            best = best(canvas, index, nameWidth, kept.getOrDefault(key, -1));
        }
        if (best < 0) {
            return;
        }
        Rectangle2D place = within(canvas, candidate(canvas, index, nameWidth + noteWidth, best))
                .orElseThrow();
        if (canvas.coversWords(place)) {
            return; // A lane so low has room for numbers only; the names stand beside it too.
        }
        kept.put(key, best);
        double baseline = place.getMaxY() - pen.px(4.5);
        pen.text(trace.label(), place.getX(), baseline, name, ghost ? pen.theme.ink2() : pen.theme.ink());
        if (noteWidth > 0) {
            pen.text(trace.note(), place.getX() + nameWidth + pen.px(8), baseline, small, pen.theme.ink2());
        }
        canvas.takeWords(place);
    }

    /** Where it would cover something else. */
    private static Font narrow(String words, boolean ghost, Pen pen) {
        Font smallest = ghost ? Inter.regular(pen.px(13)) : Inter.semiBold(pen.px(13));
        return Pen.fitting(words, smallest, Pen.width(words, smallest) * Pen.NARROWEST);
    }

    private static boolean covers(LaneCanvas canvas, int trace, double width) {
        int best = best(canvas, trace, width, -1);
        return best >= 0 && cost(canvas, trace, width, best) >= BAD;
    }

    /** The candidate that covers least, the kept one as long as it covers nothing; -1 where there is none at all. */
    private static int best(LaneCanvas canvas, int trace, double width, int keptOne) {
        if (keptOne >= 0 && cost(canvas, trace, width, keptOne) == 0) {
            return keptOne;
        }
        int best = -1;
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < SIDES * ALONG.length && (i < SIDES * USUAL || least >= BAD); i++) {
            int cost = cost(canvas, trace, width, i);
            if (cost < least) {
                least = cost;
                best = i;
            }
        }
        return best;
    }

    private static double[] along() {
        double[] usual = {0, 1, 0.5, 0.25, 0.75, 0.12, 0.38, 0.62, 0.88};
        double[] all = Arrays.copyOf(usual, USUAL + FINE);
        for (int i = 0; i < FINE; i++) {
            all[USUAL + i] = (double) i / (FINE - 1);
        }
        return all;
    }

    private static int cost(LaneCanvas canvas, int trace, double width, int candidate) {
        Optional<Rectangle2D> wanted = candidate(canvas, trace, width, candidate);
        Optional<Rectangle2D> place = within(canvas, wanted);
        if (place.isEmpty()) {
            return Integer.MAX_VALUE;
        }
        int side = candidate % SIDES;
        int cost = side == 2 ? 2 : side == 3 ? BAD / 2 : 0;
        cost += canvas.pointsIn(place.get()) + 3 * (int) canvas.edgesIn(place.get());
        for (Rectangle2D taken : canvas.taken()) {
            cost += taken.intersects(place.get()) ? BAD : 0;
        }
        cost += canvas.coversWords(place.get()) ? 4 * BAD : 0;
        return cost + (canvas.area.contains(wanted.orElseThrow()) ? 0 : 20 * BAD);
    }

    /** Above or below the trace, or above its staple, at a place along it; empty where the trace has nothing there. */
    private static Optional<Rectangle2D> candidate(LaneCanvas canvas, int trace, double width, int candidate) {
        Pen pen = canvas.pen;
        double margin = pen.px(8);
        double height = pen.px(19);
        double room = canvas.area.getWidth() - 2 * margin - width;
        double x = canvas.area.getX() + margin + Math.max(0, room) * ALONG[candidate / SIDES];
        int side = candidate % SIDES;
        return canvas.extentPx(trace, x, x + width).map(extent -> {
            double above = extent[0] - pen.px(4) - height;
            double y = switch (side) {
                case 0 -> above;
                case 1 -> extent[1] + pen.px(3);
                case 2 -> above - pen.px(SpanShape.ABOVE_PX);
                default -> canvas.area.getY() + pen.px(1);
            };
            return new Rectangle2D.Double(x, y, width, height);
        });
    }

    /** The same within the lane. */
    private static Optional<Rectangle2D> within(LaneCanvas canvas, Optional<Rectangle2D> place) {
        Rectangle2D area = canvas.area;
        return place.map(p -> new Rectangle2D.Double(
                p.getX(),
                Math.max(area.getY(), Math.min(p.getY(), area.getMaxY() - p.getHeight())),
                p.getWidth(),
                p.getHeight()));
    }

    /** Puts words at a point, on the first side that is free, or leaves them out: the number stands elsewhere too. */
    void beside(LaneCanvas canvas, String words, double x, double y) {
        Pen pen = canvas.pen;
        Font font = Inter.semiBold(pen.px(13));
        double width = Pen.width(words, font);
        double height = pen.px(16);
        double off = pen.px(7);
        double[][] corners = {
            {x - width - off, y + off},
            {x - width - off, y - off - height},
            {x + off, y - height / 2},
            {x + off, y + off}
        };
        for (double[] corner : corners) {
            Rectangle2D place = new Rectangle2D.Double(corner[0], corner[1], width, height);
            if (canvas.free(place) && canvas.pointsIn(place) == 0) {
                pen.text(words, place.getX(), place.getMaxY() - pen.px(3.5), font, pen.theme.ink());
                canvas.takeWords(place);
                return;
            }
        }
    }
}
