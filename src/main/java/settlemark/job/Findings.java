package settlemark.job;

import java.util.Locale;
import java.util.Map;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** What a reading shows beside its verdicts, in words. */
final class Findings {
    /** A cap customarily moves the manifold by 0.02 to this, inches of water; from memory. */
    private static final double LARGE_CAP_SHIFT_IN_H2O = 0.2;

    private static final String LARGE_CAP_SHIFT =
            "That is more than a cap customarily does: look at its seal and at the way to"
                    + " the air under it. What is judged is the pressure with the cap on.";

    private Findings() {}

    /** Whether a zero may stand; where it may not, the step gets the reason. */
    static boolean zeroAccepted(StepRun run, StageReading reading, Map<Role, ChannelNow> channels) {
        for (ChannelReading part : reading.channels()) {
            ChannelNow now = channels.get(part.role());
            if (now != null && Math.abs(part.value()) > now.zeroLimit()) {
                run.remarks.add(String.format(
                        Locale.ROOT,
                        "Zero refused: %s reads %.2f %s with its port open, more than %.2f %s. Is the port really open, the"
                                + " hose dry? If so, the gauge needs service.",
                        part.role().word(),
                        part.value(),
                        part.unit().symbol(),
                        now.zeroLimit(),
                        part.unit().symbol()));
                return false;
            }
        }
        return true;
    }

    /** A finding and no verdict: what counts is the pressure with the cap on, and that is the reading that is judged. */
    private static void capped(StepRun run, ChannelReading before, ChannelReading after) {
        double moved = after.value() - before.value();
        run.remarks.add(String.format(
                Locale.ROOT,
                "The cap moved the manifold by %+.2f %s, from %.2f%s to %.2f.",
                moved,
                after.unit().symbol(),
                before.value(),
                before.settled() ? "" : " (not settled)",
                after.value()));
        if (Math.abs(moved) > Unit.INCH_OF_WATER.to(after.unit()).applyDifference(LARGE_CAP_SHIFT_IN_H2O)) {
            run.remarks.add(LARGE_CAP_SHIFT);
        }
    }

    static void remark(StepRun run, StageReading reading, GasHeat heat, RatingPlate plate) {
        if (run.step.kind() == StepKind.COMBUSTION) {
            run.remarks.addAll(Combustion.words(reading, plate));
        }
        if (run.step.kind() == StepKind.STATICS) {
            run.remarks.addAll(AirStatics.words(reading, plate));
        }
        if (run.step.kind() == StepKind.LEFT) {
            run.state(heat)
                    .reading("adjusted")
                    .flatMap(a -> a.channel(Role.MANIFOLD))
                    .ifPresent(before -> reading.channel(Role.MANIFOLD).ifPresent(after -> capped(run, before, after)));
        }
        if (run.step.kind() == StepKind.HOLD) {
            run.remarks.addAll(TrappedPressure.words(run.verdicts));
        }
        if (run.step.kind() == StepKind.SHUT && run.fall.seen()) {
            run.remarks.add(run.fall.words());
        }
    }
}
