package settlemark.chart;

/**
 * Cuts a thinned trace into dashes. A stroke's own dashes run along every tooth of the noise, so that a noisy line
 * looks solid; these run along the line's course instead, and stay apart from each other whatever the noise does.
 */
final class Dashes {
    /** Noise is averaged out over this many pixels to either side. */
    private static final double REACH_PX = 8;

    private final Thinned trace;
    private final double pxPerSecond;
    private final double pxPerValue;
    private final float[] pattern;
    private final double lineWidthPx;
    private final double[] course;
    private final double[] noise;
    private final Thinned out = Thinned.empty();
    private double along;
    private int part;

    private Dashes(Thinned trace, LaneCanvas canvas, LineStyle style) {
        this.trace = trace;
        this.pxPerSecond = canvas.xOfSeconds(1) - canvas.xOfSeconds(0);
        this.pxPerValue = canvas.area.getHeight() / canvas.lane.range().span();
        this.pattern = style.dash(canvas.pen.scale);
        this.lineWidthPx = style.stroke(canvas.pen.scale).getLineWidth();
        this.course = new double[trace.size()];
        this.noise = new double[trace.size()];
    }

    /** The trace with NaN between its dashes; itself where the style is solid. */
    static Thinned cut(Thinned trace, LaneCanvas canvas, LineStyle style) {
        return style.dash(1).length == 0 ? trace : new Dashes(trace, canvas, style).cut();
    }

    private Thinned cut() {
        average();
        for (int i = 0; i < trace.size(); i++) {
            boolean joined = i > 0 && !Double.isNaN(trace.value(i)) && !Double.isNaN(trace.value(i - 1));
            if (joined) {
                double across = (trace.seconds(i) - trace.seconds(i - 1)) * pxPerSecond;
                segment(i, Math.hypot(across, course[i] - course[i - 1]));
            } else if (drawn() || Double.isNaN(trace.value(i))) {
                out.add(trace.seconds(i), trace.value(i));
            }
        }
        return out;
    }

    private boolean drawn() {
        return part % 2 == 0;
    }

    /** Length of this dash or space. Teeth of noise are as wide as the line and would fill a space, so it grows. */
    private double partPx(int at) {
        return pattern[part] + (drawn() ? 0 : Math.min(lineWidthPx, 2 * noise[at]));
    }

    /** Walks from a point to the next one, and cuts wherever a dash ends or begins. */
    private void segment(int to, double lengthPx) {
        double walked = 0;
        while (along + lengthPx - walked >= partPx(to)) {
            walked += Math.max(0, partPx(to) - along);
            along = 0;
            double share = lengthPx > 0 ? Math.min(1, walked / lengthPx) : 1;
            double second = trace.seconds(to - 1) + share * (trace.seconds(to) - trace.seconds(to - 1));
            double value = trace.value(to - 1) + share * (trace.value(to) - trace.value(to - 1));
            out.add(second, value);
            if (drawn()) {
                out.add(second, Double.NaN);
            }
            part = (part + 1) % pattern.length;
        }
        along += lengthPx - walked;
        if (drawn()) {
            out.add(trace.seconds(to), trace.value(to));
        }
    }

    /** The moving mean and standard deviation in pixels, NaN where the trace has nothing. */
    private void average() {
        double reach = REACH_PX / pxPerSecond;
        int from = 0;
        int to = 0;
        double sum = 0;
        double squares = 0;
        int count = 0;
        for (int i = 0; i < course.length; i++) {
            for (; to < course.length && trace.seconds(to) <= trace.seconds(i) + reach; to++) {
                double px = px(to);
                sum += px;
                squares += px * px;
                count += Double.isNaN(trace.value(to)) ? 0 : 1;
            }
            for (; trace.seconds(from) < trace.seconds(i) - reach; from++) {
                double px = px(from);
                sum -= px;
                squares -= px * px;
                count -= Double.isNaN(trace.value(from)) ? 0 : 1;
            }
            course[i] = Double.isNaN(trace.value(i)) ? Double.NaN : sum / count;
            noise[i] = Math.sqrt(Math.max(0, squares / count - sum / count * (sum / count)));
        }
    }

    private double px(int index) {
        double value = trace.value(index);
        return Double.isNaN(value) ? 0 : value * pxPerValue;
    }
}
