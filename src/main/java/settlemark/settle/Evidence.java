package settlemark.settle;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The bins of the present segment and what each window proves about them; looked at anew whenever a bin closes. */
final class Evidence {
    private static final double UNSETTLING_SWING = 1.3;
    private static final double LEAP_LIMITS_PER_SECOND = 0.6;
    private static final double LEAP_SIGMAS = 6;

    private final SettleSettings settings;
    private final BinRing ring;
    /** Arrays, as a list makes an iterator for each look at it. */
    private final LineProof[] lines;

    private final ApproachProof approach;
    private final HuntingProof hunting;
    private final boolean learns;
    private final Proof[] proofs;
    private final Set<Part> leftOut;
    private boolean movedLately;
    private double swung;

    Evidence(SettleSettings settings, Set<Part> leftOut) {
        this.settings = settings;
        this.leftOut = Set.copyOf(leftOut);
        int capacity = settings.mostBins();
        learns = settings.learnTimeConstant();
        ring = new BinRing(settings.binSeconds(), capacity);
        StudentT studentT = new StudentT(settings.confidence(), capacity);
        WindowFit.Room room = new WindowFit.Room(capacity);
        List<LineProof> list = new ArrayList<>();
        for (double window : settings.windowSeconds()) {
            list.add(new LineProof(settings, window, studentT, room));
        }
        lines = list.toArray(new LineProof[0]);
        approach = new ApproachProof(settings, studentT, room);
        hunting = new HuntingProof(settings, studentT, room);
        List<Proof> all = new ArrayList<>(list);
        if (learns) {
            all.add(approach);
            all.add(hunting);
        }
        proofs = all.toArray(new Proof[0]);
    }

    /**
     * Takes one sample in; true where a bin closed and everything was looked at anew.
     *
     * @param proving false while a reading stands: then only the shortest window is looked at
     */
    boolean add(double seconds, double value, double resolution, double sampleSigma, boolean proving) {
        if (!ring.add(seconds, value)) {
            return false;
        }
        if (proving && learns && leaps(sampleSigma)) {
            forget(ring.meanSeconds(ring.size() - 2));
        }
        shortest().look(ring, seconds, resolution, sampleSigma);
        if (proving) {
            swung = swungBothWays();
            for (int i = 1; i < lines.length; i++) {
                lines[i].look(ring, seconds, resolution, sampleSigma);
            }
            if (learns) {
                approach.attempt(ring, seconds, resolution, sampleSigma);
                averageSwings(resolution, sampleSigma);
            }
        }
        return true;
    }

    private void averageSwings(double resolution, double sampleSigma) {
        if (!leftOut.contains(Part.SWINGS_AVERAGED)) {
            hunting.look(ring, resolution, sampleSigma);
        }
    }

    /**
     * Approaches come from one side; where a swing has a quiet moment, as beats do, both sides lie behind it. On temperatures
     * it buys nothing, as a swing there seldom stays in one segment.
     */
    private double swungBothWays() {
        if (learns || !shortest().window().filled() || leftOut.contains(Part.SWINGS_OBJECT)) {
            return 0;
        }
        double noise = shortest().noiseRange();
        double reached = ring.swungBothWays(shortest().window().meanValue(), settings.band() + noise);
        return Math.max(0, reached - noise);
    }

    /** Half-width of swings about the present reading, in all that is remembered of its segment. */
    double swung() {
        return swung;
    }

    boolean swungTooFar() {
        return swung > settings.band();
    }

    void clear() {
        movedLately = false;
        swung = 0;
        ring.clear();
        approach.clear();
        hunting.clear();
        for (LineProof line : lines) {
            line.window().clear();
        }
    }

    /** What it was before a movement that was found out only now is no evidence of what it does now. */
    void forgetBefore(double seconds) {
        movedLately = !leftOut.contains(Part.CAUTION_AFTER_MOVEMENT);
        if (leftOut.contains(Part.FORGETTING)) {
            return;
        }
        forget(seconds);
    }

