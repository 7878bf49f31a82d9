package settlemark.profile;

/**
 * A place that chunks of a probe's bytes come from; a chunk names it by its index in {@link Profile#inputs()}.
 *
 * @param kind what the bytes are
 * @param message index of the message that they belong to
 */
public record Input(Kind kind, int message) {
    /** What the bytes of an input are. */
    public enum Kind {
        /** Frames of the message. */
        FRAMES,
        /** The value of the characteristic's descriptor 0x2904. */
        PRESENTATION,
        /** The value of the characteristic's descriptor 0x290C. */
        MEASUREMENT
    }
}
