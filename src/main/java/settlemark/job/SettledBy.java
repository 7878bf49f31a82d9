package settlemark.job;

import java.util.Objects;
import java.util.Optional;
import settlemark.measure.Role;
import settlemark.settle.PublishedRule;

/**
 * By what a step calls its channels settled: the statistical proof, a rule of a published test, or both.
 *
 * @param rule asked of the channels of its dimension, empty for none
 * @param alone whether the rule stands for the statistical proof; else both are demanded. Channels of another dimension
 *     always need the proof
 */
public record SettledBy(Optional<PublishedRule> rule, boolean alone) {
    /** The statistical proof and nothing else. */
    public static final SettledBy PROOF = new SettledBy(Optional.empty(), false);

    public SettledBy {
        Objects.requireNonNull(rule);
        if (alone && rule.isEmpty()) {
            throw new IllegalArgumentException("nothing would be asked: name the rule that stands alone");
        }
    }

    /** The rule that a channel is held to; empty where it is held to none. */
    public Optional<PublishedRule> rule(Role role) {
        return rule.isEmpty() || rule.get().dimension() == role.dimension() ? rule : Optional.empty();
    }

    /** Whether a channel needs the statistical proof. */
    public boolean needsProof(Role role) {
        return !alone || rule(role).isEmpty();
    }
}
