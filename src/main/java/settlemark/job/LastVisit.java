package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import settlemark.measure.Dimension;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** What was left at the last visit, against what is found now. */
final class LastVisit {
    private String when = "";
    private List<FormerReading> left = List.of();

    void is(Act.Former former) {
        when = former.when();
        left = former.left();
    }

    /** A sentence for each value that was left at the same stage. */
    List<String> words(PlanStep step, StageReading now) {
        List<String> words = new ArrayList<>();
        if (step.kind() != StepKind.FOUND && step.kind() != StepKind.LOCK_UP) {
            return words;
        }
        for (ChannelReading part : now.channels()) {
            boolean air = part.role().dimension() != Dimension.PRESSURE;
            Optional<FormerReading> before = left.stream()
                    .filter(f -> f.stage().equals(step.stage()) && f.role() == part.role() && !air)
                    .findFirst();
            before.ifPresent(f -> words.add(sentence(part, f)));
        }
        return words;
    }

    private String sentence(ChannelReading now, FormerReading former) {
        double before = former.unit().to(now.unit()).apply(former.value());
        double uncertain = Math.hypot(
                now.expandedUncertainty(),
                Math.abs(former.unit().to(now.unit()).applyDifference(former.expandedUncertainty())));
        double moved = now.value() - before;
        return String.format(
                Locale.ROOT,
                "At the last visit (%s) the %s was left at %.2f %s; now it is found at %.2f %s, %s.",
                when,
                now.role().word(),
                before,
                now.unit().symbol(),
                now.value(),
                now.unit().symbol(),
                Math.abs(moved) <= uncertain
                        ? "the same within the uncertainty of both"
                        : String.format(
                                Locale.ROOT,
                                "%+.2f %s with U = %.2f %s",
                                moved,
                                now.unit().symbol(),
                                uncertain,
                                now.unit().symbol()));
    }
}
