package settlemark.record;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.fontbox.cff.CFFFont;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.OTFParser;
import org.apache.fontbox.ttf.OpenTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import settlemark.chart.Inter;

/** One cut of the typeface, ready to be embedded: only the glyphs that a document uses go into it. */
final class Typeface {
    /** Latin with all its accents, Greek, Cyrillic, punctuation, sub- and superscripts, arrows, mathematics, shapes. */
    private static final int[][] RANGES = {
        {0x20, 0x24F}, {0x300, 0x52F}, {0x1E00, 0x1EFF}, {0x2000, 0x22FF}, {0x2460, 0x27BF}
    };

    private static final class Regular {
        static final Typeface ONLY = read(false);
    }

    private static final class SemiBold {
        static final Typeface ONLY = read(true);
    }

    private final byte[] file;
    private final SortedMap<Integer, Integer> characters;
    private final List<TrueType.Glyph> glyphs;
    private final int unitsPerEm;

    private Typeface(byte[] file, SortedMap<Integer, Integer> characters, List<TrueType.Glyph> glyphs, int unitsPerEm) {
        this.file = file;
        this.characters = characters;
        this.glyphs = glyphs;
        this.unitsPerEm = unitsPerEm;
    }

    static Typeface of(boolean semiBold) {
        return semiBold ? SemiBold.ONLY : Regular.ONLY;
    }

    /** The typeface in a document. */
    PDFont in(PDDocument document) throws IOException {
        return PDType0Font.load(document, new ByteArrayInputStream(file), true);
    }

    boolean has(int codePoint) {
        return characters.containsKey(codePoint);
    }

    /** Width of printable text. */
    double width(String printable, double size) {
        double units = 0;
        for (int i = 0; i < printable.length(); i++) {
            Integer glyph = characters.get((int) printable.charAt(i));
            units += glyphs.get(glyph == null ? 0 : glyph).advance();
        }
        return units * size / unitsPerEm;
    }

    private static Typeface read(boolean semiBold) {
        try (InputStream in = Inter.file(semiBold);
                OpenTypeFont font = new OTFParser().parse(new RandomAccessReadBuffer(in))) {
            return read(font, semiBold ? 600 : 400, semiBold ? "Inter-SemiBold" : "Inter-Regular");
        } catch (IOException e) {
            throw new UncheckedIOException("the typeface cannot be read from the program itself", e);
        }
    }

    private static Typeface read(OpenTypeFont font, int weight, String name) throws IOException {
        CFFFont outlines = font.getCFF().getFont();
        CmapLookup cmap = font.getUnicodeCmapLookup();
        SortedMap<Integer, Integer> characters = new TreeMap<>();
        List<TrueType.Glyph> glyphs = new ArrayList<>();
        glyphs.add(glyph(font, outlines, 0));
        for (int[] range : RANGES) {
            for (int code = range[0]; code <= range[1]; code++) {
                int id = cmap.getGlyphId(code);
                if (id > 0) {
                    characters.put(code, glyphs.size());
                    glyphs.add(glyph(font, outlines, id));
                }
            }
        }
        TrueType file = new TrueType(
                name,
                font.getUnitsPerEm(),
                font.getHorizontalHeader().getAscender(),
                font.getHorizontalHeader().getDescender(),
                weight,
                glyphs,
                characters);
        return new Typeface(file.bytes(), characters, glyphs, font.getUnitsPerEm());
    }

    private static TrueType.Glyph glyph(OpenTypeFont font, CFFFont outlines, int id) throws IOException {
        return new TrueType.Glyph(
                font.getAdvanceWidth(id),
                Curves.of(outlines.getType2CharString(id).getPath()));
    }
}
