package settlemark.ui;

import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.calc.Result;
import settlemark.chart.Mark;
import settlemark.job.Clocking;
import settlemark.job.Clocking.Progress;
import settlemark.job.Clocking.Run;
import settlemark.job.Verdict;
import settlemark.measure.Quantity;

/** Under the digits of a clocked meter: each run as a row of turns, and the input with its uncertainty on one axis. */
final class ClockRuns extends Painted {
    /** The axis of the input reaches this far to either side of the rating, or as far as there is something to see. */
    private static final double HALF_AXIS = 0.04;

    private static final int MOST_RUNS = 4;
    private static final String TURNS = "88";
    private static final String NUMBER = "888.8";
    private static final double LEFT = 28;
    private static final double BETWEEN = 26;
    /** Beside the input: its uncertainty, and the dial. */
    private static final double BESIDE = 176;

    private @Nullable Scene scene;
    private int headBottom;
    private double headsEnd;
    private double digitPx = 10;

    ClockRuns(Look look) {
        super(look, AccessibleRole.PANEL);
    }

    /** Height of the digits: as large as a face of this size holds, never under 20 mm. */
    static double digitPx(Look look, int width, int height) {
        double cells = digits(look, 100) / 100;
        double fitting = (width - look.px(LEFT + BESIDE) - 2 * look.px(BETWEEN)) / cells;
        return Math.max(look.mm(Look.READABLE_MM), Math.min(Math.min(look.px(92), height * 0.2), fitting));
    }

    /** Width below which the digits of 20 mm are cut. */
    static int neededWidth(Look look) {
        double digits = digits(look, look.mm(Look.READABLE_MM));
        return (int) Math.ceil(digits + look.px(LEFT + BESIDE) + 2 * look.px(BETWEEN));
    }

    private static double digits(Look look, double digitPx) {
        return DigitField.width(TURNS, look, digitPx) + 2 * DigitField.width(NUMBER, look, digitPx);
    }

    /** Left edges of turns, seconds and input, and the right edge of the last. */
    static double[] columns(Look look, double digitPx, int width) {
        // Digits keep their height: where there is little room, what is between them gives way.
        double room = width - digits(look, digitPx);
        double usual = look.px(LEFT) + 2 * look.px(BETWEEN);
        double part = Math.max(0, Math.min(1, room / usual));
        double left = look.px(LEFT) * part;
        double number = DigitField.width(NUMBER, look, digitPx);
        double second = left + DigitField.width(TURNS, look, digitPx) + look.px(BETWEEN) * part;
        double third = second + number + look.px(BETWEEN) * part;
        return new double[] {left, second, third, third + number};
    }

    /** @param bottom of the digits; @param newDigitPx their height */
    void head(int bottom, double newDigitPx) {
        headBottom = bottom;
        digitPx = newDigitPx;
    }

    void show(Scene newScene) {
        scene = newScene;
        sentence(say(newScene));
        repaint();
    }

    private static String say(Scene scene) {
        Clocking clocking = scene.open().clocking();
        String inputs = clocking.input()
                .map(r -> Words.say(
                        ", input {0} thousand Btu per hour",
                        Numbers.fixed(r.quantity().value() / 1000, 1)))
                .orElse("");
        return Words.say(
                "{0} runs{1}{2}",
                clocking.counting().size(),
                inputs,
                verdict(scene).map(v -> ", " + Words.told(v.outcome().word())).orElse(""));
    }

    private static java.util.Optional<Verdict> verdict(Scene scene) {
        return scene.open().clocking().verdicts(scene.open().step(), scene.job().plate()).stream()
                .findFirst();
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
        if (scene == null) {
            return;
        }
        heads(pen, scene);
        double top = headBottom + look.px(14);
        pen.line(pen.theme().hair(), 1.5, 0, top, getWidth(), top);
        double axis = Math.max(look.px(118), getHeight() * 0.27);
        runs(pen, scene, top, getHeight() - axis);
        pen.line(pen.theme().hair(), 1.5, 0, getHeight() - axis, getWidth(), getHeight() - axis);
        axis(pen, scene, getHeight() - axis, axis);
    }

