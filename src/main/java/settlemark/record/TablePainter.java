package settlemark.record;

import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import settlemark.chart.FoldedCell;
import settlemark.chart.Mark;
import settlemark.chart.ValueRange;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Role;
import settlemark.session.JobRecord;
import settlemark.settle.ChannelReading;

/** Paints the stage table: readings side by side, as found beside as left, on the same small axis. */
final class TablePainter {
    private static final double LABEL = 104;
    private static final double ROW = 25;
    private static final double ROW_UNJUDGED = 17;
    private static final double TRACE = 40;
    private static final int MOST_COLUMNS = 6;
    private static final String ELSEWHERE = " \u2020";

    private final Times times;
    private final StageColumns columns;
    private final Flow flow;
    private final Structure structure;
    private final WindowTraces traces;

    TablePainter(JobRecord record, StageColumns columns, Flow flow) {
        this.times = new Times(record.header());
        this.columns = columns;
        this.flow = flow;
        this.structure = flow.structure();
        this.traces = new WindowTraces(record);
    }

    void write() throws IOException {
        List<StepState> steps = columns.steps();
        for (int from = 0; from < steps.size(); from += MOST_COLUMNS) {
            block(steps.subList(from, Math.min(steps.size(), from + MOST_COLUMNS)));
        }
    }

    private void block(List<StepState> steps) throws IOException {
        List<Role> roles = StageColumns.roles(steps);
        boolean rise = StageColumns.anyRise(steps);
        int rows = roles.size() + (rise ? 1 : 0);
        flow.need(30 + 2 * TRACE + rows * ROW + 34);
        double width = (Flow.WIDTH - LABEL) / Math.max(5, steps.size());
        double top = flow.y() - 6;
        structure.begin("Table");
        structure.in("TR", () -> heads(steps, width));
        traceRow(steps, width, true);
        for (Role role : roles) {
            structure.in("TR", () -> row(role, steps, width));
        }
        traceRow(steps, width, false);
        if (rise) {
            structure.in("TR", () -> riseRow(steps, width));
        }
        structure.in("TR", () -> verdictRow(steps, width));
        structure.end();
        for (int i = 0; i < steps.size(); i++) {
            double x = Flow.LEFT + LABEL + i * width;
            flow.sheet().line(x, top, x, flow.y(), Sheet.THEME.hair(), 0.8);
        }
        flow.down(4);
        structure.in("P", () -> legend(steps));
    }

    private void heads(List<StepState> steps, double width) throws IOException {
        Sheet sheet = flow.sheet();
        structure.head(
                true,
                () -> sheet.text("value \u00B1U, k = 2", Flow.LEFT, flow.y() + 15, Face.SMALL, Sheet.THEME.ink2()));
        for (int i = 0; i < steps.size(); i++) {
            StepState step = steps.get(i);
            double right = right(i, width);
            structure.head(true, () -> head(step, right, width - 8));
        }
        flow.down(31);
    }

    private void head(StepState step, double right, double room) {
        String group = step.step().group().isEmpty()
                ? step.step().title()
                : step.step().group();
        head(group, right, flow.y() + 4, Face.NAME, room, color(step));
        head(step.step().name(), right, flow.y() + 15, Face.BODY, room, Sheet.THEME.ink2());
        String when =
                StageColumns.reading(step).map(r -> times.clock(r.timeNanos())).orElse("");
        head(step.superseded() ? "repeated" : when, right, flow.y() + 24, Face.SMALL, room, Sheet.THEME.ink2());
        if (step.superseded()) {
            flow.sheet().line(right - room, flow.y() + 1, right, flow.y() + 1, Sheet.THEME.ink(), 0.9);
        }
    }

    private void head(String text, double right, double baseline, Face face, double room, Color color) {
        Face fitting = face.fitting(text, room);
        flow.sheet().right(fitting.cut(text, room), right, baseline, fitting, color);
    }

    private static double right(int column, double width) {
        return Flow.LEFT + LABEL + (column + 1) * width - 4;
    }

    private static Color color(StepState step) {
        return step.superseded() ? Sheet.THEME.ink2() : Sheet.THEME.ink();
    }

    /** The small traces of the pressures stand above their rows, those of the temperatures below theirs. */
    private void traceRow(List<StepState> steps, double width, boolean pressures) throws IOException {
        List<Role> roles = StageColumns.roles(steps).stream()
                .filter(r -> StageColumns.pressure(r) == pressures)
                .toList();
        if (roles.isEmpty() || !traces.any(steps, roles)) {
            return;
        }
        structure.in("TR", () -> traceRow(steps, width, roles));
    }

