package settlemark.job;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.RuleState;

/**
 * Whether an armed step may take its reading. Settled is not enough: the settled stretch must belong to the act that
 * was reported, so a channel that has not noticed yet that the burner was lit is waited for.
 */
final class Readiness {
    /** The manifold stands at least this high while a burner is lit, as a fraction of its target; this program's own. */
    private static final double LIT_FRACTION_OF_TARGET = 0.3;
    /** Air that has not moved this long after the manifold did will not move any more; this program's own. */
    private static final double AIR_ANSWER_SECONDS = 240;

    /** A manifold this near to another stage's, as a fraction of that, has not left it; this program's own. */
    private static final double SAME_STAGE_FRACTION = 0.08;
    /** Stages whose targets lie nearer than this cannot be told apart by their pressure; this program's own. */
    private static final double TOLD_APART_FRACTION = 0.25;
    /** Above this part of the plate's least inlet, a shut valve's manifold is not the manifold; this program's own. */
    private static final double SWAPPED_FRACTION = 0.3;

    /** Supply air colder than return air by this is no noise; this program's own. */
    private static final double COLDER_KELVIN = 2;

    private static final String WATCHED = " is watched for %.0f s more";

    private final RatingPlate plate;
    /** Stage to its manifold as last read. */
    private final Map<String, Double> manifolds = new HashMap<>();

    private long manifoldMovedNanos = -1;

    Readiness(RatingPlate plate) {
        this.plate = plate;
    }

    /** The manifold from which on a stage burns, in the stage's unit; NaN where the plate gives it no target. */
    static double litAt(StagePlate stage) {
        return LIT_FRACTION_OF_TARGET * stage.manifoldTarget();
    }

    /** The manifold is not settled at this time. */
    void manifoldMoves(long timeNanos) {
        manifoldMovedNanos = timeNanos;
    }

    /** The manifold of a stage, as read. */
    void stageRead(String stage, double manifold) {
        manifolds.put(stage, manifold);
    }

    /** Nothing where the reading may be taken now. */
    Wait waitingFor(StepRun run, long timeNanos, Map<Role, ChannelNow> channels, Map<Role, Double> zeros) {
        if (run.step.kind().typed()) {
            String missing = missing(run, channels);
            if (!missing.isEmpty()) {
                return () -> missing;
            }
        }
        return waitingFor(run, Readings.roles(run, channels), timeNanos, channels, zeros);
    }

    /** The same of some of its channels. */
    Wait waitingFor(
            StepRun run, List<Role> roles, long timeNanos, Map<Role, ChannelNow> channels, Map<Role, Double> zeros) {
        for (Role role : roles) {
            if (run.typed.containsKey(role) || run.takenFirst.has(role)) {
                continue;
            }
            ChannelNow now = channels.get(role);
            if (now == null) {
                return new Wait.Of(role, " has no probe");
            }
            Wait wait = silent(now, timeNanos) ? silence(role, now, timeNanos) : waitingFor(role, now, run, timeNanos);
            if (!wait.isNothing()) {
                return wait;
            }
        }
        if (run.step.kind() == StepKind.LOCK_UP) {
            return swapped(channels);
        }
        if (run.step.kind().firing() || run.step.kind() == StepKind.COMBUSTION) {
            boolean air = run.step.kind().firing() && roles.contains(Role.SUPPLY);
            Wait exchanged = air ? exchanged(run, channels) : Wait.NOTHING;
            return exchanged.isNothing() ? notLit(run, channels, zeros) : exchanged;
        }
        return Wait.NOTHING;
    }

    /** A burner warms the air: one that seems to cool it has its air probes on each other's places. */
    private static Wait exchanged(StepRun run, Map<Role, ChannelNow> channels) {
        ChannelNow supply = channels.get(Role.SUPPLY);
        ChannelNow back = channels.get(Role.RETURN);
        boolean read =
                run.step.required().contains(Role.SUPPLY) && run.step.required().contains(Role.RETURN);
        if (!read || supply == null || back == null) {
            return Wait.NOTHING;
        }
        double colder = back.value() - supply.value();
        return colder > Unit.CELSIUS.to(supply.unit()).applyDifference(COLDER_KELVIN)
                ? () -> String.format(
                        Locale.ROOT,
                        "the supply reads %.1f %s and the return %.1f %s: the air probes are on each other's places",
                        supply.value(),
                        supply.unit().symbol(),
                        back.value(),
                        back.unit().symbol())
                : Wait.NOTHING;
    }

