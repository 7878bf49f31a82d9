package settlemark.job;

import java.util.List;
import java.util.Objects;
import settlemark.measure.Unit;

/**
 * The rating plate, which overrides every customary number.
 *
 * @param appliance what it is, in the technician's words
 * @param fuel what it burns
 * @param stages firing stages, lowest first
 * @param inlet least and most inlet pressure
 * @param rise least and most air temperature rise, a difference; open where the job reads no rise
 * @param statics most total external static pressure; open where the plate does not say or the job does not read it
 */
public record RatingPlate(
        String appliance, Fuel fuel, List<StagePlate> stages, Limit inlet, Limit rise, Limit statics) {
    /** Without a total external static. */
    public RatingPlate(String appliance, Fuel fuel, List<StagePlate> stages, Limit inlet, Limit rise) {
        this(appliance, fuel, stages, inlet, rise, Limit.open(Unit.INCH_OF_WATER, "not asked"));
    }

    public RatingPlate {
        Objects.requireNonNull(statics);
        Objects.requireNonNull(fuel);
        Objects.requireNonNull(inlet);
        Objects.requireNonNull(rise);
        stages = List.copyOf(stages);
        if (stages.isEmpty()) {
            throw new IllegalArgumentException("a plate has at least one firing stage");
        }
    }

    /** What looks wrong in it, in words; it may be right all the same. */
    public List<String> doubts() {
        return PlateDoubts.of(this);
    }

    /** @throws IllegalArgumentException where the plate has no such stage */
    public StagePlate stage(String key) {
        // Asked at every sample.
        for (StagePlate stage : stages) {
            if (stage.key().equals(key)) {
                return stage;
            }
        }
        throw new IllegalArgumentException("the plate has no stage \"" + key + "\"");
    }
}