    private void traceRow(List<StepState> steps, double width, List<Role> roles) throws IOException {
        rule(Sheet.THEME.hair());
        Sheet sheet = flow.sheet();
        String names = roles.stream().map(Role::word).collect(Collectors.joining(" and "));
        structure.head(false, () -> {
            sheet.text(names, Flow.LEFT, flow.y() + TRACE / 2 - 1, Face.SMALL, Sheet.THEME.ink2());
            String under = roles.size() == 1 ? "trace" : "traces, one axis";
            sheet.text(under, Flow.LEFT, flow.y() + TRACE / 2 + 8, Face.SMALL, Sheet.THEME.ink2());
        });
        for (int i = 0; i < steps.size(); i++) {
            StepState step = steps.get(i);
            double x = Flow.LEFT + LABEL + i * width + 4;
            Rectangle2D area = new Rectangle2D.Double(x, flow.y() + 1, width - 8, TRACE - 3);
            Optional<WindowTraces.Cell> cell = traces.cell(step, roles);
            ValueRange range = traces.range(steps, roles);
            structure.in("TD", () -> {
                if (cell.isPresent()) {
                    trace(
                            cell.get(),
                            range,
                            area,
                            "trace of " + names + ", " + step.step().title());
                }
            });
        }
        flow.down(TRACE);
    }

    private void trace(WindowTraces.Cell cell, ValueRange range, Rectangle2D area, String words) throws IOException {
        new FoldedCell(Sheet.THEME, 0.7)
                .draw(
                        flow.sheet().figure(words),
                        area,
                        range,
                        cell.fromNanos(),
                        cell.toNanos(),
                        cell.lines(),
                        cell.settled(),
                        true);
    }

    private void rule(Color color) {
        flow.sheet().line(Flow.LEFT, flow.y(), Flow.RIGHT, flow.y(), color, 0.8);
    }

    private void row(Role role, List<StepState> steps, double width) throws IOException {
        String unit = columns.unit(role).map(u -> u.symbol()).orElse("");
        Function<StepState, Optional<Verdict>> verdicts = s -> StageColumns.verdict(s, role.word());
        boolean judged = steps.stream().anyMatch(s -> verdicts.apply(s).isPresent());
        label(role.word(), unit, judged ? usual(verdicts) : Optional.empty());
        for (int i = 0; i < steps.size(); i++) {
            StepState step = steps.get(i);
            Optional<ChannelReading> channel = StageColumns.channel(step, role);
            Optional<Verdict> verdict = StageColumns.verdict(step, role.word());
            double right = right(i, width);
            structure.in(
                    "TD",
                    () -> channel.ifPresent(c -> {
                        String star = c.settled() ? "" : "*";
                        cell(
                                step,
                                right,
                                width,
                                c.value(),
                                c.expandedUncertainty(),
                                columns.decimals(role),
                                verdict,
                                star);
                    }));
        }
        flow.down(judged ? ROW : ROW_UNJUDGED);
    }

    private void riseRow(List<StepState> steps, double width) throws IOException {
        Function<StepState, Optional<Verdict>> rise = s -> StageColumns.verdict(s, StageColumns.RISE);
        label(StageColumns.RISE, columns.riseUnit().map(u -> u.symbol()).orElse(""), usual(rise));
        for (int i = 0; i < steps.size(); i++) {
            StepState step = steps.get(i);
            Optional<Verdict> verdict = rise.apply(step);
            double right = right(i, width);
            structure.in(
                    "TD",
                    () -> verdict.ifPresent(v -> cell(
                            step,
                            right,
                            width,
                            v.value(),
                            v.expandedUncertainty(),
                            columns.riseDecimals(),
                            verdict,
                            "")));
        }
        flow.down(ROW);
    }

    private void label(String name, String unit, Optional<String> limitSource) throws IOException {
        rule(Sheet.THEME.hair());
        structure.head(false, () -> labelText(name, unit, limitSource));
    }

    private void labelText(String name, String unit, Optional<String> limitSource) {
        Sheet sheet = flow.sheet();
        String capital = name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
        sheet.text(capital, Flow.LEFT, flow.y() + 11, Face.NAME);
        sheet.text(unit, Flow.LEFT + Face.NAME.width(capital) + 5, flow.y() + 11, Face.BODY, Sheet.THEME.ink2());
        limitSource.ifPresent(source -> sheet.text(
                Face.FINE.cut("limit: " + source, LABEL - 8),
                Flow.LEFT,
                flow.y() + 20.5,
                Face.FINE,
                Sheet.THEME.ink2()));
    }

    /** Where most limits of a row come from; those from elsewhere are marked and named below the table. */
    private Optional<String> usual(Function<StepState, Optional<Verdict>> verdicts) {
        Map<String, Long> sources = columns.steps().stream()
                .flatMap(s -> verdicts.apply(s).stream())
                .collect(Collectors.groupingBy(v -> v.limit().source(), TreeMap::new, Collectors.counting()));
        return sources.entrySet().stream().max(Map.Entry.comparingByValue()).map(Map.Entry::getKey);
    }

