package settlemark.document;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.snakeyaml.engine.v2.scanner.StreamReader;

/** Bytes to characters: UTF-8 only, with the place of the first byte or character that is not allowed. */
final class TextReader {
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private TextReader() {}

    static Optional<String> read(String file, byte[] text, DocumentLimits limits, List<Problem> problems) {
        if (text.length > limits.maximumBytes()) {
            String message = String.format(
                    Locale.ROOT,
                    "the document has %d bytes, at most %d are read; is this the right file?",
                    text.length,
                    limits.maximumBytes());
            problems.add(new Problem(file, 1, 1, Severity.ERROR, message));
            return Optional.empty();
        }
        ByteBuffer in = ByteBuffer.wrap(text);
        CharBuffer out = CharBuffer.allocate(text.length);
        CoderResult result = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT)
                .decode(in, out, true);
        String characters = out.flip().toString();
        if (result.isError()) {
            problems.add(problem(file, characters, notUtf8(text[in.position()])));
            return Optional.empty();
        }
        int control = firstUnprintable(characters);
        if (control < characters.length()) {
            problems.add(problem(file, characters.substring(0, control), unprintable(characters.codePointAt(control))));
            return Optional.empty();
        }
        boolean marked = !characters.isEmpty() && characters.charAt(0) == BYTE_ORDER_MARK;
        return Optional.of(marked ? characters.substring(1) : characters);
    }

    /** Index of the first character that YAML does not allow, the length where there is none. */
    private static int firstUnprintable(String characters) {
        int i = 0;
        while (i < characters.length() && StreamReader.isPrintable(characters.codePointAt(i))) {
            i += Character.charCount(characters.codePointAt(i));
        }
        return i;
    }

    private static String notUtf8(byte bad) {
        return String.format(
                Locale.ROOT, "byte 0x%02X is not UTF-8 text; save the file with the encoding UTF-8", bad & 0xFF);
    }

    private static String unprintable(int codePoint) {
        return String.format(
                Locale.ROOT, "control character U+%04X is not allowed; is this the right file?", codePoint);
    }

    private static Problem problem(String file, String before, String message) {
        int lineStart = before.lastIndexOf('\n') + 1;
        int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
        int column = 1 + before.codePointCount(lineStart, before.length());
        return new Problem(file, line, column, Severity.ERROR, message);
    }
}
