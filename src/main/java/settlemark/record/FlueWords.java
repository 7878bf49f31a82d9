package settlemark.record;

import java.util.ArrayList;
import java.util.List;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.settle.ChannelReading;

/** Flue gas and static pressures in words: each value, where it is from, and what it was held against. */
final class FlueWords {
    private FlueWords() {}

    /** Lines for each such step that was read. */
    static List<String> of(JobState job) {
        List<String> lines = new ArrayList<>();
        for (StepState step : job.steps()) {
            if (step.step().kind().typed()) {
                StageColumns.reading(step).ifPresent(reading -> {
                    String title = step.step().title() + (step.superseded() ? " (repeated)" : "");
                    reading.channels().forEach(c -> lines.add(title + ": " + value(c)));
                    step.verdicts().forEach(v -> lines.add(title + ": " + Wording.judged(v)));
                });
            }
        }
        return lines;
    }

    private static String value(ChannelReading part) {
        int decimals = Figures.decimals(part.expandedUncertainty());
        return Figures.subject(part.role().word()) + " " + Figures.value(part.value(), decimals) + " "
                + Figures.uncertainty(part.expandedUncertainty(), decimals) + " "
                + part.unit().symbol() + ", "
                + part.reason();
    }
}
