package settlemark.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.job.JobState;
import settlemark.job.StagePlate;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.measure.Quantity;
import settlemark.measure.Role;

/** By how much the supply's pressure falls from lock-up to fire, in words. */
final class SupplyDrops {
    private final JobState job;

    SupplyDrops(JobState job) {
        this.job = job;
    }

    /** A sentence for each state in which the inlet was read, none without a lock-up. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        Optional<Quantity> lockUp = reading(StepKind.LOCK_UP, "").flatMap(SupplyDrops::inlet);
        if (lockUp.isPresent()) {
            drop(lines, lockUp.get(), reading(StepKind.THIS_APPLIANCE, ""));
            drop(lines, lockUp.get(), reading(StepKind.ALL_APPLIANCES, ""));
            List<StagePlate> stages = job.plate().stages();
            drop(lines, lockUp.get(), fired(stages.get(stages.size() - 1)));
        }
        return lines;
    }

    private static void drop(List<String> lines, Quantity lockUp, Optional<StepState> step) {
        step.ifPresent(s -> inlet(s).ifPresent(inlet -> {
            double spread = 2 * Math.hypot(lockUp.standardUncertainty(), inlet.standardUncertainty());
            int decimals = Figures.decimals(spread);
            lines.add("From lock-up to " + s.step().title() + " the inlet falls by "
                    + Figures.value(lockUp.value() - inlet.value(), decimals) + " "
                    + Figures.uncertainty(spread, decimals) + " " + inlet.unit().symbol() + ".");
        }));
    }

    /** As left, else as found. */
    private Optional<StepState> fired(StagePlate stage) {
        return reading(StepKind.LEFT, stage.key()).or(() -> reading(StepKind.FOUND, stage.key()));
    }

    private Optional<StepState> reading(StepKind kind, String stage) {
        return job.steps().stream()
                .filter(s -> !s.superseded() && s.step().kind() == kind)
                .filter(s -> s.step().stage().equals(stage))
                .reduce((a, b) -> b);
    }

    private static Optional<Quantity> inlet(StepState step) {
        return StageColumns.channel(step, Role.INLET)
                .map(c -> new Quantity(c.value(), c.standardUncertainty(), c.unit()));
    }
}
