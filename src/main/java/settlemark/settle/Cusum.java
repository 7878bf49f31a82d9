package settlemark.settle;

/** Notices that a reading has left its recorded value: a two-sided cumulative sum (Page, Biometrika 41, 1954). */
final class Cusum {
    private double value;
    private double allowance;
    private double above;
    private double below;

    void start(double recordedValue, double allowedDistance) {
        value = recordedValue;
        allowance = allowedDistance;
        above = 0;
        below = 0;
    }

    /** Takes one sample in; true where the sum has passed the threshold. */
    boolean leaves(double sample, double threshold) {
        above = Math.max(0, above + sample - value - allowance);
        below = Math.max(0, below + value - sample - allowance);
        return Math.max(above, below) > threshold;
    }
}