    /** What neither a probe gives nor the person has typed; carbon dioxide stands for oxygen. */
    private static String missing(StepRun run, Map<Role, ChannelNow> channels) {
        List<Role> there = Readings.roles(run, channels);
        return run.step.required().stream()
                .filter(r -> !there.contains(r) && !(r == Role.OXYGEN && there.contains(Role.CARBON_DIOXIDE)))
                .findFirst()
                .map(r -> r.word() + " has no probe: type it")
                .orElse("");
    }

    /** With nothing firing, a manifold under pressure and an inlet without any are each other's. */
    private Wait swapped(Map<Role, ChannelNow> channels) {
        ChannelNow inlet = channels.get(Role.INLET);
        ChannelNow manifold = channels.get(Role.MANIFOLD);
        if (inlet == null || manifold == null) {
            return Wait.NOTHING;
        }
        double high = SWAPPED_FRACTION * plate.inlet().to(manifold.unit()).lower();
        return high > 0 && manifold.value() > high ? () -> swapped(inlet, manifold, high) : Wait.NOTHING;
    }

    private static String swapped(ChannelNow inlet, ChannelNow manifold, double high) {
        String shown = String.format(
                Locale.ROOT,
                "the manifold shows %.2f %s with nothing firing",
                manifold.value(),
                manifold.unit().symbol());
        return inlet.value() < high
                ? String.format(
                        Locale.ROOT,
                        "%s and the inlet %.2f %s: the hoses are on each other's taps, or the gas is off and the valve was"
                                + " left open",
                        shown,
                        inlet.value(),
                        inlet.unit().symbol())
                : shown + ": its hose is on the inlet's side, or the valve lets gas through";
    }

    /** Nothing where a trapped pressure may be read: first when it has calmed down, then when its time is up. */
    Wait waitingForHold(StepRun run, long timeNanos, Map<Role, ChannelNow> channels) {
        PlanStep.Watch watch = run.step.watch();
        boolean watching = run.watchedFromNanos >= 0;
        double left = watching
                ? watch.holdSeconds() - (timeNanos - run.watchedFromNanos) / 1e9
                : watch.settleSeconds() - (timeNanos - run.armedNanos) / 1e9;
        for (Role role : run.step.required()) {
            ChannelNow now = channels.get(role);
            if (now == null) {
                return new Wait.Of(role, " has no probe");
            }
            if (left > 0) {
                return new Wait.Seconds(role, watching ? WATCHED : " comes to rest for %.0f s more", Math.ceil(left));
            }
            if (!Double.isFinite(now.value())) {
                return new Wait.Of(role, " gives no value");
            }
        }
        return Wait.NOTHING;
    }

    private Wait waitingFor(Role role, ChannelNow now, StepRun run, long timeNanos) {
        boolean proof = run.step.settledBy().needsProof(role);
        if (proof && !proved(now)) {
            return new Wait.Of(role, " has not settled");
        }
        if (!run.rules.holds(role, now)) {
            // In words at once: the rule's own state goes on.
            String lacking = run.rules.state(role).map(Readiness::lacking).orElse("no reading yet");
            return new Wait.Of(role, " has not settled: " + lacking);
        }
        double sinceArmed = (timeNanos - run.armedNanos) / 1e9;
        if (sinceArmed < now.shortestWindowSeconds()) {
            return new Wait.Seconds(role, WATCHED, Math.ceil(now.shortestWindowSeconds() - sinceArmed));
        }
        boolean air = role.dimension() == Dimension.TEMPERATURE;
        if (air && role == Role.SUPPLY && run.step.kind().firing() && !answered(now, timeNanos)) {
            return () -> "supply has not answered the burner yet";
        }
        return Wait.NOTHING;
    }

