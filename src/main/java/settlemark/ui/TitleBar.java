package settlemark.ui;

import java.awt.geom.Ellipse2D;
import javax.accessibility.AccessibleRole;
import settlemark.chart.Mark;

/** The first line: the mark, SIMULATED, what it is about. */
final class TitleBar extends Painted {
    private boolean simulated;
    private String what = "";

    TitleBar(Look look) {
        super(look, AccessibleRole.STATUS_BAR);
    }

    void say(boolean newSimulated, String newWhat) {
        simulated = newSimulated;
        what = newWhat;
        sentence("Settlemark" + (simulated ? Words.say(", simulated") : "") + ". " + what);
        repaint();
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().window(), 0, 0, getWidth(), getHeight());
        double baseline = getHeight() / 2.0 + look.px(5.5);
        double mark = look.px(26);
        Mark.STAPLE.draw(pen.g, look.px(11), (getHeight() - mark) / 2, mark, pen.theme());
        double x = look.px(45);
        if (simulated) {
            double width = Look.width(Words.say("SIMULATED"), look.semiBold(Look.AXIS)) + look.px(18);
            double height = look.px(24);
            pen.outline(
                    pen.theme().ink(),
                    Look.OPEN_OUTLINE,
                    Pen.box(x, (getHeight() - height) / 2, width, height, Look.OPEN_OUTLINE, 0));
            pen.textCentred(
                    Words.say("SIMULATED"),
                    look.semiBold(Look.AXIS),
                    pen.theme().ink(),
                    x + width / 2,
                    baseline - look.px(0.8));
            x += width + look.px(13);
        }
        double dot = look.px(4.6);
        pen.fill(
                pen.theme().ink(),
                new Ellipse2D.Double(look.px(11) + (mark - dot) / 2, getHeight() / 2.0 + look.px(1), dot, dot));
        pen.text(
                what.isEmpty() ? "Settlemark" : what,
                look.semiBold(Look.BODY),
                pen.theme().ink(),
                x,
                baseline);
        pen.textRight(
                Words.say("keys  ?"), look.regular(Look.BODY), pen.theme().ink2(), getWidth() - look.px(14), baseline);
    }
}
