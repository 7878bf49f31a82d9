package settlemark.record;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2DFontTextDrawer;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import settlemark.chart.ChartTheme;
import settlemark.chart.Inter;
import settlemark.chart.Mark;
import settlemark.chart.Ribbon;

/** One page: shapes below, text above, both measured in points from the top left corner. */
final class Sheet {
    static final double WIDTH = PDRectangle.A4.getWidth();
    static final double HEIGHT = PDRectangle.A4.getHeight();
    static final ChartTheme THEME = ChartTheme.PRINT;

    /** The fonts of a document. */
    record Fonts(PDFont regular, PDFont semiBold) {
        static Fonts in(PDDocument document) throws IOException {
            return new Fonts(Typeface.of(false).in(document), Typeface.of(true).in(document));
        }

        PDFont of(boolean bold) {
            return bold ? semiBold : regular;
        }
    }

    private record Line(String text, double x, double baseline, Face face, Color color) {}

    private final PDDocument document;
    private final Fonts fonts;
    private final PdfBoxGraphics2D shapes;
    private final List<Line> lines = new ArrayList<>();

    Sheet(PDDocument document, Fonts fonts) throws IOException {
        this.document = document;
        this.fonts = fonts;
        this.shapes = new PdfBoxGraphics2D(document, (float) WIDTH, (float) HEIGHT);
        PdfBoxGraphics2DFontTextDrawer drawer = new PdfBoxGraphics2DFontTextDrawer();
        drawer.registerFont(Inter.regular(1).getFontName(), fonts.regular());
        drawer.registerFont(Inter.semiBold(1).getFontName(), fonts.semiBold());
        shapes.setFontTextDrawer(drawer);
    }

    Graphics2D shapes() {
        return shapes;
    }

    void text(String text, double x, double baseline, Face face, Color color) {
        String printable = Printable.of(text);
        if (!printable.isBlank()) {
            lines.add(new Line(printable, x, baseline, face, color));
        }
    }

    void text(String text, double x, double baseline, Face face) {
        text(text, x, baseline, face, THEME.ink());
    }

    void right(String text, double right, double baseline, Face face, Color color) {
        text(text, right - face.width(text), baseline, face, color);
    }

    void line(double x1, double y1, double x2, double y2, Color color, double width) {
        shapes.setColor(color);
        shapes.setStroke(new BasicStroke((float) width));
        shapes.draw(new Line2D.Double(x1, y1, x2, y2));
    }

    void mark(Mark mark, double x, double y, double size) {
        mark.draw(shapes, x, y, size, THEME);
    }

    void ribbon(double x, double y, double width) {
        Ribbon.draw(shapes, new Rectangle2D.Double(x, y, width, 12), THEME, 0.75);
    }

    /** Puts the page together and adds it to the document. */
    void finish() throws IOException {
        shapes.dispose();
        PDPage page = new PDPage(PDRectangle.A4);
        document.addPage(page);
        try (PDPageContentStream out = new PDPageContentStream(document, page)) {
            out.drawForm(shapes.getXFormObject());
            out.beginText();
            double x = 0;
            double y = 0;
            for (Line line : lines) {
                out.setFont(fonts.of(line.face().bold()), (float) line.face().size());
                out.setNonStrokingColor(line.color());
                double down = HEIGHT - line.baseline();
                out.newLineAtOffset((float) (line.x() - x), (float) (down - y));
                x = line.x();
                y = down;
                out.showText(line.text());
            }
            out.endText();
        }
    }
}
