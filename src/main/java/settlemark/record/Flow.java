package settlemark.record;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import settlemark.chart.Mark;
import settlemark.session.SessionHeader;

/** Fills pages from the top down, and begins a new one where the next part does not fit. */
final class Flow {
    static final double LEFT = 40;
    static final double RIGHT = Sheet.WIDTH - 40;
    static final double WIDTH = RIGHT - LEFT;

    /** Where the text of a labelled part begins. */
    static final double TEXT = LEFT + 96;

    private static final double PARAGRAPH = 1.4;
    private static final double PART = 4.5;
    private static final double TOP = 34;
    private static final double BOTTOM = Sheet.HEIGHT - 42;

    private final PDDocument document;
    private final Sheet.Fonts fonts;
    private final SessionHeader header;
    private final Times times;
    private final List<Sheet> sheets = new ArrayList<>();
    private double y;

    Flow(PDDocument document, SessionHeader header) throws IOException {
        this.document = document;
        this.header = header;
        this.times = new Times(header);
        this.fonts = Sheet.Fonts.in(document);
    }

    Sheet sheet() {
        return sheets.get(sheets.size() - 1);
    }

    int pages() {
        return sheets.size();
    }

    double y() {
        return y;
    }

    void down(double points) {
        y += points;
    }

    /** Makes sure that a part of some height fits on the page at hand. */
    void need(double height) throws IOException {
        if (y + height > BOTTOM) {
            page();
        }
    }

    /** Begins a page: the mark, what it belongs to, and SIMULATED where that is so. */
    void page() throws IOException {
        sheets.add(new Sheet(document, fonts));
        boolean first = sheets.size() == 1;
        Face face = first ? Face.TITLE : Face.NAME;
        double size = first ? 18 : 11;
        y = TOP + (first ? 12 : 6);
        Sheet sheet = sheet();
        sheet.mark(Mark.STAPLE, LEFT, y - size * 0.78, size);
        sheet.text("Gas and air readings, as found and as left", LEFT + size + 7, y, face);
        if (!first) {
            double room = WIDTH - size - 7 - face.width("Gas and air readings, as found and as left") - 20;
            sheet.right(Face.SMALL.cut(header.title(), room), RIGHT, y, Face.SMALL, Sheet.THEME.ink2());
        }
        y += 8;
        if (header.simulated()) {
            sheet.ribbon(LEFT, y, WIDTH);
            y += 12;
        }
        y += first ? 17 : 12;
    }

    /** A line across the page, with some space around it. */
    void rule() {
        sheet().line(LEFT, y, RIGHT, y, Sheet.THEME.rule(), 0.8);
        y += 11;
    }

    /** Height of a labelled part. */
    double height(List<String> paragraphs, Face face) {
        double lines = paragraphs.stream()
                .mapToDouble(p -> face.wrap(p, RIGHT - TEXT).size())
                .sum();
        return lines * face.lineHeight() + paragraphs.size() * PARAGRAPH + PART;
    }

    void labelled(String label, List<String> paragraphs) throws IOException {
        labelled(label, paragraphs, Face.BODY, Sheet.THEME.ink());
    }

    void labelled(String label, List<String> paragraphs, Face face, Color color) throws IOException {
        boolean first = true;
        for (String paragraph : paragraphs) {
            List<String> lines = face.wrap(paragraph, RIGHT - TEXT);
            need(Math.min(lines.size(), 3) * face.lineHeight() + 2);
            for (String line : lines) {
                need(face.lineHeight());
                if (first) {
                    sheet().text(label, LEFT, y, Face.STRONG);
                    first = false;
                }
                sheet().text(line, TEXT, y, face, color);
                y += face.lineHeight();
            }
            y += PARAGRAPH;
        }
        if (!first) {
            y += PART;
        }
    }

    /** Puts the foot under every page and adds the pages to the document. */
    void finish(String identity) throws IOException {
        for (int i = 0; i < sheets.size(); i++) {
            Sheet sheet = sheets.get(i);
            double base = Sheet.HEIGHT - 26;
            sheet.line(LEFT, base - 10, RIGHT, base - 10, Sheet.THEME.hair(), 0.8);
            String page = "page " + (i + 1) + " of " + sheets.size();
            String left = header.key() + "   " + times.day() + "   Settlemark " + header.version() + "   " + identity;
            sheet.text(Face.FINE.cut(left, WIDTH - 60), LEFT, base, Face.FINE, Sheet.THEME.ink2());
            sheet.right(page, RIGHT, base, Face.FINE, Sheet.THEME.ink2());
            sheet.finish();
        }
    }
}
