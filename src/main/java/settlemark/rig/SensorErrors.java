package settlemark.rig;

import java.util.Random;

/**
 * How a simulated sensor is wrong. All but the zero stays inside the accuracy that its profile states: that is what is
 * left after zeroing. In the channel's unit.
 *
 * @param gain fraction of the reading that it reads too much
 * @param zero what it reads at nothing
 * @param drift by how much the zero moves while it warms up
 * @param noise standard deviation of a single reading, independent of the one before
 * @param swirl standard deviation of the slow unsteadiness of what it touches
 * @param lagSeconds its own time constant
 */
record SensorErrors(double gain, double zero, double drift, double noise, double swirl, double lagSeconds) {
    /** A pressure sensor of ±(0.5 % + 0.01 inH2O) with this zero offset. */
    static SensorErrors pressure(Random random, double zeroInH2o) {
        return new SensorErrors(between(random, 0.0035), zeroInH2o, between(random, 0.005), 0.006, 0, 0.05);
    }

    SensorErrors drifting(double newDrift) {
        return new SensorErrors(gain, zero, newDrift, noise, swirl, lagSeconds);
    }

    /** A bead probe of ±0.3 °C in moving air. */
    static SensorErrors temperature(Random random) {
        return new SensorErrors(between(random, 0.001), between(random, 0.10), between(random, 0.02), 0.03, 0.05, 9);
    }

    private static double between(Random random, double halfWidth) {
        return halfWidth * (2 * random.nextDouble() - 1);
    }
}
