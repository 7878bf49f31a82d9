package settlemark.measure;

import org.jspecify.annotations.Nullable;

/**
 * What the units library says of the units that the program itself and most gauges use. To load the library and have it read
 * these takes about a third of a second of processor time at a start; a test holds each line against it, to the last digit.
 */
final class CommonUnits {
    private CommonUnits() {}

    /** Null where the library is to be asked. */
    static UcumReader.@Nullable Meaning find(String code) {
        return switch (code) {
            case "1" -> meaning(Dimension.FRACTION, 1.0);
            case "%" -> meaning(Dimension.FRACTION, 0.01);
            case "[ppm]" -> meaning(Dimension.FRACTION, 1.0E-6);
            case "Pa" -> meaning(Dimension.PRESSURE, 1.0);
            case "kPa" -> meaning(Dimension.PRESSURE, 1000.0);
            case "mbar" -> meaning(Dimension.PRESSURE, 100.0);
            case "[psi]" -> meaning(Dimension.PRESSURE, 6894.757293168362);
            case "[in_i'H2O]" -> meaning(Dimension.PRESSURE, 249.08891);
            case "mm[H2O]" -> meaning(Dimension.PRESSURE, 9.80665);
            case "K" -> meaning(Dimension.TEMPERATURE, 1.0);
            case "Cel" -> meaning(Dimension.TEMPERATURE, 273.15, 1.0);
            case "[degF]" -> meaning(Dimension.TEMPERATURE, 255.37222222222223, 0.5555555555555556);
            case "V" -> meaning(Dimension.VOLTAGE, 1.0);
            case "A" -> meaning(Dimension.CURRENT, 1.0);
            case "m" -> meaning(Dimension.LENGTH, 1.0);
            case "mm" -> meaning(Dimension.LENGTH, 0.001);
            case "[in_i]" -> meaning(Dimension.LENGTH, 0.0254);
            case "[ft_i]" -> meaning(Dimension.LENGTH, 0.3048);
            case "m3" -> meaning(Dimension.VOLUME, 1.0);
            case "[cft_i]" -> meaning(Dimension.VOLUME, 0.028316846592);
            case "s" -> meaning(Dimension.TIME, 1.0);
            case "min" -> meaning(Dimension.TIME, 60.0);
            case "m3/s" -> meaning(Dimension.VOLUME_FLOW, 1.0);
            case "m3/h" -> meaning(Dimension.VOLUME_FLOW, 2.777777777777778E-4);
            case "[cft_i]/h" -> meaning(Dimension.VOLUME_FLOW, 7.86579072E-6);
            case "[cft_i]/min" -> meaning(Dimension.VOLUME_FLOW, 4.719474432E-4);
            case "kg/m3" -> meaning(Dimension.DENSITY, 1.0);
            case "[lb_av]/[cft_i]" -> meaning(Dimension.DENSITY, 16.018463373960138);
            case "kg/s" -> meaning(Dimension.MASS_FLOW, 1.0);
            case "kg/h" -> meaning(Dimension.MASS_FLOW, 2.777777777777778E-4);
            case "[lb_av]/h" -> meaning(Dimension.MASS_FLOW, 1.2599788055555556E-4);
            case "W" -> meaning(Dimension.POWER, 1.0);
            case "kW" -> meaning(Dimension.POWER, 1000.0);
            case "[Btu_IT]/h" -> meaning(Dimension.POWER, 0.2930710701722222);
            case "J/m3" -> meaning(Dimension.PRESSURE, 1.0);
            case "MJ/m3" -> meaning(Dimension.PRESSURE, 1000000.0);
            case "[Btu_IT]/[cft_i]" -> meaning(Dimension.PRESSURE, 37258.94580783128);
            case "J/(kg.K)" -> meaning(Dimension.SPECIFIC_HEAT, 1.0);
            case "J/(m3.K)" -> meaning(Dimension.OTHER, 1.0);
            case "Pa/K" -> meaning(Dimension.OTHER, 1.0);
            default -> null;
        };
    }

    private static UcumReader.Meaning meaning(Dimension dimension, double slope) {
        return meaning(dimension, 0, slope);
    }

    private static UcumReader.Meaning meaning(Dimension dimension, double offset, double slope) {
        return new UcumReader.Meaning(dimension, new Conversion(offset, slope));
    }
}
