package settlemark.session;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Objects;
import java.util.Optional;

/**
 * Something in a workspace that is not as it was stored, with its place as far as that is known.
 *
 * @param of whose it is, such as {@code session 3} or {@code rereading 1 of session 3}; empty for the file as a whole
 * @param probe name, or {@code probe 1} where no name is known; empty where it is of no probe or of all
 * @param channel name, or {@code channel 1} where no name is known; empty where it is of no channel or of all
 * @param span the stretch of session time that it is in, empty where none can be said
 * @param words what is wrong
 */
public record Damage(String of, String probe, String channel, Optional<Span> span, String words) {
    private static final int NANO_DIGITS = 9;
    private static final int SHOWN_DIGITS = 3;

    public Damage {
        Objects.requireNonNull(of);
        Objects.requireNonNull(probe);
        Objects.requireNonNull(channel);
        Objects.requireNonNull(span);
        Objects.requireNonNull(words);
    }

    /** Of the file as a whole. */
    public static Damage ofFile(String words) {
        return new Damage("", "", "", Optional.empty(), words);
    }

    /** Of no probe. */
    public static Damage of(String of, String words) {
        return new Damage(of, "", "", Optional.empty(), words);
    }

    /** Where it is: {@code session 3, probe gauge, channel port-1, 409.600 s to 819.100 s}; empty for the file. */
    public String place() {
        StringBuilder place = new StringBuilder(of);
        if (!probe.isEmpty()) {
            place.append(", probe ").append(probe);
        }
        if (!channel.isEmpty()) {
            place.append(", channel ").append(channel);
        }
        span.ifPresent(s ->
                place.append(", ").append(seconds(s.fromNanos())).append(" to ").append(seconds(s.toNanos())));
        return place.toString();
    }

    private static String seconds(long nanos) {
        return BigDecimal.valueOf(nanos, NANO_DIGITS)
                        .setScale(SHOWN_DIGITS, RoundingMode.HALF_EVEN)
                        .toPlainString()
                + " s";
    }

    @Override
    public String toString() {
        return of.isEmpty() ? words : place() + ": " + words;
    }
}
