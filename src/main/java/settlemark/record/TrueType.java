package settlemark.record;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Writes a TrueType font file with the tables that a PDF needs (ISO/IEC 14496-22). The PDF library embeds TrueType
 * outlines only, and the typeface comes with PostScript ones.
 */
final class TrueType {
    private static final long MAGIC = 0x5F0F3CF5L;
    private static final long CHECKSUM = 0xB1B0AFBAL;

    /**
     * One glyph.
     *
     * @param advance in font units
     * @param contours its outline, none for a space
     * @param box around the outline
     */
    record Glyph(int advance, List<List<Curves.Point>> contours, Box box) {
        Glyph(int advance, List<List<Curves.Point>> contours) {
            this(advance, contours, Box.of(contours));
        }

        int points() {
            int points = 0;
            for (List<Curves.Point> contour : contours) {
                points += contour.size();
            }
            return points;
        }
    }

    /** In font units; all of it 0 around nothing. */
    record Box(int left, int low, int right, int high) {
        private static final Box NOTHING = new Box(0, 0, 0, 0);

        static Box of(List<List<Curves.Point>> contours) {
            int left = Integer.MAX_VALUE;
            int low = Integer.MAX_VALUE;
            int right = Integer.MIN_VALUE;
            int high = Integer.MIN_VALUE;
            for (List<Curves.Point> contour : contours) {
                for (Curves.Point point : contour) {
                    left = Math.min(left, point.x());
                    low = Math.min(low, point.y());
                    right = Math.max(right, point.x());
                    high = Math.max(high, point.y());
                }
            }
            return left > right ? NOTHING : new Box(left, low, right, high);
        }

        Box with(Box other) {
            return new Box(
                    Math.min(left, other.left),
                    Math.min(low, other.low),
                    Math.max(right, other.right),
                    Math.max(high, other.high));
        }
    }

    private final String name;
    private final int unitsPerEm;
    private final int ascent;
    private final int descent;
    private final int weight;
    private final List<Glyph> glyphs;
    private final SortedMap<Integer, Integer> characters;

    /**
     * @param name PostScript name
     * @param ascent above the baseline, in font units
     * @param descent below it, negative
     * @param weight 400 is regular
     * @param glyphs the first is what stands for a missing one
     * @param characters code point of the basic plane to the index of its glyph
     */
    TrueType(
            String name,
            int unitsPerEm,
            int ascent,
            int descent,
            int weight,
            List<Glyph> glyphs,
            SortedMap<Integer, Integer> characters) {
        this.name = name;
        this.unitsPerEm = unitsPerEm;
        this.ascent = ascent;
        this.descent = descent;
        this.weight = weight;
        this.glyphs = glyphs;
        this.characters = characters;
    }

    byte[] bytes() {
        SortedMap<String, byte[]> tables = new TreeMap<>();
        List<Integer> offsets = new ArrayList<>();
        tables.put("glyf", outlines(offsets));
        tables.put("loca", table(out -> {
            for (int offset : offsets) {
                out.writeInt(offset);
            }
        }));
        tables.put("OS/2", table(this::os2));
        tables.put("cmap", table(this::cmap));
        tables.put("head", table(this::head));
        tables.put("hhea", table(this::hhea));
        tables.put("hmtx", table(this::hmtx));
        tables.put("maxp", table(this::maxp));
        tables.put("name", table(this::names));
        tables.put("post", table(TrueType::post));
        return file(tables);
    }

    private interface Writing {
        void to(DataOutputStream out) throws IOException;
    }

