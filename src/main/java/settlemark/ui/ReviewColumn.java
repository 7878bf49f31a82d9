package settlemark.ui;

import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.accessibility.AccessibleRole;
import javax.swing.JPanel;
import org.jspecify.annotations.Nullable;
import settlemark.chart.LaneChart;
import settlemark.chart.LaneView;
import settlemark.job.StepState;
import settlemark.settle.SettleChoices;

/** The open column of a review: its title, the open stretch of time, and the numbers beside it. */
final class ReviewColumn extends JPanel {
    private static final double SIDE = 320;
    private static final double CHART_LEAST = 320;
    private final transient Look look;
    private final Title title;
    private final RibbonBar ribbon;
    private final ChartPane chart;
    private final Side side;
    private final RuleAsked rule;
    private transient @Nullable LaneView view;

    ReviewColumn(Look look, SessionBar.Scrubbed scrubbed, Consumer<SettleChoices> run) {
        super(null);
        this.look = look;
        title = new Title(look);
        ribbon = new RibbonBar(look, 1);
        chart = new ChartPane(look);
        side = new Side(look);
        rule = new RuleAsked(look, run);
        rule.setVisible(false);
        add(title);
        add(ribbon);
        add(chart);
        add(side);
        add(rule);
        chart.setCursor(Cursor.getPredefinedCursor(Cursor.E_RESIZE_CURSOR));
        MouseAdapter pointer = new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent event) {
                timeAt(event.getX()).ifPresent(scrubbed::line);
            }

            @Override
            public void mouseDragged(MouseEvent event) {
                timeAt(event.getX()).ifPresent(scrubbed::line);
            }

