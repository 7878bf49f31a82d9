package settlemark.rig;

/**
 * An underdamped second-order follower, x'' + 2 z w x' + w² (x - input) = 0, advanced exactly for an input that holds
 * still during the step. A step overshoots by exp(-pi z / sqrt(1 - z²)) of its height (textbook result for 0 &lt; z &lt;
 * 1).
 */
final class SecondOrder {
    private final double frequencyRadPerSecond;
    private final double damping;
    private double value;
    private double ratePerSecond;

    SecondOrder(double frequencyRadPerSecond, double damping, double start) {
        if (!(damping > 0 && damping < 1)) {
            throw new IllegalArgumentException("damping must lie between 0 and 1, got " + damping);
        }
        this.frequencyRadPerSecond = frequencyRadPerSecond;
        this.damping = damping;
        value = start;
    }

    double value() {
        return value;
    }

    void step(double input, double stepSeconds) {
        double decayPerSecond = damping * frequencyRadPerSecond;
        double ringRadPerSecond = frequencyRadPerSecond * Math.sqrt(1 - damping * damping);
        double distance = value - input;
        double quadrature = (ratePerSecond + decayPerSecond * distance) / ringRadPerSecond;
        double decay = StrictMath.exp(-decayPerSecond * stepSeconds);
        double cos = StrictMath.cos(ringRadPerSecond * stepSeconds);
        double sin = StrictMath.sin(ringRadPerSecond * stepSeconds);
        double next = decay * (distance * cos + quadrature * sin);
        ratePerSecond = -decayPerSecond * next + decay * ringRadPerSecond * (quadrature * cos - distance * sin);
        value = input + next;
    }
}
