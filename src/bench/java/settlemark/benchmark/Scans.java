package settlemark.benchmark;

import java.util.Random;

/**
 * What eight channels of a bench give, ten times a second, the same each time it is made: four pressures to a thousandth
 * and two to a hundredth of their unit, and two temperatures to a tenth, that wander slowly and are noisy by
 * one or two of their last digits, as a serial port of a quiet computer hands them on: some microseconds late, and now and then a millisecond.
 */
final class Scans {
    static final int CHANNELS = 8;
    static final int PER_COMMIT = 1000;
    static final long PERIOD_NANOS = 100_000_000L;

    private static final double[] STEPS_IN_ONE = {1000, 1000, 1000, 1000, 100, 100, 10, 10};
    private static final double[] NOISE_STEPS = {2, 2, 1.5, 1.5, 1, 1, 0.7, 0.7};

    private final Random random = new Random(20260314);
    private final boolean shared;
    private long count;

    final long[][] times;
    final double[][] values = new double[CHANNELS][PER_COMMIT];

    /** @param shared whether all channels arrive together; else each has times of its own */
    Scans(boolean shared) {
        this.shared = shared;
        this.times = new long[shared ? 1 : CHANNELS][PER_COMMIT];
    }

    /** Fills in the next ones. */
    void next() {
        for (int i = 0; i < PER_COMMIT; i++) {
            long scan = count + i;
            for (int t = 0; t < times.length; t++) {
                long late = (long) Math.abs(random.nextGaussian() * 5000) + (random.nextInt(500) == 0 ? 1_000_000 : 0);
                times[t][i] = scan * PERIOD_NANOS + t * (PERIOD_NANOS / CHANNELS) + late;
            }
            for (int c = 0; c < CHANNELS; c++) {
                double wander = 3.5 + c + 0.5 * Math.sin(scan * 0.0007 + c) + 0.1 * Math.sin(scan * 0.011);
                values[c][i] =
                        Math.rint(wander * STEPS_IN_ONE[c] + random.nextGaussian() * NOISE_STEPS[c]) / STEPS_IN_ONE[c];
            }
        }
        count += PER_COMMIT;
    }

    /** Of one channel. */
    long[] times(int channel) {
        return times[shared ? 0 : channel];
    }
}
