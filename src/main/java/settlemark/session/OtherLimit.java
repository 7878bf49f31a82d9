package settlemark.session;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import settlemark.job.Limit;
import settlemark.job.Verdict;
import settlemark.measure.Dimension;
import settlemark.measure.Unit;

/**
 * A limit that a second person holds a figure of a job against, in the place of the one of the day.
 *
 * @param text as it was written, {@code left-high.manifold=3.3..3.7}
 * @param step key of the step
 * @param figure what is judged
 * @param lower negative infinity where it is open
 * @param upper infinity where it is open
 * @param unit UCUM code of both, of its scale where a difference of temperatures is judged; empty for the unit that the
 *     verdict is in
 */
public record OtherLimit(String text, String step, String figure, double lower, double upper, Optional<String> unit) {
    private static final String NUMBER = "[-+]?\\d+(?:\\.\\d+)?";
    private static final Pattern WRITTEN = Pattern.compile("(?<step>[a-z0-9#-]+)\\.(?<figure>[a-z][^\\p{Cntrl}]*)="
            + "(?<low>" + NUMBER + ")?\\.\\.(?<high>" + NUMBER + ")?(?: +(?<unit>\\S+))?");

    /** @throws IllegalArgumentException where it is no such limit, in words */
    public static OtherLimit of(String text) {
        Matcher parts = WRITTEN.matcher(text.strip());
        if (!parts.matches() || parts.group("low") == null && parts.group("high") == null) {
            throw new IllegalArgumentException(
                    "expected STEP.FIGURE=LOW..HIGH such as left-high.manifold=3.3..3.7; one end may be left out");
        }
        double lower = parts.group("low") == null ? Double.NEGATIVE_INFINITY : Double.parseDouble(parts.group("low"));
        double upper = parts.group("high") == null ? Double.POSITIVE_INFINITY : Double.parseDouble(parts.group("high"));
        if (lower > upper) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "a limit runs from low to high, got %s to %s",
                    parts.group("low"),
                    parts.group("high")));
        }
        return new OtherLimit(
                text.strip(),
                parts.group("step"),
                parts.group("figure"),
                lower,
                upper,
                Optional.ofNullable(parts.group("unit")));
    }

    /**
     * A verdict under it.
     *
     * @throws IllegalArgumentException where its unit is none of the verdict's kind
     */
    public Verdict judge(Verdict day) {
        boolean ofDifference = day.limit().unit().dimension() == Dimension.TEMPERATURE_DIFFERENCE;
        Unit own = unit.map(Unit::ucum)
                .map(u -> ofDifference ? u.difference() : u)
                .orElse(day.limit().unit());
        if (own.dimension() != day.limit().unit().dimension()) {
            throw new IllegalArgumentException(text + ": " + figure + " is judged in "
                    + day.limit().unit().code() + ", which " + own.code() + " cannot be changed into");
        }
        Limit limit = new Limit(lower, upper, own, "reviewer").to(day.limit().unit());
        return Verdict.judge(day.subject(), day.value(), day.expandedUncertainty(), limit);
    }
}
