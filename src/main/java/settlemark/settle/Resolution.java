package settlemark.settle;

/**
 * The step in which a probe counts: given, or estimated from the samples so far.
 *
 * <p>The estimate is the smallest difference seen between successive samples. Until one is seen, and against mistaking the
 * first large change for the step, it is at most what is usual for the kind of channel; it grows beyond that only when the
 * smallest difference has come up several times. Values that are not rounded soon show differences near zero.
 */
final class Resolution {
    private static final int ENOUGH_CHANGES = 4;
    private static final int ENOUGH_REPEATS = 3;
    private static final double SAME_STEP = 0.02;
    /** Only within such a share need the last digit be looked at, which costs more. */
    private static final double NEARLY_SAME = 1e-12;

    private final boolean given;
    private final double usual;
    private double step;
    private double last = Double.NaN;
    private int changes;
    private int repeats;

    /** @param stepOrNan in the unit of the samples, NaN to estimate it */
    Resolution(double stepOrNan, SettleSettings settings) {
        given = !Double.isNaN(stepOrNan);
        usual = usual(settings);
        step = given ? stepOrNan : Double.POSITIVE_INFINITY;
    }

    /** Common practice: two decimals in inches of water, one in degrees of air, whole degrees in the stack. */
    private static double usual(SettleSettings settings) {
        return switch (settings.kind()) {
            case GAS, STACK -> settings.driftLimit() / 2;
            case AIR -> settings.driftLimit() / 5;
        };
    }

    void see(double value) {
        if (given) {
            return;
        }
        double difference = Math.abs(value - last);
        last = value;
        if (!(difference > 0) || difference < NEARLY_SAME * Math.abs(value) && difference <= Math.ulp(value) * 4) {
            return;
        }
        changes = Math.min(changes + 1, ENOUGH_CHANGES);
        if (difference < step * (1 - SAME_STEP)) {
            step = difference;
            repeats = 1;
        } else if (difference < step * (1 + SAME_STEP)) {
            repeats = Math.min(repeats + 1, ENOUGH_REPEATS);
        }
    }

    /** In the unit of the samples, 0 where nothing is rounded. */
    double step() {
        boolean proved = given || changes >= ENOUGH_CHANGES && repeats >= ENOUGH_REPEATS;
        return proved ? step : Math.min(step, usual);
    }
}
