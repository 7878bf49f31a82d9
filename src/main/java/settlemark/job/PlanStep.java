package settlemark.job;

import java.util.List;
import java.util.Objects;
import settlemark.measure.Role;

/**
 * One act of a plan, one column of the strip.
 *
 * @param key unique within the plan
 * @param kind what kind of act
 * @param stage key of the firing stage, empty where none burns
 * @param group head over neighbouring columns, for instance {@code As found}
 * @param name short name of the column, for instance {@code low fire}
 * @param title full name, for instance {@code As found, low fire}
 * @param instruction the step in words
 * @param caution what can go wrong, never empty
 * @param press what the primary button says: the physical act that the press reports
 * @param required the channels that must settle
 * @param ticks what the person ticks, in order
 */
public record PlanStep(
        String key,
        StepKind kind,
        String stage,
        String group,
        String name,
        String title,
        String instruction,
        String caution,
        String press,
        List<Role> required,
        List<String> ticks) {
    public PlanStep {
        Objects.requireNonNull(kind);
        required = List.copyOf(required);
        ticks = List.copyOf(ticks);
        if (caution.isBlank()) {
            throw new IllegalArgumentException("step " + key + " has no caution");
        }
    }
}
