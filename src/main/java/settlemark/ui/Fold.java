package settlemark.ui;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.font.TextLayout;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.chart.ChartTheme;
import settlemark.chart.FoldedCell;
import settlemark.chart.Lane;
import settlemark.chart.Mark;
import settlemark.chart.ValueRange;
import settlemark.job.StepState;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.session.ChannelView;
import settlemark.session.Span;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/**
 * A folded column: a sliver with its mark and its name, or a form cell with its values, a small trace on the row's own
 * axis and its verdict. Painted from an image that is made again only when something in it changes.
 */
final class Fold extends Painted {
    private static final long BEFORE_NANOS = 240_000_000_000L;

    /** What the image was made from. */
    private record Made(
            int width,
            int height,
            ChartTheme theme,
            Axes axes,
            StepState step,
            boolean cell,
            boolean now,
            boolean heads) {}

    /** The traces of a reading, kept from when it was taken: the live trace forgets. */
    private record Kept(long takenNanos, long fromNanos, List<ChannelView> channels, List<Lane.TraceLine> traces) {}

    private @Nullable Scene scene;
    private @Nullable StepState step;
    private boolean cell;
    private boolean first;
    private @Nullable Made made;
    private @Nullable BufferedImage image;
    private @Nullable Kept kept;

    Fold(Look look, String key, Consumer<String> open) {
        super(look, AccessibleRole.LIST_ITEM);
        addMouseListener(new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
                open.accept(key);
            }
        });
    }

    /**
     * @param newCell true for a form cell
     * @param newFirst true where it begins its group, whose name it then shows
     */
    void show(Scene newScene, StepState newStep, boolean newCell, boolean newFirst) {
        scene = newScene;
        step = newStep;
        cell = newCell;
        first = newFirst;
        newStep.reading().ifPresent(r -> keep(newScene, r));
        sentence(say(newScene, newStep));
        setToolTipText(Words.told(newStep.step().title()) + ": " + VerdictBox.word(newStep));
        if (!made(newScene, newStep).equals(made)) {
            repaint();
        }
    }

    private Made made(Scene of, StepState shown) {
        boolean now =
                of.job().currentStep().map(s -> s.key().equals(shown.key())).orElse(false);
        return new Made(getWidth(), getHeight(), look.theme(), of.axes(), shown, cell, now, first);
    }

    private static String say(Scene of, StepState shown) {
        StringBuilder words = new StringBuilder(Words.told(shown.step().title()) + ", " + VerdictBox.word(shown));
        CellValues values = CellValues.of(shown, of.snapshot());
        for (Role role : Role.values()) {
            if (values.values().containsKey(role)) {
                words.append(", ")
                        .append(Words.told(role.word()))
                        .append(' ')
                        .append(values.values().get(role));
            }
        }
        return words.append(values.rise().isEmpty() ? "" : Words.say(", rise {0}", values.rise()))
                .toString();
    }

    private void keep(Scene of, StageReading reading) {
        if (kept != null && kept.takenNanos == reading.timeNanos()) {
            return;
        }
        long opened = step == null ? 0 : step.openedNanos();
        long from = Math.max(reading.timeNanos() - BEFORE_NANOS, Math.min(opened, reading.timeNanos() - 1));
        List<ChannelView> channels = new ArrayList<>();
        List<Lane.TraceLine> traces = new ArrayList<>();
        for (ChannelReading channel : reading.channels()) {
            ChannelView view = of.snapshot().channel(channel.role()).orElse(null);
            if (view != null) {
                channels.add(view);
                traces.add(WorkCharts.trace(view, "", from, reading.timeNanos()));
            }
        }
        kept = new Kept(reading.timeNanos(), from, channels, traces);
    }

    @Override
    void draw(Pen pen) {
        Scene shown = scene;
        StepState state = step;
        if (shown == null || state == null || getWidth() <= 0 || getHeight() <= 0) {
            return;
        }
        if (isPaintingForPrint()) {
            all(pen, shown, state, made(shown, state).now);
            return;
        }
        AffineTransform screen = pen.g.getTransform();
        Made wanted = made(shown, state);
        BufferedImage drawn = image;
        if (drawn == null || !wanted.equals(made)) {
            drawn = render(shown, state, wanted.now, screen.getScaleX());
            image = drawn;
            made = wanted;
        }
        pen.g.setTransform(AffineTransform.getTranslateInstance(screen.getTranslateX(), screen.getTranslateY()));
        pen.g.drawImage(drawn, 0, 0, null);
        pen.g.setTransform(screen);
    }

    private BufferedImage render(Scene shown, StepState state, boolean now, double scale) {
        BufferedImage target = new BufferedImage(
                (int) Math.ceil(getWidth() * scale), (int) Math.ceil(getHeight() * scale), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = target.createGraphics();
        graphics.scale(scale, scale);
        Pen pen = new Pen(graphics, look);
        all(pen, shown, state, now);
        pen.dispose();
        graphics.dispose();
        return target;
    }

    private void all(Pen pen, Scene shown, StepState state, boolean now) {
        int lanes = WorkCharts.lanes(shown.snapshot()).size();
        Rows rows = Rows.of(look, getHeight(), Math.max(1, lanes));
        pen.fill(pen.theme().fold(), 0, 0, getWidth(), getHeight());
        if (cell) {
            cellHead(pen, state, now, rows);
            cellRows(pen, shown, state, rows);
        } else {
            sliver(pen, state, now, rows);
        }
        if (state.superseded()) {
            pen.line(pen.theme().ink2(), 2, 2, rows.bottom(), getWidth() - 2.0, rows.top());
        }
        pen.fill(pen.theme().hair(), getWidth() - 1.5, 0, 1.5, getHeight());
    }

    private void sliver(Pen pen, StepState state, boolean now, Rows rows) {
        double size = Math.min(look.px(18), getWidth() - 4.0);
        double x = (getWidth() - size) / 2;
        Mark mark = now ? Mark.NOW : VerdictBox.of(state);
        mark.draw(pen.g, x, (rows.head() - size) / 2, size, pen.theme());
        Font font = look.regular(Look.BODY);
        double baseline = getWidth() / 2.0 + font.getSize2D() * 0.36;
        pen.textUpwards(StepWords.narrow(state), font, pen.theme().ink2(), baseline, rows.top() + look.px(12));
    }

    private void cellHead(Pen pen, StepState state, boolean now, Rows rows) {
        double x = look.px(4);
        if (first) {
            String group = Words.told(state.step().group());
            pen.fit(group, look.semiBold(Look.BODY), pen.theme().ink(), x, look.px(18), getWidth() - x - 2);
        }
        String name = Words.told(state.step().name());
        double room = getWidth() - x - 3;
        pen.fit(name, look.regular(Look.AXIS), pen.theme().ink2(), x, rows.head() - look.px(5), room);
        if (now) {
            double size = look.px(14);
            Mark.NOW.draw(pen.g, getWidth() - size - 4.0, look.px(5), size, pen.theme());
        }
    }

    private void cellRows(Pen pen, Scene shown, StepState state, Rows rows) {
        List<Dimension> lanes = WorkCharts.lanes(shown.snapshot());
        CellValues values = CellValues.of(state, shown.snapshot());
        for (int i = 0; i < lanes.size(); i++) {
            double top = rows.laneTop(i);
            double bottom = rows.laneBottom(i);
            Rectangle2D lane = new Rectangle2D.Double(0, top, getWidth() - 1.5, bottom - top);
            pen.fill(pen.theme().sheet(), lane);
            trace(pen, shown, state, lanes.get(i), lane);
            boolean pressure = lanes.get(i) == Dimension.PRESSURE;
            number(pen, values.values().get(pressure ? Role.INLET : Role.SUPPLY), true, top + look.px(22));
            number(pen, values.values().get(pressure ? Role.MANIFOLD : Role.RETURN), true, bottom - look.px(9));
            if (!pressure) {
                number(pen, values.rise(), false, (top + bottom) / 2 + look.px(6));
            }
        }
        if (state.reading().filter(StageReading::byHand).isPresent()) {
            pen.text(
                    Words.say("hand"),
                    look.regular(Look.AXIS),
                    pen.theme().ink2(),
                    look.px(4),
                    rows.bottom() + look.px(17));
        }
        double size = look.px(16);
        double y = rows.bottom() + (rows.foot() - size) / 2;
        VerdictBox.of(state).draw(pen.g, getWidth() - size - look.px(5), y, size, pen.theme());
    }

    private void trace(Pen pen, Scene shown, StepState state, Dimension dimension, Rectangle2D lane) {
        Kept known = kept;
        if (known == null) {
            return;
        }
        List<Lane.TraceLine> traces = new ArrayList<>();
        ValueRange range = shown.axes().pressure();
        for (int i = 0; i < known.channels.size(); i++) {
            Role role = known.channels.get(i).role();
            if (role.dimension() == dimension) {
                traces.add(known.traces.get(i));
                range = shown.axes().of(role);
            }
        }
        if (!traces.isEmpty()) {
            List<Span> settled = together(state, dimension, known.fromNanos);
            new FoldedCell(look.theme(), look.textScale())
                    .draw(pen.g, lane, range, known.fromNanos, known.takenNanos, traces, settled, false);
        }
    }

    /** The stretch in which every channel of a lane was settled, within the step and since it was armed. */
    static List<Span> together(StepState state, Dimension dimension, long fromNanos) {
        long from = Math.max(fromNanos, state.armedNanos());
        long to = Long.MAX_VALUE;
        List<ChannelReading> lane = state.reading().stream()
                .flatMap(r -> r.channels().stream())
                .filter(c -> c.role().dimension() == dimension)
                .toList();
        for (ChannelReading channel : lane) {
            from = Math.max(from, channel.fromNanos());
            to = channel.settled() ? Math.min(to, channel.toNanos()) : from;
        }
        return lane.isEmpty() || from >= to ? List.of() : List.of(new Span(from, to));
    }

    /** A number at the right, with an edge of the sheet so that the trace does not run through it. */
    private void number(Pen pen, @Nullable String text, boolean bold, double baseline) {
        if (text == null || text.isEmpty()) {
            return;
        }
        Font font = bold ? look.semiBold(Look.FOLDED) : look.regular(Look.FOLDED);
        TextLayout layout = new TextLayout(text, font, Look.FONTS);
        double x = getWidth() - look.px(5) - Look.width(text, font);
        var shape = layout.getOutline(AffineTransform.getTranslateInstance(x, baseline));
        pen.outline(pen.theme().sheet(), look.px(4), shape);
        pen.fill(pen.theme().ink(), shape);
    }
}
