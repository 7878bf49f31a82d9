package settlemark.job;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import settlemark.calc.Formulas;
import settlemark.calc.Inputs;
import settlemark.calc.RefusedInputException;
import settlemark.calc.Result;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/**
 * The gas meter clocked: runs of whole turns of a test dial, each timed from mark to mark. Immutable.
 *
 * @param dialCubicFeet gas that one turn of the dial lets pass, above 0 to 1000
 * @param heat the heat in that gas
 * @param runs in order, those that do not count too
 */
public record Clocking(double dialCubicFeet, GasHeat heat, List<Run> runs) {
    /** Two runs agree within this; two successive measurements of the input, 10 CFR 431 Subpart G Appendix A, 5.3. */
    public static final double AGREE = 0.02;

    /** Standard uncertainty of a run's time, both presses together, in seconds; common practice. */
    private static final double TIME_SECONDS = 0.2;
    /** What a meter in service may be off by; common practice. */
    private static final double METER_WIDTH = 0.01;

    private static final Unit CUBIC_FOOT = Unit.ucum("[cft_i]");
    private static final Unit HEAT = Unit.ucum("[Btu_IT]/[cft_i]");
    private static final Unit SECOND = Unit.ucum("s");
    /** Unit of the input. */
    public static final Unit INPUT = Unit.ucum("[Btu_IT]/h");

    public Clocking {
        Objects.requireNonNull(heat);
        if (!(dialCubicFeet > 0 && dialCubicFeet <= 1000)) {
            throw new IllegalArgumentException("a turn of the dial lets above 0 and at most 1000 ft\u00B3 pass, got "
                    + dialCubicFeet + "; it stands on the dial");
        }
        runs = List.copyOf(runs);
    }

    /** Nothing clocked. */
    public static Clocking none(Fuel fuel) {
        return new Clocking(1, GasHeat.customary(fuel), List.of());
    }

    /** How far a run has come. */
    public enum Progress {
        /** The pointer is watched. */
        RUNNING,
        /** Ended, and it counts. */
        ENDED,
        /** Does not count: dropped by the person, or the burner did not stand still. */
        DROPPED
    }

    /**
     * One run.
     *
     * @param marksNanos session times at which the pointer passed its mark, in order; one more than turns
     * @param progress how far it has come
     * @param why it does not count, empty where it does
     */
    public record Run(List<Long> marksNanos, Progress progress, String why) {
        public Run {
            marksNanos = List.copyOf(marksNanos);
        }

        /** Whole turns so far. */
        public int turns() {
            return Math.max(0, marksNanos.size() - 1);
        }

        /** From the first mark to the last, in seconds. */
        public double seconds() {
            return turns() == 0 ? 0 : (marksNanos.get(marksNanos.size() - 1) - marksNanos.get(0)) / 1e9;
        }
    }

    /** The run that goes on, empty between runs. */
    public Optional<Run> running() {
        return runs.stream().filter(r -> r.progress() == Progress.RUNNING).findFirst();
    }

    /** Runs that are ended and count, in order. */
    public List<Run> counting() {
        return runs.stream().filter(r -> r.progress() == Progress.ENDED).toList();
    }

    /** The input by one run's whole turns; empty before the first turn. */
    public Optional<Result> input(Run run) {
        return run.turns() == 0 ? Optional.empty() : Optional.of(input(run.turns(), run.seconds(), 1));
    }

    /** The input by the last two runs that count, together; by the only one where there is one. */
    public Optional<Result> input() {
        List<Run> last = lastTwo();
        int turns = last.stream().mapToInt(Run::turns).sum();
        double seconds = last.stream().mapToDouble(Run::seconds).sum();
        return last.isEmpty() ? Optional.empty() : Optional.of(input(turns, seconds, last.size()));
    }

    /** How far the last two runs that count lie apart, as a fraction of their mean; empty before there are two. */
    public Optional<Double> apart() {
        List<Run> last = lastTwo();
        if (last.size() < 2) {
            return Optional.empty();
        }
        double first = last.get(0).turns() / last.get(0).seconds();
        double second = last.get(1).turns() / last.get(1).seconds();
        return Optional.of(Math.abs(first - second) / ((first + second) / 2));
    }