    private void heads(Pen pen, Scene now) {
        Font name = look.semiBold(Look.LABEL);
        Font unit = look.regular(Look.NAME);
        double[] columns = columns(look, digitPx, getWidth());
        double y = look.px(32);
        String[][] heads = {
            {Words.say("Turns"), ""}, {Words.say("This run"), "s"}, {Words.say("Input so far"), "kBtu/h"}
        };
        for (int i = 0; i < heads.length; i++) {
            double next = i < 2 ? columns[i + 1] : getWidth();
            double room = next - columns[i] - Look.width(heads[i][1], unit) - look.px(16);
            double end = pen.fit(heads[i][0], name, pen.theme().ink(), columns[i], y, room);
            headsEnd = pen.text(heads[i][1], unit, pen.theme().ink2(), end + look.px(8), y);
        }
        Clocking clocking = now.open().clocking();
        ClockFace.input(clocking, ClockFace.shown(clocking)).ifPresent(q -> {
            double x = columns[3] + look.px(12);
            if (x + look.px(60) > getWidth()) {
                return;
            }
            double middle = headBottom - look.px(30);
            pen.text(
                    Numbers.plusMinus(q.expandedUncertainty() / 1000, 1),
                    look.regular(Look.STEP),
                    pen.theme().ink(),
                    x,
                    middle);
            pen.text("k = 2", unit, pen.theme().ink2(), x, middle + look.px(26));
        });
        dial(pen, now, clocking);
    }

    /** The dial that is watched, and on the demo rig its pointer. */
    private void dial(Pen pen, Scene now, Clocking clocking) {
        String words = Words.say("dial {0} ft\u00b3 a turn", Numbers.plain(clocking.dialCubicFeet()));
        double right = getWidth() - look.px(14);
        if (right - headsEnd > look.px(60)) {
            pen.fitRight(
                    words,
                    look.regular(Look.BODY),
                    pen.theme().ink2(),
                    right,
                    look.px(26),
                    right - headsEnd - look.px(12));
        }
        // The dial gives way to the digits.
        boolean room = columns(look, digitPx, getWidth())[3] < right - look.px(72);
        now.hands().filter(h -> room).ifPresent(h -> {
            double radius = look.px(34);
            double cx = right - radius - look.px(4);
            double cy = look.px(40) + radius;
            pen.outline(pen.theme().rule(), 2, new Ellipse2D.Double(cx - radius, cy - radius, 2 * radius, 2 * radius));
            pen.line(pen.theme().ink(), 3, cx, cy - radius, cx, cy - radius + look.px(9));
            double part = h.meterCubicFeet() / clocking.dialCubicFeet() % 1;
            double angle = part * 2 * Math.PI;
            double reach = radius - look.px(8);
            pen.line(
                    pen.theme().series().get(1), 3, cx, cy, cx + reach * Math.sin(angle), cy - reach * Math.cos(angle));
        });
    }

    private void runs(Pen pen, Scene now, double top, double bottom) {
        List<Run> all = now.open().clocking().runs();
        List<Run> shown = all.subList(Math.max(0, all.size() - MOST_RUNS), all.size());
        double each = Math.min(look.px(62), (bottom - top - look.px(10)) / Math.max(2, shown.size()));
        double longest = Math.max(
                1,
                shown.stream()
                        .mapToDouble(r -> r.progress() == Progress.RUNNING ? ageSeconds(now, r) : r.seconds())
                        .max()
                        .orElse(1));
        double left = look.px(110);
        double scale = (getWidth() - left - look.px(270)) / longest;
        if (shown.isEmpty()) {
            pen.fit(
                    Words.say("Wait until the pointer passes its mark, then press. Two turns and more, twice."),
                    look.regular(Look.NAME),
                    pen.theme().ink2(),
                    look.px(28),
                    top + look.px(48),
                    getWidth() - look.px(40));
        }
        for (int i = 0; i < shown.size(); i++) {
            int number = all.size() - shown.size() + i + 1;
            run(pen, now, shown.get(i), number, left, scale, top + look.px(8) + i * each, each - look.px(12));
        }
    }

    private static double ageSeconds(Scene now, Run run) {
        return (now.snapshot().timeNanos() - run.marksNanos().get(0)) / 1e9;
    }