            @Override
            public void mouseWheelMoved(MouseWheelEvent event) {
                timeAt(event.getX()).ifPresent(t -> scrubbed.zoom(event.getWheelRotation(), t));
            }
        };
        chart.addMouseListener(pointer);
        chart.addMouseMotionListener(pointer);
        chart.addMouseWheelListener(pointer);
    }

    private Optional<Long> timeAt(int x) {
        LaneView now = view;
        if (now == null) {
            return Optional.empty();
        }
        Rectangle2D area = new Rectangle2D.Double(0, 0, chart.getWidth(), chart.getHeight());
        Rectangle2D data = new LaneChart(look.theme(), look.textScale()).dataArea(area, now, 0);
        double share = Math.max(0, Math.min(1, (x - data.getX()) / data.getWidth()));
        return Optional.of(now.fromNanos() + Math.round(share * (now.toNanos() - now.fromNanos())));
    }

    RuleAsked rule() {
        return rule;
    }

    int neededWidth() {
        return look.ipx(CHART_LEAST + SIDE);
    }

    /** Columns of pixels that its chart has. */
    int columns() {
        return Math.max(200, chart.getWidth());
    }

    void show(ReviewScene scene) {
        title.show(scene);
        ribbon.simulated(scene.simulated());
        side.show(scene);
        rule.setVisible(scene.asked());
        view = ReviewCharts.open(scene, false).orElse(null);
        chart.setVisible(view != null);
        if (view != null) {
            chart.show(view, sentence(scene));
        }
        revalidate();
    }

    private static String sentence(ReviewScene scene) {
        return Words.say(
                "{0} to {1}, line at {2}",
                ReviewTimes.clock(scene.session(), scene.view().fromNanos(), true),
                ReviewTimes.clock(scene.session(), scene.view().toNanos(), true),
                ReviewTimes.clock(scene.session(), scene.lineNanos(), false));
    }

    /** What the open column is called. */
    static String name(ReviewScene scene) {
        String what = scene.open()
                .map((StepState s) -> Words.told(s.step().title()))
                .orElseGet(() -> scene.view().equals(scene.session().whole())
                        ? Words.say("Whole session")
                        : Words.say(
                                "{0} of it",
                                ReviewTimes.length(
                                        scene.view().toNanos() - scene.view().fromNanos())));
        return scene.laid()
                .map(l -> Words.say("{0}, laid over {1}", what, Words.told(l.name())))
                .orElse(what);
    }

    void restyle() {
        rule.restyle();
        repaint();
    }

    @Override
    public void doLayout() {
        int edge = (int) Look.OPEN_OUTLINE;
        int head = Rows.head(look);
        int wide = getWidth() - 2 * edge;
        title.setBounds(edge, edge, wide, head - edge);
        int top = head;
        int band = look.ipx(RibbonBar.HEIGHT);
        ribbon.setBounds(edge, top, wide, band);
        top += band;
        int beside = Math.min(look.ipx(SIDE), wide / 2);
        chart.setBounds(edge, top, wide - beside, Math.max(1, getHeight() - top - edge));
        int high = Math.max(1, getHeight() - top - edge);
        int table = rule.isVisible() ? Math.min(side.tableHeight(), high - rule.neededHeight()) : high;
        side.setBounds(edge + wide - beside, top, beside, table);
        rule.setBounds(edge + wide - beside, top + table, beside, Math.max(1, high - table));
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }

    @Override
    protected void paintBorder(Graphics graphics) {
        Pen pen = new Pen(graphics, look);
        pen.outline(pen.theme().ink(), Look.OPEN_OUTLINE, Pen.box(0, 0, getWidth(), getHeight(), Look.OPEN_OUTLINE, 0));
        pen.dispose();
    }

    /** What is open. */
    private static final class Title extends Painted {
        private String words = "";

        Title(Look look) {
            super(look, AccessibleRole.LABEL);
        }

        void show(ReviewScene scene) {
            words = name(scene);
            sentence(Words.say("open column: {0}", words));
            repaint();
        }

        @Override
        void draw(Pen pen) {
            pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
            Font font = look.semiBold(Look.LABEL);
            pen.text(
                    Fitted.words(words, font, getWidth() - look.px(24)),
                    font,
                    pen.theme().ink(),
                    look.px(14),
                    getHeight() / 2.0 + look.px(7));
        }
    }

    /** The table of numbers, and what happened at the line. */
    private static final class Side extends Painted {
        private static final double LEAST_ROW = 20;

        /** Room for a name such as "manifold", made narrower. */
        private static final double LEAST_NAME = 44;

        private @Nullable ReviewScene scene;
        private ReviewTable table = new ReviewTable(List.of(), List.of());

        Side(Look look) {
            super(look, AccessibleRole.TABLE);
        }

        void show(ReviewScene newScene) {
            scene = newScene;
            table = ReviewTable.of(newScene);
            StringBuilder words = new StringBuilder(
                    Words.say("at {0}", ReviewTimes.clock(newScene.session(), newScene.lineNanos(), true)));
            table.rows().forEach(r -> {
                words.append("; ").append(r.name());
                for (int i = 0; i < r.cells().size(); i++) {
                    words.append(", ")
                            .append(table.heads().get(i))
                            .append(' ')
                            .append(r.cells().get(i));
                }
                words.append(' ').append(r.unit());
            });
            sentence(words.toString());
            repaint();
        }

        int tableHeight() {
            return look.ipx(60 + row() * table.rows().size());
        }

        /** Height of a row: less where the rule stands below. */
        private double row() {
            return scene != null && scene.asked() ? 26 : 34;
        }

        @Override
        public Dimension getPreferredSize() {
            return new Dimension(look.ipx(SIDE), tableHeight());
        }

        @Override
        void draw(Pen pen) {
            pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
            ReviewScene now = scene;
            if (now == null) {
                return;
            }
            double left = look.px(12);
            double right = getWidth() - look.px(14);
            double y = look.px(24);
            pen.text(ReviewTimes.at(now), look.semiBold(Look.BODY), pen.theme().ink(), left, y);
            if (getHeight() < look.px(64 + LEAST_ROW * table.rows().size())) {
                // The rule needs the room; the chart shows what the table would.
                return;
            }
            y += look.px(26);
            List<Integer> columns = columns(right - left);
            double each = look.px(columns.size() > 3 ? 62 : 74);
            for (int i = 0; i < columns.size(); i++) {
                pen.textRight(
                        table.heads().get(columns.get(i)),
                        look.regular(Look.AXIS),
                        pen.theme().ink2(),
                        right - each * (columns.size() - 1 - i),
                        y);
            }
            y += look.px(8);
            // Closer together where the rule leaves the table little room.
            double room =
                    (getHeight() - y - look.px(4)) / Math.max(1, table.rows().size());
            double high = Math.max(look.px(LEAST_ROW), Math.min(look.px(row()), room));
            for (ReviewTable.Row row : table.rows()) {
                pen.line(pen.theme().hair(), 1.2, left, y, right, y);
                row(pen, row, columns, left, right, each, y + high / 2 + look.px(6));
                y += high;
            }
            verdict(pen, now, left, right, y);
        }

        /** The columns of numbers that leave the names their room: the change goes first, then what lies under. */
        private List<Integer> columns(double room) {
            List<Integer> columns = new ArrayList<>();
            for (int i = 0; i < table.heads().size(); i++) {
                columns.add(i);
            }
            if (columns.size() == 4 && room < look.px(4 * 62 + LEAST_NAME)) {
                columns.remove(3);
            }
            if (columns.size() == 3 && room < look.px(3 * 74 + LEAST_NAME)) {
                columns.remove(1);
            }
            return columns;
        }

        private void row(
                Pen pen, ReviewTable.Row row, List<Integer> columns, double left, double right, double each, double y) {
            double named = Math.max(1, right - each * columns.size() - left);
            double end =
                    pen.fit(row.name(), look.semiBold(Look.BODY), pen.theme().ink(), left, y, named);
            double room = right - each * columns.size() - end;
            if (Look.width(row.unit(), look.regular(Look.AXIS)) < room) {
                pen.text(row.unit(), look.regular(Look.AXIS), pen.theme().ink2(), end + look.px(6), y);
            }
            int strong = table.heads().indexOf(Words.say("read"));
            for (int i = 0; i < columns.size(); i++) {
                int column = columns.get(i);
                Font font = column == strong ? look.semiBold(Look.FOLDED) : look.regular(Look.FOLDED);
                pen.textRight(
                        row.cells().get(column), font, pen.theme().ink(), right - each * (columns.size() - 1 - i), y);
            }
        }

        private void verdict(Pen pen, ReviewScene now, double left, double right, double top) {
            pen.line(pen.theme().rule(), 1.4, left, top, right, top);
            double y = top + look.px(25);
            Optional<StepState> open = now.open();
            if (open.isPresent()) {
                double size = look.px(17);
                pen.text(
                        Words.say("Verdict"),
                        look.semiBold(Look.BODY),
                        pen.theme().ink(),
                        left,
                        y);
                VerdictBox.of(open.get()).draw(pen.g, left + look.px(74), y - size + look.px(3), size, pen.theme());
                pen.text(
                        VerdictBox.word(open.get()),
                        look.regular(Look.BODY),
                        pen.theme().ink(),
                        left + look.px(100),
                        y);
                y += look.px(26);
            }
            for (StoredSession.Moment moment : now.session().moments()) {
                boolean near = moment.timeNanos() >= now.view().fromNanos()
                        && moment.timeNanos() <= now.view().toNanos();
                if (near && y < getHeight() - look.px(6)) {
                    String words = ReviewTimes.clock(now.session(), moment.timeNanos(), false) + " "
                            + Words.told(moment.words());
                    int most = (int) ((getHeight() - look.px(6) - y) / Pen.lineHeight(look.regular(Look.BODY))) + 1;
                    for (String line : Fitted.lines(words, look.regular(Look.BODY), right - left, most)) {
                        pen.text(line, look.regular(Look.BODY), pen.theme().ink2(), left, y);
                        y += Pen.lineHeight(look.regular(Look.BODY));
                    }
                }
            }
        }
    }
}
