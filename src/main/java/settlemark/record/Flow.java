package settlemark.record;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import settlemark.chart.Mark;
import settlemark.session.RecordForm;
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
    private static final double LABEL_GAP = 6;
    private static final double TOP = 34;
    private static final double FOOT = 42;
    /** A part that is no higher is not torn apart. */
    private static final double TOGETHER = 60;

    private final PDDocument document;
    private final Sheet.Fonts fonts;
    private final SessionHeader header;
    private final String title;
    private final Times times;
    private final RecordForm.Paper paper;
    private final Structure structure = new Structure();
    private final List<Sheet> sheets = new ArrayList<>();
    private double y;

    /** @param title at the head of each page */
    Flow(PDDocument document, String title, SessionHeader header, RecordForm.Paper paper) throws IOException {
        this.document = document;
        this.paper = paper;
        this.header = header;
        this.title = title;
        this.times = new Times(header);
        this.fonts = Sheet.Fonts.in(document);
    }

    Sheet sheet() {
        return sheets.get(sheets.size() - 1);
    }

    Structure structure() {
        return structure;
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

    /** What is left of the page at hand. */
    double room() {
        return paper.heightPoints() - FOOT - y;
    }

    /** Makes sure that a part of some height fits on the page at hand. */
    void need(double height) throws IOException {
        if (height > room()) {
            page();
        }
    }

    /** Begins a page: the mark, what it belongs to, and SIMULATED where that is so. */
    void page() throws IOException {
        sheets.add(new Sheet(document, fonts, paper, structure));
        boolean first = sheets.size() == 1;
        if (first) {
            structure.in("H1", () -> head(Face.TITLE, 18, 12));
        } else {
            structure.decoration(() -> head(Face.NAME, 11, 6));
        }
        y += 8;
        if (header.simulated()) {
            sheet().ribbon(LEFT, y, WIDTH);
            y += 12;
        }
        y += first ? 17 : 12;
    }

    private void head(Face face, double size, double down) {
        y = TOP + down;
        Sheet sheet = sheet();
        sheet.mark(Mark.STAPLE, LEFT, y - size * 0.78, size);
        sheet.text(title, LEFT + size + 7, y, face);
        if (sheets.size() > 1) {
            double room = WIDTH - size - 7 - face.width(title) - 20;
            sheet.right(Face.SMALL.cut(header.title(), room), RIGHT, y, Face.SMALL, Sheet.THEME.ink2());
        }
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
        double below = 0;
        Sheet begun = sheet();
        if (!paragraphs.isEmpty()) {
            need(Math.min(height(paragraphs, face), TOGETHER));
        }
        for (String paragraph : paragraphs) {
            List<String> lines = face.wrap(paragraph, RIGHT - TEXT);
            need(Math.min(lines.size(), 3) * face.lineHeight() + 2);
            if (first) {
                below = y + label(label);
                first = false;
            }
            structure.begin("P");
            for (String line : lines) {
                need(face.lineHeight());
                sheet().text(line, TEXT, y, face, color);
                y += face.lineHeight();
            }
            structure.end();
            y += PARAGRAPH;
        }
        if (!first) {
            y = (begun == sheet() ? Math.max(y, below) : y) + PART;
        }
    }

    /** In as many lines as it needs; returns their height. */
    private double label(String label) throws IOException {
        List<String> lines = Face.STRONG.wrap(label, TEXT - LEFT - LABEL_GAP);
        structure.in("H2", () -> {
            for (int i = 0; i < lines.size(); i++) {
                sheet().text(lines.get(i), LEFT, y + i * Face.STRONG.lineHeight(), Face.STRONG);
            }
        });
        return lines.size() * Face.STRONG.lineHeight();
    }

    /** Puts the foot under every page and adds the pages to the document. */
    void finish(String identity) throws IOException {
        for (int i = 0; i < sheets.size(); i++) {
            Sheet sheet = sheets.get(i);
            String page = "page " + (i + 1) + " of " + sheets.size();
            structure.decoration(() -> foot(sheet, page, identity));
            sheet.finish();
        }
        structure.finish(document);
    }

    private void foot(Sheet sheet, String page, String identity) {
        double base = paper.heightPoints() - 26;
        sheet.line(LEFT, base - 10, RIGHT, base - 10, Sheet.THEME.hair(), 0.8);
        String left = header.key() + "   " + times.day() + "   Settlemark " + header.version() + "   " + identity;
        sheet.text(Face.FINE.cut(left, WIDTH - 60), LEFT, base, Face.FINE, Sheet.THEME.ink2());
        sheet.right(page, RIGHT, base, Face.FINE, Sheet.THEME.ink2());
    }
}
