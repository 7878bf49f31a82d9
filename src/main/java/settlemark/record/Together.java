package settlemark.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import settlemark.calc.Formulas;
import settlemark.calc.Inputs;
import settlemark.calc.RefusedInputException;
import settlemark.calc.Result;
import settlemark.calc.SupplyDiagnosis;
import settlemark.calc.SupplyFinding;
import settlemark.calc.SupplyReadings;
import settlemark.job.Clocking;
import settlemark.job.JobState;
import settlemark.job.StagePlate;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.measure.Quantity;
import settlemark.measure.Role;
import settlemark.measure.Unit;

/** Whether what was measured in different ways fits together: the supply's drops, and the meter beside the manifold. */
final class Together {
    /** Of the rating: 10 CFR 430 Subpart B Appendix O, 2.4.1. */
    private static final double PLATE_WITHIN = 0.02;

    private final JobState job;
    private final boolean si;

    /** @param si whether the record is shown in SI */
    Together(JobState job, boolean si) {
        this.job = job;
        this.si = si;
    }

    /** The drop of the supply from lock-up to fire, and what it speaks for. */
    List<String> supply() {
        List<String> lines = new ArrayList<>();
        Optional<Quantity> lockUp = reading(StepKind.LOCK_UP, "").flatMap(s -> pressure(s, Role.INLET));
        if (lockUp.isEmpty()) {
            return lines;
        }
        drop(lines, lockUp.get(), reading(StepKind.THIS_APPLIANCE, ""));
        drop(lines, lockUp.get(), reading(StepKind.ALL_APPLIANCES, ""));
        List<StagePlate> stages = job.plate().stages();
        StagePlate first = stages.get(0);
        StagePlate last = stages.get(stages.size() - 1);
        Optional<StepState> low = fired(first);
        Optional<StepState> high = fired(last);
        drop(lines, lockUp.get(), high);
        Optional<Quantity> lowInlet = low.flatMap(s -> pressure(s, Role.INLET));
        Optional<Quantity> highInlet = high.flatMap(s -> pressure(s, Role.INLET));
        if (lowInlet.isPresent() && highInlet.isPresent() && last.inputBtuPerHour() > 1.05 * first.inputBtuPerHour()) {
            SupplyReadings readings = new SupplyReadings(
                    lockUp.get(),
                    lowInlet.get(),
                    highInlet.get(),
                    new Quantity(first.inputBtuPerHour(), 0, Clocking.INPUT),
                    new Quantity(last.inputBtuPerHour(), 0, Clocking.INPUT),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty());
            SupplyDiagnosis.of(readings).forEach(f -> lines.add(finding(f)));
        }
        return lines;
    }

    private String finding(SupplyFinding finding) {
        String cause = finding.cause().name().toLowerCase(Locale.ROOT).replace('_', ' ');
        String words = cause.substring(0, 1).toUpperCase(Locale.ROOT) + cause.substring(1) + ": " + finding.reason()
                + ". To settle it: " + finding.confirm() + ".";
        return si ? InUnits.siSentence(words) : SaidUnits.printed(words);
    }

    private static void drop(List<String> lines, Quantity lockUp, Optional<StepState> step) {
        step.ifPresent(s -> pressure(s, Role.INLET).ifPresent(inlet -> {
            double spread = 2 * Math.hypot(lockUp.standardUncertainty(), inlet.standardUncertainty());
            int decimals = Figures.decimals(spread);
            lines.add("From lock-up to " + s.step().title() + " the inlet falls by "
                    + Figures.value(lockUp.value() - inlet.value(), decimals) + " "
                    + Figures.uncertainty(spread, decimals) + " " + inlet.unit().symbol() + ".");
        }));
    }

    /** The clocked input beside what manifold and plate let expect, stage by stage and stage against stage. */
    List<String> looks() {
        List<String> lines = new ArrayList<>();
        for (StagePlate stage : job.plate().stages()) {
            againstPlate(stage).ifPresent(lines::add);
        }
        List<StagePlate> stages = job.plate().stages();
        if (stages.size() > 1) {
            stages(stages.get(0), stages.get(stages.size() - 1)).ifPresent(lines::add);
        }
        return lines;
    }

