package settlemark.exchange;

/** Something that a device is asked or told, and how its answer is known. */
interface Question {
    /** What is written, may be nothing. */
    byte[] bytes();

    /** What is asked for, such as {@code registers 0 to 3}. */
    String words();

    /** What an answer must be, for a message about one that did not come. */
    default String expected() {
        return "";
    }

    /** Whether an answer is waited for. */
    default boolean wantsAnswer() {
        return true;
    }

    /** Searches the answer; junk before it is passed over. */
    Look look(byte[] bytes, int from, int to);

    /** Bytes of an answer where that is known, else 0: their time on the line is waited for besides the time-out. */
    default int answerBytes() {
        return 0;
    }

    /** Whether an answer may have the same bytes as the request. */
    default boolean mayBeRepeated() {
        return false;
    }

    /** Silence that ends an answer, 0 where its bytes alone do. */
    default long endedByNanos() {
        return 0;
    }
}
