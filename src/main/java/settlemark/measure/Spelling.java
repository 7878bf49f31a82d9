package settlemark.measure;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Units as people in the trade write them, such as {@code inH2O}, {@code degF}, {@code Btu/h} and {@code cfm}, beside the
 * UCUM codes. Capitals do not matter in these spellings, they do in UCUM codes. {@code Btu} is the international table's,
 * {@code inH2O} and {@code inHg} the conventional ones.
 */
public final class Spelling {
    private static final Map<String, String> CODES = Map.ofEntries(
            Map.entry("inh2o", "[in_i'H2O]"),
            Map.entry("inwc", "[in_i'H2O]"),
            Map.entry("inwg", "[in_i'H2O]"),
            Map.entry("mmh2o", "mm[H2O]"),
            Map.entry("psi", "[psi]"),
            Map.entry("psia", "[psi]"),
            Map.entry("psig", "[psi]"),
            Map.entry("degf", "[degF]"),
            Map.entry("\u00b0f", "[degF]"),
            Map.entry("f", "[degF]"),
            Map.entry("degc", "Cel"),
            Map.entry("\u00b0c", "Cel"),
            Map.entry("c", "Cel"),
            Map.entry("in", "[in_i]"),
            Map.entry("inch", "[in_i]"),
            Map.entry("ft", "[ft_i]"),
            Map.entry("in2", "[sin_i]"),
            Map.entry("ft2", "[sft_i]"),
            Map.entry("ft3", "[cft_i]"),
            Map.entry("cf", "[cft_i]"),
            Map.entry("ft3/h", "[cft_i]/h"),
            Map.entry("cfh", "[cft_i]/h"),
            Map.entry("ft3/min", "[cft_i]/min"),
            Map.entry("cfm", "[cft_i]/min"),
            Map.entry("gal", "[gal_us]"),
            Map.entry("gal/min", "[gal_us]/min"),
            Map.entry("gpm", "[gal_us]/min"),
            Map.entry("gal/h", "[gal_us]/h"),
            Map.entry("l/min", "L/min"),
            Map.entry("l/h", "L/h"),
            Map.entry("lb", "[lb_av]"),
            Map.entry("lb/h", "[lb_av]/h"),
            Map.entry("lb/ft3", "[lb_av]/[cft_i]"),
            Map.entry("btu", "[Btu_IT]"),
            Map.entry("btu/h", "[Btu_IT]/h"),
            Map.entry("btuh", "[Btu_IT]/h"),
            Map.entry("kbtu/h", "1000.[Btu_IT]/h"),
            Map.entry("btu/ft3", "[Btu_IT]/[cft_i]"),
            Map.entry("btu/cf", "[Btu_IT]/[cft_i]"),
            Map.entry("kwh", "kW.h"),
            Map.entry("kwh/m3", "kW.h/m3"),
            Map.entry("ppm", "[ppm]"),
            Map.entry("sec", "s"),
            Map.entry("hr", "h"),
            Map.entry("percent", "%"));

    private Spelling() {}

    /** The unit, by the trade's spelling or by its UCUM code; empty where it is neither. */
    public static Optional<Unit> unit(String text) {
        String spelled =
                text.strip().toLowerCase(Locale.ROOT).replace("\u2082", "2").replace("\u00b3", "3");
        if (spelled.equals("inhg")) {
            return Optional.of(Unit.inchOfMercury());
        }
        String code = CODES.get(spelled);
        return Unit.find(code == null ? text.strip() : code);
    }
}
