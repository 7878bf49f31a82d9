package settlemark.job;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import settlemark.measure.Role;
import settlemark.settle.SettleChoices;

/**
 * The acts of a job in the trade's order.
 *
 * @param key name by which it is asked for
 * @param title as shown
 * @param fuels gases that the rating plate may name
 * @param stages keys of the firing stages that the plate must have, lowest first
 * @param steps the acts, keys unique
 * @param settle what it sets of the detectors, before what the workspace says
 */
public record JobPlan(
        String key, String title, List<Fuel> fuels, List<String> stages, List<PlanStep> steps, SettleChoices settle) {
    public JobPlan {
        Objects.requireNonNull(settle);
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

    /** The same acts with other settings of the detectors. */
    public JobPlan withSettle(SettleChoices other) {
        return new JobPlan(key, title, fuels, stages, steps, other);
    }

    /** The same acts, each of whose readings is called settled by something else, as far as it has channels for that. */
    public JobPlan withSettledBy(SettledBy other) {
        return new JobPlan(
                key,
                title,
                fuels,
                stages,
                steps.stream().map(s -> s.settledBy(other)).toList(),
                settle);
    }

    /** What its record is headed with: what it reads, and whether it leaves anything. */
    public String recordTitle() {
        boolean left = steps.stream().anyMatch(s -> s.kind() == StepKind.LEFT);
        if (readsManifold()) {
            return (readsRise() || readsStatics() ? "Gas and air readings, as found" : "Gas readings, as found")
                    + (left ? " and as left" : "");
        }
        if (steps.stream().anyMatch(s -> s.kind() == StepKind.THIS_APPLIANCE || s.kind() == StepKind.ALL_APPLIANCES)) {
            return "Gas supply readings";
        }
        return steps.stream().anyMatch(s -> s.kind() == StepKind.HOLD) ? "Tightness and let-by" : "Readings";
    }

    /** Whether a stage's manifold is held against the plate. */
    public boolean readsManifold() {
        return steps.stream().anyMatch(s -> s.kind().firing());
    }

    /** Whether the rise of the air is held against the plate. */
    public boolean readsRise() {
        return steps.stream()
                .anyMatch(s -> s.kind().firing()
                        && s.required().contains(Role.SUPPLY)
                        && s.required().contains(Role.RETURN));
    }

    /** Whether a stage's input is held against the plate. */
    public boolean readsInput() {
        return steps.stream().anyMatch(s -> s.kind() == StepKind.CLOCK);
    }

    /** Whether the total external static is held against the plate. */
    public boolean readsStatics() {
        return steps.stream().anyMatch(s -> s.kind() == StepKind.STATICS);
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
        if (readsManifold()) {
            plate.stages().stream()
                    .filter(s -> stages.contains(s.key()) && Double.isNaN(s.manifoldTarget()))
                    .forEach(s ->
                            said.add("the plan \"" + title + "\" needs the plate's manifold pressure at " + s.name()));
        }
        if (readsRise() && plate.rise().isOpen()) {
            said.add("the plan \"" + title + "\" needs the plate's range of temperature rise");
        }
        return said;
    }
}
