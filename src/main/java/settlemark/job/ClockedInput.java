package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.calc.Formulas;
import settlemark.calc.Inputs;
import settlemark.calc.RefusedInputException;
import settlemark.calc.Result;
import settlemark.measure.Quantity;
import settlemark.measure.Role;

/** What the clocked input says, and whether the burner stood still for it. */
final class ClockedInput {
    static final String INPUT = "input";

    /** The input lies within this of the rating: 10 CFR 430 Subpart B Appendix O, 2.4.1. */
    private static final double WITHIN = 0.02;

    /** How near to a whole factor of the plate's input another dial shows itself; this program's own. */
    private static final double DIAL_WITHIN = 0.08;

    private static final String SOURCE = "plate \u00B12 %, 10 CFR 430 App. O 2.4.1";
    /** The burner is on a stage while the manifold is this near to its target, as a fraction; this program's own. */
    private static final double ON_STAGE = 0.4;

    private ClockedInput() {}

    static List<Verdict> judge(PlanStep step, Clocking clocking, RatingPlate plate) {
        List<Verdict> verdicts = new ArrayList<>();
        double aim = plate.aimBtuPerHour(step.stage());
        String source = plate.site().known() ? SOURCE + ", " + plate.site().words() : SOURCE;
        clocking.input().map(Result::quantity).ifPresent(input -> {
            if (aim > 0) {
                verdicts.add(verdict(INPUT, input, Limit.around(aim, WITHIN * aim, Clocking.INPUT, source)));
            }
            step.limits().stream()
                    .filter(own -> own.subject().equals(INPUT))
                    .forEach(own -> verdicts.add(verdict(
                            INPUT + " by " + own.limit().source(),
                            input,
                            own.limit().to(Clocking.INPUT))));
        });
        return verdicts;
    }

    private static Verdict verdict(String subject, Quantity input, Limit limit) {
        return Verdict.judge(subject, input.value(), input.expandedUncertainty(), limit);
    }

    static List<String> words(PlanStep step, Clocking clocking, RatingPlate plate) {
        List<String> words = new ArrayList<>();
        clocking.apart()
                .ifPresent(apart -> words.add(String.format(
                        Locale.ROOT, "The last two runs lie %.1f %% apart, at most 2 %% are asked for.", apart * 100)));
        double rated = plate.stage(step.stage()).inputBtuPerHour();
        if (!(rated > 0)) {
            words.add(
                    "The plate gives no input for " + plate.stage(step.stage()).name() + ", so it was not judged.");
        } else {
            clocking.input().ifPresent(input -> words.addAll(againstPlate(input, rated, plate.site())));
            clocking.input().ifPresent(input -> words.addAll(dial(input, plate.aimBtuPerHour(step.stage()))));
            aimed(plate, rated).ifPresent(words::add);
        }
        return words;
    }

    /** What the altitude does to the input that is aimed at. */
    private static Optional<String> aimed(RatingPlate plate, double rated) {
        Site site = plate.site();
        return site.known() && site.derating() != Site.Derating.NONE
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "Input aimed at: %.0f Btu/h of the plate's %.0f Btu/h (%s). Clock with the heating value as delivered"
                                + " here, corrected no second time; the maker's own instruction comes first.",
                        rated * site.share(),
                        rated,
                        site.words()))
                : Optional.empty();
    }

    /** A dial of twice or half the volume that was said shows as just that factor. */
    private static List<String> dial(Result input, double rated) {
        for (double factor : new double[] {0.25, 0.5, 2, 4}) {
            if (Math.abs(input.quantity().value() / (rated * factor) - 1) < DIAL_WITHIN) {
                return List.of(String.format(
                        Locale.ROOT,
                        "The clocked input is some %s times the plate's: was the dial another one, or a turn missed?",
                        factor < 1 ? String.valueOf(factor) : String.format(Locale.ROOT, "%.0f", factor)));
            }
        }
        return List.of();
    }

    private static List<String> againstPlate(Result input, double rated, Site site) {
        Inputs inputs = site.into(
                Inputs.none().with("input", input.quantity()).with("plate", new Quantity(rated, 0, Clocking.INPUT)));
        try {
            return Formulas.find("input-against-plate").orElseThrow().of(inputs).warnings().stream()
                    .map(w -> "Input " + w + ".")
                    .toList();
        } catch (RefusedInputException e) {
            return List.of("Input not held against the plate: " + e.getMessage() + ".");
        }
    }

    /** Whether a manifold pressure in the stage's unit, zero taken off, is that of the stage rather than of another. */
    static boolean burnsOn(StagePlate stage, double value) {
        return Math.abs(value - stage.manifoldTarget()) <= ON_STAGE * stage.manifoldTarget();
    }

    /** Why a run does not count, empty while the burner stands still at its stage or no probe sees it. */
    static String unsteady(StepRun run, @Nullable ChannelNow manifold, Map<Role, Double> zeros, RatingPlate plate) {
        if (manifold == null || !Double.isFinite(manifold.value())) {
            return "";
        }
        if (!manifold.settled()) {
            return "the manifold moved while the meter turned";
        }
        StagePlate stage = plate.stage(run.step.stage());
        double value =
                manifold.unit().to(stage.unit()).apply(manifold.value() - zeros.getOrDefault(Role.MANIFOLD, 0.0));
        return burnsOn(stage, value)
                ? ""
                : String.format(
                        Locale.ROOT,
                        "the manifold stood at %.2f %s, which is not %s",
                        value,
                        stage.unit().symbol(),
                        stage.name());
    }
}
