package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Temperatures at one a second; the rule asks for 30 minutes within its tolerance or for three readings a quarter apart. */
final class JudgedChannelTest {
    private static final SettleSettings STACK = SettleSettings.defaults(SettleKind.STACK);
    private static final PublishedRule RULE = PublishedRule.THREE_READINGS_3_DEGF;

    private final List<SettleEvent> events = new ArrayList<>();

    private JudgedChannel byRule(boolean alone) {
        return JudgedChannel.byRule(STACK, 0.1, new RuleWatch(RULE, 1, 15), alone, events::add);
    }

    private static void feed(JudgedChannel channel, double from, double to, double value) {
        for (double t = from; t <= to; t++) {
            channel.accept(t, value);
        }
    }

    @Test
    void byProofItSaysWhatTheDetectorSays() {
        JudgedChannel channel = JudgedChannel.byProof(STACK, 0.1, events::add);
        feed(channel, 0, 100, 350);
        assertThat(channel.settled()).isTrue();
        assertThat(events).hasSize(1);
        assertThat(events.get(0).value()).isCloseTo(350, within(1e-9));
        assertThat(channel.proof().settled()).isTrue();
        assertThat(channel.reason()).isEqualTo(channel.proof().reason());
        assertThat(channel.rule()).isEmpty();
        channel.accept(100, 350);
        assertThat(channel.ignoredSamples()).isEqualTo(1);
        channel.accept(101, Double.NaN);
        assertThat(channel.settled()).isFalse();
        assertThat(events).hasSize(2);
        assertThat(events.get(1).reason()).isEqualTo("no value");
    }

    @Test
    void aRuleAloneWaitsForItsReadingsAndNotForTheProof() {
        JudgedChannel channel = byRule(true);
        feed(channel, 0, 1799, 350);
        assertThat(channel.proof().settled()).isTrue();
        assertThat(channel.settled()).isFalse();
        assertThat(events).isEmpty();
        assertThat(channel.reason())
                .isEqualTo(channel.rule().orElseThrow().reason())
                .startsWith("not yet by ");
        feed(channel, 1800, 1800, 350);
        assertThat(channel.settled()).isTrue();
        assertThat(events).hasSize(1);
        SettleEvent event = events.get(0);
        assertThat(event.settled()).isTrue();
        assertThat(event.timeSeconds()).isEqualTo(1800);
        assertThat(event.value()).isEqualTo(350);
        assertThat(event.uncertainty()).isCloseTo(2 * 3 / Math.sqrt(3), within(1e-12));
        assertThat(event.windowStartSeconds()).isZero();
        assertThat(event.reason()).isEqualTo(channel.rule().orElseThrow().reason());
    }

    /** The step is past the rule's 3 degF and comes just after its readings. */
    @Test
    void aRuleAloneDoesNotMindWhatTheProofFinds() {
        JudgedChannel channel = byRule(true);
        feed(channel, 0, 1800, 350);
        feed(channel, 1801, 1810, 360);
        assertThat(channel.proof().settled()).isFalse();
        assertThat(channel.settled()).isTrue();
    }

    @Test
    void togetherBothMustHold() {
        JudgedChannel channel = byRule(false);
        feed(channel, 0, 1799, 350);
        assertThat(channel.proof().settled()).isTrue();
        assertThat(events).isEmpty();
        feed(channel, 1800, 1800, 350);
        assertThat(channel.settled()).isTrue();
        assertThat(events).hasSize(1);
        SettleEvent event = events.get(0);
        SettleState proof = channel.proof();
        assertThat(event.value()).isEqualTo(proof.value());
        assertThat(event.uncertainty()).isEqualTo(proof.uncertainty());
        assertThat(event.windowStartSeconds()).isEqualTo(proof.windowStartSeconds());
        assertThat(event.reason())
                .isEqualTo(proof.reason() + "; " + channel.rule().orElseThrow().reason())
                .isEqualTo(channel.reason());
    }

    @Test
    void togetherAMovementTakesItBackAndTheProofOfAnotherValueIsNoProofOfThese() {
        JudgedChannel channel = byRule(false);
        feed(channel, 0, 1800, 350);
        feed(channel, 1801, 1804, 360);
        assertThat(channel.settled()).isFalse();
        assertThat(events).hasSize(2);
        assertThat(events.get(1).settled()).isFalse();
        assertThat(events.get(1).value()).isNaN();
        assertThat(events.get(1).reason()).startsWith("not yet: ");
        feed(channel, 1805, 1990, 360);
        assertThat(channel.proof().settled()).isTrue();
        assertThat(channel.rule().orElseThrow().holds()).isTrue();
        assertThat(channel.settled()).isFalse();
        assertThat(channel.reason()).endsWith(Reasons.OTHER_VALUE);
    }

    @Test
    void aMissingValueBreaksTheRulesReadingsOff() {
        JudgedChannel channel = byRule(true);
        feed(channel, 0, 1800, 350);
        channel.accept(1801, Double.NaN);
        assertThat(channel.settled()).isFalse();
        assertThat(events).hasSize(2);
        assertThat(events.get(1).reason())
                .isEqualTo(channel.rule().orElseThrow().reason());
    }
}
