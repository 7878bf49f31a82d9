package settlemark.settle;

/**
 * The proof from a slow hunting. Swings that last longer than the shortest window are a movement in any window that holds
 * less than a few of them; but the means over two whole periods, half a period apart, are the same however the swing looks
 * where its middle rests, and differ by half a period's movement where it drifts.
 *
 * <p>A swing is what turns by more than noise does. Looked for are three turns with the middle passed before, between and
 * after them: one and a half periods. Half periods and sizes may differ by a factor of two, and the half period that goes on
 * may leave neither the swing's size nor its length, or it is no hunting.
 */
final class HuntingProof implements Proof {
    private static final double TURN_SIGMAS = 3;
    private static final double TURN_STEPS = 1.5;
    private static final double LEAST_ALIKE = 0.5;
    private static final double LONGEST_GOING_ON = 1.25;
    private static final double STEEPER_THAN_A_SINE = 1.3;
    private static final double NOISE_SIGMAS_IN_RANGE = 2.5;
    private static final double MOST_NOISE_OF_BAND = 0.4;
    private static final double DRIFT_SHARE_IN_UNCERTAINTY = 0.6;
    private static final int TURNS = 6;
    private static final int PASSES = 4;

    private final SettleSettings settings;
    private final StudentT studentT;
    private final double[] times;
    private final double[] values;
    /** Bins where it turned, the last first; the first may be the last bin, and the last the first. */
    private final int[] turns = new int[TURNS];
    /** Bins where the middle was just passed, the last first. */
    private final int[] passes = new int[PASSES];

    private int bins;
    private double resolution;
    private boolean possible;
    private double middle;
    private double size;
    private double value;
    private double slopePerSecond;
    private double variance;
    private double couldMove;
    private double swing;
    private double startSeconds;
    private double spanSeconds;

    HuntingProof(SettleSettings settings, StudentT studentT, WindowFit.Room room) {
        this.settings = settings;
        this.studentT = studentT;
        this.times = room.times();
        this.values = room.values();
    }

    /** Looks at all bins of the segment. */
    void look(BinRing ring, double stepOfResolution, double sampleSigma) {
        possible = false;
        bins = ring.size();
        if (bins * settings.binSeconds() < 1.5 * settings.windowSeconds().get(0)) {
            return;
        }
        ring.copy(0, times, values);
        resolution = stepOfResolution;
        double turn = Math.max(TURN_SIGMAS * sampleSigma, TURN_STEPS * stepOfResolution);
        int found = findTurns(turn);
        possible = found >= PASSES && (findPasses(0, found) || findPasses(1, found)) && goesOn(turn);
        if (possible) {
            weigh(ring, sampleSigma);
        }
    }

    void clear() {
        possible = false;
    }

    /** From the last bin back; how many turns there are, at most {@value #TURNS}. The oldest need not be one yet. */
    private int findTurns(double least) {
        int found = 0;
        int highest = bins - 1;
        int lowest = bins - 1;
        int side = 0;
        for (int i = bins - 2; i >= 0; i--) {
            highest = values[i] > values[highest] ? i : highest;
            lowest = values[i] < values[lowest] ? i : lowest;
            boolean fell = side >= 0 && values[highest] - values[i] > least;
            boolean rose = side <= 0 && values[i] - values[lowest] > least;
            if (fell || rose) {
                turns[found++] = fell ? highest : lowest;
                if (found == TURNS) {
                    return found;
                }
                side = fell ? -1 : 1;
                highest = i;
                lowest = i;
            }
        }
        if (side != 0) {
            turns[found++] = side < 0 ? lowest : highest;
        }
        return found;
    }

    /** Whether the middle was passed before, between and after three turns that are alike, the last turn or the last but one first. */
    private boolean findPasses(int first, int found) {
        if (first + PASSES >= found) {
            return false;
        }
        double last = values[turns[first + 1]];
        double before = values[turns[first + 2]];
        double oldest = values[turns[first + 3]];
        middle = (last + 2 * before + oldest) / 4;
        double most = Math.max(Math.abs(before - middle), Math.max(Math.abs(last - middle), Math.abs(oldest - middle)));
        double least =
                Math.min(Math.abs(before - middle), Math.min(Math.abs(last - middle), Math.abs(oldest - middle)));
        size = most;
        if (least < LEAST_ALIKE * most) {
            return false;
        }
        for (int i = 0; i < PASSES; i++) {
            passes[i] = pass(turns[first + i + 1], turns[first + i]);
            if (passes[i] < 0) {
                return false;
            }
        }
        int longest = Math.max(half(0), Math.max(half(1), half(2)));
        int shortest = Math.min(half(0), Math.min(half(1), half(2)));
        return shortest >= LEAST_ALIKE * longest
                && (half(0) + half(1)) * settings.binSeconds()
                        >= settings.windowSeconds().get(0);
    }

