package settlemark.job;

import java.util.List;
import java.util.Objects;

/**
 * The rating plate, which overrides every customary number.
 *
 * @param appliance what it is, in the technician's words
 * @param fuel what it burns
 * @param stages firing stages, lowest first
 * @param inlet least and most inlet pressure
 * @param rise least and most air temperature rise, a difference
 */
public record RatingPlate(String appliance, Fuel fuel, List<StagePlate> stages, Limit inlet, Limit rise) {
    public RatingPlate {
        Objects.requireNonNull(fuel);
        Objects.requireNonNull(inlet);
        Objects.requireNonNull(rise);
        stages = List.copyOf(stages);
        if (stages.isEmpty()) {
            throw new IllegalArgumentException("a plate has at least one firing stage");
        }
    }

    /** @throws IllegalArgumentException where the plate has no such stage */
    public StagePlate stage(String key) {
        return stages.stream()
                .filter(s -> s.key().equals(key))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the plate has no stage \"" + key + "\""));
    }
}
