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
import settlemark.settle.StageReading;

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

    /**
     * What was left at a visit.
     *
     * @param when the day, as shown
     * @param value in the unit of its line
     * @param expanded uncertainty, coverage factor 2, in the same
     */
    public record Point(String when, double value, double expanded) {}

    /**
     * One value through the visits.
     *
     * @param subject what it is of
     * @param stage its name, empty for the lock-up
     * @param symbol of the unit of all numbers
     * @param before oldest first, never empty
     * @param found today, NaN where it was not read
     * @param left today, NaN where it was not read or nothing is left otherwise than found
     * @param expanded uncertainty of what is now, coverage factor 2
     * @param decimals that mean something
     */
    public record Line(
            String subject,
            String stage,
            String symbol,
            List<Point> before,
            double found,
            double left,
            double expanded,
            int decimals) {
        public Line {
            before = List.copyOf(before);
        }

        /** As left, else as found. */
        public double now() {
            return Double.isNaN(left) ? found : left;
        }

        /** Expanded uncertainty of the difference from the first visit. */
        public double expandedChange() {
            return Math.hypot(before.get(0).expanded(), expanded);
        }

        /** From the first visit until now. */
        public double change() {
            return now() - before.get(0).value();
        }
    }

    /** A sentence for each value that was left before and read now; none at a first visit. */
    public static List<String> of(JobState job) {
        return lines(job).stream().map(VisitTrend::sentence).toList();
    }

    /** The same as numbers. */
    public static List<Line> lines(JobState job) {
        return new VisitTrend(job).lines();
    }

    private List<Line> lines() {
        List<Line> words = new ArrayList<>();
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

    private Optional<Line> series(String stage, Role role, ChannelReading now) {
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
        double found = found(stage)
                .flatMap(r -> r.channel(role))
                .map(c -> c.unit().to(now.unit()).apply(c.value()))
                .orElse(Double.NaN);
        return line(role.word(), stage, points, found, now.value(), now.expandedUncertainty(), now.unit());
    }

    private Optional<Line> rise(String stage, StepState step) {
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
        double found = found(stage)
                .flatMap(r -> r.channel(Role.SUPPLY)
                        .flatMap(hot -> r.channel(Role.RETURN)
                                .map(cold -> hot.unit().to(unit).apply(hot.value())
                                        - cold.unit().to(unit).apply(cold.value()))))
                .orElse(Double.NaN);
        double now = supply.get().value() - back.get().value();
        return line(RISE, stage, points, found, now, u, unit.difference());
    }

    /** What was found at a stage today; at lock-up it is what was read. */
    private Optional<StageReading> found(String stage) {
        return job.steps().stream()
                .filter(s -> s.step().kind() == (stage.isEmpty() ? StepKind.LOCK_UP : StepKind.FOUND))
                .filter(s -> s.progress() == Progress.TAKEN
                        && !s.superseded()
                        && s.step().stage().equals(stage))
                .flatMap(s -> s.reading().stream())
                .findFirst();
    }

    private static Optional<FormerReading> former(Act.Former visit, String stage, Role role) {
        return visit.left().stream()
                .filter(f -> f.stage().equals(stage) && f.role() == role)
                .findFirst();
    }

    private static double width(Unit from, Unit to, double expanded) {
        return Math.abs(from.to(to).applyDifference(expanded));
    }

    private Optional<Line> line(
            String subject, String stage, List<Point> points, double found, double now, double expanded, Unit unit) {
        if (points.isEmpty()) {
            return Optional.empty();
        }
        String symbol = unit.dimension() == Dimension.TEMPERATURE_DIFFERENCE && unit.equals(Unit.CELSIUS.difference())
                ? "K"
                : unit.symbol();
        double left = stage.isEmpty() || found == now ? Double.NaN : now;
        double read = Double.isNaN(found) && stage.isEmpty() ? now : found;
        return Optional.of(new Line(subject, name(stage), symbol, points, read, left, expanded, decimals(expanded)));
    }

    private static String sentence(Line line) {
        StringBuilder text = new StringBuilder(line.subject())
                .append(line.stage().isEmpty() ? " at lock-up" : " at " + line.stage())
                .append(':');
        line.before()
                .forEach(p -> text.append(' ')
                        .append(number(p.value(), line.decimals()))
                        .append(" on ")
                        .append(p.when())
                        .append(','));
        double u = line.expandedChange();
        text.append(" now ")
                .append(number(line.now(), line.decimals()))
                .append(' ')
                .append(line.symbol())
                .append("; ");
        text.append(
                Math.abs(line.change()) <= u
                        ? "no change beyond U = "
                        : signed(line.change(), line.decimals()) + " since the first, U = ");
        return text.append(number(u, decimals(u)))
                .append(' ')
                .append(line.symbol())
                .toString();
    }

    private String name(String stage) {
        return job.plan().steps().stream()
                .filter(s -> s.kind().firing() && s.stage().equals(stage) && !stage.isEmpty())
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
