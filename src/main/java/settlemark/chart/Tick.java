package settlemark.chart;

/**
 * A place on an axis with its label.
 *
 * @param position in the axis's own numbers
 * @param label as shown
 * @param ending the label ends there, where its middle would run over the edge
 */
record Tick(double position, String label, boolean ending) {
    Tick(double position, String label) {
        this(position, label, false);
    }
}
