package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import settlemark.calc.HeatLooks;
import settlemark.calc.Reconciliation;
import settlemark.calc.SupplyDiagnosis;
import settlemark.calc.SupplyReadings;
import settlemark.measure.Quantity;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;

/**
 * Whether what was read holds together: the supply's pressures among themselves, and manifold, meter and heating value as
 * looks at one heat flow. Says nothing where too little was read.
 */
public final class JobPicture {
    /** What orifices as the plate has them may be off by, both ways; common practice, without a source. */
    private static final double ORIFICE_WIDTH = 0.04;

    /** By so much the rise may leave what the manifold makes of it, beside the uncertainty of both; this program's own. */
    private static final double AIR_WIDTH = 0.05;
    /** Less rise than this is none of a burner, kelvin. */
    private static final double LEAST_RISE_KELVIN = 5;

    private static final double METER_WIDTH = 0.01;
    private static final double TIME_SECONDS = 0.2;
    private static final Unit FLOW = Unit.ucum("[cft_i]/h");
    private static final Unit HEAT = Unit.ucum("[Btu_IT]/[cft_i]");

    private final JobState job;
    private final Unit power;
    private final List<String> words = new ArrayList<>();

    private JobPicture(JobState job, Unit power) {
        this.job = job;
        this.power = power;
    }

    /** A sentence each, inputs in Btu/h. */
    public static List<String> of(JobState job) {
        return of(job, Clocking.INPUT);
    }

    /**
     * A sentence each.
     *
     * @param power the unit that inputs are said in
     */
    public static List<String> of(JobState job, Unit power) {
        JobPicture picture = new JobPicture(job, power);
        picture.supply();
        job.plate().stages().forEach(picture::heat);
        job.plate().stages().forEach(picture::air);
        return List.copyOf(picture.words);
    }

    private Optional<StepState> taken(StepKind kind, String stage) {
        return job.steps().stream()
                .filter(s -> s.step().kind() == kind
                        && s.step().stage().equals(stage)
                        && !s.superseded()
                        && s.progress() == Progress.TAKEN)
                .findFirst();
    }

    /** As left, else as found. */
    private Optional<Quantity> fired(String stage, Role role) {
        Optional<StepState> left = taken(StepKind.LEFT, stage);
        return (left.isPresent() ? left : taken(StepKind.FOUND, stage)).flatMap(s -> read(s, role));
    }

    private static Optional<Quantity> read(StepState step, Role role) {
        return step.reading()
                .flatMap(r -> r.channel(role))
                .filter(ChannelReading::settled)
                .map(c -> new Quantity(c.value(), c.standardUncertainty(), c.unit()));
    }

