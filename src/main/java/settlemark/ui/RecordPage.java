package settlemark.ui;

import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.chart.Mark;
import settlemark.chart.Ribbon;
import settlemark.job.RatingPlate;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.session.ChannelView;
import settlemark.settle.ChannelReading;

/** The first page of the record as it would be written now: the folded strip, cell for cell. */
final class RecordPage extends Painted {
    private static final double WIDTH = 640;
    private static final double HEIGHT = 440;
    private static final double LARGEST = 1.4;
    private @Nullable Scene scene;

    RecordPage(Look look) {
        super(look, AccessibleRole.TABLE);
    }

    void show(Scene newScene) {
        boolean changed = scene == null || !scene.job().equals(newScene.job());
        scene = newScene;
        if (changed) {
            sentence(say(newScene));
            repaint();
        }
    }

    /** Steps that have a column in the table. */
    static List<StepState> columns(Scene scene) {
        return scene.job().steps().stream()
                .filter(s -> s.step().kind().tabled())
                .filter(s -> !s.superseded())
                .toList();
    }

    private static String say(Scene scene) {
        return verdict(scene) + ". "
                + columns(scene).stream()
                        .map(s -> Words.told(s.step().title()) + ": " + VerdictBox.word(s))
                        .collect(Collectors.joining("; "));
    }

    /** The whole job in one line. */
    static String verdict(Scene scene) {
        if (scene.job().plan().steps().stream().noneMatch(s -> s.kind() == StepKind.LEFT)) {
            return checks(scene);
        }
        if (scene.job().leftOutside()) {
            return Words.say("As left: not every reading is inside its limit");
        }
        return Choices.missing(scene) > 0
                ? Words.say("As left: incomplete, nothing outside its limit so far")
                : Words.say("As left: every reading inside its limit");
    }

    /** Of a job that leaves nothing as it was set. */
    private static String checks(Scene scene) {
        if (scene.job().leftOutside()) {
            return Words.say("Not every check is inside its limit");
        }
        return Choices.missing(scene) > 0
                ? Words.say("Incomplete, nothing outside its limit so far")
                : Words.say("Every check inside its limit");
    }

    private static Mark mark(Scene scene) {
        if (scene.job().leftOutside()) {
            return Mark.OUTSIDE;
        }
        return Choices.missing(scene) > 0 ? Mark.NOT_TAKEN : Mark.INSIDE;
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
        pen.outline(pen.theme().hair(), 1.5, new Rectangle2D.Double(0.75, 0.75, getWidth() - 1.5, getHeight() - 1.5));
        Scene shown = scene;
        if (shown == null) {
            return;
        }
        double size = scale();
        pen.g.scale(size, size);
        page(pen, shown, getWidth() / size, getHeight() / size);
    }

    /** The page keeps its shape: it is made smaller or larger as a whole, but its text never under the floor. */
    private double scale() {
        double fitting = Math.min(getWidth() / look.px(WIDTH), getHeight() / look.px(HEIGHT));
        return Math.max(Math.min(1, 1 / look.textScale()), Math.min(LARGEST, fitting));
    }

    private void page(Pen pen, Scene shown, double width, double height) {
        double x = look.px(24);
        double right = width - x;
        Mark.STAPLE.draw(pen.g, x - look.px(2), look.px(14), look.px(28), pen.theme());
        pen.fit(
                Words.told(shown.job().plan().recordTitle()),
                look.semiBold(Look.LABEL),
                pen.theme().ink(),
                x + look.px(36),
                look.px(38),
                right - x - look.px(36));
        if (shown.simulated()) {
            Rectangle2D ribbon = new Rectangle2D.Double(x, look.px(50), right - x, look.px(RibbonBar.HEIGHT));
            Ribbon.draw(pen.g, ribbon, pen.theme(), look.px(1), Words.say("SIMULATED"));
        }
        double size = look.px(26);
        mark(shown).draw(pen.g, x, look.px(78), size, pen.theme());
        pen.fit(
                verdict(shown),
                look.semiBold(Look.NAME),
                pen.theme().ink(),
                x + look.px(36),
                look.px(92),
                right - x - look.px(36));
        pen.fit(
                Words.say(
                        "Simple acceptance, U with k = 2. {0}",
                        shown.job().plate().appliance()),
                look.regular(Look.AXIS),
                pen.theme().ink2(),
                x + look.px(36),
                look.px(112),
                right - x - look.px(36));
        double y = plate(pen, shown, x, right, look.px(122));
        table(pen, shown, x, right, y, height);
    }

