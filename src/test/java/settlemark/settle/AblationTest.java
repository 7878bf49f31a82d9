package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import settlemark.settle.TraceGenerator.RampFrom;

/** What each part of the detector buys: the detector without it on the same traces (odd seeds). */
@Tag("long")
final class AblationTest {
    private static final int EACH_FAMILY = 20;
    private static final int EACH_RAMP = 60;

    private record Without(String part, UnaryOperator<SettleSettings> settings, Set<Part> leftOut) {
        Without(Part part) {
            this(part.name().toLowerCase(Locale.ROOT).replace('_', ' '), s -> s, Set.of(part));
        }

        Without(String part, UnaryOperator<SettleSettings> settings) {
            this(part, settings, Set.of());
        }
    }

    private record Row(TraceScore score, int ramps, int declared) {}

    private static SettleSettings changed(
            SettleSettings s, List<Double> windows, double dwell, boolean learns, double confidence) {
        return new SettleSettings(
                s.kind(),
                s.driftLimit(),
                s.band(),
                s.horizonSeconds(),
                s.binSeconds(),
                windows,
                dwell,
                s.gapSeconds(),
                learns,
                confidence);
    }

    static List<Without> parts() {
        return List.of(
                new Without("nothing", s -> s),
                new Without(Part.RAMPS_OBJECT),
                new Without(Part.BENDS_OBJECT),
                new Without(Part.SWINGS_OBJECT),
                new Without(Part.CAUTION_AFTER_MOVEMENT),
                new Without(Part.FORGETTING),
                new Without(Part.TURNS_PUT_OFF),
                new Without(Part.SWINGS_AVERAGED),
                new Without("the curve", s -> changed(s, s.windowSeconds(), s.dwellSeconds(), false, s.confidence())),
                new Without(
                        "longer windows",
                        s -> changed(
                                s,
                                s.windowSeconds().subList(0, 1),
                                s.dwellSeconds(),
                                s.learnTimeConstant(),
                                s.confidence())),
                new Without("the dwell", s -> changed(s, s.windowSeconds(), 0, s.learnTimeConstant(), s.confidence())),
                new Without(
                        "half of the confidence's margin",
                        s -> changed(s, s.windowSeconds(), s.dwellSeconds(), s.learnTimeConstant(), 0.8)));
    }

    private static Row row(SettleKind kind, Without without) {
        SettleSettings settings = without.settings.apply(SettleSettings.defaults(kind));
        double grace = kind == SettleKind.GAS ? 2 : 6;
        TraceScore score = new TraceScore(grace, kind == SettleKind.GAS ? 45 : 150);
        BiFunction<SettleSettings, SimulatedTrace, List<SettleEvent>> run =
                (s, trace) -> Traces.events(s, Double.NaN, without.leftOut, trace.samples());
        for (String family : TraceGenerator.FAMILIES) {
            for (int i = 0; i < EACH_FAMILY; i++) {
                SimulatedTrace trace = TraceGenerator.family(kind, family, 2L * i + 1);
                score.add(trace.truth(), run.apply(settings, trace));
            }
        }
        int ramps = 0;
        int declared = 0;
        for (RampFrom from : RampFrom.values()) {
            for (double times : new double[] {1.25, 1.5}) {
                for (int i = 0; i < EACH_RAMP; i++) {
                    SimulatedTrace trace = TraceGenerator.ramp(kind, times, from, 2L * i + 1);
                    List<Truth.Span> settled = trace.truth().settled();
                    double visible = settled.get(settled.size() - 1).end() + settings.horizonSeconds() / (2 * times);
                    ramps++;
                    declared +=
                            run.apply(settings, trace).stream().anyMatch(e -> e.settled() && e.timeSeconds() > visible)
                                    ? 1
                                    : 0;
                }
            }
        }
        return new Row(score, ramps, declared);
    }

    @ParameterizedTest
    @EnumSource(SettleKind.class)
    void eachPartBuysSomething(SettleKind kind) {
        Row whole = null;
        for (Without without : parts()) {
            Row row = row(kind, without);
            print(kind, without, row);
            if (whole == null) {
                whole = row;
            } else if (without.leftOut.contains(kind == SettleKind.GAS ? Part.RAMPS_OBJECT : Part.BENDS_OBJECT)) {
                assertThat(row.declared).as("ramps without %s", without.part).isGreaterThan(whole.declared);
            }
            assertThat(row.score.episodes).isEqualTo(whole.score.episodes);
        }
    }

    private static void print(SettleKind kind, Without without, Row row) {
        TraceScore s = row.score;
        System.out.printf(
                Locale.ROOT,
                "%s without %-32s ramps 1.25 and 1.5 %d/%d, false %d/%d, gross %d, missed %d/%d, delay %.1f s (p95"
                        + " %.0f), covered %.1f %%, taken back %.1f/h%n",
                kind,
                without.part,
                row.declared,
                row.ramps,
                s.falseEpisodes,
                s.episodes,
                s.grossEpisodes,
                s.missedSpans,
                s.settledSpans,
                TraceScore.quantile(s.settleDelaysSeconds, 0.5),
                TraceScore.quantile(s.settleDelaysSeconds, 0.95),
                100.0 * s.covered / s.relativeErrors.size(),
                s.unsettledWhileSettled / (s.trulySettledSeconds / 3600));
    }
}
