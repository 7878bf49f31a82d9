package settlemark.profile;

/** When something is asked for. The schema leaves nothing that could be wrong. */
final class PollReader {
    private PollReader() {}

    static Poll read(Section section) {
        return new Poll(
                section.number("period", Double.NaN),
                section.number("time-out", Poll.DEFAULT_TIME_OUT_SECONDS),
                section.integer("retries", 0));
    }
}
