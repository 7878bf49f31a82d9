package settlemark.record;

import java.util.ArrayList;
import java.util.List;
import settlemark.calc.Result;
import settlemark.job.Clocking;
import settlemark.job.Clocking.Progress;
import settlemark.job.Clocking.Run;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Quantity;

/** Each clocked stage in words: its runs, the gas's heat, the input and what the plate says to it. */
final class ClockWords {
    private ClockWords() {}

    /** A line for each stage and each of its runs. */
    static List<String> of(JobState job) {
        List<String> lines = new ArrayList<>();
        for (StepState step : job.steps()) {
            Clocking clocking = step.clocking();
            if (!clocking.runs().isEmpty()) {
                clocking.input().ifPresent(input -> lines.add(input(step, clocking, input)));
                for (int i = 0; i < clocking.runs().size(); i++) {
                    lines.add(step.step().title() + ", run " + (i + 1) + ": "
                            + run(clocking, clocking.runs().get(i)));
                }
            }
        }
        return lines;
    }

    /** One line a stage for the table in plain text, with its verdict. */
    static List<String> verdicts(JobState job) {
        List<String> lines = new ArrayList<>();
        for (StepState step : job.steps()) {
            if (!step.superseded() && !step.clocking().runs().isEmpty()) {
                step.clocking()
                        .input()
                        .ifPresent(input -> lines.add(step.step().title() + ": " + amount(input)
                                + step.verdicts().stream()
                                        .findFirst()
                                        .map(ClockWords::judged)
                                        .orElse("")));
            }
        }
        return lines;
    }

    private static String judged(Verdict verdict) {
        return ", " + verdict.outcome().word() + " "
                + Figures.whole(verdict.limit().lower()) + " to "
                + Figures.whole(verdict.limit().upper()) + " ("
                + verdict.limit().source() + ")";
    }

    private static String input(StepState step, Clocking clocking, Result input) {
        return step.step().title() + (step.superseded() ? " (repeated)" : "") + ": input " + amount(input)
                + ", heating value " + Figures.plain(clocking.heat().btuPerCubicFoot()) + " Btu/ft\u00B3 as delivered ("
                + clocking.heat().source() + ")";
    }

    private static String amount(Result input) {
        Quantity quantity = input.quantity();
        return Figures.whole(quantity.value()) + " \u00B1" + Figures.whole(Math.ceil(quantity.expandedUncertainty()))
                + " Btu/h";
    }

    private static String run(Clocking clocking, Run run) {
        String words = run.turns() + (run.turns() == 1 ? " turn" : " turns") + " of "
                + Figures.plain(clocking.dialCubicFeet()) + " ft\u00B3 in " + Figures.value(run.seconds(), 1) + " s"
                + clocking.input(run).map(i -> ", " + amount(i)).orElse("");
        return run.progress() == Progress.DROPPED
                ? words + "; does not count, " + run.why()
                : run.progress() == Progress.RUNNING ? words + "; not ended" : words;
    }
}
