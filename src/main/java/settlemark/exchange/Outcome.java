package settlemark.exchange;

/**
 * What the owner of the line does next.
 *
 * @param write bytes to be written now, may be none
 * @param untilNanos when to ask again at the latest if nothing arrives, {@link Long#MAX_VALUE} for never
 */
public record Outcome(byte[] write, long untilNanos) {
    static final byte[] NOTHING = new byte[0];

    static Outcome until(long untilNanos) {
        return new Outcome(NOTHING, untilNanos);
    }
}