    private boolean unusual(Verdict verdict) {
        return usual(row(verdict)).filter(verdict.limit().source()::equals).isEmpty();
    }

    private static Function<StepState, Optional<Verdict>> row(Verdict verdict) {
        String subject = verdict.subject().toLowerCase(Locale.ROOT);
        return s -> StageColumns.verdict(s, subject);
    }

    /** A value with its uncertainty; where it was judged, its mark and below it the limit. */
    private void cell(
            StepState step,
            double right,
            double width,
            double value,
            double expanded,
            int decimals,
            Optional<Verdict> verdict,
            String star) {
        Sheet sheet = flow.sheet();
        String after = " " + Figures.uncertainty(expanded, decimals) + star;
        sheet.right(after, right, flow.y() + 11, Face.SMALL, Sheet.THEME.ink2());
        int shown = verdict.map(v -> Figures.decimals(v, decimals)).orElse(decimals);
        String text = Figures.value(value, shown);
        double end = right - Face.SMALL.width(after);
        Face face = verdict.isPresent() ? Face.VALUE : new Face(Face.VALUE.size(), false);
        sheet.right(text, end, flow.y() + 11, face, color(step));
        if (verdict.isPresent()) {
            Verdict v = verdict.get();
            sheet.mark(Wording.mark(v.outcome()), right - width + 9, flow.y() + 4, 8);
            String limit = Figures.limit(v) + (unusual(v) ? ELSEWHERE : "");
            Face fine = Face.FINE.fitting(limit, width - 8);
            sheet.right(fine.cut(limit, width - 8), right, flow.y() + 20.5, fine, Sheet.THEME.ink2());
        }
    }

    private void verdictRow(List<StepState> steps, double width) throws IOException {
        rule(Sheet.THEME.rule());
        Sheet sheet = flow.sheet();
        structure.head(false, () -> sheet.text("Verdict", Flow.LEFT, flow.y() + 14, Face.NAME));
        for (int i = 0; i < steps.size(); i++) {
            StepState step = steps.get(i);
            Mark mark = Wording.mark(step);
            double right = right(i, width);
            String word = Wording.word(step);
            Face face = Face.SMALL.fitting(word, width - 24);
            sheet.mark(mark, right - 12, flow.y() + 4.5, 12);
            Color ink = mark == Mark.OUTSIDE ? Sheet.THEME.fault() : Sheet.THEME.ink();
            structure.in("TD", () -> sheet.right(face.cut(word, width - 24), right - 16, flow.y() + 13, face, ink));
        }
        flow.down(21);
        rule(Sheet.THEME.rule());
    }

    private void legend(List<StepState> steps) {
        boolean unsettled = steps.stream()
                .flatMap(s -> StageColumns.reading(s).stream())
                .flatMap(r -> r.channels().stream())
                .anyMatch(c -> !c.settled());
        List<String> lines = new ArrayList<>();
        if (unsettled) {
            lines.add("* had not settled");
        }
        for (StepState step : steps) {
            step.verdicts().stream()
                    .filter(this::inRow)
                    .filter(this::unusual)
                    .forEach(v -> lines.add("\u2020 limit of " + v.subject() + ", "
                            + step.step().title() + ": " + v.limit().source()));
        }
        if (!lines.isEmpty()) {
            for (String line : Face.FINE.wrap(String.join("; ", lines), Flow.WIDTH)) {
                flow.down(8);
                flow.sheet().text(line, Flow.LEFT, flow.y(), Face.FINE, Sheet.THEME.ink2());
            }
        }
        flow.down(8);
        marks(steps);
        flow.down(15);
    }

    /** What the marks of the table mean, those of them that stand in it. */
    private void marks(List<StepState> steps) {
        List<Mark> shown = steps.stream()
                .flatMap(s -> Stream.concat(
                        Stream.of(Wording.mark(s)), s.verdicts().stream().map(v -> Wording.mark(v.outcome()))))
                .distinct()
                .sorted()
                .toList();
        double x = Flow.LEFT;
        for (Mark mark : shown) {
            String words = meaning(mark);
            flow.sheet().mark(mark, x, flow.y() - 6, 7);
            flow.sheet().text(words, x + 10, flow.y(), Face.FINE, Sheet.THEME.ink2());
            x += 10 + Face.FINE.width(words) + 12;
        }
    }

    private static String meaning(Mark mark) {
        return switch (mark) {
            case INSIDE -> "inside its limit";
            case CLOSE -> "inside, and its U reaches over the limit";
            case OUTSIDE -> "outside its limit, or its U reaches in";
            case SKIPPED -> "skipped, with a reason";
            default -> "not taken or not judged";
        };
    }

    private boolean inRow(Verdict verdict) {
        return verdict.subject().equals(StageColumns.RISE)
                || Role.ofWord(verdict.subject())
                        .filter(columns.roles()::contains)
                        .isPresent();
    }
}
