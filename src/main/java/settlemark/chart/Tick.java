package settlemark.chart;

/**
 * A place on an axis with its label.
 *
 * @param position in the axis's own numbers
 * @param label as shown
 */
record Tick(double position, String label) {}
