package settlemark.decode;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Characters of a frame as words; remembers the last, since a device says the same about itself every time. */
final class FactWords {
    private byte[] last = new byte[0];
    private String words = "";

    String of(byte[] bytes, int from, int to) {
        if (!Arrays.equals(last, 0, last.length, bytes, from, to)) {
            last = Arrays.copyOfRange(bytes, from, to);
            words = words(bytes, from, to);
        }
        return words;
    }

    /** Without blanks and nulls at the ends; what is no UTF-8 and what steers a terminal becomes a replacement mark. */
    static String words(byte[] bytes, int from, int to) {
        int start = Ascii.skipBlanks(bytes, from, to);
        int end = Ascii.dropBlanks(bytes, start, to);
        StringBuilder words = new StringBuilder(new String(bytes, start, end - start, StandardCharsets.UTF_8));
        for (int i = 0; i < words.length(); i++) {
            if (Character.isISOControl(words.charAt(i))) {
                words.setCharAt(i, '\uFFFD');
            }
        }
        return words.toString();
    }
}
