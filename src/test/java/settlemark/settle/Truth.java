package settlemark.settle;

import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.JsonNode;

/**
 * What was true of a simulated channel.
 *
 * @param kind of channel
 * @param family what kind of thing happens in it
 * @param limit the drift limit
 * @param endSeconds length of the trace
 * @param settled spans in which the reading was truly settled
 * @param reference the right value at each whole second
 * @param remaining the remaining movement at each whole second, in units of the limit
 */
record Truth(
        SettleKind kind,
        String family,
        double limit,
        double endSeconds,
        List<Span> settled,
        double[] reference,
        double[] remaining) {
    record Span(double start, double end) {
        boolean holds(double seconds) {
            return start <= seconds && seconds <= end;
        }
    }

    static Truth of(JsonNode channel) {
        List<Span> settled = new ArrayList<>();
        for (JsonNode span : channel.get("settled")) {
            settled.add(
                    new Span(span.get("start").doubleValue(), span.get("end").doubleValue()));
        }
        return new Truth(
                SettleKind.valueOf(channel.get("kind").stringValue().toUpperCase(java.util.Locale.ROOT)),
                channel.get("family").stringValue(),
                channel.get("limit_drift").doubleValue(),
                channel.get("duration_s").doubleValue(),
                settled,
                numbers(channel.get("ref")),
                numbers(channel.get("x")));
    }

    private static double[] numbers(JsonNode array) {
        double[] values = new double[array.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = array.get(i).doubleValue();
        }
        return values;
    }

    double referenceAt(double seconds) {
        return at(reference, seconds);
    }

    double remainingAt(double seconds) {
        return at(remaining, seconds);
    }

    private static double at(double[] grid, double seconds) {
        return grid[(int) Math.min(grid.length - 1L, Math.max(0, Math.rint(seconds)))];
    }
}
