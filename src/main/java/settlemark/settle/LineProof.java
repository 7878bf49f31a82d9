package settlemark.settle;

/**
 * The attempt to prove, on one window, that the remaining movement is bounded: an equivalence test on slope times horizon
 * (two one-sided tests, Schuirmann, J. Pharmacokin. Biopharm. 15, 1987), not a test that finds no slope.
 *
 * <p>Filled by {@link #look} once a bin; everything else reads it.
 */
final class LineProof implements Proof {
    private static final double MOVING_CAUTION_GAS = 2;
    private static final double BENT_SIGMAS = 2;
    private static final double STRAIGHT_SIGMAS = 3;
    private static final double STEEP_SIGMAS = 0.5;
    private static final double TURN_SIGMAS = 1;
    private static final double NOISE_SIGMAS_IN_RANGE = 2.5;
    private static final double MOST_NOISE_OF_BAND = 0.4;
    private static final double REMAINING_SHARE_IN_VALUE = 0.35;
    private static final double REMAINING_SHARE_IN_UNCERTAINTY = 0.6;

    private final SettleSettings settings;
    private final StudentT studentT;
    private final WindowFit window;

    private double resolution;
    private double couldMove;
    private double surelyMoves;
    private double swing;
    private double noiseRange;
    private boolean turnsLately;

    LineProof(SettleSettings settings, double windowSeconds, StudentT studentT, WindowFit.Room room) {
        this.settings = settings;
        this.studentT = studentT;
        this.window = new WindowFit(windowSeconds, settings.binSeconds(), room);
    }

    WindowFit window() {
        return window;
    }

    /** Bounds the movement in the window up to now. */
    void look(BinRing ring, double nowSeconds, double stepOfResolution, double sampleSigma) {
        window.fit(ring, nowSeconds, stepOfResolution);
        if (!window.filled()) {
            return;
        }
        double horizonSeconds = settings.horizonSeconds();
        resolution = stepOfResolution;
        double quantile = quantile();
        double slope = Math.abs(window.slopePerSecond());
        couldMove = (slope + quantile * Math.sqrt(window.slopeVariance())) * horizonSeconds;
        surelyMoves = (slope - caution() * quantile * Math.sqrt(window.noiseVariance())) * settings.horizonSeconds();
        noiseRange = Math.min(NOISE_SIGMAS_IN_RANGE * sampleSigma, MOST_NOISE_OF_BAND * settings.band());
        swing = Math.max(0, window.halfRange() - noiseRange);
        turnsLately = settings.learnTimeConstant() && couldMove <= settings.driftLimit() && findTurn(nowSeconds);
    }

    @Override
    public boolean holds() {
        return window.filled() && couldMove <= settings.driftLimit() && swing <= settings.band();
    }

    @Override
    public boolean turnsLately() {
        return turnsLately;
    }

    /** On temperatures only: a gas pressure on a line is as soon seen to move by the bound itself. */
    private boolean findTurn(double nowSeconds) {
        double least = LateTurn.LEAST_LIMITS_BESIDE_LINE * settings.driftLimit() / settings.horizonSeconds();
        for (double share : LateTurn.BEGAN_SHARES) {
            window.findTurn(share * settings.windowSeconds().get(0), nowSeconds);
            if (Math.abs(window.turn()) > Math.max(TURN_SIGMAS * window.turnError(), least)) {
                return true;
            }
        }
        return false;
    }

    @Override
    public double couldMove() {
        return couldMove;
    }

    /** Lower bound on the movement within the whole horizon. */
    double surelyMoves() {
        return surelyMoves;
    }

    /** The same, where an approach is known to go on: how much faster or slower than that it moves. */
    double surelyMovesBeside(Ongoing left) {
        double expected = left.between(window.firstSeconds(), window.lastSeconds()) / window.spanSeconds();
        double slope = Math.max(0, Math.abs(window.slopePerSecond() - expected) - left.swingPerSecond());
        return (slope - caution() * quantile() * Math.sqrt(window.noiseVariance())) * settings.horizonSeconds();
    }

    /** Half-width of the swings beyond noise and beside the approach. */
    double swingBeside(Ongoing left) {
        return Math.max(0, swing - Math.abs(left.between(window.firstSeconds(), window.lastSeconds())) / 2);
    }

    /** Half the range that noise alone may give. */
    double noiseRange() {
        return noiseRange;
    }

    /** A line without a bend, more likely than not steeper than the limit allows. */
    boolean straightAndTooSteep() {
        double least = Math.abs(window.slopePerSecond()) - STEEP_SIGMAS * Math.sqrt(window.noiseVariance());
        return window.filled()
                && window.bendSigmas() < STRAIGHT_SIGMAS
                && least * settings.horizonSeconds() > settings.driftLimit();
    }

    /** The line is bent, and at its end steeper than the limit allows. */
    boolean speedsUp() {
        return window.filled() && window.bendSigmas() > BENT_SIGMAS && movesAtEnd() > settings.driftLimit();
    }

    /** Movement within the horizon at the speed of the window's end. */
    double movesAtEnd() {
        return Math.abs(window.endSlope()) * settings.horizonSeconds();
    }

    private double caution() {
        return settings.kind() == SettleKind.GAS ? MOVING_CAUTION_GAS : 1;
    }

    private double quantile() {
        return studentT.quantile(window.bins() - 2);
    }

    @Override
    public double swing() {
        return swing;
    }

    @Override
    public double expectedToMove() {
        return Math.abs(window.slopePerSecond()) * settings.horizonSeconds();
    }

    @Override
    public double moved() {
        return Math.abs(window.slopePerSecond()) * window.spanSeconds();
    }

    @Override
    public double value() {
        double toEnd = window.slopePerSecond() * (window.lastSeconds() - window.meanSeconds());
        if (settings.kind() == SettleKind.GAS) {
            return window.meanValue() + slopeBelief() * toEnd;
        }
        return window.meanValue()
                + toEnd
                + REMAINING_SHARE_IN_VALUE * window.slopePerSecond() * settings.horizonSeconds();
    }

    @Override
    public double uncertainty() {
        double belief = settings.kind() == SettleKind.GAS ? slopeBelief() : 1;
        double meanVariance = Math.max(
                window.residualVariance() / window.bins() * (1 + 3 * belief),
                window.slopeVariance() * window.squaredSeconds() / window.bins());
        double remaining = REMAINING_SHARE_IN_UNCERTAINTY * couldMove;
        return Math.sqrt(4 * meanVariance + resolution * resolution / 4 + remaining * remaining);
    }

    @Override
    public boolean possible() {
        return window.filled();
    }

    @Override
    public double startSeconds() {
        return window.startSeconds();
    }

    @Override
    public double spanSeconds() {
        return window.spanSeconds();
    }

    @Override
    public double residualVariance() {
        return window.residualVariance();
    }

    @Override
    public double spread() {
        return window.halfRangeOfMeans();
    }

    @Override
    public Ongoing left() {
        return Ongoing.NOTHING;
    }

    private double slopeBelief() {
        double slope = window.slopePerSecond();
        return slope == 0 ? 0 : Math.max(0, 1 - window.slopeVariance() / (slope * slope));
    }
}
