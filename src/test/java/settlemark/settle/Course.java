package settlemark.settle;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A noise-free signal made of segments, which knows when it is truly settled: on an approach, when nothing later in the
 * segment is further than the limit from its end; on a drift, when the look-ahead holds no more movement than the limit;
 * while hunting, when the swing is within the band.
 */
final class Course {
    private static final double STEP_SECONDS = 0.1;

    private enum Type {
        APPROACH,
        DRIFT,
        HUNTING
    }

    /** @param swing half-width of the hunting, else 0 @param end plateau, NaN for a drift */
    private record Segment(Type type, double from, DoubleUnaryOperator signal, double end, double swing) {}

    private final SettleSettings settings;
    private final List<Segment> segments = new ArrayList<>();

    Course(SettleSettings settings) {
        this.settings = settings;
    }

    /** The signal is a function of the time since the segment's start. */
    Course approach(double from, double plateau, DoubleUnaryOperator signal) {
        segments.add(new Segment(Type.APPROACH, from, signal, plateau, 0));
        return this;
    }

    Course rest(double from, double value) {
        return approach(from, value, t -> value);
    }

    Course drift(double from, DoubleUnaryOperator signal) {
        segments.add(new Segment(Type.DRIFT, from, signal, Double.NaN, 0));
        return this;
    }

    Course hunting(double from, double centre, double swing, DoubleUnaryOperator signal) {
        segments.add(new Segment(Type.HUNTING, from, signal, centre, swing));
        return this;
    }

    double at(double seconds) {
        Segment segment = segments.get(0);
        for (Segment next : segments) {
            if (next.from <= seconds + 1e-9) {
                segment = next;
            }
        }
        return segment.signal.applyAsDouble(seconds - segment.from);
    }

    Truth truth(SettleKind kind, String family, double endSeconds) {
        int count = (int) Math.round(endSeconds / STEP_SECONDS) + 1;
        double[] remaining = new double[count];
        double[] reference = new double[count];
        for (int s = 0; s < segments.size(); s++) {
            double until = s + 1 < segments.size() ? segments.get(s + 1).from : endSeconds + STEP_SECONDS;
            judge(segments.get(s), until, remaining, reference);
        }
        double[] coarseRemaining = new double[(int) Math.floor(endSeconds) + 1];
        double[] coarseReference = new double[coarseRemaining.length];
        for (int i = 0; i < coarseRemaining.length; i++) {
            int at = Math.min(count - 1, (int) Math.round(i / STEP_SECONDS));
            coarseRemaining[i] = remaining[at];
            coarseReference[i] = reference[at];
        }
        return new Truth(
                kind,
                family,
                settings.driftLimit(),
                endSeconds,
                spans(remaining, reference),
                coarseReference,
                coarseRemaining);
    }

    private void judge(Segment segment, double until, double[] remaining, double[] reference) {
        int first = (int) Math.ceil(segment.from / STEP_SECONDS - 1e-9);
        int end = Math.min(remaining.length, (int) Math.ceil(until / STEP_SECONDS - 1e-9));
        double worst = 0;
        for (int i = end - 1; i >= first; i--) {
            double t = i * STEP_SECONDS - segment.from;
            double here = segment.signal.applyAsDouble(t);
            switch (segment.type) {
                case APPROACH -> {
                    worst = Math.max(worst, Math.abs(here - segment.end));
                    remaining[i] = worst / settings.driftLimit();
                    reference[i] = segment.end;
                }
                case DRIFT -> {
                    double most = 0;
                    for (double u = 0; u <= settings.horizonSeconds(); u += settings.horizonSeconds() / 20) {
                        most = Math.max(most, Math.abs(segment.signal.applyAsDouble(t + u) - here));
                    }
                    remaining[i] = most / settings.driftLimit();
                    reference[i] = here;
                }
                case HUNTING -> {
                    remaining[i] = segment.swing / settings.band();
                    reference[i] = segment.end;
                }
            }
        }
    }

    /** A settled span ends where a new approach or hunting begins, even where the next one is settled at once. */
    private List<Truth.Span> spans(double[] remaining, double[] reference) {
        List<Truth.Span> spans = new ArrayList<>();
        int since = -1;
        for (int i = 0; i <= remaining.length; i++) {
            boolean settled = i < remaining.length && remaining[i] <= 1 + 1e-9;
            boolean jumps = settled
                    && i > 0
                    && Math.abs(at(i * STEP_SECONDS) - at((i - 1) * STEP_SECONDS)) > settings.driftLimit() / 2
                    && Math.abs(reference[i] - reference[i - 1]) > settings.driftLimit();
            if (since >= 0 && (!settled || jumps)) {
                if (i - 1 > since) {
                    spans.add(new Truth.Span(since * STEP_SECONDS, (i - 1) * STEP_SECONDS));
                }
                since = -1;
            }
            if (settled && since < 0) {
                since = i;
            }
        }
        return spans;
    }
}
