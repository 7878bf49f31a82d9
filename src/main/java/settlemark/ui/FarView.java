package settlemark.ui;

import java.awt.Font;
import java.awt.Graphics;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.accessibility.AccessibleRole;
import javax.swing.JPanel;
import org.jspecify.annotations.Nullable;
import settlemark.chart.Mark;
import settlemark.job.Limit;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.session.ChannelView;

/** The far view: two numbers, their targets and their state, to be read from three metres. Nothing else. */
final class FarView extends JPanel {
    private static final double RIBBON = 56;
    private static final double FOOT = 56;
    private final transient Look look;
    private final RibbonBar ribbon;
    private final List<FarRow> rows;
    private final Foot foot;

    /** Whether a key needs what the far view hides. */
    static boolean leftBy(Deed deed) {
        return switch (deed) {
            case NOTE, SKIP, TAKE_NOW, SETTINGS, KEYS, VISITS -> true;
            default -> false;
        };
    }

    FarView(Look look) {
        super(null);
        this.look = look;
        ribbon = new RibbonBar(look, RibbonBar.FAR);
        rows = List.of(new FarRow(look), new FarRow(look));
        foot = new Foot(look);
        add(ribbon);
        rows.forEach(this::add);
        add(foot);
        getAccessibleContext().setAccessibleName(Words.say("far view"));
    }

    void show(Scene scene, boolean digits) {
        ribbon.simulated(scene.simulated());
        foot.show(scene);
        if (digits) {
            List<FarRow.Shown> shown = shown(scene);
            for (int i = 0; i < rows.size(); i++) {
                rows.get(i).setVisible(i < shown.size());
                if (i < shown.size()) {
                    rows.get(i).show(shown.get(i));
                }
            }
        }
    }

    /** What counts in this step: firing, the manifold and the rise; else the pressures. */
    static List<FarRow.Shown> shown(Scene scene) {
        List<FarRow.Shown> shown = new ArrayList<>();
        if (scene.kind().firing()) {
            channel(scene, Role.MANIFOLD).ifPresent(shown::add);
            rise(scene).ifPresent(shown::add);
        }
        for (Role role : scene.open().step().required()) {
            if (shown.size() < 2 && !scene.kind().firing()) {
                channel(scene, role).ifPresent(shown::add);
            }
        }
        return shown;
    }

    private static Optional<FarRow.Shown> channel(Scene scene, Role role) {
        return scene.snapshot().channel(role).map(c -> {
            Readout.Shown shown = Readouts.shown(scene, c);
            String target = WorkCharts.limit(scene, role, c.unit())
                    .map(l -> target(scene, role, l))
                    .orElse("");
            return new FarRow.Shown(shown.name(), c.unit().symbol(), shown.value(), shown.faded(), shown.gap(), target);
        });
    }

    private static String target(Scene scene, Role role, Limit limit) {
        return role == Role.MANIFOLD
                ? scene.stage()
                        .map(s -> Words.say("target {0}", Numbers.plain(s.manifoldTarget())))
                        .orElse("")
                : VerdictBox.range(limit.lower(), limit.upper());
    }

    private static Optional<FarRow.Shown> rise(Scene scene) {
        Optional<ChannelView> supply = scene.snapshot().channel(Role.SUPPLY);
        Optional<ChannelView> back = scene.snapshot().channel(Role.RETURN);
        if (supply.isEmpty() || back.isEmpty()) {
            return Optional.empty();
        }
        long now = scene.snapshot().timeNanos();
        Gap a = Gap.of(supply.get(), now);
        Gap b = Gap.of(back.get(), now);
        Gap worse = a.phase().compareTo(b.phase()) <= 0 ? a : b;
        Limit rise = scene.job()
                .plate()
                .rise()
                .to(scene.snapshot().header().temperatureUnit().difference());
        Optional<Double> value = scene.open().done() && !scene.live()
                ? scene.open().reading().flatMap(CellValues::rise)
                : CellValues.rise(scene.snapshot());
        String text =
                value.map(v -> Numbers.fixed(v, Gap.decimals(supply.get()))).orElse("\u2013");
        boolean faded = supply.get().stale() || back.get().stale();
        return Optional.of(new FarRow.Shown(
                Words.say("Rise"),
                supply.get().unit().symbol(),
                text,
                faded,
                worse,
                VerdictBox.range(rise.lower(), rise.upper())));
    }

    @Override
    public void doLayout() {
        int top = look.ipx(RIBBON);
        int bottom = getHeight() - look.ipx(FOOT);
        ribbon.setBounds(0, 0, getWidth(), top);
        int half = (bottom - top) / 2;
        rows.get(0).setBounds(0, top, getWidth(), half);
        rows.get(1).setBounds(0, top + half, getWidth(), bottom - top - half);
        foot.setBounds(0, bottom, getWidth(), getHeight() - bottom);
    }

    List<FarRow> rows() {
        return rows;
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }

    /** The whole strip as marks. */
    private static final class Foot extends Painted {
        private List<Mark> marks = List.of();

        Foot(Look look) {
            super(look, AccessibleRole.LABEL);
        }

