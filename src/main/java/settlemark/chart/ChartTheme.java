package settlemark.chart;

import java.awt.Color;
import java.util.List;

/**
 * The colours of a drawing. Screen and page share their names, so that a state looks the same on both. Colour never
 * stands alone: each state has its own shape, dash or word as well.
 *
 * @param sheet under traces and forms
 * @param fold under folded columns
 * @param window around everything
 * @param ink text and upstream traces
 * @param ink2 secondary text
 * @param rule lines that must be seen
 * @param hair lines that are only ornament
 * @param series five trace colours in order, the first is ink
 * @param fault something is outside its limit or broken
 * @param notice something is to be looked after
 * @param primary fill of the primary button
 * @param primaryText text on it
 * @param band fill between two limits
 * @param settled fill of a settled span
 */
public record ChartTheme(
        Color sheet,
        Color fold,
        Color window,
        Color ink,
        Color ink2,
        Color rule,
        Color hair,
        List<Color> series,
        Color fault,
        Color notice,
        Color primary,
        Color primaryText,
        Color band,
        Color settled) {
    public static final ChartTheme LIGHT = new ChartTheme(
            rgb(0xFFFFFF),
            rgb(0xF1F3F4),
            rgb(0xE4E7E9),
            rgb(0x14181B),
            rgb(0x47515A),
            rgb(0x727C84),
            rgb(0xD3D8DC),
            List.of(rgb(0x14181B), rgb(0x0072B2), rgb(0xD55E00), rgb(0x009E73), rgb(0xCC79A7)),
            rgb(0xA3161C),
            rgb(0x7A4E00),
            rgb(0x14181B),
            rgb(0xFFFFFF),
            rgb(0xE9EEF1),
            rgb(0xD5E3EC));

    public static final ChartTheme DARK = new ChartTheme(
            rgb(0x121517),
            rgb(0x1A1E21),
            rgb(0x22272B),
            rgb(0xF0F3F5),
            rgb(0xB4BEC5),
            rgb(0x87929A),
            rgb(0x30373C),
            List.of(rgb(0xF0F3F5), rgb(0x62B4EE), rgb(0xF08A3C), rgb(0x35C795), rgb(0xE3A3C6)),
            rgb(0xFF8F85),
            rgb(0xF2BE58),
            rgb(0xCFD7DC),
            rgb(0x121517),
            rgb(0x1F272D),
            rgb(0x26394A));

    /** For paper: the light colours on white everywhere, so that a copying machine loses nothing but tint. */
    public static final ChartTheme PRINT = new ChartTheme(
            LIGHT.sheet,
            LIGHT.sheet,
            LIGHT.sheet,
            LIGHT.ink,
            LIGHT.ink2,
            LIGHT.rule,
            LIGHT.hair,
            LIGHT.series,
            LIGHT.fault,
            LIGHT.notice,
            LIGHT.primary,
            LIGHT.primaryText,
            LIGHT.band,
            LIGHT.settled);

    public ChartTheme {
        series = List.copyOf(series);
        if (series.size() != 5) {
            throw new IllegalArgumentException("a theme has 5 trace colours, got " + series.size());
        }
    }

    /**
     * Contrast ratio of two colours, 1 to 21 (WCAG 2.2, definitions of contrast ratio and relative luminance).
     */
    public static double contrast(Color a, Color b) {
        double first = luminance(a);
        double second = luminance(b);
        return (Math.max(first, second) + 0.05) / (Math.min(first, second) + 0.05);
    }

    private static double luminance(Color color) {
        return 0.2126 * linear(color.getRed()) + 0.7152 * linear(color.getGreen()) + 0.0722 * linear(color.getBlue());
    }

    private static double linear(int eightBit) {
        double c = eightBit / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static Color rgb(int value) {
        return new Color(value);
    }
}