    private void forget(double untilSeconds) {
        ring.dropUntil(untilSeconds);
        approach.clear();
        hunting.clear();
        for (LineProof line : lines) {
            line.window().clear();
        }
    }

    /**
     * From one bin to the next it moved so fast that what was before is no part of the curve that now begins. A slow probe
     * shows that from sample to sample (the gate), a fast one in no single sample.
     */
    private boolean leaps(double sampleSigma) {
        int last = ring.size() - 1;
        if (last < 1) {
            return false;
        }
        double moved = Math.abs(ring.meanValue(last) - ring.meanValue(last - 1));
        double took = ring.meanSeconds(last) - ring.meanSeconds(last - 1);
        return moved > Math.max(LEAP_LIMITS_PER_SECOND * settings.driftLimit() * took, LEAP_SIGMAS * sampleSigma);
    }

    /** Null for a channel without time constant, and while the data do not carry it. */
    @Nullable
    Forecast forecast() {
        return learns ? approach.forecast() : null;
    }

    LineProof shortest() {
        return lines[0];
    }

    /** The last shortest window alone shows movement beyond the limit. */
    boolean surelyMoves() {
        return shortest().window().filled() && shortest().surelyMoves() > settings.driftLimit();
    }

    /** The same, beside what was expected to go on. */
    boolean surelyMovesBeside(Ongoing left) {
        return shortest().window().filled() && shortest().surelyMovesBeside(left) > settings.driftLimit();
    }

    /** The last shortest window alone shows swings well beyond the band. */
    boolean swingsTooFarBeside(Ongoing left) {
        return shortest().window().filled() && shortest().swingBeside(left) > UNSETTLING_SWING * settings.band();
    }

    /** The proof that holds with the least uncertainty of the reading, null where none does or there is movement. */
    @Nullable
    Proof surest() {
        Proof best = null;
        if (!surelyMoves() && !swungTooFar() && objection() == null) {
            for (LineProof line : lines) {
                if (!tooShort(line) && !(best != null && forSlowSwings(line))) {
                    best = surer(line, best);
                }
            }
        }
        return learns ? surer(hunting, surer(approach, best)) : best;
    }

    private static @Nullable Proof surer(Proof proof, @Nullable Proof best) {
        return proof.holds() && (best == null || proof.uncertainty() < best.uncertainty()) ? proof : best;
    }

    /**
     * A window that speaks against the proof of any other: one that is a straight ramp beyond the limit, or one that bends
     * towards it. Without it each of many looks at a ramp would be another chance to be fooled. Null where there is none.
     */
    @Nullable
    LineProof objection() {
        for (LineProof line : lines) {
            boolean ramp = line.straightAndTooSteep() && !leftOut.contains(Part.RAMPS_OBJECT);
            boolean bend = learns && line.speedsUp() && !leftOut.contains(Part.BENDS_OBJECT);
            if (ramp || bend) {
                return line;
            }
        }
        return null;
    }

    /** A movement was found out since the segment began: the shortest window alone is no proof of its end. */
    boolean tooShort(Proof proof) {
        return movedLately && proof == shortest();
    }

    /** Such a long window is for swings that shorter ones take for drift; where a shorter one holds it adds nothing. */
    private boolean forSlowSwings(LineProof line) {
        return line.window().windowSeconds() > 2 * settings.horizonSeconds();
    }

    /** The attempt with the lowest bound, whether it holds or not; null while there is none. */
    @Nullable
    Proof nearest() {
        Proof best = null;
        for (Proof proof : proofs) {
            boolean nearer = best == null || tooShort(best) || proof.couldMove() < best.couldMove();
            if (proof.possible() && nearer) {
                best = proof;
            }
        }
        return best;
    }

    /** Seconds until the next window is filled, 0 where all are. */
    double secondsToNextWindow(double nowSeconds) {
        double filledFor = nowSeconds - ring.startSeconds();
        for (LineProof proof : lines) {
            if (!proof.window().filled()) {
                return Math.max(0, proof.window().neededSeconds() - filledFor);
            }
        }
        return 0;
    }
}
