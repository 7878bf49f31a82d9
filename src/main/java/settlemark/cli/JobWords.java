package settlemark.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import settlemark.job.JobState;
import settlemark.job.Progress;
import settlemark.job.RatingPlate;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;

/** A job in lines of text. */
final class JobWords {
    private JobWords() {}

    /** The step and its caution in one line. */
    static String head(JobState job, StepState step) {
        int at = job.steps().indexOf(step) + 1;
        String instruction = step.step().instruction();
        return "[" + at + "/" + job.steps().size() + "] " + step.step().title() + ". " + instruction
                + (instruction.endsWith(".") ? "" : ".") + " CAUTION: "
                + step.step().caution();
    }

    static List<String> plate(RatingPlate plate) {
        List<String> lines = new ArrayList<>();
        lines.add("  " + plate.appliance() + ", " + plate.fuel().words());
        lines.add("  inlet "
                + range(
                        plate.inlet().lower(),
                        plate.inlet().upper(),
                        plate.inlet().unit()));
        if (!plate.rise().isOpen()) {
            lines.add("  rise "
                    + range(
                            plate.rise().lower(),
                            plate.rise().upper(),
                            plate.rise().unit()));
        }
        if (!plate.statics().isOpen()) {
            lines.add(
                    "  total external static at most " + number(plate.statics().upper()) + " "
                            + plate.statics().unit().symbol());
        }
        if (!plate.control().isOpen()) {
            lines.add("  gas control's own inlet at most "
                    + number(plate.control().upper()) + " "
                    + plate.control().unit().symbol());
        }
        if (plate.site().known()) {
            lines.add("  " + plate.site().words());
        }
        plate.stages()
                .forEach(s -> lines.add("  " + s.name()
                        + (Double.isNaN(s.manifoldTarget())
                                ? ""
                                : ", manifold " + number(s.manifoldTarget()) + " \u00b1 "
                                        + number(s.manifoldTolerance()) + " "
                                        + s.unit().symbol())
                        + (s.inputBtuPerHour() > 0
                                ? String.format(Locale.ROOT, ", %.0f Btu/h", s.inputBtuPerHour())
                                : "")));
        plate.doubts().forEach(d -> lines.add("  LOOK AGAIN: " + d));
        return lines;
    }

    /** What came of a step that is done. */
    static List<String> result(StepState step) {
        List<String> lines = new ArrayList<>();
        if (step.progress() == Progress.SKIPPED) {
            lines.add("  skipped: " + step.skipReason());
            return lines;
        }
        step.reading().ifPresent(r -> {
            for (ChannelReading part : r.channels()) {
                lines.add("  " + part.role().word() + " "
                        + value(part.value(), 2 * part.standardUncertainty(), part.unit()) + ": " + part.reason());
            }
        });
        step.verdicts().forEach(v -> lines.add("  " + verdict(v)));
        return lines;
    }

    private static String verdict(Verdict verdict) {
        Unit unit = verdict.limit().unit();
        return verdict.subject() + " " + value(verdict.value(), verdict.expandedUncertainty(), unit) + ", "
                + range(verdict.limit().lower(), verdict.limit().upper(), unit) + " ("
                + verdict.limit().source() + "): " + verdict.outcome().word();
    }

    private static String value(double value, double expanded, Unit unit) {
        // An uncertainty is never rounded down.
        double outward = expanded >= 1000 ? Math.ceil(expanded) : Math.ceil(expanded * 100 - 1e-9) / 100;
        return number(value) + " \u00b1 " + number(outward) + " " + unit.symbol();
    }

    private static String range(double lower, double upper, Unit unit) {
        if (Double.isInfinite(lower)) {
            return "at most " + number(upper) + " " + unit.symbol();
        }
        if (Double.isInfinite(upper)) {
            return "at least " + number(lower) + " " + unit.symbol();
        }
        return number(lower) + " to " + number(upper) + " " + unit.symbol();
    }

    static String number(double value) {
        String text = String.format(Locale.ROOT, Math.abs(value) >= 1000 ? "%.0f" : "%.2f", value);
        return text.equals("-0.00") ? "0.00" : text;
    }

    /** What Enter says at a step, as the trade says it. */
    static String press(StepState step) {
        StepKind kind = step.step().kind();
        return kind == StepKind.RECORD ? "who did the work" : step.step().press();
    }
}
