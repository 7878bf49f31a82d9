package settlemark.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import settlemark.chart.Mark;
import settlemark.job.JobState;
import settlemark.job.Outcome;
import settlemark.job.Progress;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** What a job's state says, in sentences. Nothing is judged here that the job has not judged. */
final class Wording {
    private final JobState job;
    private final Times times;

    Wording(JobState job, Times times) {
        this.job = job;
        this.times = times;
    }

    static Mark mark(Outcome outcome) {
        return switch (outcome) {
            case INSIDE -> Mark.INSIDE;
            case CLOSE_INSIDE -> Mark.CLOSE;
            case CLOSE_OUTSIDE, OUTSIDE -> Mark.OUTSIDE;
        };
    }

    /** The mark of a whole step. */
    static Mark mark(StepState step) {
        if (step.progress() == Progress.SKIPPED) {
            return Mark.SKIPPED;
        }
        return step.outcome().map(Wording::mark).orElse(Mark.NOT_TAKEN);
    }

    static String word(StepState step) {
        if (step.progress() == Progress.SKIPPED) {
            return "skipped";
        }
        if (StageColumns.reading(step).isEmpty()) {
            return "not taken";
        }
        return step.outcome().map(Outcome::word).orElse("not judged");
    }

    private List<StepState> current() {
        return job.steps().stream().filter(s -> !s.superseded()).toList();
    }

    private List<StepState> left() {
        return current().stream().filter(s -> s.step().kind() == StepKind.LEFT).toList();
    }

    /** What the headline speaks of: the stages as left, or every check of a job that leaves none. */
    private List<StepState> judged() {
        return left().isEmpty() ? current().stream().filter(job::stands).toList() : left();
    }

    private boolean read() {
        return left().isEmpty()
                ? job.missing().stream().allMatch(s -> s.step().kind() == StepKind.RECORD)
                        && judged().stream().anyMatch(s -> !s.verdicts().isEmpty())
                : left().stream()
                        .allMatch(s -> StageColumns.reading(s).isPresent()
                                && !s.verdicts().isEmpty());
    }

    /** The mark beside the headline. */
    Mark headMark() {
        if (job.leftOutside()) {
            return Mark.OUTSIDE;
        }
        if (!read()) {
            return Mark.NOT_TAKEN;
        }
        return closeLeft() > 0 ? Mark.CLOSE : Mark.INSIDE;
    }

    private long closeLeft() {
        return judged().stream()
                .flatMap(s -> s.verdicts().stream())
                .filter(v -> v.outcome() == Outcome.CLOSE_INSIDE)
                .count();
    }

    /** The verdict at a glance. */
    String headline() {
        if (job.leftOutside()) {
            List<String> outside = outside();
            return outside.size() == 1
                    ? outside.get(0) + " is outside its limit"
                    : outside.size() + " values are outside their limits";
        }
        boolean stages = !left().isEmpty();
        if (!read()) {
            return stages ? "As left: not every stage was read" : "Not every check was made";
        }
        long close = closeLeft();
        String all = stages ? "As left: every reading inside its limit" : "Every check inside its limit";
        return close == 0 ? all : all + (close == 1 ? ", one of them close to it" : ", " + close + " close to it");
    }

    /** What stands below the headline. */
    String underHeadline() {
        StringBuilder text = new StringBuilder("Simple acceptance, U at k = 2.");
        List<String> outside = outside();
        if (outside.size() > 1) {
            text.append(" Outside: ").append(String.join("; ", outside)).append('.');
        }
        List<String> found = foundOutside();
        if (!found.isEmpty()) {
            text.append(" As found, outside: ").append(String.join(", ", found)).append('.');
        }
        List<String> missing = job.missing().stream()
                .filter(s -> s.step().kind() != StepKind.RECORD)
                .map(s -> s.step().title())
                .toList();
        if (!missing.isEmpty()) {
            text.append(" Not complete: ").append(String.join("; ", missing)).append('.');
        }
        return text.toString();
    }

    /** {@code As left, high fire: manifold} for each value outside its limit, but for those found and read again. */
    private List<String> outside() {
        return current().stream()
                .filter(job::stands)
                .flatMap(s -> refused(s).map(v -> s.step().title() + ": " + Figures.subject(v.subject())))
                .toList();
    }

    /** {@code manifold at high fire} for each value that was found outside its limit before it was set. */
    private List<String> foundOutside() {
        return current().stream()
                .filter(s -> !job.stands(s))
                .flatMap(s -> refused(s)
                        .map(v ->
                                Figures.subject(v.subject()) + " at " + s.step().name()))
                .toList();
    }

    private static Stream<Verdict> refused(StepState step) {
        return step.verdicts().stream().filter(v -> !v.outcome().accepted());
    }

    /** Verdicts that stand in no column. */
    static List<String> checks(JobState job, StageColumns columns) {
        List<String> checks = new ArrayList<>();
        for (StepState step : job.steps()) {
            StepKind kind = step.step().kind();
            if (kind == StepKind.CLOSE || kind == StepKind.CLOCK || kind.typed()) {
                continue; // stand with the zeros, with the meter and with the flue gas
            }
            boolean column = columns.steps().contains(step);
            List<Verdict> verdicts = column ? columns.others(step) : step.verdicts();
            verdicts.forEach(v -> checks.add(step.step().title() + ": " + judged(v)));
        }
        return checks;
    }