    private void supply() {
        List<StagePlate> stages = job.plate().stages();
        StagePlate low = stages.get(0);
        StagePlate high = stages.get(stages.size() - 1);
        Optional<Quantity> lockUp = taken(StepKind.LOCK_UP, "").flatMap(s -> read(s, Role.INLET));
        Optional<Quantity> atLow = fired(low.key(), Role.INLET);
        Optional<Quantity> atHigh = fired(high.key(), Role.INLET);
        boolean apart = high.inputBtuPerHour() / low.inputBtuPerHour() > 1.05;
        if (lockUp.isEmpty() || atLow.isEmpty() || atHigh.isEmpty() || !apart) {
            return;
        }
        SupplyReadings readings = new SupplyReadings(
                lockUp.get(),
                atLow.get(),
                atHigh.get(),
                rated(low),
                rated(high),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        SupplyDiagnosis.of(readings)
                .forEach(f -> words.add("Supply: "
                        + f.cause().name().toLowerCase(Locale.ROOT).replace('_', ' ') + "; " + f.reason()
                        + ". To be sure: " + f.confirm() + "."));
    }

    /** As the plan calls it, which is what the columns are headed with; else as the plate does. */
    private String name(StagePlate stage) {
        return job.steps().stream()
                .filter(s -> s.step().stage().equals(stage.key()))
                .map(s -> s.step().name())
                .findFirst()
                .orElse(stage.name());
    }

    private Quantity rated(StagePlate stage) {
        double flow = job.plate().aimBtuPerHour(stage.key())
                / GasHeat.customary(job.plate().fuel()).btuPerCubicFoot();
        return new Quantity(flow, flow * ORIFICE_WIDTH / Math.sqrt(3), FLOW);
    }

    /**
     * With the same air, the rise of a stage follows the square root of its manifold from found to left (the orifice law, and the
     * heat balance of one air flow at one efficiency). Where it does not, doors, filter, registers, cooling or a bypass stood
     * otherwise. Valid for one orifice and one blower speed.
     */
    private void air(StagePlate stage) {
        Optional<StepState> found = taken(StepKind.FOUND, stage.key());
        Optional<StepState> left = taken(StepKind.LEFT, stage.key());
        Optional<Quantity> before = found.flatMap(JobPicture::rise);
        Optional<Quantity> after = left.flatMap(JobPicture::rise);
        Optional<Quantity> from = found.flatMap(s -> read(s, Role.MANIFOLD));
        Optional<Quantity> to = left.flatMap(s -> read(s, Role.MANIFOLD));
        if (before.isEmpty() || after.isEmpty() || from.isEmpty() || to.isEmpty()) {
            return;
        }
        Quantity pressure = to.get().to(from.get().unit());
        double manifold = pressure.value() / from.get().value();
        double expected = before.get().value() * Math.sqrt(manifold);
        double uncertain = Math.hypot(
                Math.hypot(relative(before.get()), relative(after.get())),
                Math.hypot(relative(from.get()), relative(pressure)) / 2);
        // Where either pressure is nothing there is no ratio, and this is not true.
        if (Math.abs(after.get().value() / expected - 1) > AIR_WIDTH + 2 * uncertain) {
            words.add(String.format(
                    Locale.ROOT,
                    "%s: from found to left the rise went from %.1f to %.1f %s, and the manifold alone makes %.1f of it. The"
                            + " air changed in between: see that doors, filter, registers, cooling and bypasses stand as in use,"
                            + " and read again.",
                    name(stage),
                    before.get().value(),
                    after.get().value(),
                    before.get().unit().symbol(),
                    expected));
        }
    }

    private static double relative(Quantity quantity) {
        return quantity.standardUncertainty() / quantity.value();
    }

    /** Supply less return of a burning stage. */
    private static Optional<Quantity> rise(StepState step) {
        Optional<Quantity> supply = read(step, Role.SUPPLY);
        Optional<Quantity> back = read(step, Role.RETURN);
        if (supply.isEmpty() || back.isEmpty()) {
            return Optional.empty();
        }
        Unit unit = supply.get().unit().difference();
        Quantity low = back.get().to(supply.get().unit());
        Quantity rise = new Quantity(
                supply.get().value() - low.value(),
                Math.hypot(supply.get().standardUncertainty(), low.standardUncertainty()),
                unit);
        double least = Unit.ucum("K").difference().to(unit).apply(LEAST_RISE_KELVIN);
        return rise.value() > least ? Optional.of(rise) : Optional.empty();
    }

    /** What the manifold says by the plate's own orifices, what the meter says, and the gas's heat. */
    private void heat(StagePlate stage) {
        Optional<StepState> clocked = taken(StepKind.CLOCK, stage.key());
        Optional<Quantity> manifold = fired(stage.key(), Role.MANIFOLD);
        boolean rated = stage.inputBtuPerHour() > 0 && stage.manifoldTarget() > 0;
        Optional<Quantity> meter = clocked.flatMap(s -> metered(s.clocking()));
        if (meter.isEmpty() || manifold.isEmpty() || !rated || !(manifold.get().value() > 0)) {
            return;
        }
        Quantity pressure = manifold.get().to(stage.unit());
        double flow = rated(stage).value() * Math.sqrt(pressure.value() / stage.manifoldTarget());
        double relative =
                Math.hypot(ORIFICE_WIDTH / Math.sqrt(3), pressure.standardUncertainty() / pressure.value() / 2);
        GasHeat gas = clocked.orElseThrow().clocking().heat();
        double width = Math.max(gas.relativeWidth(), 1e-4) / Math.sqrt(3);
        Reconciliation found = Reconciliation.of(new HeatLooks(
                Optional.of(new Quantity(flow, flow * relative, FLOW)),
                meter,
                new Quantity(gas.btuPerCubicFoot(), gas.btuPerCubicFoot() * width, HEAT),
                Optional.empty()));
        words.add(String.format(
                Locale.ROOT,
                found.agrees()
                        ? "%s: manifold and meter hold together, %s by both."
                        : "%s: manifold and meter do not hold together (by both %s).",
                name(stage),
                said(found.input().to(power))));
        found.suspects()
                .forEach(s -> words.add(String.format(
                        Locale.ROOT,
                        "%s: what the %s gives is %.3f of what the others give: %s.",
                        name(stage),
                        s.look().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                        s.ratio(),
                        s.meaning())));
    }

    private String said(Quantity input) {
        double spread = input.expandedUncertainty();
        return power.equals(Clocking.INPUT)
                ? String.format(Locale.ROOT, "%.0f \u00b1%.0f %s", input.value(), Math.ceil(spread), power.symbol())
                : String.format(Locale.ROOT, "%.2f \u00b1%.2f %s", input.value(), spread, power.symbol());
    }

    private static Optional<Quantity> metered(Clocking clocking) {
        List<Clocking.Run> runs = clocking.counting();
        List<Clocking.Run> last = runs.subList(Math.max(0, runs.size() - 2), runs.size());
        double turns = last.stream().mapToInt(Clocking.Run::turns).sum();
        double seconds = last.stream().mapToDouble(Clocking.Run::seconds).sum();
        if (!(seconds > 0)) {
            return Optional.empty();
        }
        double flow = turns * clocking.dialCubicFeet() * 3600 / seconds;
        double relative = Math.hypot(METER_WIDTH / Math.sqrt(3), TIME_SECONDS * Math.sqrt(last.size()) / seconds);
        return Optional.of(new Quantity(flow, flow * relative, FLOW));
    }
}
