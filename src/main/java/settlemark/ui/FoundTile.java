package settlemark.ui;

import java.awt.Color;
import java.awt.Font;
import java.util.Optional;
import settlemark.chart.Mark;
import settlemark.session.ProbeView.Health;
import settlemark.session.ProbeView.HealthClass;

/** A device that is found and has no role yet. */
final class FoundTile extends WordButton {
    private Shown shown = new Shown("", "", Optional.empty(), false);

    /**
     * @param line signal, last heard, battery
     * @param readable it is in reach and a profile fits
     */
    record Shown(String title, String line, Optional<Health> health, boolean readable) {}

    FoundTile(Look look, Runnable pressed) {
        super(look, pressed);
    }

    void show(Shown newShown) {
        if (!newShown.equals(shown)) {
            shown = newShown;
            getAccessibleContext()
                    .setAccessibleName(newShown.title + ": " + newShown.line
                            + newShown.health
                                    .map(h -> ", " + Words.told(h.words()))
                                    .orElse(""));
            repaint();
        }
    }

    Shown shown() {
        return shown;
    }

    @Override
    boolean solid() {
        return shown.readable;
    }

    @Override
    void words(Pen pen, Color ink, Color second) {
        double x = look.px(17);
        double room = getWidth() - 2 * x;
        double middle = getHeight() / 2.0;
        if (shown.health.isPresent()) {
            Health health = shown.health.get();
            double size = look.px(26);
            Color color = health.health() == HealthClass.FAILURE
                    ? pen.theme().fault()
                    : pen.theme().notice();
            Mark.drawHealth(
                    pen.g,
                    health.health().letter(),
                    getWidth() - x - size,
                    middle - size / 2,
                    size,
                    color,
                    pen.theme());
            room -= size + look.px(8);
        }
        Font name = look.semiBold(Look.NAME);
        Font small = look.regular(Look.BODY);
        pen.text(Fitted.words(shown.title, name, room), name, ink, x, middle - look.px(3));
        String line = shown.health.map(h -> word(h) + ": " + shown.line).orElse(shown.line);
        pen.text(Fitted.words(line, small, room), small, second, x, middle + look.px(17));
    }

    private static String word(Health health) {
        return switch (health.health()) {
            case FAILURE -> Words.say("failure");
            case FUNCTION_CHECK -> Words.say("function check");
            case OUT_OF_SPECIFICATION -> Words.say("out of specification");
            case MAINTENANCE_REQUIRED -> Words.say("maintenance required");
        };
    }
}
