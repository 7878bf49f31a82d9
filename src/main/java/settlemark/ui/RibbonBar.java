package settlemark.ui;

import java.awt.Dimension;
import java.awt.geom.Rectangle2D;
import javax.accessibility.AccessibleRole;
import settlemark.chart.Ribbon;

/** The hatched ribbon that says SIMULATED; nothing where everything comes from real probes. */
final class RibbonBar extends Painted {
    static final double HEIGHT = 16;

    /** Size of the word in the far view over that of the strip. */
    static final double FAR = 46 / 13.0;

    private final double scale;
    private boolean simulated = true;

    RibbonBar(Look look, double scale) {
        super(look, AccessibleRole.LABEL);
        this.scale = scale;
        sentence(Words.say("simulated"));
    }

    void simulated(boolean newSimulated) {
        simulated = newSimulated;
        sentence(simulated ? Words.say("simulated") : "");
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(look.ipx(100), look.ipx(HEIGHT * scale));
    }

    @Override
    void draw(Pen pen) {
        Rectangle2D all = new Rectangle2D.Double(0, 0, getWidth(), getHeight());
        double word = Look.width(Words.say("SIMULATED"), look.semiBold(Look.AXIS * scale));
        if (simulated && getWidth() < word + look.px(2 * Look.GRID)) {
            // Too narrow for letters that can be read: the word stands in the open column's ribbon, right beside.
            pen.fill(pen.theme().fold(), all);
            pen.hatch(pen.theme().ink2(), look.px(1.2), look.px(6), all);
        } else if (simulated) {
            Ribbon.draw(pen.g, all, pen.theme(), look.px(scale), Words.say("SIMULATED"));
        } else {
            pen.fill(pen.theme().sheet(), all);
        }
    }
}
