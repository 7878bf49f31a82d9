package settlemark.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import settlemark.calc.Result;
import settlemark.job.Clocking;
import settlemark.job.Clocking.Progress;
import settlemark.job.Clocking.Run;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/** Each clocked stage in words: its runs, the gas's heat, the input and what the plate says to it. */
final class ClockWords {
    private static final Unit HEAT = Unit.ucum("[Btu_IT]/[cft_i]");
    private static final Unit MEGAJOULE = Unit.ucum("MJ/m3");
    private static final Unit KILOWATT = Unit.ucum("kW");

    private ClockWords() {}

    /** A line for each stage, with its runs; powers in the unit that the record is shown in. */
    static List<String> of(JobState job, boolean si) {
        List<String> lines = new ArrayList<>();
        for (StepState step : job.steps()) {
            Clocking clocking = step.clocking();
            if (!clocking.runs().isEmpty()) {
                lines.add(stage(step, clocking, si));
            }
        }
        return lines;
    }

    private static String stage(StepState step, Clocking clocking, boolean si) {
        String name = step.step().name();
        StringBuilder line = new StringBuilder(name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1));
        line.append(step.superseded() ? " (repeated)" : "").append(": ");
        if (step.verdicts().isEmpty()) {
            line.append(clocking.input().map(i -> "input " + amount(i, si)).orElse("no run counts"));
        } else {
            line.append(step.verdicts().stream().map(Wording::judged).collect(Collectors.joining("; ")));
        }
        line.append(". ");
        for (int i = 0; i < clocking.runs().size(); i++) {
            line.append("Run ")
                    .append(i + 1)
                    .append(": ")
                    .append(run(clocking, clocking.runs().get(i), si))
                    .append(". ");
        }
        return line.append("Heating value ")
                .append(heat(clocking, si))
                .append('.')
                .toString();
    }

    private static String heat(Clocking clocking, boolean si) {
        double value = clocking.heat().btuPerCubicFoot();
        String figure = si
                ? Figures.value(HEAT.to(MEGAJOULE).apply(value), 2) + " MJ/m\u00B3"
                : Figures.plain(value) + " Btu/ft\u00B3";
        return figure + " as delivered (" + clocking.heat().source() + ")";
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

    private static String amount(Result input) {
        return amount(input, false);
    }

    /** With U rounded up. */
    private static String amount(Result input, boolean si) {
        Quantity quantity = si ? input.quantity().to(KILOWATT) : input.quantity();
        int decimals = Figures.decimals(quantity.expandedUncertainty());
        return si
                ? Figures.value(quantity.value(), decimals) + " "
                        + Figures.uncertainty(quantity.expandedUncertainty(), decimals) + " kW"
                : Figures.whole(quantity.value()) + " \u00B1" + Figures.whole(Math.ceil(quantity.expandedUncertainty()))
                        + " Btu/h";
    }

    private static String run(Clocking clocking, Run run, boolean si) {
        String words = run.turns() + (run.turns() == 1 ? " turn" : " turns") + " of "
                + Figures.plain(clocking.dialCubicFeet()) + " ft\u00B3 in " + Figures.value(run.seconds(), 1) + " s"
                + clocking.input(run).map(i -> ", " + amount(i, si)).orElse("");
        return run.progress() == Progress.DROPPED
                ? words + "; does not count, " + run.why()
                : run.progress() == Progress.RUNNING ? words + "; not ended" : words;
    }
}
