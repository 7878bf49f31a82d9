package settlemark.settle;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The bins of the present segment and what each window proves about them; looked at anew whenever a bin closes. */
final class Evidence {
    private static final double UNSETTLING_SWING = 1.3;

    private final SettleSettings settings;
    private final BinRing ring;
    private final Horizon horizon;
    private final List<Proof> proofs;

    Evidence(SettleSettings settings) {
        this.settings = settings;
        int capacity = settings.mostBins();
        ring = new BinRing(settings.binSeconds(), capacity);
        horizon = new Horizon(settings);
        StudentT studentT = new StudentT(settings.confidence(), capacity);
        List<Proof> list = new ArrayList<>();
        for (double window : settings.windowSeconds()) {
            list.add(new Proof(settings, window, studentT, capacity));
        }
        proofs = List.copyOf(list);
    }

    /** Takes one sample in; true where a bin closed and everything was looked at anew. */
    boolean add(double seconds, double value, double resolution, double sampleSigma) {
        if (!ring.add(seconds, value)) {
            return false;
        }
        for (Proof proof : proofs) {
            proof.window().fit(ring, seconds, resolution);
        }
        horizon.learn(shortest().window(), seconds);
        for (Proof proof : proofs) {
            proof.attempt(horizon.seconds(proof.window().windowSeconds()), resolution, sampleSigma);
        }
        return true;
    }

    void clear() {
        ring.clear();
        horizon.forget();
        for (Proof proof : proofs) {
            proof.window().clear();
        }
    }

    Proof shortest() {
        return proofs.get(0);
    }

    /** The last shortest window alone shows movement beyond the limit. */
    boolean surelyMoves() {
        return shortest().window().filled() && shortest().surelyMoves() > settings.driftLimit();
    }

    /** The last shortest window alone shows swings well beyond the band. */
    boolean swingsTooFar() {
        return shortest().window().filled() && shortest().swing() > UNSETTLING_SWING * settings.band();
    }

    /** The proof that holds with the least uncertainty of the reading, null where none does or there is movement. */
    @Nullable
    Proof surest() {
        Proof best = null;
        if (surelyMoves() || swingsTooFar()) {
            return best;
        }
        for (Proof proof : proofs) {
            if (proof.holds() && (best == null || proof.uncertainty() < best.uncertainty())) {
                best = proof;
            }
        }
        return best;
    }

    /** The attempt with the lowest bound, whether it holds or not; null while no window is filled. */
    @Nullable
    Proof nearest() {
        Proof best = null;
        for (Proof proof : proofs) {
            if (proof.window().filled() && (best == null || proof.couldMove() < best.couldMove())) {
                best = proof;
            }
        }
        return best;
    }

    /** Seconds until the next window is filled, 0 where all are. */
    double secondsToNextWindow(double nowSeconds) {
        double start = ring.startSeconds();
        double filledFor = Double.isNaN(start) ? 0 : nowSeconds - start;
        for (Proof proof : proofs) {
            if (!proof.window().filled()) {
                return Math.max(0, proof.window().neededSeconds() - filledFor);
            }
        }
        return 0;
    }
}
