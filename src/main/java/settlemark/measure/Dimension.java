package settlemark.measure;

/**
 * What a unit measures. A temperature difference is its own dimension: 10 K of rise is 18 degrees Fahrenheit of rise,
 * while 10 °C is 50 °F. Energy per volume, such as a heating value, has the dimension of a pressure.
 */
public enum Dimension {
    PRESSURE,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    FRACTION,
    VOLTAGE,
    CURRENT,
    LENGTH,
    AREA,
    VOLUME,
    TIME,
    VOLUME_FLOW,
    MASS,
    MASS_FLOW,
    DENSITY,
    ENERGY,
    POWER,
    SPECIFIC_HEAT,
    OTHER
}