    /** Value, limit, its source, and the outcome. */
    static String judged(Verdict verdict) {
        int decimals = Figures.decimals(verdict.expandedUncertainty());
        String unit = verdict.limit().unit().symbol();
        return Figures.subject(verdict.subject()) + " "
                + Figures.value(verdict.value(), Figures.decimals(verdict, decimals)) + " "
                + Figures.uncertainty(verdict.expandedUncertainty(), decimals) + " " + unit + ", limit "
                + Figures.limit(verdict) + " " + unit + " ("
                + verdict.limit().source() + "): "
                + verdict.outcome().word();
    }

    /** The zero before and after. */
    List<String> zeros() {
        List<String> lines = new ArrayList<>();
        zeroReading(StepKind.ZERO).ifPresent(r -> {
            List<String> taken = new ArrayList<>();
            for (Role role : Role.values()) {
                Optional<Double> offset = Optional.ofNullable(job.zeroOffsets().get(role));
                r.channel(role)
                        .filter(c -> offset.isPresent())
                        .ifPresent(c -> taken.add(role.word() + " " + signed(offset.orElseThrow(), c) + " "
                                + c.unit().symbol()));
            }
            lines.add("Before, " + times.clock(r.timeNanos()) + ": " + String.join(", ", taken)
                    + ", taken off every pressure after it");
        });
        current().stream()
                .filter(s -> s.step().kind() == StepKind.CLOSE)
                .flatMap(s -> s.verdicts().stream())
                .forEach(v -> lines.add("After: " + judged(v)));
        if (lines.size() > 1) {
            return lines;
        }
        zeroReading(StepKind.CLOSE).ifPresent(r -> {
            List<String> drift = r.channels().stream()
                    .map(c -> c.role().word() + " " + signed(c.value(), c) + " "
                            + Figures.uncertainty(c.expandedUncertainty(), Figures.decimals(c.expandedUncertainty()))
                            + " " + c.unit().symbol())
                    .toList();
            lines.add("After, " + times.clock(r.timeNanos()) + ", drifted by: " + String.join(", ", drift));
        });
        return lines;
    }

    private static String signed(double value, ChannelReading channel) {
        int decimals = Figures.decimals(channel.expandedUncertainty()) + 1;
        String text = Figures.value(value, decimals);
        return value > 0 && !text.startsWith("\u2212") ? "+" + text : text;
    }

    private Optional<StageReading> zeroReading(StepKind kind) {
        return current().stream()
                .filter(s -> s.step().kind() == kind)
                .findFirst()
                .flatMap(StageColumns::reading);
    }

    /** What could have hurt people, with the times at which it was noticed, seen and over. */
    List<String> safety() {
        return job.notices().stream()
                .map(n -> times.clock(n.sinceNanos()) + " " + n.words()
                        + (n.seen() ? "; seen by the person " + times.clock(n.seenNanos()) : "; not acknowledged")
                        + (n.cured() ? "; over " + times.clock(n.curedNanos()) : "; not over"))
                .toList();
    }

    /** Findings of the steps, in order. */
    List<String> remarks() {
        List<String> remarks = new ArrayList<>();
        for (StepState step : job.steps()) {
            step.remarks().forEach(r -> remarks.add(step.step().title() + ": " + SaidUnits.printed(r)));
        }
        return remarks;
    }

    /** Overdue instruments, and where the plan was not followed: skipped, repeated, by hand, not settled, not ticked. */
    List<String> deviations() {
        List<String> deviations = new ArrayList<>(new InstrumentWords(job, times.date()).overdue());
        for (StepState step : job.steps()) {
            String title = step.step().title();
            if (step.progress() == Progress.SKIPPED) {
                deviations.add(title + ": skipped, " + step.skipReason());
            }
            if (step.superseded()) {
                deviations.add(title + ": done again later; this reading does not stand");
            }
            job.doneBefore(step)
                    .ifPresent(other -> deviations.add(
                            title + ": done before " + other.step().title() + ", which comes first in the plan"));
            for (StageReading reading : step.readings()) {
                if (reading.byHand()) {
                    deviations.add(title + ": taken by hand, " + reading.handReason() + unsettled(reading));
                }
            }
            if (step.progress() == Progress.TAKEN) {
                step.step().ticks().stream()
                        .filter(t -> !step.ticked().containsKey(t))
                        .forEach(t -> deviations.add(title + ": not ticked, " + t));
            }
        }
        return deviations;
    }

    private static String unsettled(StageReading reading) {
        List<String> roles = reading.channels().stream()
                .filter(c -> !c.settled())
                .map(c -> c.role().word())
                .toList();
        return roles.isEmpty() ? "" : " (not settled: " + String.join(", ", roles) + ")";
    }

    /** What the person ticked: a line for all that was ticked at the same minutes. */
    List<String> ticked() {
        Map<String, List<String>> when = new LinkedHashMap<>();
        for (StepState step : current()) {
            for (String item : step.step().ticks()) {
                Long at = step.ticked().get(item);
                if (at != null) {
                    when.computeIfAbsent(item, key -> new ArrayList<>()).add(times.minute(at));
                }
            }
        }
        Map<List<String>, List<String>> together = new LinkedHashMap<>();
        when.forEach((item, at) ->
                together.computeIfAbsent(at, key -> new ArrayList<>()).add(item));
        List<String> lines = new ArrayList<>();
        together.forEach((at, items) -> lines.add(String.join("; ", items) + ", " + String.join(", ", at)));
        return lines;
    }

    List<String> notes() {
        return job.notes().stream()
                .map(n -> times.minute(n.timeNanos()) + " " + n.text())
                .toList();
    }

    /** Each caution once, in the order of the steps. */
    List<String> cautions() {
        return current().stream().map(s -> s.step().caution()).distinct().toList();
    }
}
