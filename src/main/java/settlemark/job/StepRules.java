package settlemark.job;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.PublishedRule;
import settlemark.settle.RuleState;
import settlemark.settle.RuleWatch;

/** The published rule of a step, watched on each of its channels from the act that armed it: what was before is not of it. */
final class StepRules {
    private final SettledBy by;
    private final Map<Role, Watched> watched = new EnumMap<>(Role.class);

    StepRules(SettledBy by) {
        this.by = by;
    }

    private static final class Watched {
        private final RuleWatch watch;
        private int breaks;
        private double zero;

        Watched(RuleWatch watch, int breaks) {
            this.watch = watch;
            this.breaks = breaks;
        }
    }

    void restart() {
        watched.clear();
    }

    /** The channels as they stand, with their zeros taken off; a sample that was seen already counts once. */
    void see(long armedNanos, Map<Role, ChannelNow> channels, Map<Role, Double> zeros) {
        if (by.rule().isEmpty()) {
            return;
        }
        channels.forEach((role, now) -> {
            Optional<PublishedRule> rule = by.rule(role);
            if (rule.isPresent() && now.timeNanos() >= armedNanos) {
                see(watched.computeIfAbsent(role, r -> begin(rule.get(), now)), now, zeros.getOrDefault(role, 0.0));
            }
        });
    }

    private static Watched begin(PublishedRule rule, ChannelNow now) {
        boolean temperature = rule.dimension() == Dimension.TEMPERATURE;
        double factor = temperature ? Math.abs(Unit.FAHRENHEIT.to(now.unit()).slope()) : 1;
        return new Watched(new RuleWatch(rule, factor, now.longestPauseSeconds()), now.breaks());
    }

    private static void see(Watched watched, ChannelNow now, double zero) {
        double seconds = now.timeNanos() / 1e9;
        if (now.breaks() != watched.breaks) {
            watched.breaks = now.breaks();
            // The sample at hand is the first after the break.
            watched.watch.interrupted(Math.nextDown(seconds), "a break in the readings");
        }
        watched.zero = zero;
        watched.watch.accept(seconds, now.value() - zero);
    }

    /** What is known of a channel; empty where no rule is asked of it, or before its first sample. */
    Optional<RuleState> state(Role role) {
        return Optional.ofNullable(watched.get(role)).map(w -> w.watch.state());
    }

    /** Whether a channel satisfies the rule that the step asks of it; true where it asks none. */
    boolean holds(Role role) {
        if (by.rule(role).isEmpty()) {
            return true;
        }
        Watched its = watched.get(role);
        return its != null && its.watch.holds();
    }

    /** The same and, where a proof is demanded too, of the value that was proved. */
    boolean holds(Role role, ChannelNow now) {
        Watched its = watched.get(role);
        boolean holds = holds(role);
        if (!holds || its == null || !by.needsProof(role)) {
            return holds;
        }
        return its.watch.state().standsFor(now.settle().value() - its.zero);
    }
}
