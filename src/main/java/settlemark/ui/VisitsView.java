package settlemark.ui;

import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RectangularShape;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.accessibility.AccessibleRole;
import settlemark.job.JobState;
import settlemark.job.VisitTrend;

/**
 * What was left at each visit to the appliance, what was found today and what is left, over the strip until it is left: a
 * row a value, a column a visit, and each row's course on an axis of its own.
 */
final class VisitsView extends Painted {
    private static final double NAME = 0.2;
    private static final double COURSE = 0.2;
    private static final double COLUMN = 84;
    private static final double ROW = 84;
    private static final double LEAST_ROW = 30;
    private static final double TOP = 84 + RibbonBar.HEIGHT;

    private final RibbonBar ribbon;
    private List<VisitTrend.Line> lines = List.of();
    private String why = "";

    VisitsView(Look look) {
        super(look, AccessibleRole.LIST);
        ribbon = new RibbonBar(look, 1);
        add(ribbon);
        setVisible(false);
    }

    /** @param job empty where it is not known yet */
    void show(Optional<JobState> job, boolean simulated) {
        ribbon.simulated(simulated);
        List<VisitTrend.Line> newLines = job.map(VisitTrend::lines).orElse(List.of());
        String newWhy = why(job);
        if (!newLines.equals(lines) || !newWhy.equals(why)) {
            lines = newLines;
            why = newWhy;
            repaint();
        }
        sentence(
                lines.isEmpty()
                        ? why
                        : Words.say("Visits") + ": "
                                + lines.stream().map(this::spoken).collect(Collectors.joining("; ")));
    }

    static String why(Optional<JobState> job) {
        if (job.isEmpty()) {
            return Words.say("Not known before the session was run through again");
        }
        return job.get().visits().isEmpty()
                ? Words.say("No earlier visit to this appliance is stored here")
                : Words.say("Nothing is read yet that was left before");
    }

    private String spoken(VisitTrend.Line line) {
        List<String> parts = new ArrayList<>();
        line.before()
                .forEach(p ->
                        parts.add(Words.say("left {0} on {1}", Numbers.fixed(p.value(), line.decimals()), p.when())));
        if (!Double.isNaN(line.found())) {
            parts.add(Words.say("found {0}", Numbers.fixed(line.found(), line.decimals())));
        }
        if (!Double.isNaN(line.left())) {
            parts.add(Words.say("left {0}", Numbers.fixed(line.left(), line.decimals())));
        }
        return name(line) + " " + line.symbol() + ", " + String.join(", ", parts) + ", " + change(line);
    }

    private static String name(VisitTrend.Line line) {
        String stage = line.stage().isEmpty() ? Words.say("lock-up") : Words.told(line.stage());
        return Numbers.capital(Words.told(line.subject())) + ", " + stage;
    }

    private static String change(VisitTrend.Line line) {
        String u = Numbers.plusMinus(line.expandedChange(), line.decimals());
        return Math.abs(line.change()) <= line.expandedChange()
                ? Words.say("no change beyond {0}", u)
                : Words.say("{0} since the first, {1}", Numbers.signed(line.change(), line.decimals()), u);
    }

    @Override
    public void doLayout() {
        ribbon.setBounds(2, 2, getWidth() - 4, look.ipx(RibbonBar.HEIGHT));
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
        pen.outline(pen.theme().ink(), Look.OPEN_OUTLINE, Pen.box(0, 0, getWidth(), getHeight(), Look.OPEN_OUTLINE, 0));
        double left = look.px(28);
        double room = getWidth() - 2 * left;
        double end = pen.fit(
                Words.say("Visits to this appliance"),
                look.semiBold(Look.STEP),
                pen.theme().ink(),
                left,
                look.px(44 + RibbonBar.HEIGHT),
                room * 0.6);
        pen.fit(
                Words.say("Esc or B to go back"),
                look.regular(Look.BODY),
                pen.theme().ink2(),
                end + look.px(24),
                look.px(44 + RibbonBar.HEIGHT),
                left + room - end - look.px(24));
        if (lines.isEmpty()) {
            pen.paragraph(why, look.regular(Look.LABEL), pen.theme().ink(), left, look.px(96 + RibbonBar.HEIGHT), room);
            return;
        }
        table(pen, left, room);
    }

