package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.RuleState;
import settlemark.settle.SettleState;
import settlemark.settle.StageReading;

/** Makes readings from channels: zero taken off, uncertainties put together in quadrature (JCGM 100:2008, 5.1.2). */
final class Readings {
    private Readings() {}

    /**
     * What a step's reading is of: what it requires and, where values may be typed, as far as they are there. A zero is
     * also one of each static pressure that has a probe.
     */
    static List<Role> roles(StepRun run, Map<Role, ChannelNow> channels) {
        StepKind kind = run.step.kind();
        if (kind != StepKind.ZERO && kind != StepKind.CLOSE && !kind.typed()) {
            return run.step.required();
        }
        List<Role> roles = new ArrayList<>(run.step.required());
        if (kind == StepKind.ZERO || kind == StepKind.CLOSE) {
            channels.keySet().stream()
                    .filter(r -> r.statics() && !roles.contains(r))
                    .sorted()
                    .forEach(roles::add);
        } else if (kind.typed()) {
            run.typed.keySet().stream().filter(r -> !roles.contains(r)).sorted().forEach(roles::add);
            if (kind == StepKind.COMBUSTION && channels.containsKey(Role.CARBON_DIOXIDE)) {
                roles.add(Role.CARBON_DIOXIDE);
            }
            roles.removeIf(r -> !run.typed.containsKey(r)
                    && (!channels.containsKey(r)
                            || !Double.isFinite(channels.get(r).value())));
        }
        return roles.stream().distinct().toList();
    }

    static StageReading take(
            StepRun run,
            String purpose,
            List<Role> roles,
            long timeNanos,
            String handReason,
            Map<Role, ChannelNow> channels,
            Map<Role, Double> zeros) {
        List<ChannelReading> parts = new ArrayList<>();
        for (Role role : roles) {
            ChannelNow now = channels.get(role);
            TypedValue typed = run.typed.get(role);
            if (typed != null) {
                parts.add(typed.part());
            } else if (now != null) {
                parts.add(part(role, now, run, zeros.getOrDefault(role, 0.0)));
            }
        }
        return new StageReading(run.key, purpose, timeNanos, !handReason.isEmpty(), handReason, parts);
    }

    private static ChannelReading part(Role role, ChannelNow now, StepRun run, double zero) {
        SettleState settle = now.settle();
        Optional<RuleState> rule = run.rules.state(role).filter(RuleState::holds);
        boolean byRule = rule.isPresent() && !run.step.settledBy().needsProof(role) && !settle.settled();
        boolean settled = settle.settled() || byRule;
        double raw = raw(role, now, run, zero);
        double settleUncertainty =
                byRule ? rule.get().uncertainty() : settle.settled() ? settle.uncertainty() : movement(settle);
        double half = Double.isNaN(settleUncertainty) ? 0 : settleUncertainty / 2;
        double from = byRule ? rule.get().fromSeconds() : settle.windowStartSeconds();
        double to = byRule ? rule.get().timeSeconds() : settle.timeSeconds();
        return new ChannelReading(
                role,
                raw - zero,
                Math.hypot(half, now.instrumentUncertainty(raw)),
                settled ? settleUncertainty : Double.NaN,
                zero,
                now.unit(),
                settled ? Math.round(from * 1e9) : now.timeNanos(),
                settled ? Math.round(to * 1e9) : now.timeNanos(),
                settled,
                settled ? reason(role, run, Map.of(role, now)) : "not settled: " + settle.reason(),
                rule.map(r -> r.rule().key()).orElse(""));
    }

    /** The value before the zero is taken off: as settled, else the mean that a rule alone found steady, else the last. */
    static double raw(Role role, ChannelNow now, StepRun run, double zero) {
        if (now.settled()) {
            return now.settle().value();
        }
        boolean alone = !run.step.settledBy().needsProof(role);
        Optional<RuleState> rule = run.rules.state(role).filter(r -> alone && r.holds());
        return rule.isPresent() ? rule.get().value() + zero : now.value();
    }

    /** What is said of a channel, by what its step asks. */
    static String reason(Role role, StepRun run, Map<Role, ChannelNow> channels) {
        ChannelNow now = channels.get(role);
        if (now == null) {
            return "no probe";
        }
        Optional<RuleState> rule = run.rules.state(role);
        boolean proof = run.step.settledBy().needsProof(role) || now.settled();
        if (rule.isEmpty()) {
            return now.settle().reason();
        }
        return proof
                ? now.settle().reason() + "; " + rule.get().reason()
                : rule.get().reason();
    }

    /** What an unsettled value could still do, where the detector knows it. */
    private static double movement(SettleState settle) {
        double couldMove = settle.couldMove();
        double swing = settle.swing();
        if (Double.isNaN(couldMove)) {
            return swing;
        }
        return Double.isNaN(swing) ? couldMove : Math.max(couldMove, swing);
    }
}
