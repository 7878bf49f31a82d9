package settlemark.decode;

/**
 * What a device says about how it measures, by the Environmental Sensing Measurement descriptor (0x290C).
 *
 * @param uncertaintyPercent of the reading in percent, NaN where the device does not say
 * @param updateIntervalSeconds between two measurements in seconds, NaN where the device does not say
 * @param measurementPeriodSeconds over which one measurement is taken in seconds, NaN where the device does not say
 */
public record MeasurementNote(
        double uncertaintyPercent, double updateIntervalSeconds, double measurementPeriodSeconds) {
    public MeasurementNote {
        if (uncertaintyPercent < 0 || updateIntervalSeconds <= 0 || measurementPeriodSeconds <= 0) {
            throw new IllegalArgumentException("uncertainty, interval and period are not negative, got "
                    + uncertaintyPercent + " %, " + updateIntervalSeconds + " s, " + measurementPeriodSeconds + " s");
        }
    }
}
