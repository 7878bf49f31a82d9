package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import settlemark.settle.TraceGenerator.RampFrom;

/** What a state says must be true of its own numbers. */
final class StateWordsTest {
    private static List<SettleState> states(SettleKind kind, Traces.Trace trace) {
        SettleDetector detector = new SettleDetector(SettleSettings.defaults(kind), Double.NaN);
        List<SettleState> states = new ArrayList<>();
        for (int i = 0; i < trace.seconds().length; i++) {
            detector.accept(trace.seconds()[i], trace.values()[i]);
            states.add(detector.state());
        }
        return states;
    }

    @ParameterizedTest
    @EnumSource(SettleKind.class)
    void noStateContradictsItself(SettleKind kind) {
        List<SettleState> all = new ArrayList<>();
        for (String family : TraceGenerator.FAMILIES) {
            all.addAll(states(kind, TraceGenerator.family(kind, family, 1).samples()));
        }
        for (RampFrom from : RampFrom.values()) {
            all.addAll(states(kind, TraceGenerator.ramp(kind, 1.1, from, 1).samples()));
        }
        assertThat(all).isNotEmpty();
        assertThat(all.stream().map(SettleState::phase).distinct()).hasSizeGreaterThanOrEqualTo(5);
        for (SettleState state : all) {
            if (state.reason().startsWith("not yet: could still move")) {
                assertThat(state.couldMove()).as(state.reason()).isGreaterThan(state.limit());
            }
            if (state.reason().startsWith("not yet: swings")) {
                assertThat(state.swing()).as(state.reason()).isGreaterThan(state.band());
            }
            if (state.phase() == SettlePhase.SETTLED) {
                assertThat(state.couldMove()).as(state.reason()).isLessThanOrEqualTo(state.limit());
            }
            if (state.phase() == SettlePhase.HOLDING || state.phase() == SettlePhase.FILLING) {
                assertThat(state.secondsToGo()).as(state.reason()).isGreaterThanOrEqualTo(0);
            }
        }
    }

    /** The shortest window alone would be fooled now and then; a longer one says why not. */
    @Test
    void aLongerLookAtARampIsNamed() {
        double perSecond = 1.1 * 0.02 / 30;
        Traces.Trace ramp = Traces.made(2, 200, 0.001, Traces.noisy(t -> 3.5 + perSecond * t, 0.008, 11));
        assertThat(states(SettleKind.GAS, ramp))
                .anySatisfy(s -> assertThat(s.reason())
                        .matches("not yet: moves 0\\.02\\d* in 30 s over the last \\d+ s, limit 0\\.02"));
    }

    @Test
    void afterAMovementALongerLookIsAskedFor() {
        Traces.Trace trace = Traces.made(5, 120, 0.001, t -> t < 40 ? 3.5 : 3.5 + 0.004 * Math.min(10, t - 40));
        List<SettleState> states = states(SettleKind.GAS, trace);
        assertThat(states)
                .anySatisfy(
                        s -> assertThat(s.reason()).matches("not yet: moved a moment ago, \\d+ s of readings to go"));
        assertThat(states.get(states.size() - 1).settled()).isTrue();
    }
}
