package settlemark.ui;

import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.chart.ChartTheme;
import settlemark.chart.LaneChart;
import settlemark.chart.LaneView;
import settlemark.measure.Unit;
import settlemark.session.Snapshot;

/** A chart, drawn into an image of the screen's own pixels when something changed, and copied when it is painted. */
final class ChartPane extends Painted {
    private @Nullable LaneView view;
    private @Nullable LaneChart chart;
    private @Nullable ChartTheme chartTheme;
    private @Nullable BufferedImage image;
    private boolean stale = true;
    private @Nullable Of of;

    /** What decides what a step's chart shows: a new snapshot, which comes ten times a second, or what is open. */
    private record Of(long revision, long timeNanos, String step, Unit pressure, Unit temperature, Axes axes) {
        static Of of(Scene scene) {
            Snapshot snapshot = scene.snapshot();
            return new Of(
                    snapshot.revision(),
                    snapshot.timeNanos(),
                    scene.open().key(),
                    snapshot.header().pressureUnit(),
                    snapshot.header().temperatureUnit(),
                    scene.axes());
        }
    }

    ChartPane(Look look) {
        super(look, AccessibleRole.CANVAS);
        setOpaque(true);
    }

    /** Whether a scene holds something else than the last one that was asked about. */
    boolean outdated(Scene scene) {
        Of now = Of.of(scene);
        boolean other = !now.equals(of);
        of = now;
        return other;
    }

    void show(LaneView newView, String newSentence) {
        sentence(newSentence);
        view = newView;
        stale = true;
        repaint();
    }

    @Override
    void draw(Pen pen) {
        AffineTransform screen = pen.g.getTransform();
        int width = (int) Math.ceil(getWidth() * screen.getScaleX());
        int height = (int) Math.ceil(getHeight() * screen.getScaleY());
        if (width <= 0 || height <= 0 || view == null) {
            pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
            return;
        }
        if (isPaintingForPrint()) {
            // On paper, and for whoever listens to what is written: as lines and letters.
            drawer().draw(pen.g, new Rectangle2D.Double(0, 0, getWidth(), getHeight()), view);
            return;
        }
        BufferedImage drawn = image;
        if (drawn == null
                || stale
                || drawn.getWidth() != width
                || drawn.getHeight() != height
                || chartTheme != pen.theme()) {
            drawn = render(view, width, height, screen.getScaleX());
        }
        AffineTransform back = AffineTransform.getTranslateInstance(screen.getTranslateX(), screen.getTranslateY());
        pen.g.setTransform(back);
        pen.g.drawImage(drawn, 0, 0, null);
        pen.g.setTransform(screen);
    }

    private BufferedImage render(LaneView shown, int width, int height, double screenScale) {
        BufferedImage target = image;
        if (target == null || target.getWidth() != width || target.getHeight() != height) {
            target = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
            image = target;
        }
        drawer().draw(target, screenScale, new Rectangle2D.Double(0, 0, getWidth(), getHeight()), shown);
        stale = false;
        return target;
    }

    private LaneChart drawer() {
        LaneChart drawer = chart;
        if (drawer == null || chartTheme != look.theme()) {
            drawer = new LaneChart(look.theme(), look.textScale(), Words.say("SIMULATED"));
            chart = drawer;
            chartTheme = look.theme();
        }
        return drawer;
    }
}
