package settlemark.ui;

import java.awt.Color;
import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.util.HashMap;
import java.util.Map;
import settlemark.chart.ChartTheme;
import settlemark.chart.Inter;

/**
 * The tokens that every component draws with: the colours of a theme, the two cuts of the typeface, and two measures.
 * Text and space follow the size of text that the person chose; digits and main buttons are true millimetres. Changed
 * on the event thread only.
 */
final class Look {
    /** Smallest text anywhere. */
    static final double AXIS = 13;

    static final double BODY = 15;
    static final double NAME = 18;
    static final double LABEL = 22;
    static final double STEP = 28;
    static final double RAISE = 64;
    static final double FOLDED = 17;

    static final double GRID = 8;
    static final double RADIUS = 3;
    static final double OUTLINE = 1.6;
    static final double OPEN_OUTLINE = 2;
    static final double FOCUS_RING = 3;

    /** Digits of the step's channels, and main buttons, are at least this high. */
    static final double READABLE_MM = 20;

    /** Words of the far view. */
    static final double FAR_WORD_MM = 14;

    /** A screen of 96 dots to the inch. */
    static final double USUAL_PIXELS_PER_MM = 96 / 25.4;

    /** Below this height a window is tight. */
    private static final double LOW = 640;

    static final FontRenderContext FONTS = new FontRenderContext(null, true, true);

    private final double textScale;
    private double pixelsPerMm;
    private final Map<Double, Font> regular = new HashMap<>();
    private final Map<Double, Font> semiBold = new HashMap<>();
    private boolean dark;
    private boolean tight;

    /**
     * @param textScale 1 for text at its usual size, 1.25 for 125 %
     * @param pixelsPerMm pixels of a component to a millimetre of the screen
     */
    Look(boolean dark, double textScale, double pixelsPerMm) {
        if (!(textScale > 0) || !(pixelsPerMm > 0)) {
            throw new IllegalArgumentException(
                    "sizes must be above 0, got text scale " + textScale + " and " + pixelsPerMm + " pixels per mm");
        }
        this.dark = dark;
        this.textScale = textScale;
        this.pixelsPerMm = pixelsPerMm;
    }

    boolean dark() {
        return dark;
    }

    void dark(boolean newDark) {
        this.dark = newDark;
    }

    /** True where the window is low for its size of text: then heads and margins give way, digits never. */
    boolean tight() {
        return tight;
    }

    /** @return whether that is a change */
    boolean windowPx(int height) {
        boolean before = tight;
        tight = height < px(LOW);
        return before != tight;
    }

    ChartTheme theme() {
        return dark ? ChartTheme.DARK : ChartTheme.LIGHT;
    }

    double textScale() {
        return textScale;
    }

    /** A design pixel in component pixels. */
    double px(double designPx) {
        return designPx * textScale;
    }

    int ipx(double designPx) {
        return (int) Math.round(designPx * textScale);
    }

    double mm(double millimetres) {
        return millimetres * pixelsPerMm;
    }

    double pixelsPerMm() {
        return pixelsPerMm;
    }

    /** As a ruler says. */
    void pixelsPerMm(double measured) {
        pixelsPerMm = measured;
    }

    /** Height of a main button with its margin, never under 20 mm. */
    int buttonPx() {
        double millimetres = mm(READABLE_MM);
        return (int) Math.ceil(tight ? millimetres : Math.max(px(72), millimetres));
    }

    Font regular(double designPx) {
        return regularPx(px(designPx));
    }

    Font semiBold(double designPx) {
        return semiBoldPx(px(designPx));
    }

    Font regularPx(double px) {
        return regular.computeIfAbsent(px, Inter::regular);
    }

    Font semiBoldPx(double px) {
        return semiBold.computeIfAbsent(px, Inter::semiBold);
    }

    static double width(String text, Font font) {
        return font.getStringBounds(text, FONTS).getWidth();
    }

    /** Height above the baseline of this face's digit one, as a part of the size of the font. */
    static double digitHeight(Font font) {
        return font.createGlyphVector(FONTS, "1").getVisualBounds().getHeight() / font.getSize2D();
    }

    static Color clear() {
        return new Color(0, true);
    }
}
