package settlemark.ui;

import java.util.function.Consumer;
import java.util.function.DoubleConsumer;

/** Measures the screen: a person holds a ruler to a line of known length in pixels and types how long it is. */
final class ScreenRuler {
    private ScreenRuler() {}

    /**
     * Asks for the length of the line.
     *
     * @param pixelsPerMm gets what was measured
     * @param wrong gets what was typed where it is no length
     */
    static void ask(ChoiceFace line, InlineRow row, DoubleConsumer pixelsPerMm, Consumer<String> wrong) {
        line.ruler(true);
        row.ask(() -> Words.say("How many millimetres long is the line, by a ruler?"), text -> {
            line.ruler(false);
            double measured = millimetres(text);
            if (measured > 0) {
                pixelsPerMm.accept(line.rulerPx() / measured);
            } else {
                wrong.accept(text);
            }
        });
    }

    /** 5 to 500 mm; 0 for what is no such length. */
    static double millimetres(String text) {
        boolean number = text.matches("\\d{1,3}(\\.\\d{1,2})?");
        double value = number ? Double.parseDouble(text) : 0;
        return value >= 5 && value <= 500 ? value : 0;
    }
}
