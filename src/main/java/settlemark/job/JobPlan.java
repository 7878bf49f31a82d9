package settlemark.job;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The acts of a job in the trade's order.
 *
 * @param key name by which it is asked for
 * @param title as shown
 * @param steps the acts, keys unique
 */
public record JobPlan(String key, String title, List<PlanStep> steps) {
    public JobPlan {
        steps = List.copyOf(steps);
        Set<String> keys = new HashSet<>();
        for (PlanStep step : steps) {
            if (!keys.add(step.key())) {
                throw new IllegalArgumentException("plan " + key + " has two steps \"" + step.key() + "\"");
            }
        }
    }
}
