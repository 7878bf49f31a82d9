package settlemark.ui;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntConsumer;
import javax.swing.JPanel;

/** The first thing that is seen: how to begin. */
final class ChoiceFace extends JPanel {
    /** Below this height a choice has small lines. */
    private static final double LOW = 96;

    /** Below this one its title and its sentence share a line. */
    private static final double LOWEST = 56;

    private final transient Look look;
    private final List<Begin> choices = new ArrayList<>();
    private boolean ruler;

    /** @param begin gets 0 for the demo, 1 for probes, 2 for a stored session */
    ChoiceFace(Look look, IntConsumer begin) {
        super(null);
        this.look = look;
        add(
                0,
                Words.say("Try the demo rig"),
                Words.say("A two-stage furnace with four probes; all of it says SIMULATED."),
                begin);
        add(
                1,
                Words.say("Connect probes"),
                Words.say("Bluetooth and serial gauges with a profile. The plate first, then a job on them."),
                begin);
        add(
                2,
                Words.say("Open a session"),
                Words.say("Stored sessions, searched by date, appliance and verdict; each as its strip."),
                begin);
        getAccessibleContext().setAccessibleName(Words.say("how to begin"));
    }

    private void add(int index, String title, String more, IntConsumer begin) {
        Begin choice = new Begin(look, index, title, more, () -> begin.accept(index));
        choices.add(choice);
        add(choice);
    }

    /** Offers to go on with a job. */
    void offer(String title, String more, Runnable begin) {
        add(choices.size(), title, more, index -> begin.run());
        revalidate();
        repaint();
    }

    List<WordButton> choices() {
        return List.copyOf(choices);
    }

    /** The one that has the focus, the first where none has. */
    void focus(int by) {
        int at = 0;
        for (int i = 0; i < choices.size(); i++) {
            at = choices.get(i).isFocusOwner() ? i + by : at;
        }
        choices.get(Math.max(0, Math.min(choices.size() - 1, at))).requestFocusInWindow();
    }

    @Override
    public void doLayout() {
        int margin = look.ipx(34);
        int gap = look.ipx(12);
        int each = Math.min(look.ipx(148), (getHeight() - 2 * look.ipx(24)) / choices.size());
        for (int i = 0; i < choices.size(); i++) {
            choices.get(i).setBounds(margin, look.ipx(24) + i * each, getWidth() - 2 * margin, Math.max(1, each - gap));
        }
    }

    /** @param shown whether the line to be measured lies at the bottom */
    void ruler(boolean shown) {
        ruler = shown;
        repaint();
    }

    boolean ruled() {
        return ruler;
    }

    /** Length of that line in pixels. */
    int rulerPx() {
        return Math.max(100, Math.min(getWidth() - look.ipx(100), look.ipx(400)));
    }

    @Override
    public void paint(Graphics graphics) {
        super.paint(graphics);
        if (ruler) {
            Pen pen = new Pen(graphics, look);
            double x = look.px(44);
            double y = getHeight() - look.px(34);
            double end = x + rulerPx();
            double high = look.px(14);
            pen.fill(pen.theme().sheet(), 0, y - high - 8, getWidth(), 2 * high + 16);
            pen.line(pen.theme().ink(), 2, x, y, end, y);
            pen.line(pen.theme().ink(), 2, x, y - high, x, y + high);
            pen.line(pen.theme().ink(), 2, end, y - high, end, y + high);
            pen.dispose();
        }
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
    }

    /** A number, a title and a sentence. */
    private static final class Begin extends WordButton {
        private final int index;
        private final String title;
        private final String more;

        Begin(Look look, int index, String title, String more, Runnable pressed) {
            super(look, pressed);
            this.index = index;
            this.title = title;
            this.more = more;
            getAccessibleContext().setAccessibleName((index + 1) + ", " + title);
            getAccessibleContext().setAccessibleDescription(more);
        }

        @Override
        boolean filled() {
            return index == 0;
        }

        @Override
        void words(Pen pen, Color ink, Color second) {
            double middle = getHeight() / 2.0;
            Color strong = isEnabled() ? ink : second;
            double room = getWidth() - look.px(140);
            if (getHeight() < look.px(LOWEST)) {
                oneLine(pen, strong, second, room);
                return;
            }
            pen.textCentred(String.valueOf(index + 1), look.regular(44), second, look.px(58), middle + look.px(15));
            if (getHeight() < look.px(LOW)) {
                pen.fit(title, look.semiBold(Look.LABEL), strong, look.px(120), middle - look.px(4), room);
                pen.fit(more, look.regular(Look.AXIS), second, look.px(120), middle + look.px(18), room);
                return;
            }
            pen.fit(title, look.semiBold(34), strong, look.px(120), middle - look.px(6), room);
            boolean two = Look.width(more, look.regular(Look.BODY)) > room;
            Font font = look.regular(two ? Look.BODY : Look.NAME);
            double y = middle + look.px(two ? 20 : 28);
            for (String line : two ? Fitted.lines(more, font, room, 2) : List.of(more)) {
                pen.fit(line, font, second, look.px(120), y, room);
                y += Pen.lineHeight(font);
            }
        }

        private void oneLine(Pen pen, Color strong, Color second, double room) {
            double base = getHeight() / 2.0 + look.px(6.5);
            pen.textCentred(String.valueOf(index + 1), look.regular(Look.NAME), second, look.px(58), base);
            double end = pen.fit(title, look.semiBold(Look.NAME), strong, look.px(120), base, room * 0.6);
            double left = end + look.px(16);
            pen.fit(more, look.regular(Look.AXIS), second, left, base, getWidth() - look.px(20) - left);
        }
    }
}