    private static String lacking(RuleState rule) {
        return rule.holds() ? rule.reason() + ", but of readings from before it moved" : rule.reason();
    }

    private static boolean proved(ChannelNow now) {
        return now.settled() && now.settledSinceNanos() >= 0;
    }

    /** A channel that sends nothing cannot say that it has moved: what it said last is no reading of now. */
    private static boolean silent(ChannelNow now, long timeNanos) {
        return silentSeconds(now, timeNanos) > now.longestPauseSeconds();
    }

    private static double silentSeconds(ChannelNow now, long timeNanos) {
        return (timeNanos - now.timeNanos()) / 1e9;
    }

    private static Wait silence(Role role, ChannelNow now, long timeNanos) {
        return new Wait.Seconds(role, " has sent nothing for %.0f s", Math.floor(silentSeconds(now, timeNanos)));
    }

    /** The first channel of a step that is not settled now, by what the step asks; null where all are. */
    @Nullable
    Role notSettled(StepRun run, long timeNanos, Map<Role, ChannelNow> channels) {
        for (Role role : Readings.roles(run, channels)) {
            boolean there = run.typed.containsKey(role) || run.takenFirst.has(role);
            if (!there && !settled(role, run, timeNanos, channels.get(role))) {
                return role;
            }
        }
        return null;
    }

    private static boolean settled(Role role, StepRun run, long timeNanos, @Nullable ChannelNow now) {
        return now != null
                && !silent(now, timeNanos)
                && (!run.step.settledBy().needsProof(role) || proved(now))
                && run.rules.holds(role, now);
    }

    private boolean answered(ChannelNow supply, long timeNanos) {
        return manifoldMovedNanos < 0
                || supply.settledSinceNanos() > manifoldMovedNanos
                || (timeNanos - manifoldMovedNanos) / 1e9 > AIR_ANSWER_SECONDS;
    }

    private Wait notLit(StepRun run, Map<Role, ChannelNow> channels, Map<Role, Double> zeros) {
        ChannelNow manifold = channels.get(Role.MANIFOLD);
        if (manifold == null) {
            return Wait.NOTHING;
        }
        StagePlate stage = plate.stage(run.step.stage());
        double target = stage.unit().to(manifold.unit()).apply(stage.manifoldTarget());
        double pressure = Readings.raw(Role.MANIFOLD, manifold, run, zeros.getOrDefault(Role.MANIFOLD, 0.0))
                - zeros.getOrDefault(Role.MANIFOLD, 0.0);
        if (pressure < -LIT_FRACTION_OF_TARGET * target) {
            return () -> String.format(
                    Locale.ROOT,
                    "the manifold reads %.2f %s, below nothing: its hose is on the gauge's other port",
                    pressure,
                    manifold.unit().symbol());
        }
        return pressure < LIT_FRACTION_OF_TARGET * target
                ? new Wait.NotLit(stage, pressure, manifold.unit().symbol())
                : notStepped(stage, target, pressure, manifold.unit().symbol());
    }

    private Wait notStepped(StagePlate stage, double target, double pressure, String unit) {
        for (StagePlate other : plate.stages()) {
            Double read = manifolds.get(other.key());
            boolean apart = Math.abs(other.manifoldTarget() / stage.manifoldTarget() - 1) > TOLD_APART_FRACTION;
            boolean reached = Math.abs(pressure - target) < stage.manifoldTolerance() / stage.manifoldTarget() * target;
            if (read != null
                    && !other.key().equals(stage.key())
                    && apart
                    && !reached
                    && Math.abs(pressure - read) < SAME_STAGE_FRACTION * read) {
                return () -> String.format(
                        Locale.ROOT,
                        "%s has not come: the manifold still stands at %s's %.2f %s; a board or thermostat can wait many"
                                + " minutes",
                        stage.name(),
                        other.name(),
                        read,
                        unit);
            }
        }
        return Wait.NOTHING;
    }
}
