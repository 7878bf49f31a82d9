package settlemark.ui;

import java.awt.Color;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import javax.accessibility.AccessibleRole;

/**
 * The settled decision as a picture: two posts, which never move, are the limit; the bar between them is how far the
 * value could still move. It must fit between the posts. Each state has its own shape, so that none needs a colour.
 */
final class GapBar extends Painted {
    private Gap gap = new Gap(settlemark.settle.SettlePhase.NO_DATA, Double.NaN, 0, Words.say("no data yet"), "", "");

    GapBar(Look look) {
        super(look, AccessibleRole.PROGRESS_BAR);
    }

    void show(Gap newGap) {
        sentence(newGap.word() + "; " + newGap.sentence());
        if (!newGap.equals(gap)) {
            gap = newGap;
            repaint();
        }
    }

    @Override
    void draw(Pen pen) {
        Colors colors =
                new Colors(pen.theme().ink(), pen.theme().rule(), pen.theme().sheet());
        draw(pen, gap, 0, 0, getWidth(), getHeight(), colors);
    }

    /** @param ink of bar and posts; @param track of the dotted line; @param ground behind, to knock out of the bar */
    record Colors(Color ink, Color track, Color ground) {}

    /** Draws a gap into a rectangle of any size. */
    static void draw(Pen pen, Gap gap, double x, double y, double width, double height, Colors colors) {
        double middle = y + height / 2;
        double line = Math.max(1.2, height / 14);
        pen.dashed(colors.track, line, line, 4 * line, new Line2D.Double(x, middle, x + width, middle));
        bar(pen, gap, new Rectangle2D.Double(x, middle - height * 0.26, width, height * 0.52), colors);
        double post = Math.max(2, height * 0.16);
        for (double at : new double[] {x + width / 4, x + width * 3 / 4}) {
            if (gap.phase() == settlemark.settle.SettlePhase.NO_DATA) {
                pen.dashed(colors.ink, post, post, post, new Line2D.Double(at, y, at, y + height));
            } else {
                pen.fill(colors.ink, at - post / 2, y, post, height);
            }
        }
    }

    private static void bar(Pen pen, Gap gap, Rectangle2D track, Colors colors) {
        double half = Math.min(track.getWidth() / 2, Math.max(1.5, gap.ratio() * track.getWidth() / 4));
        Rectangle2D bar = new Rectangle2D.Double(track.getCenterX() - half, track.getY(), 2 * half, track.getHeight());
        double stroke = Math.max(1.4, track.getHeight() / 7);
        switch (gap.phase()) {
            case NO_DATA -> {}
            case FILLING -> {
                double filled = track.getWidth() * gap.filled();
                pen.fill(colors.track, track.getX(), track.getCenterY() - stroke, filled, 2 * stroke);
            }
            case MOVING -> moving(pen, gap, bar, stroke, colors);
            case TOO_NOISY -> noisy(pen, past(bar, track), stroke, colors);
            case HOLDING -> {
                pen.fill(colors.ground, bar);
                pen.outline(colors.ink, stroke, inset(bar, stroke / 2));
            }
            case SETTLED -> {
                if (!Double.isNaN(gap.ratio())) {
                    pen.fill(colors.ink, bar);
                }
            }
        }
    }

    private static void moving(Pen pen, Gap gap, Rectangle2D bar, double stroke, Colors colors) {
        if (Double.isNaN(gap.ratio())) {
            return;
        }
        boolean arrows = gap.ratio() >= Gap.ARROWS;
        double arrow = bar.getHeight() * 1.5;
        Rectangle2D body = arrows
                ? new Rectangle2D.Double(
                        bar.getX() + arrow * 0.9, bar.getY(), bar.getWidth() - arrow * 1.8, bar.getHeight())
                : bar;
        pen.fill(colors.ground, body);
        pen.hatch(colors.ink, stroke, stroke * 3.2, body);
        pen.outline(colors.ink, stroke, inset(body, stroke / 2));
        if (arrows) {
            arrow(pen, colors.ink, bar.getX(), bar.getCenterY(), arrow);
            arrow(pen, colors.ink, bar.getMaxX(), bar.getCenterY(), -arrow);
        }
    }

    private static void noisy(Pen pen, Rectangle2D bar, double stroke, Colors colors) {
        pen.fill(colors.ground, bar);
        pen.dashed(colors.ink, stroke, stroke * 1.5, stroke * 2, inset(bar, stroke / 2));
    }

    /** Noise hides the answer: the bar is drawn past the posts, whatever its middle estimate. */
    private static Rectangle2D past(Rectangle2D bar, Rectangle2D track) {
        double half = Math.max(bar.getWidth() / 2, track.getWidth() * 0.3);
        return new Rectangle2D.Double(track.getCenterX() - half, bar.getY(), 2 * half, bar.getHeight());
    }

    private static void arrow(Pen pen, Color color, double tip, double y, double length) {
        Path2D path = new Path2D.Double();
        double half = Math.abs(length) * 0.62;
        path.moveTo(tip, y);
        path.lineTo(tip + length, y - half);
        path.lineTo(tip + length, y + half);
        path.closePath();
        pen.fill(color, path);
    }

    private static Rectangle2D inset(Rectangle2D r, double by) {
        return new Rectangle2D.Double(
                r.getX() + by, r.getY() + by, Math.max(0, r.getWidth() - 2 * by), Math.max(0, r.getHeight() - 2 * by));
    }
}
