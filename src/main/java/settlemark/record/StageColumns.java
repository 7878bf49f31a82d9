package settlemark.record;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import settlemark.job.JobState;
import settlemark.job.Progress;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** The stage table as data: a column for each reading of a stage, a row for each channel and the rise. */
final class StageColumns {
    static final String RISE = "rise";

    private final List<StepState> steps;

    StageColumns(JobState job) {
        this.steps = job.steps().stream().filter(StageColumns::shown).toList();
    }

    private static boolean shown(StepState step) {
        return step.step().kind().tabled();
    }

    /** The steps that are columns, in the order taken. */
    List<StepState> steps() {
        return steps;
    }

    /** The roles that were read, in their own order. */
    List<Role> roles() {
        return roles(steps);
    }

    boolean hasRise() {
        return anyRise(steps);
    }

    /** The roles that some of the steps have read, in their own order. */
    static List<Role> roles(List<StepState> some) {
        return Arrays.stream(Role.values())
                .filter(r -> some.stream().anyMatch(s -> channel(s, r).isPresent()))
                .toList();
    }

    static boolean anyRise(List<StepState> some) {
        return some.stream().anyMatch(s -> verdict(s, RISE).isPresent());
    }

    static Optional<StageReading> reading(StepState step) {
        return step.progress() == Progress.SKIPPED ? Optional.empty() : step.reading();
    }

    static Optional<ChannelReading> channel(StepState step, Role role) {
        return reading(step).flatMap(r -> r.channel(role));
    }

    /** The verdict on a role's word, or on the rise. */
    static Optional<Verdict> verdict(StepState step, String subject) {
        return step.verdicts().stream()
                .filter(v -> v.subject().toLowerCase(Locale.ROOT).equals(subject))
                .findFirst();
    }

    /** Verdicts of a step on something that has no row. */
    List<Verdict> others(StepState step) {
        return step.verdicts().stream()
                .filter(v -> !v.subject().toLowerCase(Locale.ROOT).equals(RISE))
                .filter(v -> Role.ofWord(v.subject())
                        .map(r -> channel(step, r).isEmpty())
                        .orElse(true))
                .toList();
    }

    Optional<Unit> unit(Role role) {
        return steps.stream()
                .flatMap(s -> channel(s, role).stream())
                .map(ChannelReading::unit)
                .findFirst();
    }

    Optional<Unit> riseUnit() {
        return steps.stream()
                .flatMap(s -> verdict(s, RISE).stream())
                .map(v -> v.limit().unit())
                .findFirst();
    }

    /** Decimals of a row: where its smallest uncertainty has its first digit. */
    int decimals(Role role) {
        return Figures.decimals(steps.stream()
                .flatMap(s -> channel(s, role).stream())
                .mapToDouble(ChannelReading::expandedUncertainty)
                .filter(u -> u > 0)
                .min()
                .orElse(0));
    }

    int riseDecimals() {
        return Figures.decimals(steps.stream()
                .flatMap(s -> verdict(s, RISE).stream())
                .mapToDouble(Verdict::expandedUncertainty)
                .filter(u -> u > 0)
                .min()
                .orElse(0));
    }

    static boolean pressure(Role role) {
        return role.dimension() == Dimension.PRESSURE;
    }
}
