package settlemark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Chooses the ticks of a value axis: steps of 1, 2 or 5, as many decimals as the step needs. */
final class ValueTicks {
    private ValueTicks() {}

    /** @param most how many steps there is room for */
    static List<Tick> within(ValueRange range, double most) {
        double step = step(range.span() / Math.max(1, most));
        int decimals = Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
        List<Tick> ticks = new ArrayList<>();
        long first = (long) Math.ceil(range.low() / step - 1e-9);
        long last = (long) Math.floor(range.high() / step + 1e-9);
        for (long k = first; k <= last; k++) {
            // Adding zero turns a negative zero into zero.
            ticks.add(new Tick(k * step + 0.0, label(k * step + 0.0, decimals)));
        }
        return ticks;
    }

    private static double step(double least) {
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        for (double factor : new double[] {1, 2, 5}) {
            if (factor * power >= least * (1 - 1e-9)) {
                return factor * power;
            }
        }
        return 10 * power;
    }

    private static String label(double value, int decimals) {
        String text = String.format(Locale.ROOT, "%." + decimals + "f", Math.abs(value));
        return value < 0 ? "\u2212" + text : text;
    }
}
