package settlemark.job;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;

/**
 * What was left at each visit to an appliance, and what is left now: inlet, manifold and rise at each stage, in the units of
 * the readings of now. Two values are the same where they differ by no more than the root of the sum of the squares of
 * their expanded uncertainties.
 */
public final class VisitTrend {
    private static final String RISE = "rise";
    private static final int MOST_DECIMALS = 6;

    private final JobState job;

    private VisitTrend(JobState job) {
        this.job = job;
    }

    private record Point(String when, double value, double expanded) {}

    /** A sentence for each value that was left before and read now; none at a first visit. */
    public static List<String> of(JobState job) {
        return new VisitTrend(job).words();
    }

    private List<String> words() {
        List<String> words = new ArrayList<>();
        if (job.visits().isEmpty()) {
            return words;
        }
        now().forEach((stage, step) -> {
            for (Role role : List.of(Role.INLET, Role.MANIFOLD)) {
                step.reading()
                        .filter(r -> role == Role.INLET || !stage.isEmpty())
                        .flatMap(r -> r.channel(role))
                        .ifPresent(c -> series(stage, role, c).ifPresent(words::add));
            }
            rise(stage, step).ifPresent(words::add);
        });
        return words;
    }

    /** The reading that says how a stage stands now: as left, else as found; the lock-up has no stage. */
    private Map<String, StepState> now() {
        Map<String, StepState> steps = new LinkedHashMap<>();
        for (StepState step : job.steps()) {
            StepKind kind = step.step().kind();
            boolean read = step.progress() == Progress.TAKEN && !step.superseded();
            if (read && (kind == StepKind.LOCK_UP || kind == StepKind.FOUND || kind == StepKind.LEFT)) {
                steps.put(step.step().stage(), step);
            }
        }
        return steps;
    }

    private Optional<String> series(String stage, Role role, ChannelReading now) {
        if (!now.settled()) {
            return Optional.empty();
        }
        List<Point> points = new ArrayList<>();
        for (Act.Former visit : job.visits()) {
            former(visit, stage, role)
                    .ifPresent(f -> points.add(new Point(
                            visit.when(),
                            f.unit().to(now.unit()).apply(f.value()),
                            width(f.unit(), now.unit(), f.expandedUncertainty()))));
        }
        return sentence(role.word(), stage, points, now.value(), now.expandedUncertainty(), now.unit());
    }

    private Optional<String> rise(String stage, StepState step) {
        Optional<ChannelReading> supply = step.reading().flatMap(r -> r.channel(Role.SUPPLY));
        Optional<ChannelReading> back = step.reading().flatMap(r -> r.channel(Role.RETURN));
        if (supply.isEmpty()
                || back.isEmpty()
                || !supply.get().settled()
                || !back.get().settled()) {
            return Optional.empty();
        }
        Unit unit = supply.get().unit();
        List<Point> points = new ArrayList<>();
        for (Act.Former visit : job.visits()) {
            Optional<FormerReading> hot = former(visit, stage, Role.SUPPLY);
            Optional<FormerReading> cold = former(visit, stage, Role.RETURN);
            if (hot.isPresent() && cold.isPresent()) {
                double was = hot.get().unit().to(unit).apply(hot.get().value())
                        - cold.get().unit().to(unit).apply(cold.get().value());
                double u = Math.hypot(
                        width(hot.get().unit(), unit, hot.get().expandedUncertainty()),
                        width(cold.get().unit(), unit, cold.get().expandedUncertainty()));
                points.add(new Point(visit.when(), was, u));
            }
        }
        double u = Math.hypot(supply.get().expandedUncertainty(), back.get().expandedUncertainty());
        return sentence(RISE, stage, points, supply.get().value() - back.get().value(), u, unit.difference());
    }

    private static Optional<FormerReading> former(Act.Former visit, String stage, Role role) {
        return visit.left().stream()
                .filter(f -> f.stage().equals(stage) && f.role() == role)
                .findFirst();
    }

    private static double width(Unit from, Unit to, double expanded) {
        return Math.abs(from.to(to).applyDifference(expanded));
    }

    private Optional<String> sentence(
            String subject, String stage, List<Point> points, double now, double expanded, Unit unit) {
        if (points.isEmpty()) {
            return Optional.empty();
        }
        int decimals = decimals(expanded);
        StringBuilder text = new StringBuilder(subject).append(at(stage)).append(':');
        points.forEach(p -> text.append(' ')
                .append(number(p.value(), decimals))
                .append(" on ")
                .append(p.when())
                .append(','));
        Point first = points.get(0);
        double u = Math.hypot(first.expanded(), expanded);
        double moved = now - first.value();
        String shown = unit.dimension() == Dimension.TEMPERATURE_DIFFERENCE && unit.equals(Unit.CELSIUS.difference())
                ? "K"
                : unit.symbol();
        text.append(" now ")
                .append(number(now, decimals))
                .append(' ')
                .append(shown)
                .append("; ");
        text.append(
                Math.abs(moved) <= u ? "no change beyond U = " : signed(moved, decimals) + " since the first, U = ");
        text.append(number(u, decimals(u))).append(' ').append(shown);
        return Optional.of(text.toString());
    }

    private String at(String stage) {
        return stage.isEmpty()
                ? " at lock-up"
                : " at "
                        + job.plan().steps().stream()
                                .filter(s -> s.kind().firing() && s.stage().equals(stage))
                                .map(PlanStep::name)
                                .findFirst()
                                .orElse(stage);
    }

    /** Where an uncertainty has its first digit. */
    private static int decimals(double expanded) {
        return expanded > 0 && Double.isFinite(expanded)
                ? (int) Math.max(0, Math.min(MOST_DECIMALS, -Math.floor(Math.log10(expanded))))
                : 2;
    }

    private static String number(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .toPlainString()
                .replace('-', '\u2212');
    }

    private static String signed(double value, int decimals) {
        return String.format(Locale.ROOT, "%s%s", value > 0 ? "+" : "", number(value, decimals));
    }
}
