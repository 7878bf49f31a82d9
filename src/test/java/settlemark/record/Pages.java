package settlemark.record;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** Reads a PDF back: its text, and where each run of letters stands. */
final class Pages {
    /** A run of letters and its box in points from the top left corner. */
    record Run(String text, Rectangle2D box) {}

    private Pages() {}

    static List<String> texts(Path pdf) {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            List<String> pages = new ArrayList<>();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setSortByPosition(true);
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(stripper.getText(document));
            }
            return pages;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static String text(Path pdf) {
        return String.join("\n", texts(pdf));
    }

    /** Letters that follow each other on a line without a space between them wider than a word's. */
    static List<List<Run>> runs(Path pdf) {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            List<List<Run>> pages = new ArrayList<>();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                Collector collector = new Collector();
                collector.setStartPage(page);
                collector.setEndPage(page);
                collector.writeText(document, new StringWriter());
                pages.add(collector.runs);
            }
            return pages;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static final class Collector extends PDFTextStripper {
        private final List<Run> runs = new ArrayList<>();

        @Override
        protected void processTextPosition(TextPosition letter) {
            float size = letter.getFontSizeInPt();
            // Capitals and digits reach 0.73 of the size above the baseline; what hangs below it rarely meets a head.
            Rectangle2D box =
                    new Rectangle2D.Double(letter.getX(), letter.getY() - 0.7 * size, letter.getWidth(), 0.7 * size);
            Run last = runs.isEmpty() ? null : runs.get(runs.size() - 1);
            if (last != null
                    && Math.abs(last.box().getMaxY() - box.getMaxY()) < 0.01
                    && Math.abs(last.box().getMaxX() - box.getX()) < 0.3) {
                runs.set(
                        runs.size() - 1,
                        new Run(last.text() + letter.getUnicode(), last.box().createUnion(box)));
            } else {
                runs.add(new Run(letter.getUnicode(), box));
            }
        }
    }
}
