package settlemark.measure;

/**
 * What a unit measures. A temperature difference is its own dimension: 10 K of rise is 18 degrees Fahrenheit of rise,
 * while 10 °C is 50 °F.
 */
public enum Dimension {
    PRESSURE,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    FRACTION,
    VOLTAGE,
    OTHER
}
