package settlemark.session;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Makes traces from plain arrays, for tests of what draws them. */
public final class Traces {
    private Traces() {}

    public static Trace of(long[] timesNanos, double[] values) {
        List<Trace.Block> sealed = new ArrayList<>();
        int from = 0;
        for (; from + Trace.BLOCK <= values.length; from += Trace.BLOCK) {
            sealed.add(new Trace.Block(
                    Arrays.copyOfRange(timesNanos, from, from + Trace.BLOCK),
                    Arrays.copyOfRange(values, from, from + Trace.BLOCK)));
        }
        return new Trace(
                sealed,
                new Trace.Block(
                        Arrays.copyOfRange(timesNanos, from, values.length),
                        Arrays.copyOfRange(values, from, values.length)));
    }
}
