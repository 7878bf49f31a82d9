package settlemark.ui;

import java.awt.Font;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Unit;

/** One channel, large: its number, the gap under it, and in words what both say. */
final class Readout extends Painted {
    private static final double WORDS = 190;
    private static final String WIDEST = "888.8";

    /**
     * What is shown.
     *
     * @param name of the channel
     * @param unit of the value
     * @param value text of the number
     * @param faded where it is old
     * @param gap the settled decision
     */
    record Shown(String name, Unit unit, String value, boolean faded, Gap gap) {
        String sentence() {
            return name + " " + value + " " + Numbers.spoken(unit) + ", " + gap.word() + "; " + gap.sentence();
        }
    }

    private final DigitField digits;
    private final GapBar bar;
    private @Nullable Shown shown;

    Readout(Look look) {
        super(look, AccessibleRole.PANEL);
        digits = new DigitField(look);
        bar = new GapBar(look);
        add(digits);
        add(bar);
    }

    void show(Shown newShown) {
        sentence(newShown.sentence());
        digits.sentence(newShown.value() + " " + Numbers.spoken(newShown.unit()));
        digits.show(newShown.value(), newShown.gap().settled(), newShown.faded());
        bar.show(newShown.gap());
        if (!newShown.equals(shown)) {
            boolean words = shown == null
                    || !shown.gap().equals(newShown.gap())
                    || !shown.name().equals(newShown.name());
            shown = newShown;
            if (words) {
                repaint((int) wordsLeft() - 4, 0, getWidth(), getHeight());
            }
        }
    }

    DigitField digits() {
        return digits;
    }

    /** Width that digits of the least height and their words need. */
    static int neededWidth(Look look) {
        double digitPx = look.mm(Look.READABLE_MM);
        return (int) Math.ceil(DigitField.width(WIDEST, look, digitPx) + look.px(WORDS + 24));
    }

    /** Width that fills a height without wasting any. */
    static int usefulWidth(Look look, int height) {
        return (int) Math.ceil(DigitField.width(WIDEST, look, digitPx(look, height)) + look.px(WORDS + 30));
    }

    private static double digitPx(Look look, int height) {
        return Math.max(look.mm(Look.READABLE_MM), (height - 8) / 1.36);
    }

    private double wordsLeft() {
        return getWidth() - look.px(WORDS);
    }

    @Override
    public void doLayout() {
        double right = wordsLeft() - look.px(14);
        double least = look.mm(Look.READABLE_MM);
        double widest = DigitField.width(WIDEST, look, 100) / 100;
        double digitPx = Math.max(least, Math.min(digitPx(look, getHeight()), (right - look.px(6)) / widest));
        digits.digitPx(digitPx);
        double bar20 = digitPx * 0.24;
        double between = Math.max(2, Math.min(digitPx * 0.08, getHeight() - digitPx - bar20 - 2));
        double top = Math.max(0, (getHeight() - digitPx - between - bar20) / 2);
        int over = (int) Math.ceil(digitPx * 0.03);
        digits.setBounds(0, (int) top - over, (int) right, (int) Math.ceil(digitPx) + 2 * over);
        double track = Math.min(right - 4, digitPx * 3.65);
        bar.setBounds((int) (right - track), (int) (top + digitPx + between), (int) track + 2, (int) Math.ceil(bar20));
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().sheet(), 0, 0, getWidth(), getHeight());
        if (shown == null) {
            return;
        }
        Gap gap = shown.gap();
        double x = wordsLeft();
        double room = getWidth() - x - look.px(6);
        Font small = look.regular(Look.BODY);
        boolean tight = getHeight() < look.px(98);
        double height = look.px(tight ? 74 : 92);
        // Where the row is lower than its words want, the lines move together.
        double close = Math.min(1, getHeight() / height);
        double y = Math.max(0, (getHeight() - height) / 2) + look.px(20) * close;
        Font unit = look.regular(Look.NAME);
        double unitWide = Look.width(shown.unit().symbol(), unit) + look.px(8);
        double end =
                pen.fit(shown.name(), look.semiBold(Look.LABEL), pen.theme().ink(), x, y, room - unitWide);
        pen.text(shown.unit().symbol(), unit, pen.theme().ink2(), end + look.px(8), y);
        y += look.px(27) * close;
        Font word = fitting(gap.word(), gap.settled(), room);
        pen.fit(gap.word(), word, pen.theme().ink(), x, y, room);
        y += look.px(22) * close;
        if (tight || gap.could().isEmpty()) {
            pen.fit(gap.brief(), small, pen.theme().ink2(), x, y, room);
        } else {
            pen.fit(gap.could(), small, pen.theme().ink2(), x, y, room);
            pen.fit(gap.limit(), small, pen.theme().ink2(), x, y + look.px(19) * close, room);
        }
    }

    private Font fitting(String word, boolean bold, double room) {
        double size = Look.LABEL;
        while (size > Look.BODY && Look.width(word, font(bold, size)) > room) {
            size -= 1;
        }
        return font(bold, size);
    }

    private Font font(boolean bold, double size) {
        return bold ? look.semiBold(size) : look.regular(size);
    }
}
