package settlemark.chart;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Random;
import settlemark.measure.Role;
import settlemark.session.Span;
import settlemark.session.Trace;

/** An invented furnace being capped at high fire: what the charts of the tests show. */
final class Scene {
    static final long SECOND = 1_000_000_000L;
    static final TimeLabels CLOCK =
            new TimeLabels.WallClock(Instant.parse("2026-11-25T15:02:00Z"), ZoneOffset.ofHours(-5));
    static final long FROM = 2190 * SECOND;
    static final long NOW = 2431 * SECOND;

    private Scene() {}

    static LaneView atWork(boolean simulated) {
        return new LaneView(FROM, NOW, NOW, CLOCK, List.of(pressures(), temperatures()), simulated);
    }

    static Lane pressures() {
        Trace.Part inlet = part(1, 10, t -> 6.8, 0.02);
        Trace.Part manifold = part(2, 10, t -> t < 2250 ? 3.12 : 3.49 - 0.37 * Math.exp(-(t - 2250) / 10), 0.02);
        return Lane.of(
                        "inH\u2082O",
                        new ValueRange(-0.5, 9),
                        List.of(
                                Lane.TraceLine.of(Role.INLET, "4.5 to 10.5", inlet, 3 * SECOND),
                                Lane.TraceLine.of(Role.MANIFOLD, "3.5 ±0.35", manifold, 3 * SECOND)))
                .withBands(List.of(new Lane.Band(4.5, 10.5), new Lane.Band(3.15, 3.85)))
                .withSpans(List.of(
                        new Lane.SettledSpan(0, new Span(2370 * SECOND, NOW)),
                        new Lane.SettledSpan(1, new Span(2350 * SECOND, NOW))))
                .withReadings(List.of(new Lane.ReadingMark(1, 2300 * SECOND, 3.49, "adjusted 3.49")))
                .withEvents(List.of(new Lane.EventMark(1, 2310 * SECOND, "cap on")));
    }

    static Lane temperatures() {
        Trace.Part supply = part(3, 1, t -> 121.4 - 3 * Math.exp(-(t - 2190) / 60), 0.2);
        Trace.Part air = part(4, 1, t -> t > 2290 && t < 2328 ? Double.NaN : 70.9, 0.1);
        return Lane.of(
                        "°F",
                        new ValueRange(55, 138),
                        List.of(
                                Lane.TraceLine.of(Role.SUPPLY, "", supply, 5 * SECOND),
                                Lane.TraceLine.of(Role.RETURN, "", air, 5 * SECOND)))
                .withBands(List.of(new Lane.Band(100.9, 130.9)))
                .withSpans(List.of(new Lane.SettledSpan(1, new Span(2335 * SECOND, NOW))))
                .withDifference(
                        new Lane.Difference(70.9, 121.3, NOW - 12 * SECOND, "rise 50.4", "range 30 to 60, plate"));
    }

    static LaneView adjusting() {
        Trace.Part manifold = part(2, 10, t -> t < 2400 ? 3.12 : 3.12 + 0.004 * (t - 2400), 0.01);
        Lane.TraceLine line =
                new Lane.TraceLine("", "", LineStyle.ALONE, manifold.timesNanos(), manifold.values(), 3 * SECOND);
        Lane lane = Lane.of("inH\u2082O", new ValueRange(2.96, 3.96), List.of(line))
                .withBands(
                        List.of(new Lane.Band(3.15, 3.85, "3.15, lower limit", "3.85, upper limit, plate 3.5 ±10 %")))
                .withTarget(new Lane.Target(3.5, "target 3.50"))
                .withHeading(new Lane.Heading(0, NOW + 12 * SECOND, 3.36, 3.5, "3.36"));
        return new LaneView(NOW - 60 * SECOND, NOW + 18 * SECOND, NOW, new TimeLabels.Ago(NOW), List.of(lane), true);
    }

    interface Curve {
        double at(double seconds);
    }

    static Trace.Part part(long seed, int perSecond, Curve curve, double noise) {
        Random random = new Random(seed);
        int count = (int) ((NOW - FROM) / SECOND * perSecond) + 1;
        long[] times = new long[count];
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = FROM + i * SECOND / perSecond;
            values[i] = curve.at(times[i] / 1e9) + noise * random.nextGaussian();
        }
        return new Trace.Part(times, values);
    }
}
