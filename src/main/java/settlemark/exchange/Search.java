package settlemark.exchange;

/** Where some bytes stand among others. */
final class Search {
    private Search() {}

    /** Index of the first place, -1 for none. */
    static int indexOf(byte[] bytes, int from, int to, byte[] wanted) {
        for (int i = from; i + wanted.length <= to; i++) {
            if (matches(bytes, i, wanted, wanted.length)) {
                return i;
            }
        }
        return -1;
    }

    /** Whether the first so many of the wanted bytes stand at an index. */
    static boolean matches(byte[] bytes, int at, byte[] wanted, int length) {
        for (int i = 0; i < length; i++) {
            if (bytes[at + i] != wanted[i]) {
                return false;
            }
        }
        return true;
    }

    /** Nothing but blanks, line ends and nulls. */
    static boolean isBlank(byte[] bytes, int from, int to) {
        for (int i = from; i < to; i++) {
            if (bytes[i] != ' ' && bytes[i] != '\r' && bytes[i] != '\n' && bytes[i] != '\t' && bytes[i] != 0) {
                return false;
            }
        }
        return true;
    }
}