    private void run(Pen pen, Scene now, Run run, int number, double left, double scale, double y, double high) {
        boolean running = run.progress() == Progress.RUNNING;
        boolean dropped = run.progress() == Progress.DROPPED;
        double baseline = y + high / 2 + look.px(7);
        Font font = running ? look.semiBold(Look.NAME) : look.regular(Look.NAME);
        var ink = dropped ? pen.theme().ink2() : pen.theme().ink();
        pen.fit(Words.say("run {0}", number), font, ink, look.px(28), baseline, left - look.px(32));
        List<Long> marks = run.marksNanos();
        double x = left;
        for (int i = 1; i < marks.size(); i++) {
            double seconds = (marks.get(i) - marks.get(i - 1)) / 1e9;
            Rectangle2D box = new Rectangle2D.Double(x, y + 4, seconds * scale, high - 8);
            pen.fill(dropped ? pen.theme().fold() : pen.theme().settled(), box);
            mark(pen, x, y, high);
            centred(pen, Numbers.fixed(seconds, 1) + " s", ink, box, baseline);
            x += seconds * scale;
        }
        mark(pen, x, y, high);
        double from = textLeft(now, run, x, scale);
        pen.fit(
                after(pen, now, run, x, y, high, scale),
                look.regular(Look.NAME),
                ink,
                from,
                baseline,
                getWidth() - from - look.px(6));
    }

    private double textLeft(Scene now, Run run, double x, double scale) {
        double more = run.progress() == Progress.RUNNING ? (ageSeconds(now, run) - run.seconds()) * scale : 0;
        return x + more + look.px(26);
    }

    private String after(Pen pen, Scene now, Run run, double x, double y, double high, double scale) {
        if (run.progress() == Progress.DROPPED) {
            return Words.say("does not count: {0}", Words.told(run.why()));
        }
        if (run.progress() == Progress.ENDED) {
            double volume = run.turns() * now.open().clocking().dialCubicFeet();
            return Words.say("{0} s for {1} ft\u00b3", Numbers.fixed(run.seconds(), 1), Numbers.plain(volume));
        }
        double seconds = Math.max(0, ageSeconds(now, run) - run.seconds());
        Rectangle2D box = new Rectangle2D.Double(x, y + 4, Math.max(1, seconds * scale), high - 8);
        pen.dashed(pen.theme().rule(), 1.6, 5, 4, box);
        centred(pen, Numbers.fixed(seconds, 1) + " s", pen.theme().ink(), box, y + high / 2 + look.px(7));
        Mark.NOW.draw(pen.g, box.getMaxX() + 2, y + high / 2 - look.px(9), look.px(18), pen.theme());
        return Words.told(now.open().waitingFor());
    }

    private void mark(Pen pen, double x, double y, double high) {
        pen.line(pen.theme().ink(), 3, x, y, x, y + high);
    }

    private void centred(Pen pen, String words, java.awt.Color color, Rectangle2D box, double baseline) {
        Font font = look.semiBold(Look.NAME);
        if (Look.width(words, font) + 6 < box.getWidth()) {
            pen.textCentred(words, font, color, box.getCenterX(), baseline);
        }
    }

    /** The rated input with what it may be off by, and each run's input with its uncertainty. */
    private void axis(Pen pen, Scene now, double top, double high) {
        Clocking clocking = now.open().clocking();
        double rated =
                now.stage().map(s -> now.job().plate().aimBtuPerHour(s.key())).orElse(Double.NaN);
        if (!(rated > 0)) {
            pen.fit(
                    Words.say("The plate gives no input for this stage: the clocked input stands by itself."),
                    look.regular(Look.NAME),
                    pen.theme().ink2(),
                    look.px(28),
                    top + look.px(40),
                    getWidth() - look.px(40));
            return;
        }
        Axis axis = axis(clocking, rated);
        double bandTop = top + look.px(40);
        double bandHigh = high - look.px(74);
        band(pen, rated, axis, bandTop, bandHigh);
        List<Run> counting = clocking.counting();
        List<Run> shown = counting.subList(Math.max(0, counting.size() - 2), counting.size());
        for (int i = 0; i < shown.size(); i++) {
            double y = bandTop + bandHigh * (i + 1) / (shown.size() + 1);
            boolean last = i == shown.size() - 1;
            clocking.input(shown.get(i)).map(Result::quantity).ifPresent(q -> point(pen, q, axis, y, last));
        }
        verdict(now).ifPresent(v -> said(pen, v, bandTop + bandHigh / 2));
        pen.fit(
                foot(now, clocking),
                look.regular(Look.AXIS + 1),
                pen.theme().ink2(),
                look.px(28),
                top + high - look.px(8),
                getWidth() - look.px(40));
    }

