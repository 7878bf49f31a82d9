package settlemark.measure;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A unit by its UCUM code, for instance {@code Pa}, {@code [in_i'H2O]}, {@code [degF]}. The units library is asked once
 * for each code that is not a common one; after that a conversion is one multiplication and one addition.
 *
 * <p>{@code [in_i'H2O]} is the conventional inch of water, 249.08891 Pa. The inch has other definitions, up to 0.18 %
 * apart; they are {@link #inchOfWaterAt4C()}, {@link #inchOfWaterAt60F()} and {@link #inchOfWaterAt20C()}. {@code
 * [Btu]} is the thermochemical unit; the trade's is {@code [Btu_IT]}.
 *
 * <p>Thread-safe and immutable; two units are equal when their codes and dimensions are.
 */
public final class Unit {
    private static final Map<String, Unit> CACHE = new ConcurrentHashMap<>();
    private static final Map<String, String> SYMBOLS = Map.ofEntries(
            Map.entry("[in_i'H2O]", "inH\u2082O"),
            Map.entry("[in_i'Hg]", "inHg"),
            Map.entry("[psi]", "psi"),
            Map.entry("[degF]", "\u00b0F"),
            Map.entry("Cel", "\u00b0C"),
            Map.entry("mm[H2O]", "mmH\u2082O"),
            Map.entry("m[H2O]", "mH\u2082O"),
            Map.entry("[Btu_IT]/h", "Btu/h"),
            Map.entry("[Btu_IT]/[cft_i]", "Btu/ft\u00b3"),
            Map.entry("[cft_i]/h", "ft\u00b3/h"),
            Map.entry("[cft_i]/min", "ft\u00b3/min"),
            Map.entry("m3/h", "m\u00b3/h"),
            Map.entry("MJ/m3", "MJ/m\u00b3"),
            Map.entry("kg/m3", "kg/m\u00b3"),
            Map.entry("[in_i]", "in"),
            Map.entry("[ft_i]", "ft"),
            Map.entry("[lb_av]/h", "lb/h"),
            Map.entry("[ppm]", "ppm"));

    public static final Unit PASCAL = ucum("Pa");
    public static final Unit INCH_OF_WATER = ucum("[in_i'H2O]");
    public static final Unit CELSIUS = ucum("Cel");
    public static final Unit FAHRENHEIT = ucum("[degF]");
    public static final Unit PERCENT = ucum("%");
    public static final Unit FAHRENHEIT_DIFFERENCE = FAHRENHEIT.difference();

    private final String code;
    private final String symbol;
    private final Dimension dimension;
    private final Conversion toBase;

    private Unit(String code, String symbol, Dimension dimension, Conversion toBase) {
        this.code = code;
        this.symbol = symbol;
        this.dimension = dimension;
        this.toBase = toBase;
    }

    /**
     * The unit of a UCUM code.
     *
     * @throws IllegalArgumentException with a remedy, where the code is not one that can be read
     */
    public static Unit ucum(String code) {
        return CACHE.computeIfAbsent(code, Unit::read);
    }

    /** The unit of a UCUM code, empty where it cannot be read. */
    public static Optional<Unit> find(String code) {
        try {
            return Optional.of(ucum(code));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** Inch of water at 4 °C, 249.082 Pa. */
    public static Unit inchOfWaterAt4C() {
        return new Unit("[in_i'H2O]{4Cel}", "inH\u2082O (4 °C)", Dimension.PRESSURE, new Conversion(0, 249.082));
    }

    /** Inch of water at 60 °F, 248.840 Pa. */
    public static Unit inchOfWaterAt60F() {
        return new Unit("[in_i'H2O]{60degF}", "inH\u2082O (60 °F)", Dimension.PRESSURE, new Conversion(0, 248.840));
    }

    /** Inch of water at 20 °C, 248.642 Pa. */
    public static Unit inchOfWaterAt20C() {
        return new Unit("[in_i'H2O]{20Cel}", "inH\u2082O (20 °C)", Dimension.PRESSURE, new Conversion(0, 248.642));
    }

    /**
     * Conventional inch of mercury, 3386.38864 Pa (13595.1 kg/m3 at 9.80665 m/s2; NIST SP 811, B.8); UCUM's own, {@code
     * [in_i'Hg]}, is rounded to 3386.3788 Pa.
     */
    public static Unit inchOfMercury() {
        return new Unit(
                "[in_i'Hg]{conventional}", "inHg", Dimension.PRESSURE, new Conversion(0, 13_595.1 * 9.80665 * 0.0254));
    }

    /** UCUM code; a difference of temperatures has the code of its scale. */
    public String code() {
        return code;
    }

    /** As shown beside a number, for instance {@code inH₂O}. */
    public String symbol() {
        return symbol;
    }

    public Dimension dimension() {
        return dimension;
    }

    /** The unit of differences on this temperature scale; the unit itself for every other dimension. */
    public Unit difference() {
        if (dimension != Dimension.TEMPERATURE) {
            return this;
        }
        return new Unit(code, symbol, Dimension.TEMPERATURE_DIFFERENCE, new Conversion(0, toBase.slope()));
    }

    /**
     * The change from this unit to another.
     *
     * @throws IllegalArgumentException where the two do not measure the same thing
     */
    public Conversion to(Unit target) {
        if (target == this) {
            return Conversion.IDENTITY;
        }
        if (target.dimension != dimension || dimension == Dimension.OTHER && !target.code.equals(code)) {
            throw new IllegalArgumentException("cannot convert " + code + " (" + dimension + ") to " + target.code
                    + " (" + target.dimension + ")");
        }
        return equals(target) ? Conversion.IDENTITY : toBase.then(target.toBase.inverse());
    }

    private static Unit read(String code) {
        UcumReader.Meaning common = CommonUnits.find(code);
        UcumReader.Meaning meaning = common == null ? UcumReader.read(code) : common;
        return new Unit(code, SYMBOLS.getOrDefault(code, code), meaning.dimension(), meaning.toBase());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Unit unit && unit.code.equals(code) && unit.dimension == dimension;
    }

    @Override
    public int hashCode() {
        return Objects.hash(code, dimension);
    }

    @Override
    public String toString() {
        return code;
    }
}
