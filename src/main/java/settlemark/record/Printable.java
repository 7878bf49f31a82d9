package settlemark.record;

import java.text.Normalizer;
import java.util.stream.Stream;
import settlemark.session.JobRecord;

/** Turns any text into text that the typeface can print, so that no name breaks a page. */
final class Printable {
    /** Stands for a character that cannot be printed; the page says what it means. */
    static final String MISSING = "\u25A1";

    private Printable() {}

    /**
     * The text with line breaks and other white space as spaces, invisible controls left out, compatibility forms taken
     * apart, and what is still missing replaced.
     */
    static String of(String text) {
        StringBuilder out = new StringBuilder(text.length());
        Normalizer.normalize(text, Normalizer.Form.NFC).codePoints().forEach(c -> append(out, c));
        return out.toString();
    }

    /** True where every text that a person or a probe put into the record can be printed. */
    static boolean whole(JobRecord record) {
        Stream<String> texts = Stream.of(
                        Stream.of(
                                record.header().title(),
                                record.job().person(),
                                record.job().plate().appliance()),
                        record.job().notes().stream().map(n -> n.text()),
                        record.events().stream().map(e -> e.words()),
                        record.instruments().stream().map(i -> i.name() + i.description() + i.serial()),
                        record.job().instruments().stream()
                                .map(u -> u.card().serial() + u.card().name()),
                        record.job().steps().stream()
                                .flatMap(s -> Stream.concat(s.remarks().stream(), Stream.of(s.skipReason()))))
                .flatMap(s -> s);
        return texts.noneMatch(t -> of(t).contains(MISSING));
    }

    private static void append(StringBuilder out, int codePoint) {
        if (Character.isWhitespace(codePoint) || Character.isSpaceChar(codePoint)) {
            out.append(' ');
            return;
        }
        int type = Character.getType(codePoint);
        if (type == Character.CONTROL || type == Character.FORMAT || isVariationSelector(codePoint)) {
            return;
        }
        if (both(codePoint)) {
            out.appendCodePoint(codePoint);
            return;
        }
        String apart = Normalizer.normalize(Character.toString(codePoint), Normalizer.Form.NFKD);
        boolean printable = apart.codePoints().allMatch(Printable::both);
        out.append(printable ? apart : MISSING);
    }

    private static boolean isVariationSelector(int codePoint) {
        return codePoint >= 0xFE00 && codePoint <= 0xFE0F;
    }

    private static boolean both(int codePoint) {
        return codePoint <= 0xFFFF
                && Typeface.of(false).has(codePoint)
                && Typeface.of(true).has(codePoint);
    }
}
