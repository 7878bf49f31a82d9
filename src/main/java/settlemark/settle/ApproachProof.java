package settlemark.settle;

import org.jspecify.annotations.Nullable;

/** The proof from a curve: an approach whose end is in sight, with a ramp that would be seen if there were one. */
final class ApproachProof implements Proof {
    private static final double NOISE_SIGMAS_IN_RANGE = 2.5;
    private static final double MOST_NOISE_OF_BAND = 0.4;
    private static final double RAMP_SHARE_IN_UNCERTAINTY = 0.6;
    private static final double LEFT_SHARE_IN_UNCERTAINTY = 0.3;

    /** A ramp beside the approach that is not yet unusual, in limits within the horizon. */
    private static final double USUAL_RAMP_LIMITS = 2;
    /** An end that moves as the bins come in is the mark of a slower second mode. */
    private static final int LOOK_BACK_BINS = 16;

    private static final double DRIFT_OF_THE_END = 12;
    private static final double MODEL_SHARE = 0.5;
    private static final double LEAST_LIMITS = 0.3;
    private static final double WIDEST_LIMITS = 6;
    private static final double WIDEST_SHARE = 0.5;
    private static final double SETTLES_AT_LIMITS = 0.6;

    /** Below one, as a curve that cannot tell a turn had better wait until it can. */
    private static final double TURN_SIGMAS = 0.45;

    private final SettleSettings settings;
    private final StudentT studentT;
    private final ApproachFit fit;
    private double resolution;
    private double couldMove;
    private double couldRamp;
    private double swing;
    private boolean turnsLately;
    private double nowSeconds;
    private final double[] ends = new double[LOOK_BACK_BINS];
    private int remembered;

    ApproachProof(SettleSettings settings, StudentT studentT, WindowFit.Room room) {
        this.settings = settings;
        this.studentT = studentT;
        this.fit = new ApproachFit(settings, room);
    }

    ApproachFit fit() {
        return fit;
    }

    void attempt(BinRing ring, double seconds, double stepOfResolution, double sampleSigma) {
        fit.fit(ring, seconds, stepOfResolution);
        if (!fit.found()) {
            remembered = 0;
        } else {
            remember();
            nowSeconds = seconds;
            resolution = stepOfResolution;
            double quantile = studentT.quantile(fit.degreesOfFreedom());
            couldMove = fit.couldMove(quantile);
            couldRamp = Math.abs(fit.ramp()) + quantile * fit.rampError();
            double noise = Math.min(NOISE_SIGMAS_IN_RANGE * sampleSigma, MOST_NOISE_OF_BAND * settings.band());
            turnsLately = couldMove <= settings.driftLimit() && findTurn();
            swing = Math.max(
                    0, fit.halfRange(ring, seconds - settings.windowSeconds().get(0)) - noise);
        }
    }

    /** Null while the data do not carry it. */
    @Nullable
    Forecast forecast() {
        if (!fit.found() || remembered < LOOK_BACK_BINS || !fit.endsOnTheCurve()) {
            return null;
        }
        double limit = settings.driftLimit();
        double left = Math.abs(fit.expectedLeft());
        double drifted = DRIFT_OF_THE_END * (fit.expectedEnd() - ends[remembered % LOOK_BACK_BINS]);
        double model = MODEL_SHARE * left;
        double least = LEAST_LIMITS * limit;
        double uncertainty = Math.sqrt(4 * fit.expectedEndVariance()
                + resolution * resolution / 4
                + drifted * drifted
                + model * model
                + least * least);
        if (uncertainty > Math.max(WIDEST_LIMITS * limit, WIDEST_SHARE * left)) {
            return null;
        }
        double toGo = Math.max(0, fit.tauSeconds() * Math.log(left / (SETTLES_AT_LIMITS * limit)));
        return new Forecast(fit.expectedEnd(), uncertainty, toGo + settings.dwellSeconds());
    }

    private void remember() {
        fit.expect(USUAL_RAMP_LIMITS * settings.driftLimit());
        ends[remembered % LOOK_BACK_BINS] = fit.expectedEnd();
        remembered++;
    }

    void clear() {
        fit.clear();
        remembered = 0;
    }

    @Override
    public boolean possible() {
        return fit.found();
    }

    @Override
    public boolean holds() {
        return fit.found() && couldMove <= settings.driftLimit() && swing <= settings.band() && fit.endsOnTheCurve();
    }

    @Override
    public boolean turnsLately() {
        return turnsLately;
    }

    private boolean findTurn() {
        double least = LateTurn.LEAST_LIMITS * settings.driftLimit();
        for (double share : LateTurn.BEGAN_SHARES) {
            fit.turn(share * settings.windowSeconds().get(0));
            if (Math.abs(fit.turn()) > Math.max(TURN_SIGMAS * fit.turnError(), least)) {
                return true;
            }
        }
        return false;
    }

    @Override
    public double couldMove() {
        return couldMove;
    }

    @Override
    public double expectedToMove() {
        return Math.abs(fit.left() + fit.ramp());
    }

    @Override
    public double swing() {
        return swing;
    }

    @Override
    public double moved() {
        return Math.abs(fit.movement());
    }

    @Override
    public double value() {
        return fit.end();
    }

    @Override
    public double uncertainty() {
        double remaining = RAMP_SHARE_IN_UNCERTAINTY * couldRamp;
        double left = LEFT_SHARE_IN_UNCERTAINTY * fit.left();
        double error = fit.endError();
        return Math.sqrt(4 * error * error + resolution * resolution / 4 + remaining * remaining + left * left);
    }

    @Override
    public double startSeconds() {
        return nowSeconds - fit.spanSeconds();
    }

    @Override
    public double spanSeconds() {
        return fit.spanSeconds();
    }

    @Override
    public double residualVariance() {
        return fit.residualVariance();
    }

    @Override
    public double spread() {
        return 0;
    }

    @Override
    public Ongoing left() {
        return Ongoing.approach(fit.left(), fit.tauSeconds(), nowSeconds);
    }
}