    private void band(Pen pen, double rated, Axis axis, double top, double high) {
        double low = axis.x(rated * 0.98);
        double up = axis.x(rated * 1.02);
        pen.fill(pen.theme().band(), low, top, up - low, high);
        pen.line(pen.theme().ink(), 3, low, top - 6, low, top + high + 6);
        pen.line(pen.theme().ink(), 3, up, top - 6, up, top + high + 6);
        Font small = look.regular(Look.BODY + 1);
        pen.textCentred(
                Numbers.fixed(rated * 0.98 / 1000, 1), small, pen.theme().ink(), low, top - look.px(12));
        pen.textCentred(
                Numbers.fixed(rated * 1.02 / 1000, 1), small, pen.theme().ink(), up, top - look.px(12));
        pen.fitCentred(
                Words.say("rated {0} \u00b12 %", Numbers.plain(rated / 1000)),
                look.regular(Look.BODY),
                pen.theme().ink2(),
                axis.x(rated),
                top - look.px(12),
                up - low - look.px(60));
    }

    private void point(Pen pen, Quantity input, Axis axis, double y, boolean last) {
        double half = input.expandedUncertainty();
        double x = axis.x(input.value());
        var color = last ? pen.theme().ink() : pen.theme().ink2();
        double left = axis.x(input.value() - half);
        double right = axis.x(input.value() + half);
        pen.line(color, 2.5, left, y, right, y);
        pen.line(color, 2.5, left, y - 6, left, y + 6);
        pen.line(color, 2.5, right, y - 6, right, y + 6);
        Ellipse2D dot = new Ellipse2D.Double(x - 6, y - 6, 12, 12);
        pen.fill(last ? color : pen.theme().sheet(), dot);
        pen.outline(color, 2.5, dot);
    }

    private void said(Pen pen, Verdict verdict, double middle) {
        double size = look.px(26);
        double x = getWidth() - look.px(190);
        VerdictBox.of(verdict.outcome()).draw(pen.g, x, middle - size / 2, size, pen.theme());
        double left = x + size + look.px(10);
        pen.fit(
                Words.told(verdict.outcome().word()),
                look.semiBold(Look.NAME),
                pen.theme().ink(),
                left,
                middle + look.px(7),
                getWidth() - left - look.px(6));
    }

    private static String foot(Scene now, Clocking clocking) {
        String apart = clocking.apart()
                .map(a -> Words.say("Runs lie {0} % apart. ", Numbers.fixed(a * 100, 1)))
                .orElse("");
        String limit = verdict(now)
                .map(v -> Words.say(" Limit: {0}.", Words.told(v.limit().source())))
                .orElse("");
        return Words.say(
                "{0}Heating value {1} Btu/ft\u00b3 ({2}{3}).{4}",
                apart,
                Numbers.plain(clocking.heat().btuPerCubicFoot()),
                Words.told(clocking.heat().source()),
                now.live() ? Words.say("; H enters it") : "",
                limit);
    }

    private Axis axis(Clocking clocking, double rated) {
        double low = rated * (1 - HALF_AXIS);
        double high = rated * (1 + HALF_AXIS);
        for (Run run : clocking.counting()) {
            Quantity q = clocking.input(run).map(Result::quantity).orElseThrow();
            low = Math.min(low, q.value() - 1.2 * q.expandedUncertainty());
            high = Math.max(high, q.value() + 1.2 * q.expandedUncertainty());
        }
        double left = look.px(110);
        return new Axis(low, high, left, getWidth() - look.px(230) - left);
    }

    /** @param low value at the left edge */
    private record Axis(double low, double high, double left, double width) {
        double x(double value) {
            return left + (value - low) / (high - low) * width;
        }
    }
}
