package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import settlemark.measure.Role;
import settlemark.session.SettleFit;
import settlemark.settle.ChannelReading;
import settlemark.settle.SettleChoices;
import settlemark.settle.StageReading;

/**
 * The numbers beside the open stretch: what stands at the line, what was read, what lies under it and the change.
 *
 * @param heads of the columns of numbers
 * @param rows one a channel, and the rise
 */
record ReviewTable(List<String> heads, List<Row> rows) {
    ReviewTable {
        heads = List.copyOf(heads);
        rows = List.copyOf(rows);
    }

    /** @param cells as many as there are heads */
    record Row(String name, String unit, List<String> cells) {
        Row {
            cells = List.copyOf(cells);
        }
    }

    static ReviewTable of(ReviewScene scene) {
        Optional<StageReading> read =
                scene.step().isEmpty() ? Optional.empty() : scene.session().reading(scene.step());
        Optional<StageReading> laid = scene.laid().flatMap(ReviewScene.Laid::reading);
        List<String> heads = new ArrayList<>();
        heads.add(Words.say("at line"));
        laid.ifPresent(l -> heads.add(Words.say("under")));
        read.ifPresent(r -> heads.add(Words.say("read")));
        if (read.isPresent() && laid.isPresent()) {
            heads.add(Words.say("change"));
        }
        List<Row> rows = new ArrayList<>();
        for (WindowTraces.Line line : scene.traces().lines()) {
            rows.add(row(scene, line, read, laid));
        }
        rise(scene, read, laid).ifPresent(rows::add);
        return new ReviewTable(heads, rows);
    }

    private static Row row(
            ReviewScene scene, WindowTraces.Line line, Optional<StageReading> read, Optional<StageReading> laid) {
        int decimals = decimals(line);
        Optional<Double> before = value(laid, line);
        Optional<Double> now = value(read, line);
        OptionalDouble at = line.at(scene.lineNanos());
        List<String> cells = cells(
                at.isPresent() ? Numbers.fixed(at.getAsDouble(), decimals) : "\u2013",
                read.isPresent(),
                laid.isPresent(),
                now,
                before,
                decimals);
        return new Row(
                Numbers.capital(Words.told(line.role().word())), line.unit().symbol(), cells);
    }

    private static List<String> cells(
            String at, boolean read, boolean laid, Optional<Double> now, Optional<Double> before, int decimals) {
        List<String> cells = new ArrayList<>();
        cells.add(at);
        if (laid) {
            cells.add(before.map(v -> Numbers.fixed(v, decimals)).orElse("\u2013"));
        }
        if (read) {
            cells.add(now.map(v -> Numbers.fixed(v, decimals)).orElse("\u2013"));
        }
        if (read && laid) {
            cells.add(
                    now.isPresent() && before.isPresent()
                            ? Numbers.signed(now.get() - before.get(), decimals)
                            : "\u2013");
        }
        return cells;
    }

    private static Optional<Double> value(Optional<StageReading> reading, WindowTraces.Line line) {
        return reading.flatMap(r -> r.channel(line.role()))
                .map(c -> c.unit().to(line.unit()).apply(c.value()));
    }

    private static Optional<Row> rise(ReviewScene scene, Optional<StageReading> read, Optional<StageReading> laid) {
        Optional<WindowTraces.Line> supply = line(scene, Role.SUPPLY);
        Optional<WindowTraces.Line> back = line(scene, Role.RETURN);
        if (supply.isEmpty() || back.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble high = supply.get().at(scene.lineNanos());
        OptionalDouble low = back.get().at(scene.lineNanos());
        int decimals = decimals(supply.get());
        String at = high.isPresent() && low.isPresent()
                ? Numbers.fixed(high.getAsDouble() - low.getAsDouble(), decimals)
                : "\u2013";
        List<String> cells = cells(
                at,
                read.isPresent(),
                laid.isPresent(),
                read.flatMap(ReviewTable::rise),
                laid.flatMap(ReviewTable::rise),
                decimals);
        return Optional.of(new Row(Words.say("Rise"), supply.get().unit().symbol(), cells));
    }

    private static Optional<Double> rise(StageReading reading) {
        return reading.channel(Role.SUPPLY)
                .map(ChannelReading::value)
                .flatMap(s -> reading.channel(Role.RETURN).map(r -> s - r.value()));
    }

    private static Optional<WindowTraces.Line> line(ReviewScene scene, Role role) {
        return scene.traces().lines().stream().filter(l -> l.role() == role).findFirst();
    }

    private static int decimals(WindowTraces.Line line) {
        return Numbers.decimals(
                SettleFit.settings(line.role(), line.unit(), SettleChoices.NONE).driftLimit());
    }

    /** The whole as lines of words, for a table in a file: the heads first. */
    List<List<String>> text() {
        List<List<String>> lines = new ArrayList<>();
        List<String> top = new ArrayList<>(List.of(Words.say("channel"), Words.say("unit")));
        top.addAll(heads);
        lines.add(top);
        for (Row row : rows) {
            List<String> cells = new ArrayList<>(List.of(row.name(), row.unit()));
            row.cells().forEach(c -> cells.add(c.replace(Numbers.MINUS, "-")));
            lines.add(cells);
        }
        return lines;
    }
}
