package settlemark.profile;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import settlemark.measure.SampleStatus;

/**
 * A frame with what it must give: values of channels and facts, or a rejection.
 *
 * @param name for messages
 * @param message index of the message that it is a frame of
 * @param bytes the whole frame as it travels
 * @param gives what each named channel must give
 * @param facts what each named fact must say
 * @param absent channels of the message that the frame must not give
 * @param rejected words that the reason of the rejection must hold; empty for a good frame
 * @param circumstances what is known beside the bytes
 * @param line where the profile describes it, from 1
 * @param column from 1
 */
public record Example(
        String name,
        int message,
        ByteText bytes,
        Map<String, Expected> gives,
        Map<String, String> facts,
        java.util.Set<String> absent,
        String rejected,
        Circumstances circumstances,
        int line,
        int column) {
    public Example {
        Objects.requireNonNull(name);
        Objects.requireNonNull(bytes);
        Objects.requireNonNull(rejected);
        Objects.requireNonNull(circumstances);
        gives = Collections.unmodifiableMap(new LinkedHashMap<>(gives));
        facts = Collections.unmodifiableMap(new LinkedHashMap<>(facts));
        absent = java.util.Set.copyOf(absent);
        if ((gives.isEmpty() && facts.isEmpty()) == rejected.isEmpty()) {
            throw new IllegalArgumentException("an example gives values or is rejected, one of the two");
        }
    }

    public boolean isGood() {
        return rejected.isEmpty();
    }

    /**
     * What a channel must give.
     *
     * @param value in the channel's unit, NaN where the status is not OK
     * @param status of the sample
     */
    public record Expected(double value, SampleStatus status) {}

    /**
     * What is known beside the bytes of an example.
     *
     * @param secrets of the device, {@link Secrets#NONE} for plain frames
     * @param presentation value of the characteristic's descriptor 0x2904, 7 bytes
     * @param measurement value of the characteristic's descriptor 0x290C, 11 bytes
     */
    public record Circumstances(Secrets secrets, Optional<ByteText> presentation, Optional<ByteText> measurement) {
        public static final Circumstances NONE = new Circumstances(Secrets.NONE, Optional.empty(), Optional.empty());

        public Circumstances {
            Objects.requireNonNull(secrets);
            Objects.requireNonNull(presentation);
            Objects.requireNonNull(measurement);
        }
    }
}
