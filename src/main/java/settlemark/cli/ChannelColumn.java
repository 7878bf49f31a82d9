package settlemark.cli;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import settlemark.job.SettleForm;
import settlemark.measure.Unit;
import settlemark.settle.SettleKind;

/**
 * A column of a trace: what was measured, and its unit.
 *
 * @param column its name in the header
 * @param kind of channel
 * @param unit of the values
 */
record ChannelColumn(String column, SettleKind kind, Unit unit) {
    private static final Pattern WRITTEN = Pattern.compile("(.+?):(gas|air|stack)(?::(.+))?", Pattern.DOTALL);

    /** @throws IllegalArgumentException in words, where it is not written so */
    static ChannelColumn written(String text) {
        Matcher parts = WRITTEN.matcher(text);
        if (!parts.matches()) {
            throw new IllegalArgumentException(
                    "--value must be COLUMN:KIND or COLUMN:KIND:UCUM with the kind gas, air or"
                            + " stack, such as supply:air:Cel, got \"" + text + "\"");
        }
        SettleKind kind = SettleForm.kind(parts.group(2));
        return of("--value " + text, parts.group(1), kind, Optional.ofNullable(parts.group(3)));
    }

    /**
     * A column of a kind.
     *
     * @param option that names the unit, for messages
     * @param code UCUM code, empty for inches of water or degrees Fahrenheit
     */
    static ChannelColumn of(String option, String column, SettleKind kind, Optional<String> code) {
        Unit own = SettleForm.unit(kind);
        if (code.isEmpty()) {
            return new ChannelColumn(column, kind, own);
        }
        Unit unit = Unit.find(code.get())
                .orElseThrow(() -> new IllegalArgumentException(
                        option + " must be a UCUM code such as " + examples(own) + ", got \"" + code.get() + "\""));
        if (unit.dimension() != own.dimension()) {
            throw new IllegalArgumentException(option + " must be a unit of "
                    + own.dimension().name().toLowerCase(Locale.ROOT) + " such as " + examples(own) + ", got \""
                    + code.get() + "\"");
        }
        return new ChannelColumn(column, kind, unit);
    }

    private static String examples(Unit own) {
        return own.equals(Unit.INCH_OF_WATER) ? "Pa, mbar or [in_i'H2O]" : "Cel, K or [degF]";
    }

    /** Units of the values in one of the settings' units, as a difference. */
    double factor() {
        return Math.abs(SettleForm.unit(kind).to(unit).slope());
    }
}
