package settlemark.ui;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import javax.accessibility.AccessibleRole;

/** The hatched ribbon that says SIMULATED over everything that comes from the rig. */
final class Ribbon extends Painted {
    static final String WORD = "SIMULATED";
    static final double HEIGHT = 16;

    Ribbon(Look look) {
        super(look, AccessibleRole.LABEL);
        sentence("simulated");
    }

    @Override
    void draw(Pen pen) {
        draw(pen, 0, 0, getWidth(), getHeight(), Look.AXIS);
    }

    /** Hatching with the word every so often, at least once where it fits. */
    static void draw(Pen pen, double x, double y, double width, double height, double textSize) {
        draw(pen, x, y, width, height, textSize, pen.theme().fold());
    }

    static void draw(Pen pen, double x, double y, double width, double height, double textSize, Color ground) {
        Rectangle2D all = new Rectangle2D.Double(x, y, width, height);
        pen.fill(ground, all);
        double scale = height / HEIGHT;
        pen.hatch(pen.theme().rule(), 1.3 * scale, 6.5 * scale, all);
        Font font = pen.look.semiBold(textSize);
        double word = Look.width(WORD, font) * 1.08;
        double plate = word + height * 1.2;
        if (plate > width + height) {
            return;
        }
        int times = (int) Math.max(1, Math.round(width / (pen.look.px(440) * textSize / Look.AXIS)));
        for (int i = 0; i < times; i++) {
            double middle = x + width * (2 * i + 1) / (2.0 * times);
            pen.fill(ground, middle - plate / 2, y, plate, height);
            spaced(pen, font, middle - word / 2, y + (height + Look.digitHeight(font) * font.getSize2D()) / 2);
        }
    }

    /** Capitals a little apart, so that they are read as a mark and not as a heading. */
    private static void spaced(Pen pen, Font font, double x, double baseline) {
        double at = x;
        double extra = Look.width(WORD, font) * 0.08 / (WORD.length() - 1);
        for (int i = 0; i < WORD.length(); i++) {
            at = pen.text(WORD.substring(i, i + 1), font, pen.theme().ink(), at, baseline) + extra;
        }
    }
}
