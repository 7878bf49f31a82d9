package settlemark.ui;

import javax.accessibility.AccessibleRole;
import settlemark.chart.ChartTheme;
import settlemark.chart.Mark;
import settlemark.session.ProbeView;

/** The probe that the rows below it come from, and what is wrong with it. */
final class BenchHead extends Painted {
    private String name = "";
    private String beside = "";
    private char letter;
    private boolean failed;

    BenchHead(Look look) {
        super(look, AccessibleRole.LABEL);
        setOpaque(true);
    }

    void show(ProbeView probe) {
        String before = name + letter + failed + beside;
        name = probe.setup().name();
        letter = probe.health().map(h -> h.health().letter()).orElse(' ');
        failed = probe.health()
                .map(h -> h.health() == ProbeView.HealthClass.FAILURE)
                .orElse(false);
        beside = probe.health()
                .map(h -> Words.told(h.words()))
                .orElse(probe.setup().profile().name());
        sentence(Words.say("probe {0}: {1}", name, beside));
        if (!before.equals(name + letter + failed + beside)) {
            repaint();
        }
    }

    @Override
    void draw(Pen pen) {
        ChartTheme theme = pen.theme();
        pen.fill(theme.fold(), 0, 0, getWidth(), getHeight());
        double baseline = getHeight() / 2.0 + look.px(5);
        double x = pen.text(name, look.semiBold(Look.BODY), theme.ink(), look.px(8), baseline) + look.px(10);
        if (letter != ' ') {
            double size = Math.min(look.px(18), getHeight() - look.px(4));
            Mark.drawHealth(
                    pen.g, letter, x, (getHeight() - size) / 2, size, failed ? theme.fault() : theme.notice(), theme);
            x += size + look.px(6);
        }
        pen.fit(beside, look.regular(Look.AXIS), theme.ink2(), x, baseline, getWidth() - x - look.px(8));
        pen.line(theme.rule(), 1.4, 0, getHeight() - 0.7, getWidth(), getHeight() - 0.7);
    }
}
