package settlemark.ui;

import java.awt.Color;
import java.awt.Font;
import java.awt.font.GlyphVector;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import javax.accessibility.AccessibleRole;

/**
 * A number that stands still. The typeface has proportional digits, so each digit is centred in a cell as wide as the
 * widest digit of either cut, and the decimal point keeps its place. A settled number is semi-bold, another regular.
 */
final class DigitField extends Painted {
    private static final String DIGITS = "0123456789";
    private String text = "";
    private boolean settled;
    private boolean faded;
    private double digitPx = 10;

    DigitField(Look look) {
        super(look, AccessibleRole.LABEL);
    }

    /** @param text digits with at most one point and a minus; @param faded where the value is old */
    void show(String newText, boolean newSettled, boolean newFaded) {
        if (!newText.equals(text) || newSettled != settled || newFaded != faded) {
            text = newText;
            settled = newSettled;
            faded = newFaded;
            repaint();
        }
    }

    /** Height of the digits in pixels. */
    void digitPx(double px) {
        if (px != digitPx) {
            digitPx = px;
            repaint();
        }
    }

    double digitPx() {
        return digitPx;
    }

    double textWidth() {
        return width(text, look, shownPx());
    }

    /** A longer number than there is room for is smaller: a digit that is cut off would be another number. */
    private double shownPx() {
        double wide = width(text, look, digitPx);
        return wide <= getWidth() || wide <= 0 ? digitPx : digitPx * getWidth() / wide;
    }

    /** One character and the cell that it is centred in, measured from the right edge of the field. */
    record Cell(char character, double fromRight, double width) {}

    /** The cells of a text at a font size, from the left to the right. */
    static List<Cell> cells(String text, Look look, double fontPx) {
        double digit = widest(look, fontPx, DIGITS);
        double point = widest(look, fontPx, ".");
        List<Cell> cells = new ArrayList<>();
        double right = 0;
        for (int i = text.length() - 1; i >= 0; i--) {
            char c = text.charAt(i);
            double width = c == '.' ? point : digit;
            cells.add(0, new Cell(c, right, width));
            right += width;
        }
        return cells;
    }

    /** Width of a text of this shape. */
    static double width(String text, Look look, double digitPx) {
        return cells(text, look, fontPx(look, digitPx)).stream()
                .mapToDouble(Cell::width)
                .sum();
    }

    static double fontPx(Look look, double digitPx) {
        return digitPx / Look.digitHeight(look.semiBoldPx(100));
    }

    private static double widest(Look look, double fontPx, String characters) {
        double widest = 0;
        for (int i = 0; i < characters.length(); i++) {
            String c = characters.substring(i, i + 1);
            widest = Math.max(widest, Look.width(c, look.semiBoldPx(100)));
            widest = Math.max(widest, Look.width(c, look.regularPx(100)));
        }
        return widest * fontPx / 100;
    }

    @Override
    void draw(Pen pen) {
        double px = shownPx();
        double fontPx = fontPx(look, px);
        Font font = settled ? look.semiBoldPx(fontPx) : look.regularPx(fontPx);
        Color color = faded ? pen.theme().ink2() : pen.theme().ink();
        pen.g.setColor(color);
        double baseline = (getHeight() + px) / 2;
        for (Cell cell : cells(text, look, fontPx)) {
            GlyphVector glyph = font.createGlyphVector(Look.FONTS, String.valueOf(cell.character));
            Rectangle2D advance = glyph.getLogicalBounds();
            double left = getWidth() - cell.fromRight - cell.width + (cell.width - advance.getWidth()) / 2;
            pen.g.drawGlyphVector(glyph, (float) left, (float) baseline);
        }
    }
}
