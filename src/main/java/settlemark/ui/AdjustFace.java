package settlemark.ui;

import java.awt.Font;
import java.awt.geom.Path2D;
import java.util.Optional;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.job.Limit;
import settlemark.job.StagePlate;
import settlemark.measure.Role;
import settlemark.session.ChannelView;
import settlemark.session.DemoHands;
import settlemark.settle.Heading;

/** Adjusting: the manifold very large, its last minute around the target, and how far to raise or lower it. */
final class AdjustFace extends Face {
    private static final double CHART_LEAST = 460;

    private final ChartPane chart;
    private final Advice advice;

    AdjustFace(Look look) {
        super(look, Words.say("adjusting"));
        chart = new ChartPane(look);
        advice = new Advice(look);
        add(chart);
        add(advice);
    }

    @Override
    int neededWidth() {
        return look.ipx(CHART_LEAST) + advice.neededWidth();
    }

    @Override
    void show(Scene scene, boolean digits) {
        Optional<ChannelView> manifold = scene.snapshot().channel(Role.MANIFOLD);
        Optional<StagePlate> stage = scene.stage();
        if (manifold.isEmpty() || stage.isEmpty()) {
            return;
        }
        if (chart.outdated(scene)) {
            chart.show(
                    WorkCharts.adjust(scene, manifold.get(), stage.get()),
                    Words.say("the manifold's last minute around its target"));
        }
        if (digits) {
            advice.show(scene, manifold.get(), stage.get());
        }
    }

    Advice advice() {
        return advice;
    }

    @Override
    public void doLayout() {
        int right = Math.max(advice.neededWidth(), (int) (getWidth() * 0.43));
        int left = Math.max(0, getWidth() - right);
        chart.setBounds(look.ipx(4), 0, Math.max(0, left - look.ipx(4)), getHeight());
        advice.setBounds(left, 0, getWidth() - left, getHeight());
    }

    /** The right half: number, gap, distance to the target, inlet, and the demo's screw. */
    static final class Advice extends Painted {
        private static final String WIDEST = "8.88";

        /** Height of everything but the digits. */
        private static final double BESIDES = 296;

        private final DigitField digits;
        private final GapBar bar;
        private String name = "";
        private String unit = "";
        private @Nullable Gap gap;
        private Distance distance = Distance.UNKNOWN;
        private String basis = "";
        private String limits = "";
        private String inlet = "";
        private String screw = "";
        private String remark = "";

        Advice(Look look) {
            super(look, AccessibleRole.PANEL);
            digits = new DigitField(look);
            bar = new GapBar(look);
            add(digits);
            add(bar);
        }

        int neededWidth() {
            double least = DigitField.width("88.88", look, look.mm(Look.READABLE_MM)) + look.px(40);
            return (int) Math.ceil(Math.max(least, look.px(400)));
        }

        void show(Scene scene, ChannelView manifold, StagePlate stage) {
            int decimals = Gap.decimals(manifold);
            double target = stage.unit().to(manifold.unit()).apply(stage.manifoldTarget());
            Limit limit = stage.manifoldLimit().to(manifold.unit());
            Gap now = Gap.of(manifold, scene.snapshot().timeNanos());
            String value = Numbers.fixed(manifold.value(), decimals);
            name = Numbers.capital(Words.told(manifold.role().word()));
            unit = manifold.unit().symbol();
            gap = now;
            distance = Distance.of(manifold, target);
            basis = basis(manifold, decimals);
            limits = Words.say(
                    "limits {0} {1}, {2}{3}",
                    VerdictBox.range(limit.lower(), limit.upper()),
                    unit,
                    Words.told(limit.source()),
                    limit.contains(manifold.value()) ? Words.say(": now inside") : Words.say(": now outside"));
            inlet = scene.snapshot()
                    .channel(Role.INLET)
                    .map(c -> Words.say(
                            "Inlet {0} {1}, {2}",
                            Numbers.fixed(c.value(), Gap.decimals(c)),
                            c.unit().symbol(),
                            Gap.of(c, scene.snapshot().timeNanos()).word()))
                    .orElse("");
            remark = Remark.of(scene.open());
            screw = scene.hands().map(h -> screw(h, stage.key())).orElse("");
            digits.show(value, now.settled(), manifold.stale());
            digits.sentence(value + " " + Numbers.spoken(manifold.unit()));
            bar.show(now);
            sentence(name + " " + value + " " + Numbers.spoken(manifold.unit()) + ", " + now.word() + "; "
                    + distance.words(decimals) + "; " + basis + "; " + limits
                    + (remark.isEmpty() ? "" : "; " + remark));
            decimalsShown = decimals;
            revalidate();
            repaint();
        }

        private int decimalsShown = 2;

        private static String basis(ChannelView manifold, int decimals) {
            if (manifold.stale()) {
                return Words.say("heading not known: no value");
            }
            if (manifold.settle().settled()) {
                return Words.say("from the settled value");
            }
            return manifold.heading()
                    .map(h -> Words.say(
                            "heading for {0} {1}",
                            Numbers.fixed(h.value(), decimals), Numbers.plusMinus(h.uncertainty(), decimals)))
                    .orElse(Words.say("from the value now; heading not known yet"));
        }

        private static String screw(DemoHands.State hands, String stage) {
            double turns = stage.equals("low") ? hands.lowTurns() : hands.highTurns();
            return Words.say(
                    "Demo screw, SIMULATED: {0} turns{1}",
                    Numbers.signed(turns, 2), hands.capOn() ? Words.say(", cap is on") : "");
        }