    private Optional<String> againstPlate(StagePlate stage) {
        Optional<Quantity> clocked = clocked(stage);
        Optional<Quantity> manifold = fired(stage).flatMap(s -> pressure(s, Role.MANIFOLD));
        if (clocked.isEmpty() || manifold.isEmpty() || !(stage.inputBtuPerHour() > 0)) {
            return Optional.empty();
        }
        Quantity target = new Quantity(stage.manifoldTarget(), 0, stage.unit());
        return ratio(manifold.get(), target).map(ratio -> {
            double expected = stage.inputBtuPerHour() * ratio.value();
            double apart = clocked.get().value() / expected - 1;
            double within = PLATE_WITHIN + 2 * Math.hypot(relative(clocked.get()), relative(ratio));
            return capital(stage.name()) + ": the meter says "
                    + power(clocked.get().value()) + ", the plate's input at this"
                    + " manifold would be " + power(expected) + "; " + percent(Math.abs(apart)) + " apart, at most "
                    + percent(within) + " (plate \u00B12 % and U): "
                    + (Math.abs(apart) <= within
                            ? "holds together."
                            : "does NOT hold together; look at orifice, heating value, meter dial and gauge.");
        });
    }

    private Optional<String> stages(StagePlate low, StagePlate high) {
        Optional<Quantity> first = clocked(low);
        Optional<Quantity> second = clocked(high);
        Optional<Quantity> from = fired(low).flatMap(s -> pressure(s, Role.MANIFOLD));
        Optional<Quantity> to = fired(high).flatMap(s -> pressure(s, Role.MANIFOLD));
        if (first.isEmpty() || second.isEmpty() || from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        return ratio(to.get(), from.get()).map(ratio -> {
            double metered = second.get().value() / first.get().value();
            double apart = Math.abs(metered / ratio.value() - 1);
            double within = 2 * Math.hypot(relative(ratio), Math.hypot(relative(first.get()), relative(second.get())));
            return capital(high.name()) + " over " + low.name() + ": by the meter " + Figures.value(metered, 3)
                    + ", by the root of the manifold pressures " + Figures.value(ratio.value(), 3) + "; "
                    + percent(apart)
                    + " apart, U " + percent(within) + ": "
                    + (apart <= within
                            ? "holds together."
                            : "does NOT hold together; one stage was not what it seemed.");
        });
    }

    /** Same orifice and gas: the flow follows the root of the drop (Bernoulli). */
    private static Optional<Quantity> ratio(Quantity pressure, Quantity from) {
        Inputs inputs = Inputs.none().with("pressure", pressure).with("from", from);
        try {
            return Optional.of(
                    Formulas.find("input-ratio").orElseThrow().of(inputs).quantity());
        } catch (RefusedInputException e) {
            return Optional.empty();
        }
    }

    private Optional<Quantity> clocked(StagePlate stage) {
        return reading(StepKind.CLOCK, stage.key())
                .flatMap(s -> s.clocking().input())
                .map(Result::quantity);
    }

    private Optional<StepState> fired(StagePlate stage) {
        return reading(StepKind.LEFT, stage.key()).or(() -> reading(StepKind.FOUND, stage.key()));
    }

    private Optional<StepState> reading(StepKind kind, String stage) {
        return job.steps().stream()
                .filter(s -> !s.superseded() && s.step().kind() == kind)
                .filter(s -> s.step().stage().equals(stage))
                .reduce((a, b) -> b);
    }

    private static Optional<Quantity> pressure(StepState step, Role role) {
        return StageColumns.channel(step, role).map(c -> new Quantity(c.value(), c.standardUncertainty(), c.unit()));
    }

    private static double relative(Quantity quantity) {
        return quantity.standardUncertainty() / Math.abs(quantity.value());
    }

    private String power(double btuPerHour) {
        return si
                ? Figures.value(Clocking.INPUT.to(Unit.ucum("kW")).apply(btuPerHour), 2) + " kW"
                : Figures.whole(btuPerHour) + " Btu/h";
    }

    private static String percent(double share) {
        return Figures.value(100 * share, 1) + " %";
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
