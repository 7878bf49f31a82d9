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
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.util.Matrix;
import org.jspecify.annotations.Nullable;
import settlemark.chart.ChartTheme;
import settlemark.chart.Inter;
import settlemark.chart.Mark;
import settlemark.chart.Ribbon;
import settlemark.session.RecordForm;

/** One page: shapes below, text above, both measured in points from the top left corner. */
final class Sheet {
    /** What everything is laid out in; wider paper has wider margins. */
    static final double WIDTH = RecordForm.Paper.A4.widthPoints();

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

    private record Line(
            String text,
            double x,
            double baseline,
            Face face,
            Color color,
            @Nullable PDStructureElement part) {}

    private record Image(byte[] jpeg, Rectangle2D box, PDStructureElement part) {}

    private record Figure(PdfBoxGraphics2D shapes, PDStructureElement part) {}

    private final PDDocument document;
    private final Fonts fonts;
    private final RecordForm.Paper paper;
    private final Structure structure;
    private final PdfBoxGraphics2D shapes;
    private final List<Line> lines = new ArrayList<>();
    private final List<Figure> figures = new ArrayList<>();
    private final List<Image> images = new ArrayList<>();

    Sheet(PDDocument document, Fonts fonts, RecordForm.Paper paper, Structure structure) throws IOException {
        this.document = document;
        this.fonts = fonts;
        this.paper = paper;
        this.structure = structure;
        this.shapes = graphics();
    }

    private PdfBoxGraphics2D graphics() throws IOException {
        PdfBoxGraphics2D made = new PdfBoxGraphics2D(document, (float) WIDTH, (float) paper.heightPoints());
        PdfBoxGraphics2DFontTextDrawer drawer = new PdfBoxGraphics2DFontTextDrawer();
        drawer.registerFont(Inter.regular(1).getFontName(), fonts.regular());
        drawer.registerFont(Inter.semiBold(1).getFontName(), fonts.semiBold());
        made.setFontTextDrawer(drawer);
        return made;
    }

    /** A picture of its own, with what it says in words. */
    Graphics2D figure(String inWords) throws IOException {
        Figure figure = new Figure(graphics(), structure.figure(inWords));
        figures.add(figure);
        return figure.shapes();
    }

    /** A photograph, drawn as large as the box that it must have the shape of. */
    void image(byte[] jpeg, Rectangle2D box, String inWords) throws IOException {
        images.add(new Image(jpeg, box, structure.figure(inWords)));
    }

    void text(String text, double x, double baseline, Face face, Color color) {
        String printable = Printable.of(text);
        if (!printable.isBlank()) {
            lines.add(new Line(printable, x, baseline, face, color, structure.current()));
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
        PDPage page = new PDPage(new PDRectangle((float) paper.widthPoints(), (float) paper.heightPoints()));
        document.addPage(page);
        try (PDPageContentStream out = new PDPageContentStream(document, page)) {
            out.transform(Matrix.getTranslateInstance((float) ((paper.widthPoints() - WIDTH) / 2), 0));
            structure.mark(out, page, null);
            out.drawForm(shapes.getXFormObject());
            out.endMarkedContent();
            for (Figure figure : figures) {
                figure.shapes().dispose();
                structure.mark(out, page, figure.part());
                out.drawForm(figure.shapes().getXFormObject());
                out.endMarkedContent();
            }
            for (Image image : images) {
                structure.mark(out, page, image.part());
                draw(out, image);
                out.endMarkedContent();
            }
            text(out, page);
        }
        structure.pageDone(page);
    }

    private void draw(PDPageContentStream out, Image image) throws IOException {
        Rectangle2D box = image.box();
        out.drawImage(
                JPEGFactory.createFromByteArray(document, image.jpeg()),
                (float) box.getX(),
                (float) (paper.heightPoints() - box.getMaxY()),
                (float) box.getWidth(),
                (float) box.getHeight());
    }

    private void text(PDPageContentStream out, PDPage page) throws IOException {
        out.beginText();
        double x = 0;
        double y = 0;
        Line before = null;
        for (Line line : lines) {
            if (before == null || before.part() != line.part()) {
                if (before != null) {
                    out.endMarkedContent();
                }
                structure.mark(out, page, line.part());
            }
            before = line;
            out.setFont(fonts.of(line.face().bold()), (float) line.face().size());
            out.setNonStrokingColor(line.color());
            double down = paper.heightPoints() - line.baseline();
            out.newLineAtOffset((float) (line.x() - x), (float) (down - y));
            x = line.x();
            y = down;
            out.showText(line.text());
        }
        if (before != null) {
            out.endMarkedContent();
        }
        out.endText();
    }
}