        DigitField digits() {
            return digits;
        }

        @Override
        public void doLayout() {
            double margin = look.px(20);
            double room = getWidth() - 2 * margin;
            double widest = DigitField.width(WIDEST, look, 100) / 100;
            double byHeight = (getHeight() - look.px(BESIDES)) / 1.08;
            double digitPx = Math.max(look.mm(Look.READABLE_MM), Math.min(byHeight, room / widest));
            digits.digitPx(digitPx);
            double top = look.px(look.tight() ? 46 : 50);
            int over = (int) Math.ceil(digitPx * 0.03);
            digits.setBounds(0, (int) top - over, (int) (getWidth() - margin), (int) Math.ceil(digitPx) + 2 * over);
            int barHeight = (int) Math.ceil(Math.max(look.px(20), digitPx * 0.18));
            bar.setBounds((int) margin, (int) (top + digitPx * 1.08), (int) room, barHeight);
        }

        @Override
        void draw(Pen pen) {
            pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
            Gap now = gap;
            if (now == null) {
                return;
            }
            double x = look.px(20);
            double right = getWidth() - x;
            double end =
                    pen.fit(name, look.semiBold(Look.STEP - 2), pen.theme().ink(), x, look.px(36), (right - x) * 0.4);
            end = pen.text(unit, look.regular(Look.NAME), pen.theme().ink2(), end + look.px(9), look.px(36));
            Font word = now.settled() ? look.semiBold(Look.LABEL) : look.regular(Look.LABEL);
            pen.fitRight(now.word(), word, pen.theme().ink(), right, look.px(36), right - end - look.px(12));
            double y = bar.getY() + bar.getHeight() + look.px(20);
            pen.fit(now.sentence(), look.regular(Look.BODY), pen.theme().ink2(), x, y, right - x);
            y += look.px(16);
            pen.line(pen.theme().hair(), 1.4, x, y, right, y);
            below(pen, x, right, y);
        }

        private void below(Pen pen, double x, double right, double from) {
            double y = from + look.px(look.tight() ? 62 : 72);
            distance.arrow(pen, x, y - look.px(56), look.px(56));
            pen.textRight(
                    distance.words(decimalsShown),
                    raise(right - x - look.px(76)),
                    pen.theme().ink(),
                    right,
                    y);
            Font body = look.regular(Look.BODY);
            y += look.px(28);
            pen.fit(basis, body, pen.theme().ink2(), x, y, right - x);
            y += look.px(20);
            pen.fit(limits, body, pen.theme().ink2(), x, y, right - x);
            y += look.px(14);
            pen.line(pen.theme().hair(), 1.4, x, y, right, y);
            y += look.px(24);
            pen.fit(inlet, look.regular(Look.NAME - 1), pen.theme().ink(), x, y, right - x);
            if (!screw.isEmpty()) {
                y += look.px(24);
                pen.fit(screw, look.semiBold(Look.NAME - 1), pen.theme().ink(), x, y, right - x);
            }
            if (!remark.isEmpty()) {
                pen.paragraph(remark, look.semiBold(Look.BODY), pen.theme().ink(), x, y + look.px(24), right - x);
            }
        }

        private Font raise(double room) {
            double size = look.tight() ? Look.RAISE - 12 : Look.RAISE;
            while (size > Look.STEP && Look.width(distance.words(decimalsShown), look.semiBold(size)) > room) {
                size -= 2;
            }
            return look.semiBold(size);
        }
    }

    /**
     * From where the value is heading, or from the value now where that is not known, to the target. Never says which way to
     * turn.
     *
     * @param amount target less value; NaN where there is no value
     * @param near within this of the target there is nothing to do
     */
    record Distance(double amount, double near) {
        static final Distance UNKNOWN = new Distance(Double.NaN, 0);

        static Distance of(ChannelView manifold, double target) {
            if (manifold.stale()) {
                return UNKNOWN;
            }
            boolean settled = manifold.settle().settled();
            double uncertainty = settled ? manifold.settle().uncertainty() : 0;
            double value = settled
                    ? manifold.value()
                    : manifold.heading().map(Heading.Estimate::value).orElse(manifold.value());
            double near = Math.max(manifold.settings().driftLimit(), uncertainty);
            return new Distance(target - value, near);
        }

        boolean there() {
            return Math.abs(amount) <= near;
        }

        String words(int decimals) {
            if (Double.isNaN(amount)) {
                return Words.say("no value");
            }
            if (there()) {
                return Words.say("stop");
            }
            return (amount > 0 ? Words.say("raise ") : Words.say("lower ")) + Numbers.fixed(Math.abs(amount), decimals);
        }

        void arrow(Pen pen, double x, double y, double size) {
            if (Double.isNaN(amount)) {
                return;
            }
            double middle = x + size * 0.42;
            if (there()) {
                pen.fill(pen.theme().ink(), x + size * 0.1, y + size * 0.2, size * 0.62, size * 0.62);
                return;
            }
            double tip = amount > 0 ? y : y + size;
            double tail = amount > 0 ? y + size : y;
            double back = amount > 0 ? size * 0.4 : -size * 0.4;
            Path2D path = new Path2D.Double();
            path.moveTo(middle, tail);
            path.lineTo(middle, tip);
            path.moveTo(middle - size * 0.38, tip + back);
            path.lineTo(middle, tip + (amount > 0 ? size * 0.04 : -size * 0.04));
            path.lineTo(middle + size * 0.38, tip + back);
            pen.outline(pen.theme().ink(), size * 0.11, path);
        }
    }
}
