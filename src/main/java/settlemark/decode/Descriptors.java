package settlemark.decode;

import java.util.Optional;
import settlemark.profile.Wire;

/** Values of a characteristic's descriptors. */
final class Descriptors {
    private static final int MEASUREMENT_BYTES = 11;
    private static final int UNKNOWN_UNCERTAINTY = 0xFF;

    private Descriptors() {}

    /**
     * The Environmental Sensing Measurement: flags (2 bytes), sampling function (1), measurement period (3, in seconds),
     * update interval (3, in seconds), application (1), uncertainty (1, in steps of 0.5 %); low bytes first. Zero is not
     * in use. Source: Environmental Sensing Service 1.0, 3.1.2.1.
     */
    static Optional<MeasurementNote> measurement(byte[] bytes) {
        if (bytes.length != MEASUREMENT_BYTES) {
            return Optional.empty();
        }
        int uncertainty = bytes[10] & 0xFF;
        return Optional.of(new MeasurementNote(
                uncertainty == UNKNOWN_UNCERTAINTY ? Double.NaN : uncertainty / 2.0,
                seconds(bytes, 6),
                seconds(bytes, 3)));
    }

    private static double seconds(byte[] bytes, int at) {
        long seconds = RawBits.bits(bytes, at, 3, Wire.Order.LITTLE);
        return seconds == 0 ? Double.NaN : seconds;
    }
}
