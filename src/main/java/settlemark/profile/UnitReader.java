package settlemark.profile;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Unit;

/** A channel's unit by its UCUM code, with the trade's spellings answered by the code that is meant. */
final class UnitReader {
    private static final String INCH_OF_WATER = Unit.INCH_OF_WATER.code();

    private static final Map<String, String> MEANT = Map.ofEntries(
            Map.entry("inh2o", INCH_OF_WATER),
            Map.entry("inwc", INCH_OF_WATER),
            Map.entry("inwg", INCH_OF_WATER),
            Map.entry("wc", INCH_OF_WATER),
            Map.entry("psi", "[psi]"),
            Map.entry("psig", "[psi]"),
            Map.entry("inhg", "[in_i'Hg]"),
            Map.entry("mmh2o", "mm[H2O]"),
            Map.entry("c", "Cel"),
            Map.entry("degc", "Cel"),
            Map.entry("celsius", "Cel"),
            Map.entry("f", "[degF]"),
            Map.entry("degf", "[degF]"),
            Map.entry("fahrenheit", "[degF]"),
            Map.entry("ppm", "[ppm]"),
            Map.entry("percent", "%"),
            Map.entry("pascal", "Pa"),
            Map.entry("pa", "Pa"),
            Map.entry("hpa", "hPa"),
            Map.entry("kpa", "kPa"),
            Map.entry("bar", "bar"),
            Map.entry("mbar", "mbar"));

    private UnitReader() {}

    static Optional<Unit> read(Section channel) {
        String code = channel.text("unit", "");
        Optional<String> meant = meant(code);
        if (meant.isPresent()) {
            channel.error(
                    "unit", "unit must be a UCUM code, got \"" + code + "\"; did you mean \"" + meant.get() + "\"?");
            return Optional.empty();
        }
        Optional<Unit> unit = code.contains("{") ? Optional.empty() : Unit.find(code);
        if (unit.isEmpty()) {
            channel.error(
                    "unit",
                    "unit must be a UCUM code without annotation, such as \"Pa\", \"" + INCH_OF_WATER
                            + "\", \"Cel\" or \"[degF]\", got \"" + code + "\"");
            return Optional.empty();
        }
        return whichInch(channel, unit.get());
    }

    private static Optional<String> meant(String code) {
        String plain = code.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
        Optional<String> meant = Optional.ofNullable(MEANT.get(plain));
        return meant.filter(m -> !m.equals(code) && !code.contains("["));
    }

    private static Optional<Unit> whichInch(Section channel, Unit unit) {
        if (!channel.has("inch-of-water")) {
            return Optional.of(unit);
        }
        if (!unit.code().equals(INCH_OF_WATER)) {
            channel.error(
                    "inch-of-water",
                    "inch-of-water needs the unit \"" + INCH_OF_WATER + "\", got \"" + unit.code() + "\"; remove one");
            return Optional.empty();
        }
        return Optional.of(
                switch (channel.text("inch-of-water", "")) {
                    case "4-Cel" -> Unit.inchOfWaterAt4C();
                    case "60-degF" -> Unit.inchOfWaterAt60F();
                    case "20-Cel" -> Unit.inchOfWaterAt20C();
                    default -> unit;
                });
    }
}
