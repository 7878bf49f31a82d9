package settlemark.ui;

import java.awt.geom.Rectangle2D;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Unit;
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
    private final transient SparkLine line = new SparkLine(true);
    private @Nullable Beside shown;

    /** What stands beside the line of the last minute. */
    private record Beside(
            String probe,
            String name,
            Unit unit,
            String word,
            @Nullable Gap gap,
            boolean old,
            String least,
            String greatest,
            int digitsWidth) {}

    BenchDetail(Look look) {
        super(look, AccessibleRole.LABEL);
        digits = new DigitField(look);
        add(digits);
        setOpaque(true);
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
        int decimals = BenchRow.decimals(newRow);
        String least = Numbers.fixed(newRow.spark().low(), decimals);
        String greatest = Numbers.fixed(newRow.spark().high(), decimals);
        Beside beside = new Beside(
                probe, BenchRow.name(newRow), newRow.unit(), word, gap, old, least, greatest, digits.getWidth());
        int from = line.show(newRow.spark());
        if (!beside.equals(shown)) {
            shown = beside;
            repaint();
        } else if (from < newRow.spark().lows().length) {
            repaint(SparkLine.dirty(sparkBox(), from));
        }
    }

    private Rectangle2D sparkBox() {
        double left = getWidth() * (1 - SPARK);
        return new Rectangle2D.Double(left, look.px(14), getWidth() - left - look.px(80), getHeight() - look.px(28.0));
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
        double apart = Math.min(look.px(25), getHeight() / 3.4);
        pen.fit(now.unit().symbol(), look.regular(Look.NAME), pen.theme().ink2(), x, middle - apart + look.px(5), wide);
        pen.fit(word, look.semiBold(Look.NAME), pen.theme().ink(), x, middle + look.px(5), wide);
        if (gap != null) {
            pen.fit(gap.sentence(), look.regular(Look.BODY), pen.theme().ink2(), x, middle + apart + look.px(5), wide);
        }
        line.draw(
                pen, sparkBox(), now.stale() ? pen.theme().rule() : pen.theme().ink());
        Beside beside = shown;
        if (beside == null) {
            return;
        }
        double right = getWidth() - look.px(12);
        pen.textRight(beside.greatest, look.regular(Look.AXIS), pen.theme().ink2(), right, look.px(22));
        pen.textRight(beside.least, look.regular(Look.AXIS), pen.theme().ink2(), right, getHeight() - look.px(8));
    }
}
