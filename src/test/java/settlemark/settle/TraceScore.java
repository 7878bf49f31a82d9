package settlemark.settle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import settlemark.settle.Truth.Span;

/**
 * Holds events against the truth of simulated traces. The truth of a channel has the spans in which it was truly settled,
 * and on a grid of one second the right value ({@code ref}) and the remaining movement in units of the limit ({@code x}).
 */
final class TraceScore {
    private final double graceSeconds;
    private final double worthwhileSeconds;
    int episodes;
    int falseEpisodes;
    int grossEpisodes;
    int settledSpans;
    int missedSpans;
    int unsettledWhileSettled;
    double trulySettledSeconds;
    double trulyMovingSeconds;
    double falselySettledSeconds;
    final List<Double> settleDelaysSeconds = new ArrayList<>();
    final List<Double> unsettleDelaysSeconds = new ArrayList<>();
    final List<Double> relativeErrors = new ArrayList<>();
    final List<Double> relativeUncertainties = new ArrayList<>();
    int covered;

    /** @param graceSeconds a change younger than this cannot be known @param worthwhileSeconds shorter spans may be missed */
    TraceScore(double graceSeconds, double worthwhileSeconds) {
        this.graceSeconds = graceSeconds;
        this.worthwhileSeconds = worthwhileSeconds;
    }

    void add(Truth truth, List<SettleEvent> events) {
        double end = truth.endSeconds();
        List<Span> settled = truth.settled();
        List<Span> declared = declared(events, end);
        addEpisodes(truth, settled, events, end);
        for (SettleEvent event : events) {
            addEvent(truth, settled, event);
        }
        for (Span span : settled) {
            addSpan(span, declared, end);
        }
        double right = settled.stream()
                .mapToDouble(a -> declared.stream()
                        .mapToDouble(b -> Math.max(0, Math.min(a.end(), b.end()) - Math.max(a.start(), b.start())))
                        .sum())
                .sum();
        double truly = settled.stream().mapToDouble(a -> a.end() - a.start()).sum();
        trulySettledSeconds += truly;
        trulyMovingSeconds += end - truly;
        falselySettledSeconds +=
                declared.stream().mapToDouble(b -> b.end() - b.start()).sum() - right;
    }

    private static List<Span> declared(List<SettleEvent> events, double end) {
        List<Span> spans = new ArrayList<>();
        double since = Double.NaN;
        for (SettleEvent event : events) {
            if (event.settled()) {
                since = Double.isNaN(since) ? event.timeSeconds() : since;
            } else if (!Double.isNaN(since)) {
                spans.add(new Span(since, event.timeSeconds()));
                since = Double.NaN;
            }
        }
        if (!Double.isNaN(since)) {
            spans.add(new Span(since, end));
        }
        return spans;
    }

    private void addEpisodes(Truth truth, List<Span> settled, List<SettleEvent> events, double end) {
        double from = 0;
        for (int i = 0; i <= settled.size(); i++) {
            double until = i < settled.size() ? settled.get(i).start() : end;
            if (until - from >= graceSeconds / 2) {
                double start = from + graceSeconds;
                List<SettleEvent> wrong = events.stream()
                        .filter(e -> e.settled() && e.timeSeconds() >= start && e.timeSeconds() < until)
                        .toList();
                episodes++;
                falseEpisodes += wrong.isEmpty() ? 0 : 1;
                grossEpisodes += wrong.stream().anyMatch(e -> truth.remainingAt(e.timeSeconds()) > 2) ? 1 : 0;
            }
            from = i < settled.size() ? settled.get(i).end() : end;
        }
    }

    private void addEvent(Truth truth, List<Span> settled, SettleEvent event) {
        Span span = settled.stream()
                .filter(s -> s.holds(event.timeSeconds()))
                .findFirst()
                .orElse(null);
        if (span == null) {
            return;
        }
        if (!event.settled()) {
            unsettledWhileSettled++;
            return;
        }
        double limit = truth.limit();
        double error = event.value()
                - truth.referenceAt(Math.min(
                        Math.max(Math.rint(event.timeSeconds()), Math.ceil(span.start())), Math.floor(span.end())));
        relativeErrors.add(error / limit);
        relativeUncertainties.add(event.uncertainty() / limit);
        covered += Math.abs(error) <= event.uncertainty() ? 1 : 0;
    }

    private void addSpan(Span span, List<Span> declared, double end) {
        List<Double> starts = declared.stream()
                .filter(d -> d.end() > span.start() && d.start() < span.end())
                .map(d -> Math.max(d.start(), span.start()))
                .toList();
        if (span.end() - span.start() >= worthwhileSeconds) {
            settledSpans++;
            missedSpans += starts.isEmpty() ? 1 : 0;
            starts.stream().min(Double::compare).ifPresent(first -> settleDelaysSeconds.add(first - span.start()));
        }
        if (span.end() < end - 5) {
            declared.stream()
                    .filter(d -> d.start() <= span.end() - 0.1 && span.end() - 0.1 < d.end())
                    .forEach(d -> unsettleDelaysSeconds.add(d.end() - span.end()));
        }
    }

    /** Linear interpolation between order statistics. */
    static double quantile(List<Double> values, double share) {
        List<Double> sorted = new ArrayList<>(values);
        Collections.sort(sorted);
        double place = (sorted.size() - 1) * share;
        int below = (int) place;
        double low = sorted.get(below);
        return low + (sorted.get(Math.min(below + 1, sorted.size() - 1)) - low) * (place - below);
    }
}
