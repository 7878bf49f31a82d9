package settlemark.job;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Unit;

/**
 * What the manifold shows before the burner lights. Through the burners' holes it is open to the burner box, so in pre-purge it
 * shows the box against the room: in a sealed one that is not nothing, and every manifold reading holds it.
 */
final class PrePurge {
    /** Beyond this from where it stands at rest the box is said not to be at the room's pressure; from memory. */
    private static final double NOTICED_IN_H2O = 0.05;
    /** A stretch within this is one, inches of water; this program's own. */
    private static final double STANDS_IN_H2O = 0.03;

    private static final double STANDS_SECONDS = 5;
    /** Between the end of the stretch and the light: the valve opens within seconds. */
    private static final double OPENS_SECONDS = 5;

    private double atRest = Double.NaN;
    private long fromNanos = -1;
    private double sum;
    private int count;
    /** Where it stood last for long enough, and until when. */
    private double stood = Double.NaN;

    private long stoodNanos;
    private boolean burning;
    private double found = Double.NaN;
    /** The plate that {@link #lit} is of; a job has one unit of pressure. */
    private @Nullable RatingPlate litBy;
    /** Above this a burner burns, in the job's unit. */
    private double lit;

    private double inch;

    /** The manifold as read with nothing firing and nothing running, zero taken off. */
    void rest(double manifold) {
        atRest = manifold;
    }

    /** The next value, zero taken off. */
    void see(long timeNanos, double value, Unit unit, RatingPlate plate) {
        if (Double.isNaN(value)) {
            return;
        }
        if (plate != litBy) {
            litBy = plate;
            inch = Unit.INCH_OF_WATER.to(unit).applyDifference(1);
            lit = plate.stages().stream()
                    .mapToDouble(s -> s.unit().to(unit).apply(Readiness.litAt(s)))
                    .min()
                    .orElse(Double.NaN);
        }
        if (value > lit) {
            if (!burning) {
                light(timeNanos, NOTICED_IN_H2O * inch);
            }
            burning = true;
            return;
        }
        burning = false;
        if (count == 0 || Math.abs(value - sum / count) > STANDS_IN_H2O * inch) {
            fromNanos = timeNanos;
            sum = 0;
            count = 0;
        }
        sum += value;
        count++;
        if (timeNanos - fromNanos >= STANDS_SECONDS * 1e9) {
            stood = sum / count;
            stoodNanos = timeNanos;
        }
    }

    private void light(long timeNanos, double noticed) {
        boolean before = timeNanos - stoodNanos <= OPENS_SECONDS * 1e9;
        double rest = Double.isNaN(atRest) ? 0 : atRest;
        found = before && Math.abs(stood - rest) > noticed ? stood : Double.NaN;
        stood = Double.NaN;
        count = 0;
    }

    /** What there is to say of the burner that burns now, once. */
    Optional<String> words(Unit unit) {
        if (Double.isNaN(found)) {
            return Optional.empty();
        }
        String words = String.format(
                Locale.ROOT,
                "Before the burner lit, in pre-purge, the manifold stood at %.2f %s: the burner box is not at the room's"
                        + " pressure. Where it is sealed, read the manifold against the box, as the maker says.",
                found,
                unit.symbol());
        found = Double.NaN;
        return Optional.of(words);
    }
}