        void show(Scene newScene) {
            List<Mark> now = newScene.job().steps().stream()
                    .map(s -> s.key().equals(newScene.open().key()) ? Mark.NOW : VerdictBox.of(s))
                    .toList();
            StepState open = newScene.open();
            sentence(Words.say(
                    "{0}, column {1} of {2}", Words.told(open.step().title()), newScene.index() + 1, now.size()));
            if (!now.equals(marks)) {
                marks = now;
                repaint();
            }
        }

        @Override
        void draw(Pen pen) {
            pen.fill(pen.theme().window(), 0, 0, getWidth(), getHeight());
            double each = Math.min(look.px(72), (double) getWidth() / Math.max(1, marks.size()));
            double size = look.px(32);
            double x = (getWidth() - each * marks.size()) / 2;
            for (Mark mark : marks) {
                double left = x + (each - size) / 2;
                double top = (getHeight() - size) / 2.0;
                if (mark == Mark.NOW) {
                    pen.fill(pen.theme().sheet(), x + 1, 2, each - 2, getHeight() - 4.0);
                    pen.outline(pen.theme().ink(), 3, Pen.box(x + 1, 2, each - 2, getHeight() - 4.0, 3, 0));
                }
                mark.draw(pen.g, left, top, size, pen.theme());
                x += each;
            }
        }
    }

    /** One number of the far view with three words beside it. */
    static final class FarRow extends Painted {
        /** @param target in words, may be empty */
        record Shown(String name, String unit, String value, boolean faded, Gap gap, String target) {}

        private static final double DIGITS_PART = 0.555;
        private final DigitField digits;
        private final GapBar bar;
        private @Nullable Shown shown;

        FarRow(Look look) {
            super(look, AccessibleRole.PANEL);
            digits = new DigitField(look);
            bar = new GapBar(look);
            add(digits);
            add(bar);
        }

        void show(Shown newShown) {
            sentence(newShown.name + " " + newShown.value + " " + newShown.unit + ", " + newShown.target + ", "
                    + newShown.gap.word());
            digits.sentence(newShown.value + " " + newShown.unit);
            digits.show(newShown.value, newShown.gap.settled(), newShown.faded);
            bar.show(newShown.gap);
            if (!newShown.equals(shown)) {
                shown = newShown;
                revalidate();
                repaint();
            }
        }

        DigitField digits() {
            return digits;
        }

        @Override
        public void doLayout() {
            double room = getWidth() * DIGITS_PART - look.px(44);
            String value = shown == null ? "8.88" : shown.value;
            double byHeight = (getHeight() - look.px(30)) / 1.3;
            double widest = Math.max(DigitField.width("8.88", look, 100), DigitField.width(value, look, 100)) / 100;
            double digitPx = Math.min(byHeight, room / widest);
            digits.digitPx(digitPx);
            double barHeight = digitPx * 0.17;
            double top = (getHeight() - digitPx * 1.09 - barHeight) / 2;
            int over = (int) Math.ceil(digitPx * 0.03);
            int right = (int) (getWidth() * DIGITS_PART - look.px(24));
            digits.setBounds(0, (int) top - over, right, (int) digitPx + 2 * over);
            int track = (int) Math.min(right - look.px(20), digitPx * widest);
            bar.setBounds(right - track, (int) (top + digitPx * 1.09), track, (int) Math.ceil(barHeight));
        }

        @Override
        void draw(Pen pen) {
            pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
            pen.line(pen.theme().rule(), 2, 0, getHeight() - 1, getWidth(), getHeight() - 1);
            Shown now = shown;
            if (now == null) {
                return;
            }
            double x = getWidth() * DIGITS_PART + look.px(24);
            double room = getWidth() - x - look.px(12);
            double step = getHeight() / 3.5;
            double y = step * 0.95;
            Font name = fitting(now.name + "  " + now.unit, true, step * 0.62, room);
            double end = pen.text(now.name, name, pen.theme().ink(), x, y);
            Font unit = look.regularPx(name.getSize2D() * 0.72);
            double left = end + Math.min(look.px(28), name.getSize2D() * 0.4);
            pen.fit(now.unit, unit, pen.theme().ink2(), left, y, getWidth() - left - look.px(4));
            pen.fit(
                    now.target,
                    fitting(now.target, false, step * 0.86, room),
                    pen.theme().ink(),
                    x,
                    y + step,
                    room);
            String word = word(now.gap);
            Font font = fitting(word, now.gap.settled(), step, room);
            pen.fit(word, font, pen.theme().ink(), x, y + 2 * step + step * 0.08, room);
        }

        /** Only the first words: the rest is not for this distance. */
        static String word(Gap gap) {
            int comma = gap.word().indexOf(',');
            return switch (gap.phase()) {
                case FILLING, NO_DATA -> gap.word().replace(Words.say(" to go"), "");
                default -> comma < 0 ? gap.word() : gap.word().substring(0, comma);
            };
        }

        /** As large as fits, but never under 14 mm. */
        private Font fitting(String words, boolean bold, double px, double room) {
            double size = px;
            double least = look.mm(Look.FAR_WORD_MM) / Look.digitHeight(look.semiBoldPx(100));
            while (size > least && Look.width(words, font(bold, size)) > room) {
                size -= 1;
            }
            return font(bold, size);
        }

        private Font font(boolean bold, double px) {
            return bold ? look.semiBoldPx(px) : look.regularPx(px);
        }
    }
}
