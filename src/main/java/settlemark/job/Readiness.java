package settlemark.job;

import java.util.Locale;
import java.util.Map;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.settle.SettleState;

/**
 * Whether an armed step may take its reading. Settled is not enough: the settled stretch must belong to the act that
 * was reported, so a channel that has not noticed yet that the burner was lit is waited for.
 */
final class Readiness {
    /** The manifold stands at least this high while a burner is lit, as a fraction of its target; this program's own. */
    private static final double LIT_FRACTION_OF_TARGET = 0.3;
    /** Air that has not moved this long after the manifold did will not move any more; this program's own. */
    private static final double AIR_ANSWER_SECONDS = 240;

    private final RatingPlate plate;
    private long manifoldMovedNanos = -1;

    Readiness(RatingPlate plate) {
        this.plate = plate;
    }

    /** The manifold is not settled at this time. */
    void manifoldMoves(long timeNanos) {
        manifoldMovedNanos = timeNanos;
    }

    /** Empty where the reading may be taken now; else what is waited for. */
    String waitingFor(StepRun run, long timeNanos, Map<Role, ChannelNow> channels, Map<Role, Double> zeros) {
        for (Role role : run.step.required()) {
            ChannelNow now = channels.get(role);
            if (now == null) {
                return role.word() + " has no probe";
            }
            String wait = waitingFor(role, now, run, timeNanos);
            if (!wait.isEmpty()) {
                return wait;
            }
        }
        return run.step.kind().firing() ? notLit(run, channels, zeros) : "";
    }

    private String waitingFor(Role role, ChannelNow now, StepRun run, long timeNanos) {
        SettleState settle = now.settle();
        if (!settle.settled() || now.settledSinceNanos() < 0) {
            return role.word() + " has not settled";
        }
        double sinceArmed = (timeNanos - run.armedNanos) / 1e9;
        if (sinceArmed < now.shortestWindowSeconds()) {
            return String.format(
                    Locale.ROOT,
                    "%s is watched for %.0f s more",
                    role.word(),
                    Math.ceil(now.shortestWindowSeconds() - sinceArmed));
        }
        boolean air = role.dimension() == Dimension.TEMPERATURE;
        if (air && role == Role.SUPPLY && run.step.kind().firing() && !answered(now, timeNanos)) {
            return "supply has not answered the burner yet";
        }
        return "";
    }

    private boolean answered(ChannelNow supply, long timeNanos) {
        return manifoldMovedNanos < 0
                || supply.settledSinceNanos() > manifoldMovedNanos
                || (timeNanos - manifoldMovedNanos) / 1e9 > AIR_ANSWER_SECONDS;
    }

    private String notLit(StepRun run, Map<Role, ChannelNow> channels, Map<Role, Double> zeros) {
        ChannelNow manifold = channels.get(Role.MANIFOLD);
        if (manifold == null) {
            return "";
        }
        StagePlate stage = plate.stage(run.step.stage());
        double target = stage.unit().to(manifold.unit()).apply(stage.manifoldTarget());
        double pressure = manifold.settle().value() - zeros.getOrDefault(Role.MANIFOLD, 0.0);
        return pressure < LIT_FRACTION_OF_TARGET * target
                ? String.format(Locale.ROOT, "the burner is not on %s: manifold %.2f", stage.name(), pressure)
                : "";
    }
}
