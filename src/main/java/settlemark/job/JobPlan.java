package settlemark.job;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The acts of a job in the trade's order.
 *
 * @param key name by which it is asked for
 * @param title as shown
 * @param fuels gases that the rating plate may name
 * @param stages keys of the firing stages that the plate must have, lowest first
 * @param steps the acts, keys unique
 */
public record JobPlan(String key, String title, List<Fuel> fuels, List<String> stages, List<PlanStep> steps) {
    public JobPlan {
        fuels = List.copyOf(fuels);
        stages = List.copyOf(stages);
        steps = List.copyOf(steps);
        Set<String> keys = new HashSet<>();
        for (PlanStep step : steps) {
            if (!keys.add(step.key())) {
                throw new IllegalArgumentException("plan " + key + " has two steps \"" + step.key() + "\"");
            }
            if (!step.stage().isEmpty() && !stages.contains(step.stage())) {
                throw new IllegalArgumentException(
                        "plan " + key + ", step " + step.key() + ": no stage is called \"" + step.stage() + "\"");
            }
        }
    }

    /** Why the job cannot be done with a plate, each in words; empty where it can. */
    public List<String> misfits(RatingPlate plate) {
        List<String> said = new ArrayList<>();
        if (!fuels.contains(plate.fuel())) {
            said.add("the plan \"" + title + "\" is not for " + plate.fuel().words()
                    + "; choose the plan for the gas on the plate");
        }
        for (String stage : stages) {
            if (plate.stages().stream().noneMatch(s -> s.key().equals(stage))) {
                said.add("the plan \"" + title + "\" needs the plate's figures for the stage \"" + stage + "\"");
            }
        }
        return said;
    }
}
