package settlemark.ui;

import java.awt.Cursor;
import java.awt.Graphics;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Rectangle2D;
import java.time.Duration;
import java.util.Optional;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.chart.LaneChart;
import settlemark.chart.LaneView;
import settlemark.chart.Ribbon;
import settlemark.session.Span;

/**
 * The whole session on one line: where the open stretch lies in it, readings, gaps, notes, and the line. Pressing it
 * moves the line there; dragging scrubs; the wheel zooms.
 */
final class SessionBar extends Painted {
    static final double HEIGHT = 128;
    private static final double NAMES = 92;

    private final ChartPane chart;
    private @Nullable ReviewScene scene;
    private @Nullable LaneView view;

    /** What a pointer does. */
    interface Scrubbed {
        void line(long timeNanos);

        /** @param steps doublings of the stretch, negative to see less time */
        void zoom(int steps, long aroundNanos);
    }

    SessionBar(Look look, Scrubbed scrubbed) {
        super(look, AccessibleRole.SLIDER);
        chart = new ChartPane(look);
        add(chart);
        setCursor(Cursor.getPredefinedCursor(Cursor.E_RESIZE_CURSOR));
        MouseAdapter pointer = new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent event) {
                scrubbed.line(timeAt(event.getX()));
            }

            @Override
            public void mouseDragged(MouseEvent event) {
                scrubbed.line(timeAt(event.getX()));
            }

            @Override
            public void mouseWheelMoved(MouseWheelEvent event) {
                scrubbed.zoom(event.getWheelRotation(), timeAt(event.getX()));
            }
        };
        addMouseListener(pointer);
        addMouseMotionListener(pointer);
        addMouseWheelListener(pointer);
    }

    void show(ReviewScene newScene) {
        ReviewScene before = scene;
        scene = newScene;
        view = ReviewCharts.whole(newScene).orElse(null);
        String words = Words.say(
                "whole session, {0}; line at {1}",
                lasted(newScene.session().whole()), ReviewTimes.clock(newScene.session(), newScene.lineNanos(), true));
        sentence(words);
        if (view != null) {
            LaneView now = view;
            chart.setVisible(true);
            chart.show(now, words);
        } else {
            chart.setVisible(false);
        }
        if (before == null || !before.equals(newScene)) {
            repaint();
        }
    }

    private static String lasted(Span whole) {
        Duration duration = Duration.ofNanos(whole.toNanos());
        return ReviewTimes.length(duration.toNanos());
    }

    private Optional<Rectangle2D> data() {
        LaneView now = view;
        if (now == null || chart.getWidth() <= 0) {
            return Optional.empty();
        }
        Rectangle2D area = new Rectangle2D.Double(chart.getX(), chart.getY(), chart.getWidth(), chart.getHeight());
        return Optional.of(new LaneChart(look.theme(), look.textScale()).dataArea(area, now, 0));
    }

    /** Session time under a pixel, within the session. */
    long timeAt(int x) {
        ReviewScene now = scene;
        Optional<Rectangle2D> data = data();
        if (now == null || data.isEmpty()) {
            return 0;
        }
        double share = (x - data.get().getX()) / data.get().getWidth();
        long whole = now.session().whole().toNanos();
        return Math.round(Math.max(0, Math.min(1, share)) * whole);
    }

    @Override
    public void doLayout() {
        int left = look.ipx(NAMES);
        int top = ribbonPx();
        chart.setBounds(left, top, Math.max(1, getWidth() - left - look.ipx(14)), Math.max(1, getHeight() - top));
    }

    private int ribbonPx() {
        return look.ipx(RibbonBar.HEIGHT);
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().window(), 0, 0, getWidth(), getHeight());
        ReviewScene now = scene;
        if (now == null) {
            return;
        }
        double x = look.px(10);
        double y = ribbonPx() + look.px(20);
        y = pen.paragraph(
                Words.say("Whole session"),
                look.semiBold(Look.BODY),
                pen.theme().ink(),
                x,
                y,
                look.px(NAMES - 14));
        pen.text(
                lasted(now.session().whole()),
                look.regular(Look.AXIS),
                pen.theme().ink2(),
                x,
                y);
        if (now.simulated()) {
            Rectangle2D over = new Rectangle2D.Double(chart.getX(), 0, chart.getWidth(), ribbonPx());
            Ribbon.draw(pen.g, over, pen.theme(), look.px(1), Words.say("SIMULATED"));
        }
    }

    @Override
    protected void paintChildren(Graphics graphics) {
        super.paintChildren(graphics);
        ReviewScene now = scene;
        Optional<Rectangle2D> data = data();
        if (now == null || data.isEmpty()) {
            return;
        }
        Pen pen = new Pen(graphics, look);
        try {
            over(pen, now, data.get());
        } finally {
            pen.dispose();
        }
    }

    /** The open stretch as a frame, notes as small marks at the top. */
    private void over(Pen pen, ReviewScene now, Rectangle2D data) {
        double whole = now.session().whole().toNanos();
        Span view = now.view();
        double left = data.getX() + data.getWidth() * Math.max(0, view.fromNanos() / whole);
        double right = data.getX() + data.getWidth() * Math.min(1, view.toNanos() / whole);
        double width = Math.max(look.px(4), right - left);
        pen.outline(
                pen.theme().series().get(1),
                look.px(2),
                Pen.box(left, data.getY() - 1, width, data.getHeight() + 2, look.px(2), 0));
        for (Span gap : now.session().gaps()) {
            double from = data.getX() + data.getWidth() * gap.fromNanos() / whole;
            double wide = Math.max(look.px(3), data.getWidth() * (gap.toNanos() - gap.fromNanos()) / whole);
            pen.hatch(
                    pen.theme().ink2(),
                    look.px(1.2),
                    look.px(5),
                    new Rectangle2D.Double(from, data.getY(), wide, data.getHeight()));
        }
        for (StoredSession.Moment note : now.session().moments()) {
            double at = data.getX() + data.getWidth() * note.timeNanos() / whole;
            double size = look.px(9);
            pen.fill(pen.theme().ink(), at - size / 2, data.getY(), size, size);
        }
    }
}
