package settlemark.measure;

import java.util.Map;
import java.util.regex.Pattern;
import javax.measure.IncommensurableException;
import javax.measure.UnitConverter;
import systems.uom.ucum.format.UCUMFormat;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.unit.Units;

/**
 * Asks the units library what a UCUM code means. The library's converter costs microseconds and treats every
 * temperature as a point on a scale, so its two numbers are taken out once.
 */
final class UcumReader {
    /** Long enough that the slope keeps all its digits, a power of two so that dividing by it loses none. */
    private static final double SPAN = 0x1p30;

    private static final Map<Dimension, javax.measure.Unit<?>> BASES = Map.ofEntries(
            Map.entry(Dimension.PRESSURE, Units.PASCAL),
            Map.entry(Dimension.TEMPERATURE, Units.KELVIN),
            Map.entry(Dimension.VOLTAGE, Units.VOLT),
            Map.entry(Dimension.CURRENT, Units.AMPERE),
            Map.entry(Dimension.FRACTION, AbstractUnit.ONE),
            Map.entry(Dimension.LENGTH, Units.METRE),
            Map.entry(Dimension.AREA, Units.SQUARE_METRE),
            Map.entry(Dimension.VOLUME, Units.CUBIC_METRE),
            Map.entry(Dimension.TIME, Units.SECOND),
            Map.entry(Dimension.VOLUME_FLOW, Units.CUBIC_METRE.divide(Units.SECOND)),
            Map.entry(Dimension.MASS, Units.KILOGRAM),
            Map.entry(Dimension.MASS_FLOW, Units.KILOGRAM.divide(Units.SECOND)),
            Map.entry(Dimension.DENSITY, Units.KILOGRAM.divide(Units.CUBIC_METRE)),
            Map.entry(Dimension.ENERGY, Units.JOULE),
            Map.entry(Dimension.POWER, Units.WATT),
            Map.entry(
                    Dimension.SPECIFIC_HEAT, Units.JOULE.divide(Units.KILOGRAM).divide(Units.KELVIN)));

    /** Longer than any unit that a gauge shows. */
    private static final int LONGEST_CODE = 80;
    /** The library raises a unit to a power one step at a time, each on the stack. */
    private static final Pattern LARGE_POWER = Pattern.compile("[^0-9./(][+-]?[0-9]{3}");

    /** UCUM 2.1, section 2: codes have the printable characters 33 to 126 of ASCII; the library skips some others. */
    private static final Pattern PRINTABLE = Pattern.compile("[!-~]+");

    private UcumReader() {}

    record Meaning(Dimension dimension, Conversion toBase) {}

    static Meaning read(String code) {
        javax.measure.Unit<?> parsed = parse(code);
        for (Map.Entry<Dimension, javax.measure.Unit<?>> base : BASES.entrySet()) {
            if (parsed.isCompatible(base.getValue())) {
                return new Meaning(base.getKey(), conversion(code, parsed, base.getValue()));
            }
        }
        return new Meaning(Dimension.OTHER, Conversion.IDENTITY);
    }

    private static javax.measure.Unit<?> parse(String code) {
        if (!PRINTABLE.matcher(code).matches()
                || code.length() > LONGEST_CODE
                || LARGE_POWER.matcher(code).find()) {
            throw refused(code, null);
        }
        try {
            return UCUMFormat.getInstance(UCUMFormat.Variant.CASE_SENSITIVE).parse(code);
        } catch (RuntimeException | Error e) {
            // The library's lexer throws an Error of its own for text that it cannot cut into words.
            if (e instanceof VirtualMachineError fatal) {
                throw fatal;
            }
            throw refused(code, e);
        }
    }

    private static IllegalArgumentException refused(String code, @org.jspecify.annotations.Nullable Throwable cause) {
        return new IllegalArgumentException(
                "unit must be a UCUM code such as Pa, [in_i'H2O], [psi], Cel or [degF], got \"" + code + "\"", cause);
    }

    private static Conversion conversion(String code, javax.measure.Unit<?> from, javax.measure.Unit<?> base) {
        try {
            UnitConverter converter = from.getConverterToAny(base);
            double offset = converter.convert(0.0);
            return new Conversion(offset, (converter.convert(SPAN) - offset) / SPAN);
        } catch (UnsupportedOperationException | NumberFormatException e) {
            // A temperature scale with an offset within a product, such as Pa.Cel/K; a logarithm, such as dB.
            throw refused(code, e);
        } catch (IncommensurableException e) {
            throw new IllegalStateException("the units library calls " + from + " and " + base + " compatible", e);
        }
    }
}
