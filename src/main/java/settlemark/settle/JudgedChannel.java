package settlemark.settle;

import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * One channel called settled by the statistical proof, by a rule of a published test, or where both say so at the same time.
 * It tells of each change of mind as a {@link SettleDetector} does. For one thread.
 */
public final class JudgedChannel {
    private final SettleDetector detector;
    private final @Nullable RuleWatch watch;
    private final boolean alone;
    private final Consumer<SettleEvent> listener;
    private boolean settled;

    private JudgedChannel(
            SettleSettings settings,
            double resolution,
            @Nullable RuleWatch watch,
            boolean alone,
            Consumer<SettleEvent> listener) {
        this.watch = watch;
        this.alone = alone;
        this.listener = listener;
        // With a rule the changes of mind are those of both together.
        this.detector = new SettleDetector(settings, resolution, watch == null ? this::tell : event -> {});
    }

    /** By the statistical proof; the parameters are those of the {@link SettleDetector}. */
    public static JudgedChannel byProof(SettleSettings settings, double resolution, Consumer<SettleEvent> listener) {
        return new JudgedChannel(settings, resolution, null, false, listener);
    }

    /**
     * By a rule of a published test as well.
     *
     * @param watch of the rule, fed by this channel alone
     * @param alone whether the rule stands for the proof; else both are demanded
     */
    public static JudgedChannel byRule(
            SettleSettings settings,
            double resolution,
            RuleWatch watch,
            boolean alone,
            Consumer<SettleEvent> listener) {
        return new JudgedChannel(settings, resolution, watch, alone, listener);
    }

    /** Takes one measured sample in; a value that is not finite breaks the readings off. */
    public void accept(double timeSeconds, double value) {
        detector.accept(timeSeconds, value);
        RuleWatch rule = watch;
        if (rule != null) {
            rule.accept(timeSeconds, value);
            judge(rule, timeSeconds);
        }
    }

    private void judge(RuleWatch rule, double timeSeconds) {
        boolean now = rule.holds() && (alone || proofStandsFor(rule));
        if (now == settled) {
            return;
        }
        SettleState proof = detector.state();
        RuleState found = rule.state();
        if (!now) {
            String why = found.holds() ? reason() : found.reason();
            tell(new SettleEvent(timeSeconds, false, Double.NaN, Double.NaN, Double.NaN, why));
        } else if (alone) {
            tell(new SettleEvent(
                    timeSeconds, true, found.value(), found.uncertainty(), found.fromSeconds(), found.reason()));
        } else {
            tell(new SettleEvent(
                    timeSeconds,
                    true,
                    proof.value(),
                    proof.uncertainty(),
                    proof.windowStartSeconds(),
                    proof.reason() + "; " + found.reason()));
        }
    }

    /** Both at once, of the same value: readings from before a movement say nothing about where it came to rest. */
    private boolean proofStandsFor(RuleWatch rule) {
        SettleState proof = detector.state();
        return proof.settled() && rule.state().standsFor(proof.value());
    }

    private void tell(SettleEvent event) {
        settled = event.settled();
        listener.accept(event);
    }

    /** Whether it is settled now, by what was asked. */
    public boolean settled() {
        return settled;
    }

    /** What the statistical proof knows now. */
    public SettleState proof() {
        return detector.state();
    }

    /** What the rule knows now; empty where none was asked. */
    public Optional<RuleState> rule() {
        return Optional.ofNullable(watch).map(RuleWatch::state);
    }

    /** One line about what is so now, by what was asked. */
    public String reason() {
        RuleWatch rule = watch;
        if (rule == null) {
            return detector.state().reason();
        }
        RuleState found = rule.state();
        SettleState proof = detector.state();
        if (alone) {
            return found.reason();
        }
        String apart = proof.settled() && found.holds() && !proofStandsFor(rule) ? Reasons.OTHER_VALUE : "";
        return proof.reason() + "; " + found.reason() + apart;
    }

    /** Number of samples ignored because they were not later than the one before. */
    public long ignoredSamples() {
        return detector.ignoredSamples();
    }
}
