package settlemark.ui;

import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.session.BenchView;

/** The chosen channel, to be read from afar: 20 mm digits, how far it could still move, its last minute. */
final class BenchDetail extends Painted {
    private static final double SPARK = 0.32;
    private static final double LEFT = 200;

    private final DigitField digits;
    private BenchView.@Nullable Row row;
    private @Nullable Gap gap;
    private String probe = "";
    private String value = "";
    private String word = "";

    BenchDetail(Look look) {
        super(look, AccessibleRole.LABEL);
        digits = new DigitField(look);
        add(digits);
    }

    void show(BenchView view, BenchView.Row newRow, boolean mayChange) {
        long now = view.snapshot().timeNanos();
        boolean other =
                row == null || row.probe() != newRow.probe() || !row.channel().equals(newRow.channel());
        row = newRow;
        gap = BenchRow.gap(newRow, now).orElse(null);
        word = BenchRow.word(newRow, gap, now);
        probe = view.snapshot().probes().get(newRow.probe()).setup().name();
        if (mayChange || other) {
            value = newRow.timeNanos() < 0 ? "\u2013" : Numbers.fixed(newRow.value(), BenchRow.decimals(newRow));
        }
        boolean old = newRow.stale() || newRow.timeNanos() < 0;
        digits.digitPx(look.mm(Look.READABLE_MM));
        digits.show(value, gap != null && gap.settled(), old);
        String all = BenchRow.spoken(newRow, value, word) + (gap == null ? "" : "; " + gap.sentence());
        sentence(Words.say("chosen, {0}: {1}", probe, all));
        digits.sentence(value);
        doLayout();
        repaint();
    }

    int neededHeight() {
        return (int) Math.ceil(look.mm(Look.READABLE_MM) + look.px(26));
    }

    @Override
    public void doLayout() {
        digits.setBounds(look.ipx(LEFT), 0, digitsWidth(), getHeight());
    }

    /** For a number of this kind with three digits and a sign, or for a longer one. */
    private int digitsWidth() {
        BenchView.Row now = row;
        int decimals = now == null ? 2 : BenchRow.decimals(now);
        String usual = Numbers.MINUS + "888" + (decimals > 0 ? "." + "8".repeat(decimals) : "");
        double high = look.mm(Look.READABLE_MM);
        return (int) Math.ceil(Math.max(DigitField.width(usual, look, high), DigitField.width(value, look, high)));
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
        pen.line(pen.theme().ink(), Look.OPEN_OUTLINE, 0, 1, getWidth(), 1);
        BenchView.Row now = row;
        if (now == null) {
            return;
        }
        double left = look.px(16);
        double room = look.px(LEFT) - left;
        double middle = getHeight() / 2.0;
        pen.fit(BenchRow.name(now), look.semiBold(Look.LABEL), pen.theme().ink(), left, middle - look.px(2), room);
        pen.fit(probe, look.regular(Look.BODY), pen.theme().ink2(), left, middle + look.px(22), room);
        double x = look.px(LEFT) + digitsWidth() + look.px(10);
        double spark = getWidth() * (1 - SPARK);
        double wide = Math.max(0, spark - x - look.px(16));
        double line = Math.min(look.px(25), getHeight() / 3.4);
        pen.fit(now.unit().symbol(), look.regular(Look.NAME), pen.theme().ink2(), x, middle - line + look.px(5), wide);
        pen.fit(word, look.semiBold(Look.NAME), pen.theme().ink(), x, middle + look.px(5), wide);
        if (gap != null) {
            pen.fit(gap.sentence(), look.regular(Look.BODY), pen.theme().ink2(), x, middle + line + look.px(5), wide);
        }
        BenchRow.spark(
                pen,
                now.spark(),
                spark,
                look.px(14),
                getWidth() - spark - look.px(80),
                getHeight() - look.px(28.0),
                now.stale());
        int decimals = BenchRow.decimals(now);
        double right = getWidth() - look.px(12);
        String high = Numbers.fixed(now.spark().high(), decimals);
        String low = Numbers.fixed(now.spark().low(), decimals);
        pen.textRight(high, look.regular(Look.AXIS), pen.theme().ink2(), right, look.px(22));
        pen.textRight(low, look.regular(Look.AXIS), pen.theme().ink2(), right, getHeight() - look.px(8));
    }
}
