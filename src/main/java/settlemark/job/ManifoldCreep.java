package settlemark.job;

import java.util.Locale;
import java.util.Optional;
import settlemark.measure.Unit;

/**
 * Whether the manifold crept while a stage burned and its air came to rest: a valve's body, spring or seat that warms. Told by
 * means over ten seconds, of which no two neighbours lie as far apart as half the whole: a screw, a cap or a stage is a step.
 */
final class ManifoldCreep {
    private static final double BIN_SECONDS = 10;
    /** Less is not said, inches of water; the least that is customary for such a creep, from memory. */
    private static final double LEAST_IN_H2O = 0.05;
    /** A change that comes within one mean to this part is a step. */
    private static final double STEP_PART = 0.5;

    private long binNanos = -1;
    private double sum;
    private int count;
    private int bins;
    private long firstNanos;
    private long lastNanos;
    private double first = Double.NaN;
    private double last = Double.NaN;
    private double largestStep;

    void restart() {
        binNanos = -1;
        bins = 0;
        first = Double.NaN;
        last = Double.NaN;
        largestStep = 0;
    }

    /** @param lit whether the burner is on its stage; what was before it is forgotten */
    void see(long timeNanos, double value, boolean lit) {
        if (!lit || Double.isNaN(value)) {
            restart();
            return;
        }
        if (binNanos >= 0 && timeNanos - binNanos >= BIN_SECONDS * 1e9) {
            bin();
            binNanos = -1;
        }
        if (binNanos < 0) {
            binNanos = timeNanos;
            sum = 0;
            count = 0;
        }
        sum += value;
        count++;
        lastNanos = timeNanos;
    }

    private void bin() {
        double mean = sum / count;
        bins++;
        // In the first one the valve still opens and the regulator comes to rest.
        if (bins == 2) {
            first = mean;
            firstNanos = binNanos;
        } else if (bins > 2) {
            largestStep = Math.max(largestStep, Math.abs(mean - last));
        }
        last = mean;
    }

    /** What there is to say; empty where it stood, or moved in a step. */
    Optional<String> words(Unit unit) {
        double crept = last - first;
        boolean much = Math.abs(crept) >= Unit.INCH_OF_WATER.to(unit).applyDifference(LEAST_IN_H2O);
        if (!much || largestStep > STEP_PART * Math.abs(crept)) {
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "The manifold crept by %+.2f %s, from %.2f to %.2f, within %.0f s of burning: read it again when the valve is"
                        + " warm. Where the closing zero moves as much, it is the gauge.",
                crept,
                unit.symbol(),
                first,
                last,
                (lastNanos - firstNanos) / 1e9));
    }
}
