package settlemark.app;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGraphics2D;
import settlemark.ui.SeenView;

/** Writes what is seen as a picture, a drawing or a table. */
final class SeenFiles {
    /** Pixels of the file to a pixel of the screen. */
    private static final int FINER = 2;

    private SeenFiles() {}

    /** Into a new file; nothing of it is left where that fails. */
    static void write(SeenView view, SeenView.Form form, Path file) throws IOException {
        Path part = file.resolveSibling(file.getFileName() + ".part");
        try {
            switch (form) {
                case PNG -> png(view, part);
                case SVG -> svg(view, part);
                case CSV -> csv(view, part);
            }
            Files.move(part, file);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static void png(SeenView view, Path file) throws IOException {
        BufferedImage image =
                new BufferedImage(FINER * view.widthPx(), FINER * view.heightPx(), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.scale(FINER, FINER);
        view.drawing().accept(graphics);
        graphics.dispose();
        if (!ImageIO.write(image, "png", file.toFile())) {
            throw new IOException("this Java cannot write PNG pictures");
        }
    }

    private static void svg(SeenView view, Path file) throws IOException {
        SVGGraphics2D graphics;
        try {
            graphics = new SVGGraphics2D(DocumentBuilderFactory.newNSInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument("http://www.w3.org/2000/svg", "svg", null));
        } catch (ParserConfigurationException e) {
            throw new IOException("this Java cannot make XML documents", e);
        }
        graphics.setSVGCanvasSize(new Dimension(view.widthPx(), view.heightPx()));
        view.drawing().accept(graphics);
        try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
            graphics.stream(out, true);
        }
    }

    private static void csv(SeenView view, Path file) throws IOException {
        try (CsvWriter out = CsvWriter.builder().build(file, StandardCharsets.UTF_8)) {
            for (List<String> row : view.rows()) {
                out.writeRecord(row);
            }
        }
    }
}
