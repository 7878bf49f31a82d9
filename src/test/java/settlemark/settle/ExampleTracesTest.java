package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** Twelve simulated sessions whose truth is known, with noise, spikes, drop-outs and rounding. */
final class ExampleTracesTest {
    private static final JsonNode TRUTH = Traces.json("examples/truth.json");

    private static Map<SettleKind, TraceScore> score(boolean resolutionIsGiven) {
        Map<SettleKind, TraceScore> scores = new EnumMap<>(SettleKind.class);
        scores.put(SettleKind.GAS, new TraceScore(2, 45));
        scores.put(SettleKind.AIR, new TraceScore(6, 150));
        scores.put(SettleKind.STACK, new TraceScore(6, 150));
        for (JsonNode trace : TRUTH) {
            for (JsonNode channel : trace.get("channels")) {
                SettleKind kind =
                        SettleKind.valueOf(channel.get("kind").stringValue().toUpperCase(Locale.ROOT));
                double resolution = resolutionIsGiven ? channel.get("quantum").doubleValue() : Double.NaN;
                String file = "examples/" + channel.get("file").stringValue();
                TraceScore score = scores.get(kind);
                assertThat(score).isNotNull();
                score.add(Truth.of(channel), Traces.events(kind, resolution, Traces.read(file)));
            }
        }
        return scores;
    }

    /** The limits are this project's own. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void theDetectorIsGoodEnough(boolean resolutionIsGiven) {
        Map<SettleKind, TraceScore> scores = score(resolutionIsGiven);
        int episodes = scores.values().stream().mapToInt(s -> s.episodes).sum();
        assertThat(episodes).isGreaterThan(20);
        assertThat(scores.values().stream().mapToInt(s -> s.falseEpisodes).sum())
                .isLessThanOrEqualTo((int) (0.04 * episodes));
        assertThat(scores.values().stream().mapToInt(s -> s.grossEpisodes).sum())
                .isLessThanOrEqualTo((int) (0.015 * episodes));
        assertThat(scores.values().stream().mapToInt(s -> s.missedSpans).sum()).isZero();
        double moving =
                scores.values().stream().mapToDouble(s -> s.trulyMovingSeconds).sum();
        assertThat(scores.values().stream()
                                .mapToDouble(s -> s.falselySettledSeconds)
                                .sum()
                        / moving)
                .isLessThan(0.08);
        double hours =
                scores.values().stream().mapToDouble(s -> s.trulySettledSeconds).sum() / 3600;
        assertThat(scores.values().stream()
                                .mapToInt(s -> s.unsettledWhileSettled)
                                .sum()
                        / hours)
                .isLessThan(12);
        List<Double> errors = new ArrayList<>();
        List<Double> uncertainties = new ArrayList<>();
        scores.values().forEach(s -> errors.addAll(s.relativeErrors));
        scores.values().forEach(s -> uncertainties.addAll(s.relativeUncertainties));
        assertThat((double) scores.values().stream().mapToInt(s -> s.covered).sum() / errors.size())
                .isGreaterThanOrEqualTo(0.93);
        assertThat(Math.sqrt(errors.stream().mapToDouble(e -> e * e).average().orElseThrow()))
                .isLessThan(0.35);
        assertThat(TraceScore.quantile(uncertainties, 0.5)).isLessThan(0.7);
    }

    @Test
    void theDetectorIsQuickEnough() {
        Map<SettleKind, TraceScore> scores = score(false);
        Map<SettleKind, Double> limitsSeconds =
                Map.of(SettleKind.GAS, 23.7, SettleKind.AIR, 83.0, SettleKind.STACK, 66.4);
        scores.forEach((kind, score) -> assertThat(TraceScore.quantile(score.settleDelaysSeconds, 0.5))
                .as("%s", kind)
                .isLessThanOrEqualTo(limitsSeconds.get(kind)));
        TraceScore gas = scores.get(SettleKind.GAS);
        assertThat(gas).isNotNull();
        assertThat(TraceScore.quantile(gas.unsettleDelaysSeconds, 0.95)).isLessThanOrEqualTo(10);
    }

    /** The score itself must notice: a detector that always says settled fails. */
    @Test
    void aDetectorThatAlwaysAgreesWouldFail() {
        TraceScore score = new TraceScore(2, 45);
        for (JsonNode trace : TRUTH) {
            for (JsonNode channel : trace.get("channels")) {
                List<SettleEvent> always = new ArrayList<>();
                double end = channel.get("duration_s").doubleValue();
                for (double t = 1; t < end; t += 5) {
                    always.add(new SettleEvent(t, true, 0, 1, 0, "always"));
                }
                score.add(Truth.of(channel), always);
            }
        }
        assertThat(score.falseEpisodes).isGreaterThan(score.episodes / 2);
        assertThat(score.missedSpans).isZero();
        assertThat(score.covered).isLessThan(score.relativeErrors.size() / 2);
    }
}
