package settlemark.job;

import java.util.Objects;

/**
 * A value held against its limit.
 *
 * @param subject what was judged, for instance {@code manifold}
 * @param value in the limit's unit
 * @param expandedUncertainty coverage factor 2, in the limit's unit
 * @param limit the limit and its source
 * @param outcome where it lies
 */
public record Verdict(String subject, double value, double expandedUncertainty, Limit limit, Outcome outcome) {
    public Verdict {
        Objects.requireNonNull(limit);
        Objects.requireNonNull(outcome);
    }

    /**
     * Judges by the position of the value and its interval of coverage factor 2 against the limit (the four cases of
     * ILAC-G8:09/2019, 4.2.3, with a guard band as wide as the uncertainty).
     *
     * @param value a finite number in the limit's unit
     * @param expandedUncertainty not negative, in the limit's unit
     */
    public static Verdict judge(String subject, double value, double expandedUncertainty, Limit limit) {
        if (!Double.isFinite(value) || !(expandedUncertainty >= 0)) {
            throw new IllegalArgumentException(
                    "cannot judge " + subject + ": value " + value + ", uncertainty " + expandedUncertainty);
        }
        boolean lowIn = limit.contains(value - expandedUncertainty);
        boolean highIn = limit.contains(value + expandedUncertainty);
        Outcome outcome;
        if (limit.contains(value)) {
            outcome = lowIn && highIn ? Outcome.INSIDE : Outcome.CLOSE_INSIDE;
        } else {
            boolean reaches =
                    value - expandedUncertainty <= limit.upper() && value + expandedUncertainty >= limit.lower();
            outcome = reaches ? Outcome.CLOSE_OUTSIDE : Outcome.OUTSIDE;
        }
        return new Verdict(subject, value, expandedUncertainty, limit, outcome);
    }

    /** The limit as people read it; with all its digits where fewer would put the value on its other side. */
    public Limit shownLimit() {
        Limit shown = limit.shown();
        return shown.contains(value) == limit.contains(value) ? shown : limit;
    }
}
