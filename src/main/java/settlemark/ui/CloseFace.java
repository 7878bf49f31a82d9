package settlemark.ui;

import java.awt.Graphics;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javax.swing.JButton;
import settlemark.chart.Mark;
import settlemark.measure.Role;

/** Closing up: the zero is read again, then what the person ticks, each with its time. */
final class CloseFace extends Face {
    private static final double LIST = 440;
    private final transient Readouts readouts;
    private final Remark remark;
    private final transient Consumer<Integer> tick;
    private final List<TickButton> ticks = new ArrayList<>();
    private List<Role> roles = List.of();

    /** @param tick gets the number of a tick, from 0 */
    CloseFace(Look look, Consumer<Integer> tick) {
        super(look, Words.say("closing up"));
        this.tick = tick;
        readouts = new Readouts(look);
        remark = new Remark(look);
        add(remark);
    }

    @Override
    int neededWidth() {
        return Readout.neededWidth(look) + look.ipx(380);
    }

    @Override
    void show(Scene scene, boolean digits) {
        List<Role> required = scene.open().step().required();
        if (!required.equals(roles)) {
            roles = required;
            readouts.rows(roles).forEach(this::add);
            revalidate();
        }
        remark.show(scene.open());
        if (digits) {
            readouts.show(scene, roles);
        }
        List<String> items = scene.open().step().ticks();
        while (ticks.size() < items.size()) {
            int number = ticks.size();
            TickButton button = new TickButton(look, number, () -> tick.accept(number));
            ticks.add(button);
            add(button);
            revalidate();
        }
        String why = scene.live() && scene.ticking()
                ? ""
                : scene.open().done() ? Words.say("is closed") : Words.say("after the closing zero");
        for (int i = 0; i < ticks.size(); i++) {
            ticks.get(i).setVisible(i < items.size());
        }
        Map<String, Long> ticked = scene.open().ticked();
        for (int i = 0; i < items.size(); i++) {
            ticks.get(i).show(items.get(i), ticked.containsKey(items.get(i)), why);
        }
    }

    List<TickButton> ticks() {
        return List.copyOf(ticks);
    }

    @Override
    public void doLayout() {
        int list = Math.min(look.ipx(LIST), getWidth() - Readout.neededWidth(look));
        // Without numbers the list stands at the left, where one begins to read.
        int left = roles.isEmpty() ? 0 : getWidth() - Math.max(look.ipx(300), list);
        if (!roles.isEmpty()) {
            // Digits keep their height, the list gives way; where there is nothing to tick they have it all.
            boolean listed = ticks.stream().anyMatch(TickButton::isVisible);
            left = listed ? Math.max(left, Math.min(getWidth(), Readout.neededWidth(look))) : getWidth();
        }
        int top = look.ipx(10);
        int each = Math.min(look.ipx(180), (getHeight() - top - look.ipx(Rows.FOOT)) / Math.max(1, roles.size()));
        for (int i = 0; i < roles.size(); i++) {
            readouts.row(roles.get(i)).setBounds(0, top + i * each, left, each);
        }
        remark.setBounds(
                look.ipx(8), getHeight() - look.ipx(Rows.FOOT), getWidth() - look.ipx(16), look.ipx(Rows.FOOT));
        int high = Math.max(look.ipx(84), look.buttonPx());
        for (int i = 0; i < ticks.size(); i++) {
            ticks.get(i)
                    .setBounds(
                            left + look.ipx(12),
                            look.ipx(12) + i * (high + 8),
                            Math.min(getWidth() - left - look.ipx(24), look.ipx(2 * LIST)),
                            high);
        }
    }

    /** One item to tick, at least 20 mm high. */
    static final class TickButton extends JButton {
        private final transient Look look;
        private final int number;
        private String words = "";
        private String why = "";
        private boolean done;

        TickButton(Look look, int number, Runnable tick) {
            this.look = look;
            this.number = number;
            setContentAreaFilled(false);
            setBorderPainted(false);
            setFocusPainted(false);
            setRequestFocusEnabled(false);
            setOpaque(false);
            addActionListener(e -> tick.run());
        }

        void show(String newWords, boolean newDone, String newWhy) {
            getAccessibleContext()
                    .setAccessibleName(newWords + (newDone ? Words.say(", ticked") : Words.say(", not ticked")));
            getAccessibleContext().setAccessibleDescription(newWhy);
            setEnabled(newWhy.isEmpty());
            if (!newWords.equals(words) || newDone != done || !newWhy.equals(why)) {
                words = newWords;
                done = newDone;
                why = newWhy;
                repaint();
            }
        }

        @Override
        protected void paintComponent(Graphics graphics) {
            Pen pen = new Pen(graphics, look);
            try {
                var box = Pen.box(5, 5, getWidth() - 10.0, getHeight() - 10.0, Look.OUTLINE, Look.RADIUS);
                if (isEnabled()) {
                    pen.outline(pen.theme().ink(), Look.OUTLINE, box);
                } else {
                    pen.dashed(pen.theme().rule(), Look.OUTLINE, 6, 4, box);
                }
                if (isFocusOwner()) {
                    pen.outline(
                            pen.theme().series().get(1),
                            Look.FOCUS_RING,
                            Pen.box(0, 0, getWidth(), getHeight(), Look.FOCUS_RING, Look.RADIUS + 3));
                }
                content(pen);
            } finally {
                pen.dispose();
            }
        }

        private void content(Pen pen) {
            double size = look.px(26);
            double x = look.px(20);
            (done ? Mark.INSIDE : Mark.NOT_TAKEN).draw(pen.g, x, (getHeight() - size) / 2, size, pen.theme());
            String key = String.valueOf(number + 1);
            pen.textRight(
                    key, look.regular(Look.BODY), pen.theme().ink2(), getWidth() - look.px(20), getHeight() / 2.0 + 5);
            double left = x + size + look.px(14);
            double room = getWidth() - left - look.px(44);
            var font = look.regular(Look.NAME - 1);
            List<String> lines = Pen.wrap(words, font, room);
            int count = lines.size() + (why.isEmpty() ? 0 : 1);
            double y = getHeight() / 2.0 - (count - 1) * look.px(10.5) + look.px(6);
            for (String line : lines) {
                pen.text(
                        line,
                        font,
                        isEnabled() || done ? pen.theme().ink() : pen.theme().ink2(),
                        left,
                        y);
                y += look.px(21);
            }
            if (!why.isEmpty()) {
                pen.fit(why, look.regular(Look.BODY), pen.theme().ink2(), left, y, room);
            }
        }
    }
}
