package settlemark.ui;

import java.awt.Graphics2D;
import java.util.List;
import java.util.function.Consumer;

/**
 * What is seen, to be kept as a file.
 *
 * @param name of the file, without its ending
 * @param widthPx of the picture
 * @param heightPx of the picture
 * @param drawing draws the picture; may be called on any thread
 * @param rows the same as a table, its heads first; numbers with a point
 */
public record SeenView(String name, int widthPx, int heightPx, Consumer<Graphics2D> drawing, List<List<String>> rows) {
    public SeenView {
        rows = rows.stream().map(List::copyOf).toList();
    }

    /** Kinds of files. */
    public enum Form {
        PNG,
        SVG,
        CSV
    }
}
