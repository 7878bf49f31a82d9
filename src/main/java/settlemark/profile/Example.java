package settlemark.profile;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import settlemark.measure.SampleStatus;

/**
 * A frame with what it must give: the values of channels, or a rejection.
 *
 * @param name for messages
 * @param bytes the whole frame
 * @param gives what each named channel must give; empty for a frame that must be rejected
 * @param rejected words that the reason of the rejection must hold; empty for a good frame
 * @param line where the profile describes it, from 1
 * @param column from 1
 */
public record Example(String name, ByteText bytes, Map<String, Expected> gives, String rejected, int line, int column) {
    public Example {
        Objects.requireNonNull(name);
        Objects.requireNonNull(bytes);
        Objects.requireNonNull(rejected);
        gives = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(gives));
        if (gives.isEmpty() == rejected.isEmpty()) {
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
}
