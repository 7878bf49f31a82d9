package settlemark.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.job.JobPicture;
import settlemark.job.JobState;
import settlemark.job.Outcome;
import settlemark.job.Progress;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.job.VisitTrend;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.JobRecord;
import settlemark.settle.ChannelReading;

/** The stage table as plain text in aligned columns, one line a reading. */
public final class StageTable {
    private static final String BETWEEN = "   ";

    private final StageColumns columns;
    private final List<List<String>> lines = new ArrayList<>();

    private StageTable(JobState job) {
        this.columns = new StageColumns(job);
    }

    /** The table of a record; everything from the rig says so in its first line. */
    public static String text(JobRecord record) {
        String table = String.join(
                        "", AgainWords.of(record).stream().map(l -> l + "\n").toList())
                + text(record.job());
        return record.header().simulated() ? "SIMULATED\n" + table : table;
    }

    /**
     * The table of a job: each value with its expanded uncertainty (k = 2) and, where it was judged, the verdict in a
     * word; then the limits with their sources. Lines end in a newline.
     */
    public static String text(JobState job) {
        StageTable table = new StageTable(job);
        table.heads();
        for (StepState step : table.columns.steps()) {
            table.line(step);
        }
        String checks = String.join(
                "",
                Wording.checks(job, table.columns).stream().map(l -> l + "\n").toList());
        return table.aligned() + checks + clocked(job) + table.limits();
    }

    private static String clocked(JobState job) {
        StringBuilder lines = new StringBuilder();
        ClockWords.verdicts(job).forEach(l -> lines.append(l).append('\n'));
        FlueWords.of(job).forEach(l -> lines.append(l).append('\n'));
        job.steps().stream()
                .filter(s -> s.step().kind() == StepKind.CLOSE && !s.superseded())
                .forEach(s -> s.verdicts().stream()
                        .filter(v -> !v.outcome().accepted())
                        .forEach(v -> lines.append(s.step().title())
                                .append(": ")
                                .append(Wording.judged(v))
                                .append('\n')));
        JobPicture.of(job)
                .forEach(l ->
                        lines.append("Picture: ").append(SaidUnits.printed(l)).append('\n'));
        VisitTrend.of(job).forEach(l -> lines.append("Visits: ").append(l).append('\n'));
        job.notices().forEach(n -> lines.append("SAFETY: ").append(n.words()).append('\n'));
        return lines.toString();
    }

    private void heads() {
        List<String> heads = new ArrayList<>();
        heads.add("");
        for (Role role : columns.roles()) {
            heads.add(
                    role.word() + columns.unit(role).map(u -> " " + u.symbol()).orElse(""));
        }
        if (columns.hasRise()) {
            heads.add("rise" + columns.riseUnit().map(u -> " " + u.symbol()).orElse(""));
        }
        heads.add("verdict");
        lines.add(heads);
    }

    private void line(StepState step) {
        List<String> cells = new ArrayList<>();
        cells.add(step.step().title() + (step.superseded() ? " (repeated)" : ""));
        for (Role role : columns.roles()) {
            Optional<Verdict> verdict = StageColumns.verdict(step, role.word());
            cells.add(StageColumns.channel(step, role)
                    .map(c -> cell(c, verdict, columns.decimals(role)))
                    .orElse("-"));
        }
        if (columns.hasRise()) {
            cells.add(StageColumns.verdict(step, StageColumns.RISE)
                    .map(v -> Figures.value(v.value(), Figures.decimals(v, columns.riseDecimals())) + " "
                            + Figures.uncertainty(v.expandedUncertainty(), columns.riseDecimals()) + " "
                            + v.outcome().word())
                    .orElse("-"));
        }
        cells.add(word(step));
        lines.add(cells);
    }

    private static String cell(ChannelReading channel, Optional<Verdict> verdict, int decimals) {
        int shown = verdict.map(v -> Figures.decimals(v, decimals)).orElse(decimals);
        return Figures.value(channel.value(), shown)
                + " "
                + Figures.uncertainty(
                        verdict.map(Verdict::expandedUncertainty).orElse(channel.expandedUncertainty()), decimals)
                + verdict.map(v -> " " + v.outcome().word()).orElse("")
                + (channel.settled() ? "" : " not settled");
    }

    private static String word(StepState step) {
        if (step.progress() == Progress.SKIPPED) {
            return "skipped: " + step.skipReason();
        }
        if (StageColumns.reading(step).isEmpty()) {
            return "not taken";
        }
        String hand = StageColumns.reading(step).filter(r -> r.byHand()).isPresent() ? ", taken by hand" : "";
        return step.outcome().map(Outcome::word).orElse("not judged") + hand;
    }

    private String aligned() {
        int[] widths = new int[lines.get(0).size()];
        for (List<String> line : lines) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], length(line.get(i)));
            }
        }
        StringBuilder text = new StringBuilder();
        for (List<String> line : lines) {
            StringBuilder row = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                row.append(line.get(i))
                        .append(" ".repeat(widths[i] - length(line.get(i))))
                        .append(BETWEEN);
            }
            text.append(row.toString().stripTrailing()).append('\n');
        }
        return text.toString();
    }

    private static int length(String text) {
        return text.codePointCount(0, text.length());
    }

    private String limits() {
        StringBuilder text = new StringBuilder("Uncertainty at k = 2.");
        List<String> said = new ArrayList<>();
        for (StepState step : columns.steps()) {
            for (Verdict verdict : step.verdicts()) {
                String stage =
                        step.step().stage().isEmpty() ? "" : ", " + step.step().name();
                String limit = verdict.subject() + stage + ": " + limit(verdict);
                if (!said.contains(limit)) {
                    said.add(limit);
                    text.append(said.size() == 1 ? " Limits:" : "")
                            .append("\n  ")
                            .append(limit);
                }
            }
        }
        return text.append('\n').toString();
    }

    private static String limit(Verdict verdict) {
        Unit unit = verdict.limit().unit();
        return Figures.limit(verdict) + " " + unit.symbol() + " ("
                + verdict.limit().source() + ")";
    }
}
