package settlemark.ui;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.util.List;
import javax.accessibility.AccessibleRole;
import settlemark.chart.Mark;

/** The step in words, and under it what can go wrong. Both are always whole: the bar grows where a line is too long. */
final class StepBar extends Painted {
    private static final double LEAST_WORDS = 18;

    /** Most of the width that an answer or a failure takes from the step's words. */
    private static final double TOLD_PART = 0.46;

    private String words = "";
    private String caution = "";
    private String told = "";
    private boolean plain;
    private boolean alarm;

    StepBar(Look look) {
        super(look, AccessibleRole.STATUS_BAR);
    }

    /** @param newTold an answer to a key that could do nothing, or what has failed; may be empty */
    void show(String newWords, String newCaution, String newTold) {
        sentence(newWords
                + (plain ? ". " : Words.say(". Caution: "))
                + newCaution
                + (newTold.isEmpty() ? "" : " " + newTold));
        if (!newWords.equals(words) || !newCaution.equals(caution) || !newTold.equals(told)) {
            words = newWords;
            caution = newCaution;
            told = newTold;
            revalidate();
            repaint();
        }
    }

    /** @param newPlain the small line is no caution */
    void plain(boolean newPlain) {
        plain = newPlain;
    }

    /** @param newAlarm the words are a safety notice: twice as high, in the colour of a fault */
    void alarm(boolean newAlarm) {
        if (newAlarm != alarm) {
            alarm = newAlarm;
            revalidate();
            repaint();
        }
    }

    /** Height that this text needs at a width. */
    int heightFor(int width) {
        Font font = cautionFont(width);
        int height = look.ipx(look.tight() ? 42 : 46)
                + (int) Math.ceil(cautionLines(font, width).size() * Pen.lineHeight(font));
        return alarm ? 2 * height : height;
    }

    /** The size of body text, or a little smaller where that saves a line. */
    private Font cautionFont(int width) {
        Font small = look.regular(Look.AXIS);
        Font body = look.regular(Look.BODY);
        return cautionLines(small, width).size() < cautionLines(body, width).size() ? small : body;
    }

    private List<String> cautionLines(Font font, int width) {
        return Pen.wrap(caution, font, width - look.px(58));
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(look.ipx(800), heightFor(Math.max(getWidth(), look.ipx(800))));
    }

    @Override
    void draw(Pen pen) {
        Color back = alarm ? pen.theme().fault() : pen.theme().window();
        Color ink = alarm ? pen.theme().sheet() : pen.theme().ink();
        Color ink2 = alarm ? pen.theme().sheet() : pen.theme().ink2();
        pen.fill(back, 0, 0, getWidth(), getHeight());
        if (alarm) {
            pen.g.translate(0, getHeight() / 4.0);
        }
        double x = look.px(16);
        double room = getWidth() - 2 * x;
        double half = room * TOLD_PART;
        Font telling = look.semiBold(Look.BODY);
        List<String> lines = Fitted.lines(told, telling, half, 2);
        double widest =
                lines.stream().mapToDouble(l -> Look.width(l, telling)).max().orElse(0);
        double reserved = told.isEmpty() ? 0 : widest + look.px(40);
        if (alarm) {
            notice(pen, ink, x, room - reserved);
        } else {
            pen.fit(words, fitting(room - reserved), ink, x, look.px(33), room - reserved);
        }
        if (!told.isEmpty()) {
            double y = look.px(lines.size() > 1 ? 18 : 33);
            for (String line : lines) {
                pen.fit(line, telling, alarm ? ink : pen.theme().notice(), x + room - widest, y, widest);
                y += Pen.lineHeight(telling);
            }
        }
        double size = look.px(18);
        double baseline = look.px(look.tight() ? 54 : 57);
        if (!plain && !alarm) {
            Mark.CAUTION.draw(pen.g, x, baseline - size + look.px(3), size, pen.theme());
        }
        Font small = cautionFont(getWidth());
        for (String line : cautionLines(small, getWidth())) {
            pen.text(line, small, ink2, x + look.px(plain || alarm ? 0 : 26), baseline);
            baseline += Pen.lineHeight(small);
        }
    }

    /** A safety notice has the size of a step as long as two lines hold it. */
    private void notice(Pen pen, Color ink, double x, double room) {
        double size = Look.STEP;
        while (size > LEAST_WORDS && Pen.wrap(words, look.semiBold(size), room).size() > 2) {
            size -= 1;
        }
        Font font = look.semiBold(size);
        List<String> lines = Fitted.lines(words, font, room, 2);
        double y = look.px(33) - (lines.size() - 1) * Pen.lineHeight(font);
        for (String line : lines) {
            pen.fit(line, font, ink, x, y, room);
            y += Pen.lineHeight(font);
        }
    }

    /** The step's size, or as much smaller as the words need. */
    private Font fitting(double room) {
        double size = Look.STEP;
        while (size > LEAST_WORDS && Look.width(words, look.semiBold(size)) > room) {
            size -= 1;
        }
        return look.semiBold(size);
    }
}
