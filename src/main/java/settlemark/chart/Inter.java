package settlemark.chart;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Objects;

/**
 * The two cuts of the Inter typeface that everything is set in, loaded once from the class path. Its digits are
 * proportional in Java: whoever needs them to stand still centres each in a cell of the widest.
 */
public final class Inter {
    private static final String FOLDER = "/com/formdev/flatlaf/fonts/inter/";
    private static final Font REGULAR = load("Inter-Regular.otf");
    private static final Font SEMI_BOLD = load("Inter-SemiBold.otf");

    private Inter() {}

    /** @param px size in the pixels of the graphics that it is used in */
    public static Font regular(double px) {
        return REGULAR.deriveFont((float) px);
    }

    /** @param px size in the pixels of the graphics that it is used in */
    public static Font semiBold(double px) {
        return SEMI_BOLD.deriveFont((float) px);
    }

    /** The font file itself, for embedding into a document. */
    public static InputStream file(boolean semiBold) {
        return open(semiBold ? "Inter-SemiBold.otf" : "Inter-Regular.otf");
    }

    private static Font load(String name) {
        try (InputStream in = open(name)) {
            return Font.createFont(Font.TRUETYPE_FONT, in);
        } catch (IOException | FontFormatException e) {
            throw new IllegalStateException("the font " + name + " cannot be read from the program itself", e);
        }
    }

    private static InputStream open(String name) {
        return Objects.requireNonNull(Inter.class.getResourceAsStream(FOLDER + name), name);
    }
}
