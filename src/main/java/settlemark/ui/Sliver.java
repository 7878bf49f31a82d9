package settlemark.ui;

import java.awt.Cursor;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import javax.accessibility.AccessibleRole;
import settlemark.chart.Mark;

/** A folded column before a job: a mark and its name. */
final class Sliver extends Painted {
    static final double WIDTH = 26;
    private final String name;
    private boolean done;

    /** @param opened runs when it is picked */
    Sliver(Look look, String name, boolean canOpen, Runnable opened) {
        super(look, AccessibleRole.LABEL);
        this.name = name;
        sentence(name);
        if (canOpen) {
            setCursor(Cursor.getPredefinedCursor(Cursor.HAND_CURSOR));
            addMouseListener(new MouseAdapter() {
                @Override
                public void mousePressed(MouseEvent event) {
                    opened.run();
                }
            });
        }
    }

    void done(boolean newDone) {
        done = newDone;
        sentence(name + (done ? Words.say(", done") : Words.say(", to come")));
        repaint();
    }

    @Override
    void draw(Pen pen) {
        pen.fill(pen.theme().fold(), 0, 0, getWidth(), getHeight());
        double size = look.px(17);
        (done ? Mark.INSIDE : Mark.NOT_TAKEN).draw(pen.g, (getWidth() - size) / 2, look.px(13), size, pen.theme());
        pen.textUpwards(
                name,
                look.regular(Look.BODY),
                pen.theme().ink2(),
                getWidth() / 2.0 + look.px(5),
                Rows.head(look) + look.px(RibbonBar.HEIGHT + 10));
        pen.line(pen.theme().hair(), 1.4, getWidth() - 1, 0, getWidth() - 1, getHeight());
    }
}
