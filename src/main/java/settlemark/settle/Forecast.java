package settlemark.settle;

/**
 * Where an approach is expected to end, while it is still on its way.
 *
 * @param value the expected final value, in the unit of the samples
 * @param uncertainty its band (about 95 %): the curve's own error and what a slower second mode could add
 * @param secondsToSettled about how long it will take until the reading counts as settled; within a factor of two as a rule
 */
public record Forecast(double value, double uncertainty, double secondsToSettled) {
    public Forecast {
        if (!(Double.isFinite(value) && uncertainty >= 0 && secondsToSettled >= 0)) {
            throw new IllegalArgumentException("a forecast needs a value, a band and a time that are not negative, got "
                    + value + ", " + uncertainty + ", " + secondsToSettled);
        }
    }
}
