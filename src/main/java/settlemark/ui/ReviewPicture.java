package settlemark.ui;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import settlemark.chart.ChartTheme;
import settlemark.chart.LaneChart;
import settlemark.chart.LaneView;

/** The open stretch of a review as a picture and as a table; what comes from the rig says SIMULATED on both. */
final class ReviewPicture {
    private static final int WIDTH = 1400;
    private static final int HEIGHT = 860;
    private static final double CHART_SHARE = 0.72;

    private ReviewPicture() {}

    static SeenView of(ReviewScene scene, Look look) {
        String name = scene.session().header().key() + "-"
                + (scene.step().isEmpty() ? "view" : scene.step().replace('#', '-'));
        boolean dark = look.dark();
        return new SeenView(name, WIDTH, HEIGHT, g -> draw(g, scene, dark), rows(scene));
    }

    private static void draw(Graphics2D graphics, ReviewScene scene, boolean dark) {
        // A look of its own: this may be another thread than the window's.
        Look own = new Look(dark, 1, Look.USUAL_PIXELS_PER_MM);
        Pen pen = new Pen(graphics, own);
        ChartTheme theme = own.theme();
        pen.fill(theme.sheet(), 0, 0, WIDTH, HEIGHT);
        pen.text(scene.session().header().title(), own.semiBold(Look.LABEL), theme.ink(), 24, 38);
        String when = ReviewTimes.clock(scene.session(), scene.view().fromNanos(), true);
        pen.text(
                ReviewColumn.name(scene) + ", " + Words.say("from {0}", when),
                own.regular(Look.NAME),
                theme.ink2(),
                24,
                64);
        Optional<LaneView> view = ReviewCharts.open(scene, scene.simulated());
        Rectangle2D area = new Rectangle2D.Double(16, 80, WIDTH * CHART_SHARE - 16, HEIGHT - 96.0);
        view.ifPresent(v -> new LaneChart(theme, 1, Words.say("SIMULATED")).draw(pen.g, area, v));
        table(pen, ReviewTable.of(scene), WIDTH * CHART_SHARE + 20, own);
        pen.dispose();
    }

    private static void table(Pen pen, ReviewTable table, double left, Look own) {
        double right = WIDTH - 24;
        double y = 120;
        double each = 78;
        for (int i = 0; i < table.heads().size(); i++) {
            double at = right - each * (table.heads().size() - 1 - i);
            pen.textRight(
                    table.heads().get(i), own.regular(Look.AXIS), pen.theme().ink2(), at, y);
        }
        for (ReviewTable.Row row : table.rows()) {
            y += 34;
            String name = row.name() + " " + row.unit();
            pen.text(name, own.semiBold(Look.BODY), pen.theme().ink(), left, y - 16 + 16);
            for (int i = 0; i < row.cells().size(); i++) {
                double at = right - each * (row.cells().size() - 1 - i);
                pen.textRight(
                        row.cells().get(i),
                        own.regular(Look.FOLDED),
                        pen.theme().ink(),
                        at,
                        y);
            }
            pen.line(pen.theme().hair(), 1, left, y + 10, right, y + 10);
        }
    }

    /** Every point that is drawn, by channel and time. */
    private static List<List<String>> rows(ReviewScene scene) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("session", "simulated", "channel", "unit", "time_s", "clock", "value", "every_sample"));
        add(scene, scene.traces(), "", rows);
        scene.laid().ifPresent(l -> add(scene, l.traces(), " (" + Words.told(l.name()) + ")", rows));
        return rows;
    }

    private static void add(ReviewScene scene, WindowTraces traces, String more, List<List<String>> rows) {
        for (WindowTraces.Line line : traces.lines()) {
            for (int i = 0; i < line.values().length; i++) {
                long at = line.timesNanos()[i];
                boolean seen =
                        at >= scene.view().fromNanos() && at <= scene.view().toNanos();
                if (seen && Double.isFinite(line.values()[i])) {
                    rows.add(List.of(
                            scene.session().header().key(),
                            scene.simulated() ? "SIMULATED" : "",
                            line.role().word() + more,
                            line.unit().code(),
                            String.format(Locale.ROOT, "%.3f", at / 1e9),
                            scene.session().header().startedAt().plusNanos(at).toString(),
                            String.format(Locale.ROOT, "%.6g", line.values()[i]),
                            line.everySample() ? "yes" : "no"));
                }
            }
        }
    }
}