    private int half(int index) {
        return passes[index] - passes[index + 1];
    }

    /** The bin from which it lies on the other side of the middle, by the count of bins on each; -1 where it never does. */
    private int pass(int from, int to) {
        boolean above = values[from] > middle;
        if (values[to] > middle == above) {
            return -1;
        }
        int same = 0;
        for (int i = from; i <= to; i++) {
            same += values[i] > middle == above ? 1 : 0;
        }
        return from + same;
    }

    /** The half period of now is neither longer nor larger than those before, but for noise. */
    private boolean goesOn(double noise) {
        int longest = Math.max(half(0), Math.max(half(1), half(2)));
        boolean within = bins - passes[0] <= LONGEST_GOING_ON * longest;
        for (int i = passes[0]; i < bins && within; i++) {
            within = Math.abs(values[i] - middle) <= size + noise;
        }
        return within;
    }

    private void weigh(BinRing ring, double sampleSigma) {
        double last = mean(values, passes[2], passes[0]);
        double before = mean(values, passes[3], passes[1]);
        double apart = mean(times, passes[2], passes[0]) - mean(times, passes[3], passes[1]);
        int period = Math.min(half(0) + half(1), half(1) + half(2));
        value = (last + before) / 2;
        slopePerSecond = (last - before) / apart;
        variance = noiseOfBins();
        double changed = half(0) + half(2);
        double error = Math.sqrt(variance * changed) / period / apart;
        double quantile = studentT.quantile(period);
        couldMove = (Math.abs(slopePerSecond) + quantile * error) * settings.horizonSeconds();
        double noise = Math.min(NOISE_SIGMAS_IN_RANGE * sampleSigma, MOST_NOISE_OF_BAND * settings.band());
        swing = Math.max(0, ring.range(passes[3]) / 2 - noise);
        startSeconds = ring.firstSeconds(passes[3]);
        spanSeconds = times[bins - 1] - times[passes[3]];
    }

    private static double mean(double[] of, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += of[i] - of[from];
        }
        return of[from] + sum / (to - from);
    }

    /** From second differences, in which a slow swing is nothing (von Neumann's, one order on); never below rounding. */
    private double noiseOfBins() {
        double sum = 0;
        for (int i = passes[3] + 1; i < passes[0] - 1; i++) {
            double second = values[i - 1] - 2 * values[i] + values[i + 1];
            sum += second * second;
        }
        return Math.max(sum / (passes[0] - passes[3] - 2) / 6, resolution * resolution / 12);
    }

    @Override
    public boolean possible() {
        return possible;
    }

    @Override
    public boolean holds() {
        return possible && couldMove <= settings.driftLimit() && swing <= settings.band();
    }

    @Override
    public boolean turnsLately() {
        return false;
    }

    @Override
    public double couldMove() {
        return couldMove;
    }

    @Override
    public double expectedToMove() {
        return Math.abs(slopePerSecond) * settings.horizonSeconds();
    }

    @Override
    public double swing() {
        return swing;
    }

    @Override
    public double moved() {
        return Math.abs(slopePerSecond) * spanSeconds;
    }

    /** The middle. */
    @Override
    public double value() {
        return value;
    }

    @Override
    public double uncertainty() {
        double drift = DRIFT_SHARE_IN_UNCERTAINTY * couldMove;
        double ofMean = variance / (passes[1] - passes[3]);
        return Math.sqrt(4 * ofMean + resolution * resolution / 4 + drift * drift);
    }

    @Override
    public double startSeconds() {
        return startSeconds;
    }

    @Override
    public double spanSeconds() {
        return spanSeconds;
    }

    @Override
    public double residualVariance() {
        return variance;
    }

    @Override
    public double spread() {
        return size;
    }

    double periodSeconds() {
        return (half(0) + half(1)) * settings.binSeconds();
    }

    @Override
    public Ongoing left() {
        return Ongoing.swing(STEEPER_THAN_A_SINE * 2 * Math.PI * size / periodSeconds());
    }
}