    /** Whether the last two runs that count agree. */
    public boolean agreed() {
        return apart().map(a -> a <= AGREE).orElse(false);
    }

    /** What its input says to the plate, and to the step's own limits; empty before a run counts. */
    public List<Verdict> verdicts(PlanStep step, RatingPlate plate) {
        return ClockedInput.judge(step, this, plate);
    }

    /**
     * Whether the burner is on a stage by its manifold pressure; on another one a run does not count.
     *
     * @param manifold in the stage's unit, zero taken off
     */
    public static boolean burnsOn(StagePlate stage, double manifold) {
        return ClockedInput.burnsOn(stage, manifold);
    }

    private List<Run> lastTwo() {
        List<Run> all = counting();
        return all.subList(Math.max(0, all.size() - 2), all.size());
    }

    private Result input(int turns, double seconds, int runs) {
        double volume = turns * dialCubicFeet;
        double root = Math.sqrt(3);
        Quantity passed = new Quantity(volume, volume * METER_WIDTH / root, CUBIC_FOOT);
        Quantity time = new Quantity(seconds, TIME_SECONDS * Math.sqrt(runs), SECOND);
        Quantity value =
                new Quantity(heat.btuPerCubicFoot(), heat.btuPerCubicFoot() * heat.relativeWidth() / root, HEAT);
        Inputs inputs = Inputs.none()
                .with("volume", passed)
                .with("time", time)
                .with("heating-value", value)
                .with("basis", "as-delivered");
        try {
            return Formulas.find("clocked-input").orElseThrow().of(inputs).in(INPUT);
        } catch (RefusedInputException e) {
            throw new IllegalStateException("turns of a dial give an input", e);
        }
    }

    /** The mutable side, while a step runs. */
    static final class Course {
        /** A key that bounces is no turn: no dial turns this fast. */
        private static final long SHORTEST_TURN_NANOS = 1_000_000_000;

        private final List<List<Long>> marks = new ArrayList<>();
        private final List<Progress> progress = new ArrayList<>();
        private final List<String> why = new ArrayList<>();

        boolean running() {
            return !progress.isEmpty() && progress.get(progress.size() - 1) == Progress.RUNNING;
        }

        /** The pointer is at the mark: begins a run, or counts a turn of the one that goes on. */
        void mark(long timeNanos) {
            if (!running()) {
                marks.add(new ArrayList<>());
                progress.add(Progress.RUNNING);
                why.add("");
            }
            List<Long> last = marks.get(marks.size() - 1);
            if (last.isEmpty() || timeNanos - last.get(last.size() - 1) >= SHORTEST_TURN_NANOS) {
                last.add(timeNanos);
            }
        }

        /** Takes the last mark of the run that goes on back; the run with it where it was the first. */
        void unmark() {
            if (running()) {
                List<Long> last = marks.get(marks.size() - 1);
                last.remove(last.size() - 1);
                if (last.isEmpty()) {
                    marks.remove(marks.size() - 1);
                    progress.remove(progress.size() - 1);
                    why.remove(why.size() - 1);
                }
            }
        }

        /** Ends the run that goes on with its last mark; does nothing before a whole turn. */
        boolean end() {
            boolean ends = ready();
            if (ends) {
                progress.set(progress.size() - 1, Progress.ENDED);
            }
            return ends;
        }

        /** Whether the run that goes on has a whole turn. */
        boolean ready() {
            return running() && marks.get(marks.size() - 1).size() >= 2;
        }

        /** The run that goes on does not count. */
        void drop(String reason) {
            if (running()) {
                progress.set(progress.size() - 1, Progress.DROPPED);
                why.set(why.size() - 1, reason);
            }
        }

        List<Run> runs() {
            List<Run> runs = new ArrayList<>();
            for (int i = 0; i < marks.size(); i++) {
                runs.add(new Run(marks.get(i), progress.get(i), why.get(i)));
            }
            return Collections.unmodifiableList(runs);
        }
    }
}