    private void table(Pen pen, double left, double room) {
        double name = room * NAME;
        double course = room * COURSE;
        double numbers = room - name - course - look.px(24);
        double wide = Math.max(look.px(COLUMN), 1);
        int fitting = (int) Math.max(1, numbers / wide - 2);
        List<String> all = lines.stream()
                .flatMap(l -> l.before().stream().map(VisitTrend.Point::when))
                .distinct()
                .sorted()
                .toList();
        List<String> days = all.subList(Math.max(0, all.size() - fitting), all.size());
        double each = numbers / (days.size() + 2);
        double top = look.px(TOP);
        heads(pen, days, left + name, each, top);
        double row = Math.max(
                look.px(LEAST_ROW),
                Math.min(look.px(ROW), (getHeight() - top - look.px(20)) / Math.max(1, lines.size())));
        for (int i = 0; i < lines.size(); i++) {
            double baseline = top + (i + 0.5) * row + look.px(8);
            row(pen, lines.get(i), days, left, name, each, baseline);
            course(pen, lines.get(i), left + room - course, top + i * row + look.px(7), course, row - look.px(13));
            pen.line(pen.theme().hair(), 1, left, top + (i + 1) * row, left + room, top + (i + 1) * row);
        }
    }

    private void heads(Pen pen, List<String> days, double x, double each, double baseline) {
        Font small = look.regular(Look.AXIS);
        List<String> heads = Stream.concat(days.stream(), Stream.of(Words.say("found now"), Words.say("left now")))
                .toList();
        for (int i = 0; i < heads.size(); i++) {
            pen.fitRight(heads.get(i), small, pen.theme().ink2(), x + (i + 1) * each, baseline, each - look.px(8));
        }
    }

    private void row(
            Pen pen, VisitTrend.Line line, List<String> days, double left, double name, double each, double baseline) {
        Font body = look.regular(Look.BODY);
        double unit = Look.width(line.symbol(), look.regular(Look.AXIS)) + look.px(8);
        double end = pen.fit(name(line), body, pen.theme().ink(), left, baseline, name - unit);
        pen.text(line.symbol(), look.regular(Look.AXIS), pen.theme().ink2(), end + look.px(6), baseline);
        double right = left + name;
        for (String day : days) {
            right += each;
            Optional<VisitTrend.Point> point =
                    line.before().stream().filter(p -> p.when().equals(day)).findFirst();
            double value = point.map(VisitTrend.Point::value).orElse(Double.NaN);
            number(pen, line, value, look.regular(Look.FOLDED), right, baseline, each);
        }
        number(pen, line, line.found(), look.regular(Look.FOLDED), right + each, baseline, each);
        number(pen, line, line.left(), look.semiBold(Look.FOLDED), right + 2 * each, baseline, each);
    }

    private void number(
            Pen pen, VisitTrend.Line line, double value, Font font, double right, double baseline, double each) {
        String text = Double.isNaN(value) ? "\u2013" : Numbers.fixed(value, line.decimals());
        pen.fitRight(text, font, pen.theme().ink(), right, baseline, each - look.px(8));
    }

    /**
     * The visits from the left, each with its uncertainty as a bar; then what was found today, square, and what is left,
     * filled. The change in words below.
     */
    private void course(Pen pen, VisitTrend.Line line, double left, double top, double width, double height) {
        double words = look.px(17);
        double high = height - words;
        List<double[]> points = new ArrayList<>();
        line.before().forEach(p -> points.add(new double[] {p.value(), p.expanded()}));
        int found = Double.isNaN(line.found()) || Double.isNaN(line.left()) ? -1 : points.size();
        if (found > 0) {
            points.add(new double[] {line.found(), line.expanded()});
        }
        points.add(new double[] {line.now(), line.expanded()});
        double low = points.stream().mapToDouble(p -> p[0] - p[1]).min().orElse(0);
        double most = points.stream().mapToDouble(p -> p[0] + p[1]).max().orElse(1);
        double span = Math.max(most - low, 1e-9);
        double step = (width - look.px(24)) / Math.max(1, points.size() - 1);
        double size = look.px(7);
        double before = Double.NaN;
        for (int i = 0; i < points.size(); i++) {
            double x = left + look.px(12) + i * step;
            double y = top + high * (1 - (points.get(i)[0] - low) / span);
            double bar = high * points.get(i)[1] / span;
            if (i > 0) {
                pen.line(pen.theme().rule(), 1.4, x - step, before, x, y);
            }
            before = y;
            pen.line(pen.theme().ink2(), 1.4, x, y - bar, x, y + bar);
            RectangularShape dot = i == found ? new Rectangle2D.Double() : new Ellipse2D.Double();
            dot.setFrame(x - size / 2, y - size / 2, size, size);
            pen.fill(i == points.size() - 1 ? pen.theme().ink() : pen.theme().sheet(), dot);
            pen.outline(pen.theme().ink(), 1.4, dot);
        }
        pen.fit(change(line), look.regular(Look.AXIS), pen.theme().ink2(), left, top + height, width);
    }
}
