package settlemark.link;

import java.util.Arrays;

/** The words of one line of a capture, each with its column. */
final class CaptureWords {
    /** How much of a bad word is shown. */
    private static final int SHOWN = 30;

    /** A line that cannot be used as it stands. */
    static final class DamageException extends Exception {
        private static final long serialVersionUID = 1L;

        private final int column;
        private final String message;
        private final boolean used;

        DamageException(int column, String message, boolean used) {
            super(message, null, false, false);
            this.column = column;
            this.message = message;
            this.used = used;
        }

        int column() {
            return column;
        }

        String message() {
            return message;
        }

        /** Whether the line was handed on all the same. */
        boolean used() {
            return used;
        }
    }

    private final String line;
    private int at;
    private int wordAt;

    CaptureWords(String line) {
        this.line = line;
        skipBlanks();
    }

    /** Nothing but blanks or a remark. */
    boolean isRemark() {
        return at == line.length() || line.charAt(at) == '#';
    }

    /** The next word, empty at the end. */
    String word() {
        wordAt = at;
        while (at < line.length() && !isBlank(line.charAt(at))) {
            at++;
        }
        String word = line.substring(wordAt, at);
        skipBlanks();
        return word;
    }

    /** What is left of the line. */
    String rest() {
        return line.substring(at).stripTrailing();
    }

    /** A complaint at the word that was read last. */
    DamageException damage(String message) {
        return new DamageException(wordAt + 1, message, false);
    }

    /** The bytes up to the end or a remark; pairs of digits, with blanks between them or not. */
    byte[] bytes() throws DamageException {
        byte[] bytes = new byte[(line.length() - at) / 2 + 1];
        int count = 0;
        while (!isRemark()) {
            int high = digit(at);
            int low = digit(at + 1);
            if (high < 0 || low < 0) {
                wordAt = at;
                throw damage("a byte is two hexadecimal digits such as 0A, got "
                        + shown(line.substring(at, Math.min(line.length(), at + 2))));
            }
            bytes[count++] = (byte) (high << 4 | low);
            at += 2;
            skipBlanks();
        }
        if (count == 0) {
            wordAt = at;
            throw damage("no bytes: write them in hexadecimal, such as 0D 0A");
        }
        return Arrays.copyOf(bytes, count);
    }

    private int digit(int index) {
        // Only ASCII: Character.digit would take the digits of every script.
        return index < line.length() && line.charAt(index) < 0x80 ? Character.digit(line.charAt(index), 16) : -1;
    }

    private void skipBlanks() {
        while (at < line.length() && isBlank(line.charAt(at))) {
            at++;
        }
    }

    private static boolean isBlank(char c) {
        return c == ' ' || c == '\t';
    }

    /** Such as {@code "5x"}, safe for a terminal. */
    static String shown(String word) {
        String cut = word.length() > SHOWN ? word.substring(0, SHOWN) + "..." : word;
        return "\"" + CaptureText.oneLine(cut) + "\"";
    }
}
