package settlemark.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.settle.ChannelReading;

/** Flue gas and static pressures in words: each value, where it is from, and what it was held against. */
final class FlueWords {
    /** How near an instrument is, in what is said of a value. */
    private static final Pattern WITHIN = Pattern.compile("(?<=; within )[^,;]+(?=,|;|$)");

    private FlueWords() {}

    /** Lines for each such step that was read. */
    static List<String> of(JobState job) {
        List<String> lines = new ArrayList<>();
        for (StepState step : job.steps()) {
            if (step.step().kind().typed()) {
                StageColumns.reading(step).ifPresent(reading -> {
                    String title = step.step().title() + (step.superseded() ? " (repeated)" : "");
                    values(reading.channels()).forEach(v -> lines.add(title + ": " + v));
                    step.verdicts().forEach(v -> lines.add(title + ": " + Wording.judged(v)));
                });
            }
        }
        return lines;
    }

    /** The values in a line for each instrument, with how near each of them is. */
    private static List<String> values(List<ChannelReading> channels) {
        Map<String, List<ChannelReading>> byInstrument = new LinkedHashMap<>();
        for (ChannelReading part : channels) {
            byInstrument
                    .computeIfAbsent(WITHIN.matcher(part.reason()).replaceFirst(""), x -> new ArrayList<>())
                    .add(part);
        }
        return byInstrument.values().stream()
                .map(parts ->
                        parts.stream().map(FlueWords::value).collect(Collectors.joining(", ")) + "; " + reason(parts))
                .toList();
    }

    private static String reason(List<ChannelReading> parts) {
        Matcher first = WITHIN.matcher(parts.get(0).reason());
        String each = parts.stream()
                .map(part -> WITHIN.matcher(part.reason()))
                .filter(Matcher::find)
                .map(Matcher::group)
                .collect(Collectors.joining(", "));
        return first.find()
                ? first.replaceFirst(Matcher.quoteReplacement(each))
                : parts.get(0).reason();
    }

    private static String value(ChannelReading part) {
        int decimals = Figures.decimals(part.expandedUncertainty());
        return Figures.subject(part.role().word()) + " " + Figures.value(part.value(), decimals) + " "
                + Figures.uncertainty(part.expandedUncertainty(), decimals) + " "
                + part.unit().symbol();
    }
}