    private static byte[] table(Writing writing) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            writing.to(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** The contents stand in the reverse order of the directory: the PDF library suspects a last "post" to be cut. */
    private static byte[] file(SortedMap<String, byte[]> tables) {
        int count = tables.size();
        int search = Integer.highestOneBit(count);
        List<String> stored = new ArrayList<>(tables.keySet());
        Collections.reverse(stored);
        Map<String, Integer> offsets = new HashMap<>();
        int offset = 12 + 16 * count;
        for (String tag : stored) {
            offsets.put(tag, offset);
            offset += padded(content(tables, tag).length);
        }
        byte[] all = table(out -> {
            out.writeInt(0x00010000);
            shorts(out, count, 16 * search, Integer.numberOfTrailingZeros(search), 16 * (count - search));
            for (Map.Entry<String, byte[]> entry : tables.entrySet()) {
                out.write(entry.getKey().getBytes(StandardCharsets.US_ASCII));
                out.writeInt((int) sum(entry.getValue()));
                out.writeInt(offsets.getOrDefault(entry.getKey(), 0));
                out.writeInt(entry.getValue().length);
            }
            for (String tag : stored) {
                out.write(content(tables, tag));
                out.write(new byte[padded(content(tables, tag).length) - content(tables, tag).length]);
            }
        });
        adjust(all, offsets.getOrDefault("head", 0) + 8);
        return all;
    }

    private static byte[] content(Map<String, byte[]> tables, String tag) {
        return tables.getOrDefault(tag, new byte[0]);
    }

    /** The head table holds a number that makes the whole file add up to a constant. */
    private static void adjust(byte[] all, int at) {
        long adjustment = CHECKSUM - sum(all);
        for (int i = 0; i < 4; i++) {
            all[at + i] = (byte) (adjustment >>> (24 - 8 * i));
        }
    }

    private static int padded(int length) {
        return (length + 3) & ~3;
    }

    private static long sum(byte[] bytes) {
        long sum = 0;
        for (int i = 0; i < bytes.length; i++) {
            sum += (long) (bytes[i] & 0xFF) << (24 - 8 * (i % 4));
        }
        return sum & 0xFFFFFFFFL;
    }

    private static void shorts(DataOutputStream out, int... values) throws IOException {
        for (int value : values) {
            out.writeShort(value);
        }
    }

    private byte[] outlines(List<Integer> offsets) {
        return table(out -> {
            for (Glyph glyph : glyphs) {
                offsets.add(out.size());
                if (!glyph.contours().isEmpty()) {
                    outline(out, glyph);
                }
                out.write(new byte[padded(out.size()) - out.size()]);
            }
            offsets.add(out.size());
        });
    }

    private static void outline(DataOutputStream out, Glyph glyph) throws IOException {
        Box box = glyph.box();
        shorts(out, glyph.contours().size(), box.left(), box.low(), box.right(), box.high());
        int last = -1;
        for (List<Curves.Point> contour : glyph.contours()) {
            last += contour.size();
            out.writeShort(last);
        }
        out.writeShort(0);
        // Flag 1 is "on the curve"; without the short forms every coordinate is two bytes.
        for (List<Curves.Point> contour : glyph.contours()) {
            for (Curves.Point point : contour) {
                out.writeByte(point.on() ? 1 : 0);
            }
        }
        int previous = 0;
        for (List<Curves.Point> contour : glyph.contours()) {
            for (Curves.Point point : contour) {
                out.writeShort(point.x() - previous);
                previous = point.x();
            }
        }
        previous = 0;
        for (List<Curves.Point> contour : glyph.contours()) {
            for (Curves.Point point : contour) {
                out.writeShort(point.y() - previous);
                previous = point.y();
            }
        }
    }

    private void head(DataOutputStream out) throws IOException {
        out.writeInt(0x00010000);
        out.writeInt(0x00010000);
        out.writeInt(0);
        out.writeInt((int) MAGIC);
        shorts(out, 0, unitsPerEm);
        out.writeLong(0);
        out.writeLong(0);
        // The first is what stands for a missing glyph, so there is one.
        Box all = glyphs.get(0).box();
        for (Glyph glyph : glyphs) {
            all = all.with(glyph.box());
        }
        shorts(out, all.left(), all.low(), all.right(), all.high(), 0, 8, 2, 1, 0);
    }

    private void hhea(DataOutputStream out) throws IOException {
        out.writeInt(0x00010000);
        int widest = glyphs.stream().mapToInt(Glyph::advance).max().orElse(0);
        shorts(out, ascent, descent, 0, widest, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, glyphs.size());
    }

    private void hmtx(DataOutputStream out) throws IOException {
        for (Glyph glyph : glyphs) {
            shorts(out, glyph.advance(), glyph.box().left());
        }
    }

    private void maxp(DataOutputStream out) throws IOException {
        out.writeInt(0x00010000);
        int points = glyphs.stream().mapToInt(Glyph::points).max().orElse(0);
        int contours = glyphs.stream().mapToInt(g -> g.contours().size()).max().orElse(0);
        shorts(out, glyphs.size(), points, contours, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0);
    }

    /** Format 4: runs of neighbouring code points whose glyphs are neighbours too. */
    private void cmap(DataOutputStream out) throws IOException {
        List<int[]> runs = new ArrayList<>();
        characters.forEach((code, glyph) -> {
            int[] last = runs.isEmpty() ? new int[] {-2, -2, 0} : runs.get(runs.size() - 1);
            if (code == last[1] + 1 && glyph == last[2] + code - last[0]) {
                last[1] = code;
            } else {
                runs.add(new int[] {code, code, glyph});
            }
        });
        runs.add(new int[] {0xFFFF, 0xFFFF, 0});
        int count = runs.size();
        int search = Integer.highestOneBit(count);
        shorts(out, 0, 1, 3, 1);
        out.writeInt(12);
        shorts(out, 4, 16 + 8 * count, 0, 2 * count, 2 * search, Integer.numberOfTrailingZeros(search));
        out.writeShort(2 * (count - search));
        for (int[] run : runs) {
            out.writeShort(run[1]);
        }
        out.writeShort(0);
        for (int[] run : runs) {
            out.writeShort(run[0]);
        }
        for (int[] run : runs) {
            out.writeShort(run[2] - run[0]);
        }
        for (int i = 0; i < count; i++) {
            out.writeShort(0);
        }
    }

    private void names(DataOutputStream out) throws IOException {
        byte[] text = name.getBytes(StandardCharsets.UTF_16BE);
        int[] ids = {1, 4, 6};
        shorts(out, 0, ids.length, 6 + 12 * ids.length);
        for (int id : ids) {
            shorts(out, 3, 1, 0x409, id, text.length, 0);
        }
        out.write(text);
    }

    /** Version 4, with free embedding: the typeface's licence allows it. */
    private void os2(DataOutputStream out) throws IOException {
        shorts(out, 4, unitsPerEm / 2, weight, 5, 0);
        shorts(out, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
        out.write(new byte[10 + 16]);
        out.write("NONE".getBytes(StandardCharsets.US_ASCII));
        shorts(out, 0x40, characters.firstKey(), characters.lastKey(), ascent, descent, 0, ascent, -descent);
        out.writeLong(1);
        shorts(out, unitsPerEm / 2, unitsPerEm * 7 / 10, 0, 32, 1);
    }

    private static void post(DataOutputStream out) throws IOException {
        out.writeInt(0x00030000);
        out.write(new byte[28]);
    }
}
