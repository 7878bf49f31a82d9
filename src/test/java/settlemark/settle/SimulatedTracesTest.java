package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The detector on traces of our own generator. It was tuned on even seeds only; these tests take odd ones. Ramps count as
 * declared where a reading is declared after the ramp could have been seen: a new drift of f times the limit is invisible
 * for horizon / 2f.
 */
final class SimulatedTracesTest {
    private static final double Z_95 = 1.96;

    private static double graceSeconds(SettleKind kind) {
        return kind == SettleKind.GAS ? 2 : 6;
    }

    private static TraceScore score(SettleKind kind, List<SimulatedTrace> traces) {
        TraceScore score = new TraceScore(graceSeconds(kind), kind == SettleKind.GAS ? 45 : 150);
        for (SimulatedTrace trace : traces) {
            score.add(trace.truth(), Traces.events(kind, Double.NaN, trace.samples()));
        }
        return score;
    }

    private static List<SimulatedTrace> ordinary(SettleKind kind, int each) {
        List<SimulatedTrace> traces = new ArrayList<>();
        for (String family : TraceGenerator.FAMILIES) {
            traces.addAll(family(kind, family, each));
        }
        return traces;
    }

    private static List<SimulatedTrace> family(SettleKind kind, String family, int each) {
        List<SimulatedTrace> traces = new ArrayList<>();
        for (int i = 0; i < each; i++) {
            traces.add(TraceGenerator.family(kind, family, 2L * i + 1));
        }
        return traces;
    }

    /** Share of ramps that were declared, once they could be seen. */
    private static double declaredRamps(SettleKind kind, double times, boolean afterApproach, int count) {
        double invisible = SettleSettings.defaults(kind).horizonSeconds() / (2 * times);
        int declared = 0;
        for (int i = 0; i < count; i++) {
            SimulatedTrace trace = TraceGenerator.ramp(kind, times, afterApproach, 2L * i + 1);
            List<Truth.Span> settled = trace.truth().settled();
            double moves = settled.get(settled.size() - 1).end() + Math.max(invisible, graceSeconds(kind));
            boolean wrong = Traces.events(kind, Double.NaN, trace.samples()).stream()
                    .anyMatch(e -> e.settled() && e.timeSeconds() > moves);
            declared += wrong ? 1 : 0;
        }
        return (double) declared / count;
    }

    private static void check(SettleKind kind, TraceScore score) {
        double delay = TraceScore.quantile(score.settleDelaysSeconds, 0.5);
        assertThat(delay).isLessThanOrEqualTo(kind == SettleKind.GAS ? 30 : kind == SettleKind.AIR ? 83 : 82);
        assertThat((double) score.covered / score.relativeErrors.size()).isGreaterThanOrEqualTo(0.93);
        assertThat(TraceScore.quantile(score.relativeUncertainties, 0.5)).isLessThanOrEqualTo(0.6);
        if (kind == SettleKind.GAS) {
            assertThat(TraceScore.quantile(score.unsettleDelaysSeconds, 0.95)).isLessThanOrEqualTo(6);
        }
    }

    @ParameterizedTest
    @EnumSource(SettleKind.class)
    void someTracesOfEveryFamily(SettleKind kind) {
        TraceScore score = score(kind, ordinary(kind, 3));
        check(kind, score);
        assertThat(score.episodes).isGreaterThan(50);
        assertThat(score.grossEpisodes).isLessThanOrEqualTo(2);
        assertThat(score.missedSpans).isLessThanOrEqualTo(2);
        for (boolean after : new boolean[] {false, true}) {
            assertThat(declaredRamps(kind, 2, after, 6)).isLessThanOrEqualTo(1 / 6.0);
        }
    }

    /** Prints the table of the notes for developers. */
    @ParameterizedTest
    @Tag("long")
    @EnumSource(SettleKind.class)
    void manyTracesOfEveryFamily(SettleKind kind) {
        int each = 40;
        List<SimulatedTrace> all = new ArrayList<>();
        for (String family : TraceGenerator.FAMILIES) {
            List<SimulatedTrace> traces = family(kind, family, each);
            print(kind + " " + family, score(kind, traces));
            all.addAll(traces);
        }
        TraceScore score = score(kind, all);
        print(kind + " all, odd seeds 1 to " + (2 * each - 1), score);
        print(kind + " " + TraceGenerator.BEYOND, score(kind, family(kind, TraceGenerator.BEYOND, each)));
        check(kind, score);
        assertThat(score.falseEpisodes).isLessThanOrEqualTo((int) Math.ceil(0.015 * score.episodes));
        for (boolean after : new boolean[] {false, true}) {
            StringBuilder row = new StringBuilder(kind + (after ? " ramps after an approach" : " ramps from rest"));
            for (double times : TraceGenerator.RAMPS) {
                if (times > 1) {
                    row.append(String.format(
                            Locale.ROOT, "  %.2fx %.1f %%", times, 100 * declaredRamps(kind, times, after, each)));
                }
            }
            System.out.println(row);
        }
    }

    private static void print(String name, TraceScore s) {
        double share = (double) s.covered / Math.max(1, s.relativeErrors.size());
        System.out.printf(
                Locale.ROOT,
                "%-34s false %d/%d gross %d missed %d/%d delay %.1f s un-settle p95 %.1f s covered %.1f+-%.1f %% U/D %.2f"
                        + " taken back %.1f/h%n",
                name,
                s.falseEpisodes,
                s.episodes,
                s.grossEpisodes,
                s.missedSpans,
                s.settledSpans,
                quantile(s.settleDelaysSeconds, 0.5),
                quantile(s.unsettleDelaysSeconds, 0.95),
                100 * share,
                100 * Z_95 * Math.sqrt(share * (1 - share) / Math.max(1, s.relativeErrors.size())),
                quantile(s.relativeUncertainties, 0.5),
                s.unsettledWhileSettled / (s.trulySettledSeconds / 3600));
    }

    private static double quantile(List<Double> values, double share) {
        return values.isEmpty() ? Double.NaN : TraceScore.quantile(values, share);
    }
}
