package settlemark.exchange;

/**
 * What is seen in the bytes that came since a question.
 *
 * @param kind what it is
 * @param from index of its first byte
 * @param to index after its last byte
 * @param code of a refusal, else 0
 * @param words why it is wrong, or how it was refused; empty for the others
 */
record Look(Kind kind, int from, int to, int code, String words) {
    /** What it is. */
    enum Kind {
        /** No answer yet. */
        MORE,
        GOOD,
        /** The device says no. */
        REFUSED,
        /** An answer of the device, but not to this question. */
        WRONG
    }

    static final Look MORE = new Look(Kind.MORE, 0, 0, 0, "");

    static Look good(int from, int to) {
        return new Look(Kind.GOOD, from, to, 0, "");
    }
}
