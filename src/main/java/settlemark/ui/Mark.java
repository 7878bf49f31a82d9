package settlemark.ui;

import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import settlemark.job.Outcome;
import settlemark.job.StepState;
import settlemark.session.ProbeView.HealthClass;

/** The marks of a step and its verdict, all told apart by shape, drawn into a square. */
enum Mark {
    DONE("done"),
    CLOSE_INSIDE("close, inside"),
    CLOSE_OUTSIDE("close, outside"),
    OUTSIDE("outside"),
    EMPTY("not taken"),
    SKIPPED("skipped"),
    NOW("now");

    private final String word;

    Mark(String word) {
        this.word = word;
    }

    String word() {
        return word;
    }

    static Mark of(Outcome outcome) {
        return switch (outcome) {
            case INSIDE -> DONE;
            case CLOSE_INSIDE -> CLOSE_INSIDE;
            case CLOSE_OUTSIDE -> CLOSE_OUTSIDE;
            case OUTSIDE -> OUTSIDE;
        };
    }

    static Mark of(StepState step) {
        return switch (step.progress()) {
            case TAKEN -> step.outcome().map(Mark::of).orElse(DONE);
            case SKIPPED -> SKIPPED;
            case WAITING, OPEN, ARMED -> EMPTY;
        };
    }

    void draw(Pen pen, double x, double y, double size) {
        Color ink = pen.theme().ink();
        Color sheet = pen.theme().sheet();
        double stroke = size * 0.09;
        Rectangle2D box =
                new Rectangle2D.Double(x + stroke / 2, y + stroke / 2, size - stroke, size - stroke);
        switch (this) {
            case DONE -> {
                pen.fill(ink, x, y, size, size);
                pen.outline(sheet, size * 0.13, check(x, y, size));
            }
            case CLOSE_INSIDE -> half(pen, ink, box, stroke, false);
            case CLOSE_OUTSIDE -> half(pen, pen.theme().fault(), box, stroke, true);
            case OUTSIDE -> outside(pen, box, stroke);
            case EMPTY -> pen.outline(pen.theme().rule(), stroke, box);
            case SKIPPED -> {
                pen.outline(pen.theme().rule(), stroke, box);
                pen.line(ink, stroke, x, y + size, x + size, y);
            }
            case NOW -> pen.fill(ink, play(x, y, size));
        }
    }

    private static void half(Pen pen, Color color, Rectangle2D box, double stroke, boolean upper) {
        Path2D triangle = new Path2D.Double();
        triangle.moveTo(box.getMinX(), upper ? box.getMinY() : box.getMaxY());
        triangle.lineTo(box.getMaxX(), upper ? box.getMinY() : box.getMaxY());
        triangle.lineTo(upper ? box.getMinX() : box.getMaxX(), upper ? box.getMaxY() : box.getMinY());
        triangle.closePath();
        pen.fill(pen.theme().sheet(), box);
        pen.fill(color, upper ? triangle : lowerRight(box));
        pen.outline(color, stroke, box);
    }

    private static Path2D lowerRight(Rectangle2D box) {
        Path2D triangle = new Path2D.Double();
        triangle.moveTo(box.getMinX(), box.getMinY());
        triangle.lineTo(box.getMaxX(), box.getMinY());
        triangle.lineTo(box.getMinX(), box.getMaxY());
        triangle.closePath();
        return triangle;
    }

    private static void outside(Pen pen, Rectangle2D box, double stroke) {
        Color fault = pen.theme().fault();
        pen.fill(pen.theme().sheet(), box);
        pen.outline(fault, stroke, box);
        double in = box.getWidth() * 0.24;
        double thick = stroke * 1.5;
        pen.line(fault, thick, box.getMinX() + in, box.getMinY() + in, box.getMaxX() - in, box.getMaxY() - in);
        pen.line(fault, thick, box.getMinX() + in, box.getMaxY() - in, box.getMaxX() - in, box.getMinY() + in);
    }

    private static Path2D check(double x, double y, double size) {
        Path2D path = new Path2D.Double();
        path.moveTo(x + size * 0.24, y + size * 0.52);
        path.lineTo(x + size * 0.43, y + size * 0.72);
        path.lineTo(x + size * 0.78, y + size * 0.30);
        return path;
    }

    private static Path2D play(double x, double y, double size) {
        Path2D path = new Path2D.Double();
        path.moveTo(x + size * 0.12, y);
        path.lineTo(x + size * 0.95, y + size / 2);
        path.lineTo(x + size * 0.12, y + size);
        path.closePath();
        return path;
    }

    /** The mark of this program: a bar with two feet over a dot. */
    static void staple(Pen pen, Color color, double x, double y, double width) {
        double stroke = width * 0.13;
        Path2D path = new Path2D.Double();
        path.moveTo(x, y + width * 0.46);
        path.lineTo(x, y + stroke / 2);
        path.lineTo(x + width, y + stroke / 2);
        path.lineTo(x + width, y + width * 0.46);
        pen.outline(color, stroke, path);
        double dot = width * 0.2;
        pen.fill(color, new Ellipse2D.Double(x + (width - dot) / 2, y + width * 0.36, dot, dot));
    }

    static void caution(Pen pen, Color color, double x, double y, double size) {
        Path2D path = new Path2D.Double();
        path.moveTo(x + size / 2, y + size * 0.06);
        path.lineTo(x + size * 0.97, y + size * 0.92);
        path.lineTo(x + size * 0.03, y + size * 0.92);
        path.closePath();
        pen.outline(color, size * 0.11, path);
        pen.fill(color, x + size * 0.45, y + size * 0.38, size * 0.1, size * 0.26);
        pen.fill(color, x + size * 0.45, y + size * 0.7, size * 0.1, size * 0.1);
    }

    /** Shape and letter of a health class after NAMUR NE 107. */
    static void health(Pen pen, HealthClass health, double x, double y, double size) {
        Color color = health == HealthClass.FAILURE ? pen.theme().fault() : pen.theme().notice();
        double stroke = size * 0.09;
        Rectangle2D box = new Rectangle2D.Double(x + stroke, y + stroke, size - 2 * stroke, size - 2 * stroke);
        double letter = size * 0.5;
        double baseline = y + size * 0.68;
        switch (health) {
            case FAILURE -> pen.fill(color, box);
            case FUNCTION_CHECK -> pen.outline(color, stroke, polygon(box, 0.5, 0, 1, 0.5, 0.5, 1, 0, 0.5));
            case OUT_OF_SPECIFICATION -> {
                pen.outline(color, stroke, polygon(box, 0.5, 0, 1, 0.95, 0, 0.95));
                baseline = y + size * 0.78;
                letter = size * 0.42;
            }
            case MAINTENANCE_REQUIRED ->
                pen.outline(color, stroke, new Ellipse2D.Double(box.getX(), box.getY(), box.getWidth(), box.getHeight()));
        }
        Color inside = health == HealthClass.FAILURE ? pen.theme().sheet() : color;
        pen.textCentred(
                String.valueOf(health.letter()), pen.look.semiBoldPx(letter), inside, x + size / 2, baseline);
    }

    private static Path2D polygon(Rectangle2D box, double... points) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < points.length; i += 2) {
            double x = box.getX() + points[i] * box.getWidth();
            double y = box.getY() + points[i + 1] * box.getHeight();
            if (i == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
        }
        path.closePath();
        return path;
    }
}
