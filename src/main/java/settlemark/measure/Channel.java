package settlemark.measure;

import java.util.Objects;

/**
 * One channel of a probe, as its profile describes it.
 *
 * @param name key within the profile, such as {@code port-1}
 * @param label what is printed on the gauge beside the port
 * @param dimension what it measures
 * @param unit of its values, after scale, offset and sign
 * @param resolution smallest step of the value in its unit, NaN where the profile does not say
 * @param accuracy the maker's statement, {@link Accuracy#UNKNOWN} where there is none
 * @param periodSeconds expected time between samples, NaN where the profile does not say
 * @param zeroLimit largest zero offset that is still a healthy gauge, in its unit; NaN where the profile does not say
 * @param warmUpSeconds after switching on until the accuracy holds, 0 where the profile does not say
 */
public record Channel(
        String name,
        String label,
        Dimension dimension,
        Unit unit,
        double resolution,
        Accuracy accuracy,
        double periodSeconds,
        double zeroLimit,
        double warmUpSeconds) {
    public Channel {
        Objects.requireNonNull(name);
        Objects.requireNonNull(label);
        Objects.requireNonNull(dimension);
        Objects.requireNonNull(unit);
        Objects.requireNonNull(accuracy);
    }
}
