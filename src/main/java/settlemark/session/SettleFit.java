package settlemark.session;

import java.util.LinkedHashSet;
import java.util.List;
import settlemark.job.SettleForm;
import settlemark.measure.Channel;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleCheck;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

/** Whether what has been set of the detectors fits the channels of a session. */
public final class SettleFit {
    private SettleFit() {}

    /** The kind of channel that a role is; what an analyser reads goes with the stack. */
    public static SettleKind kind(Role role) {
        return SettleForm.kind(role);
    }

    /** Units in which flue gas and room air are read. */
    public static Unit analysisUnit(Role role) {
        return role == Role.OXYGEN || role == Role.CARBON_DIOXIDE ? Unit.PERCENT : Unit.ucum("[ppm]");
    }

    /**
     * What an analyser's channel is called settled by, in {@link #analysisUnit}; declared as this program's own, since no
     * published rule was found.
     */
    private static SettleSettings analysis(Role role) {
        boolean percent = analysisUnit(role).equals(Unit.PERCENT);
        double drift = percent ? 0.2 : 10;
        double degrees = SettleSettings.defaults(SettleKind.STACK).driftLimit();
        return SettleSettings.defaults(SettleKind.STACK).scaled(drift / degrees);
    }

    /**
     * What a channel is called settled by.
     *
     * @param unit that the channel is read in
     * @param choices of the session; what an analyser reads has none
     */
    public static SettleSettings settings(Role role, Unit unit, SettleChoices choices) {
        if (role.gasAnalysis()) {
            return analysis(role);
        }
        SettleKind kind = kind(role);
        return choices.settings(kind).scaled(SettleForm.unit(kind).to(unit).slope());
    }

    /** The longest pause that is no gap, in nanoseconds. */
    public static long longestStepNanos(Role role) {
        return Math.round(SettleSettings.defaults(kind(role)).gapSeconds() * 1e9);
    }

    /** What cannot work with the channels of a session, each once; a kind that nothing is set of is as it is. */
    public static List<String> problems(SessionHeader header) {
        SettleChoices choices = header.settings();
        LinkedHashSet<String> problems = new LinkedHashSet<>(SettleForm.problems(choices));
        for (ProbeSetup probe : header.probes()) {
            for (Channel channel : probe.profile().channels()) {
                Role role = probe.roles().get(channel.name());
                if (role != null && !role.gasAnalysis() && problems.isEmpty()) {
                    of(choices, kind(role), channel)
                            .forEach(p -> problems.add(probe.name() + "." + channel.name() + ": " + p));
                }
            }
        }
        return List.copyOf(problems);
    }

    private static List<String> of(SettleChoices choices, SettleKind kind, Channel channel) {
        SettleAdjustment set = choices.of(kind);
        if (set.equals(SettleAdjustment.NONE)) {
            return List.of();
        }
        double factor = Math.abs(SettleForm.unit(kind).to(channel.unit()).slope());
        return SettleCheck.problems(
                kind, set, factor, channel.unit().symbol(), channel.resolution(), channel.periodSeconds());
    }
}
