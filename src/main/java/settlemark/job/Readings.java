package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.SettleState;
import settlemark.settle.StageReading;

/** Makes readings from channels: zero taken off, uncertainties put together in quadrature (JCGM 100:2008, 5.1.2). */
final class Readings {
    private Readings() {}

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
            if (now != null) {
                parts.add(part(role, now, zeros.getOrDefault(role, 0.0)));
            }
        }
        return new StageReading(run.key, purpose, timeNanos, !handReason.isEmpty(), handReason, parts);
    }

    private static ChannelReading part(Role role, ChannelNow now, double zero) {
        SettleState settle = now.settle();
        boolean settled = settle.settled();
        double raw = settled ? settle.value() : now.value();
        double settleUncertainty = settled ? settle.uncertainty() : movement(settle);
        double instrument = now.instrumentUncertainty(raw);
        double half = Double.isNaN(settleUncertainty) ? 0 : settleUncertainty / 2;
        long to = settled ? Math.round(settle.timeSeconds() * 1e9) : now.timeNanos();
        long from = settled ? Math.round(settle.windowStartSeconds() * 1e9) : to;
        return new ChannelReading(
                role,
                raw - zero,
                Math.hypot(half, instrument),
                settled ? settleUncertainty : Double.NaN,
                zero,
                now.unit(),
                from,
                to,
                settled,
                settled ? settle.reason() : "not settled: " + settle.reason());
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
