package settlemark.ui;

import java.awt.Color;
import java.awt.Font;
import java.util.List;
import java.util.Optional;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.chart.Mark;
import settlemark.session.ProbeView.Health;
import settlemark.session.ProbeView.HealthClass;

/** One role before a job: the channel that is to give it, and how its device is. */
final class RoleRow extends Painted {
    static final double[] AT = {0.014, 0.125, 0.415, 0.64, 0.765};
    static final List<String> HEADS = List.of(
            Words.key("Channel"), Words.key("Probe"), Words.key("Read as"), Words.key("Link"), Words.key("Health"));

    private final Box box;
    private @Nullable Shown shown;

    /**
     * @param role its word
     * @param under its unit, or that the plan does not need it
     * @param probe empty where nothing is chosen
     * @param place of the probe and its channel
     * @param readAs profile, and what it says of the channel
     * @param link signal, and when it was heard
     * @param health empty where it is good
     * @param battery may be empty
     */
    record Shown(
            String role,
            String under,
            String probe,
            String place,
            List<String> readAs,
            List<String> link,
            Optional<Health> health,
            String battery) {}

    /** @param choose opens the list of what can be chosen */
    RoleRow(Look look, Runnable choose) {
        super(look, AccessibleRole.LABEL);
        box = new Box(look, choose);
        add(box);
    }

    WordButton box() {
        return box;
    }

    void show(Shown newShown) {
        if (newShown.equals(shown)) {
            return;
        }
        shown = newShown;
        String what = newShown.probe.isEmpty()
                ? Words.say("no probe yet")
                : newShown.probe + " " + newShown.place + ", " + String.join(" ", newShown.link) + ", "
                        + newShown.health.map(Health::words).map(Words::told).orElse(Words.say("good")) + " "
                        + newShown.battery;
        sentence(newShown.role + ": " + what);
        box.getAccessibleContext().setAccessibleName(Words.say("probe of the {0}: {1}", newShown.role, what));
        repaint();
    }

    @Override
    public void doLayout() {
        int ring = WordButton.ringPx();
        int x = (int) (AT[1] * getWidth()) - ring;
        box.setBounds(x, 1, (int) (AT[2] * getWidth()) - look.ipx(16) - x, Math.max(1, getHeight() - 2));
    }

    @Override
    void draw(Pen pen) {
        Shown now = shown;
        if (now == null) {
            return;
        }
        double middle = getHeight() / 2.0;
        two(pen, 0, List.of(now.role, now.under), look.semiBold(getHeight() < look.px(58) ? Look.NAME : Look.LABEL));
        two(pen, 2, now.readAs, look.regular(Look.BODY));
        two(pen, 3, now.link, look.regular(Look.BODY));
        if (now.health.isPresent()) {
            health(pen, now.health.get(), middle);
        } else if (!now.probe.isEmpty()) {
            two(pen, 4, List.of(Words.say("good"), now.battery), look.regular(Look.BODY));
        }
        pen.line(pen.theme().hair(), 1.4, 0, getHeight() - 1, getWidth(), getHeight() - 1);
    }

    private void two(Pen pen, int column, List<String> lines, Font font) {
        double x = AT[column] * getWidth();
        double room = (column + 1 < AT.length ? AT[column + 1] * getWidth() : getWidth()) - x - look.px(8);
        double middle = getHeight() / 2.0;
        Font small = look.regular(Look.BODY);
        boolean second = lines.size() > 1 && !lines.get(1).isEmpty() && !low(getHeight());
        pen.fit(
                lines.get(0),
                lowered(font, getHeight()),
                pen.theme().ink(),
                x,
                second ? middle - look.px(3) : middle + Math.min(look.px(5), getHeight() * 0.25),
                room);
        if (second) {
            pen.fit(lines.get(1), small, pen.theme().ink2(), x, middle + look.px(18), room);
        }
    }

    /** Whether there is room for one line only: what the other would say is still spoken. */
    private boolean low(int height) {
        return height < look.px(44);
    }

    private static Font lowered(Font font, int height) {
        return font.deriveFont((float) Math.min(font.getSize2D(), height * 0.8));
    }

    private void health(Pen pen, Health health, double middle) {
        double x = AT[4] * getWidth();
        double size = look.px(26);
        Color color = health.health() == HealthClass.FAILURE
                ? pen.theme().fault()
                : pen.theme().notice();
        Mark.drawHealth(pen.g, health.health().letter(), x, middle - size / 2, size, color, pen.theme());
        Font font = look.semiBold(Look.AXIS);
        double room = getWidth() - x - size - look.px(14);
        int most = Math.max(1, (int) (getHeight() / Pen.lineHeight(font)));
        List<String> lines = Fitted.lines(Words.told(health.words()), font, room, most);
        double y = middle - Pen.lineHeight(font) * (lines.size() - 1) / 2 + look.px(4.5);
        for (String line : lines) {
            pen.text(line, font, color, x + size + look.px(8), y);
            y += Pen.lineHeight(font);
        }
    }

    /** The button with what is chosen. */
    private final class Box extends WordButton {
        Box(Look look, Runnable choose) {
            super(look, choose);
        }

        @Override
        void words(Pen pen, Color ink, Color second) {
            Shown now = shown;
            if (now == null) {
                return;
            }
            double x = look.px(17);
            double room = getWidth() - look.px(60);
            double middle = getHeight() / 2.0;
            Font name = look.semiBold(Look.NAME);
            // The ring of the focus stands outside of the outline.
            int inside = Math.max(1, getHeight() - 2 * ringPx());
            if (now.probe.isEmpty()) {
                Font regular = lowered(look.regular(Look.NAME), inside);
                pen.fit(Words.say("Choose a probe"), regular, second, x, middle + regular.getSize2D() * 0.36, room);
            } else if (low(getHeight())) {
                Font small = lowered(name, inside);
                pen.fit(now.probe, small, ink, x, middle + small.getSize2D() * 0.36, room);
            } else {
                pen.fit(now.probe, name, ink, x, middle - look.px(3), room);
                pen.fit(now.place, look.regular(Look.BODY), second, x, middle + look.px(17), room);
            }
            double right = getWidth() - look.px(24);
            pen.line(ink, 1.8, right - look.px(14), middle - look.px(4), right - look.px(7), middle + look.px(4));
            pen.line(ink, 1.8, right - look.px(7), middle + look.px(4), right, middle - look.px(4));
        }
    }
}
