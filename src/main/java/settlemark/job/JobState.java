package settlemark.job;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Dimension;
import settlemark.measure.Role;

/**
 * The whole job as it stands; immutable.
 *
 * @param plan what is to be done
 * @param plate the rating plate in force
 * @param steps every step in the order taken, repeated ones beside the old
 * @param current index of the step at hand; the number of steps when all are done
 * @param zeroOffsets what is taken off each pressure channel, in the job's pressure unit
 * @param person who did the work, empty before it is said
 * @param notes in order
 * @param notices what can hurt people, as it was noticed
 * @param instruments what measured, as far as it was said, in order
 * @param visits what earlier visits to the appliance left, oldest first
 * @param settings other settings of what counts as settled, as they were said, in order
 */
public record JobState(
        JobPlan plan,
        RatingPlate plate,
        List<StepState> steps,
        int current,
        Map<Role, Double> zeroOffsets,
        String person,
        List<NoteTaken> notes,
        List<SafetyNotice> notices,
        List<InstrumentUse> instruments,
        List<Act.Former> visits,
        List<SettingsChange> settings) {
    /** Of instruments that nothing is known of, with nothing noticed that can hurt people. */
    public JobState(
            JobPlan plan,
            RatingPlate plate,
            List<StepState> steps,
            int current,
            Map<Role, Double> zeroOffsets,
            String person,
            List<NoteTaken> notes) {
        this(plan, plate, steps, current, zeroOffsets, person, notes, List.of(), List.of(), List.of(), List.of());
    }

    public JobState {
        steps = List.copyOf(steps);
        zeroOffsets = Map.copyOf(zeroOffsets);
        notes = List.copyOf(notes);
        notices = List.copyOf(notices);
        instruments = List.copyOf(instruments);
        visits = List.copyOf(visits);
        settings = List.copyOf(settings);
    }

    /** A person's note. */
    public record NoteTaken(long timeNanos, String step, String text) {}

    /** What corrects a role's values now: of a pressure none before its zero is known. */
    public Optional<InstrumentUse> corrects(Role role) {
        boolean zeroed = role.dimension() != Dimension.PRESSURE || zeroOffsets.containsKey(role);
        return zeroed ? InstrumentsInUse.at(instruments, role) : Optional.empty();
    }

    public Optional<StepState> currentStep() {
        return current < steps.size() ? Optional.of(steps.get(current)) : Optional.empty();
    }

    public Optional<StepState> step(String key) {
        return steps.stream().filter(s -> s.key().equals(key)).findFirst();
    }

    /** The first safety notice that the person has not seen yet. */
    public Optional<SafetyNotice> alarm() {
        return notices.stream().filter(n -> !n.seen()).findFirst();
    }

    /** The step of another standing earlier in the plan that was done after this one; of what was done again, none. */
    public Optional<StepState> doneBefore(StepState step) {
        if (step.progress() != Progress.TAKEN || step.superseded() || step.again() || step.doneNanos() <= 0) {
            return Optional.empty();
        }
        return steps.subList(0, steps.indexOf(step)).stream()
                .filter(s -> s.progress() == Progress.TAKEN && !s.again() && s.doneNanos() > step.doneNanos())
                .findFirst();
    }

    public boolean complete() {
        return steps.stream().allMatch(StepState::done);
    }

    /** Steps that a complete record still needs. */
    public List<StepState> missing() {
        return steps.stream()
                .filter(s -> !s.superseded() && s.progress() != Progress.TAKEN)
                .toList();
    }

    /** Whether a step says how the appliance was left: what was found does where its stage is not read again. */
    public boolean stands(StepState step) {
        return !step.superseded()
                && (step.step().kind() != StepKind.FOUND
                        || plan.steps().stream()
                                .noneMatch(s -> s.kind() == StepKind.LEFT
                                        && s.stage().equals(step.step().stage())));
    }

    /** True where something as left (or the shut valve, or the closing zero) lies outside its limit. */
    public boolean leftOutside() {
        return steps.stream()
                .filter(this::stands)
                .anyMatch(s -> s.outcome().map(o -> !o.accepted()).orElse(false));
    }
}