    private double plate(Pen pen, Scene shown, double x, double right, double top) {
        pen.line(pen.theme().rule(), 1.4, x, top, right, top);
        RatingPlate plate = shown.job().plate();
        String manifold = plate.stages().stream()
                        .map(s -> String.format(Locale.ROOT, "%.2f", s.manifoldTarget()))
                        .collect(Collectors.joining(" / "))
                + " " + plate.stages().get(0).unit().symbol();
        boolean asked = plate.stages().stream().noneMatch(s -> s.manifoldLimit().isOpen());
        List<List<String>> facts = List.of(
                List.of(Words.say("Plate, fuel"), Words.told(plate.fuel().words())),
                List.of(Words.say("Manifold"), asked ? manifold : Words.say("not asked")),
                List.of(
                        Words.say("Inlet"),
                        VerdictBox.range(plate.inlet().lower(), plate.inlet().upper()) + " "
                                + plate.inlet().unit().symbol()),
                List.of(
                        Words.say("Rise"),
                        plate.rise().isOpen()
                                ? Words.say("not asked")
                                : VerdictBox.range(
                                                plate.rise().lower(),
                                                plate.rise().upper()) + " "
                                        + plate.rise().unit().symbol()));
        double each = (right - x) / facts.size();
        for (int i = 0; i < facts.size(); i++) {
            double left = x + i * each;
            double room = each - look.px(8);
            pen.fit(facts.get(i).get(0), look.semiBold(Look.AXIS), pen.theme().ink2(), left, top + look.px(19), room);
            pen.fit(facts.get(i).get(1), look.regular(Look.BODY), pen.theme().ink(), left, top + look.px(39), room);
        }
        double bottom = top + look.px(50);
        pen.line(pen.theme().rule(), 1.4, x, bottom, right, bottom);
        return bottom;
    }

    private void table(Pen pen, Scene shown, double x, double right, double top, double height) {
        List<StepState> columns = columns(shown);
        double names = Math.min(look.px(150), (right - x) * 0.27);
        double each = (right - x - names) / Math.max(1, columns.size());
        List<ChannelView> channels = shown.snapshot().channels();
        double line = Math.min(look.px(28), (height - top - look.px(98)) / Math.max(1, channels.size() + 1));
        double first = top + look.px(48);
        for (int c = 0; c < columns.size(); c++) {
            column(pen, shown, columns.get(c), x + names + (c + 1) * each, top, first, line, each - look.px(8));
        }
        List<String> rows = new ArrayList<>();
        for (ChannelView channel : channels) {
            rows.add(Numbers.capital(Words.told(channel.role().word())) + " \t"
                    + channel.unit().symbol());
        }
        if (shown.snapshot().channel(Role.SUPPLY).isPresent()) {
            rows.add(Words.say("Rise") + " \t"
                    + shown.snapshot().header().temperatureUnit().symbol());
        }
        for (int i = 0; i < rows.size(); i++) {
            List<String> words = List.of(rows.get(i).split("\t", -1));
            double y = first + (i + 1) * line - look.px(8);
            Font unit = look.regular(Look.AXIS);
            double room = names - Look.width(words.get(1), unit);
            double end =
                    pen.fit(words.get(0), look.semiBold(Look.AXIS), pen.theme().ink(), x, y, room);
            pen.text(words.get(1), unit, pen.theme().ink2(), end, y);
            pen.line(pen.theme().hair(), 1, x, first + i * line, right, first + i * line);
        }
        double bottom = first + rows.size() * line;
        pen.line(pen.theme().rule(), 1.4, x, bottom, right, bottom);
        pen.text(Words.say("Verdict"), look.semiBold(Look.AXIS), pen.theme().ink(), x, bottom + look.px(20));
        pen.fit(Words.say("U, manifold"), look.regular(Look.AXIS), pen.theme().ink2(), x, bottom + look.px(43), names);
    }

    private void column(
            Pen pen, Scene shown, StepState step, double right, double top, double first, double line, double room) {
        pen.fitRight(
                Words.told(step.step().group()),
                look.semiBold(Look.AXIS),
                pen.theme().ink(),
                right - look.px(6),
                top + look.px(20),
                room);
        pen.fitRight(
                Words.told(step.step().name()),
                look.regular(Look.AXIS),
                pen.theme().ink2(),
                right - look.px(6),
                top + look.px(38),
                room);
        CellValues values = CellValues.of(step, shown.snapshot());
        Font font = look.regular(Look.BODY);
        int row = 1;
        for (ChannelView channel : shown.snapshot().channels()) {
            String value = values.values().getOrDefault(channel.role(), "");
            Font own = channel.role() == Role.MANIFOLD ? look.semiBold(Look.BODY) : font;
            pen.fitRight(value, own, pen.theme().ink(), right - look.px(6), first + row * line - look.px(8), room);
            row++;
        }
        boolean air = shown.snapshot().channel(Role.SUPPLY).isPresent();
        if (air) {
            pen.fitRight(
                    values.rise(),
                    look.semiBold(Look.BODY),
                    pen.theme().ink(),
                    right - look.px(6),
                    first + row * line - look.px(8),
                    room);
        }
        double bottom = first + (air ? row : row - 1) * line;
        double size = look.px(18);
        VerdictBox.of(step).draw(pen.g, right - size - look.px(6), bottom + look.px(6), size, pen.theme());
        String hand = step.reading().filter(r -> r.byHand()).isPresent() ? Words.say("by hand") : uncertainty(step);
        pen.fitRight(hand, look.regular(Look.AXIS), pen.theme().ink2(), right - look.px(6), bottom + look.px(43), room);
    }

    /** Of the manifold, which is what is set. */
    private static String uncertainty(StepState step) {
        return step.reading()
                .flatMap(r -> r.channel(Role.MANIFOLD))
                .map(ChannelReading::expandedUncertainty)
                .map(u -> Numbers.plusMinus(u, 2))
                .orElse("");
    }
}
