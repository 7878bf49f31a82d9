package settlemark.session;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.job.JobState;
import settlemark.job.RatingPlate;
import settlemark.job.StagePlate;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Conversion;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;
import settlemark.settle.Forecast;
import settlemark.settle.Heading;
import settlemark.settle.SettleState;
import settlemark.settle.StageReading;

/**
 * A snapshot in other units than the job's, for a screen: values, limits, readings and verdicts, with differences and
 * uncertainties as differences. What is stored stays in the job's units.
 *
 * @param pressure that pressures are shown in
 * @param temperature that temperatures are shown in
 */
public record SnapshotUnits(Unit pressure, Unit temperature) {
    public SnapshotUnits {
        if (pressure.dimension() != Dimension.PRESSURE || temperature.dimension() != Dimension.TEMPERATURE) {
            throw new IllegalArgumentException(
                    "shown are a pressure and a temperature, got " + pressure + " and " + temperature);
        }
    }

    /** The same snapshot in these units; itself where it is in them already. */
    public Snapshot of(Snapshot snapshot) {
        SessionHeader header = snapshot.header();
        if (header.pressureUnit().equals(pressure) && header.temperatureUnit().equals(temperature)) {
            return snapshot;
        }
        return new Snapshot(
                snapshot.revision(),
                snapshot.timeNanos(),
                snapshot.wall(),
                header(header),
                snapshot.probes(),
                snapshot.channels().stream().map(this::channel).toList(),
                snapshot.job().map(this::job),
                snapshot.stored(),
                snapshot.events());
    }

    private SessionHeader header(SessionHeader header) {
        return new SessionHeader(
                header.key(),
                header.title(),
                header.startedAt(),
                header.zone(),
                pressure,
                temperature,
                header.probes(),
                header.plan(),
                header.plate().map(this::plate),
                header.version(),
                header.settle());
    }

    /** Of a plate's limits and targets. */
    public RatingPlate plate(RatingPlate plate) {
        return new RatingPlate(
                plate.appliance(),
                plate.fuel(),
                plate.stages().stream().map(this::stage).toList(),
                plate.inlet().to(pressure),
                plate.rise().to(temperature.difference()));
    }

    private StagePlate stage(StagePlate stage) {
        Conversion change = stage.unit().to(pressure);
        return new StagePlate(
                stage.key(),
                stage.name(),
                change.apply(stage.manifoldTarget()),
                Math.abs(change.applyDifference(stage.manifoldTolerance())),
                pressure,
                stage.inputBtuPerHour());
    }

    private Unit unit(Role role) {
        return role.dimension() == Dimension.PRESSURE ? pressure : temperature;
    }

    private ChannelView channel(ChannelView view) {
        Unit unit = unit(view.role());
        Conversion change = view.unit().to(unit);
        Forecast end = view.expectedEnd();
        Heading.Estimate heading = view.expectedHeading();
        return new ChannelView(
                view.role(),
                view.probe(),
                view.channel(),
                unit,
                change.apply(view.value()),
                view.status(),
                view.timeNanos(),
                view.stale(),
                change.applyDifference(view.zeroOffset()),
                width(change, view.resolution()),
                state(view.settle(), change),
                view.settings().scaled(Math.abs(change.slope())),
                view.trace().in(change),
                view.settledSpans(),
                end == null
                        ? null
                        : new Forecast(
                                change.apply(end.value()), width(change, end.uncertainty()), end.secondsToSettled()),
                heading == null
                        ? null
                        : new Heading.Estimate(change.apply(heading.value()), width(change, heading.uncertainty())));
    }

    private static double width(Conversion change, double difference) {
        return Math.abs(change.slope()) * difference;
    }

    private static SettleState state(SettleState state, Conversion change) {
        return new SettleState(
                state.phase(),
                state.timeSeconds(),
                width(change, state.couldMove()),
                width(change, state.limit()),
                width(change, state.swing()),
                width(change, state.band()),
                state.secondsToGo(),
                state.windowStartSeconds(),
                change.apply(state.value()),
                width(change, state.uncertainty()),
                state.reason());
    }

    private JobState job(JobState job) {
        Map<Role, Double> zeros = new EnumMap<>(Role.class);
        Unit from = job.plate().inlet().unit();
        job.zeroOffsets().forEach((role, zero) -> zeros.put(role, zero));
        Optional<ChannelReading> any = job.steps().stream()
                .flatMap(s -> s.readings().stream())
                .flatMap(r -> r.channels().stream())
                .filter(c -> c.role().dimension() == Dimension.PRESSURE)
                .findFirst();
        Unit own = any.map(ChannelReading::unit).orElse(from);
        zeros.replaceAll((role, zero) -> own.to(pressure).applyDifference(zero));
        return new JobState(
                job.plan(),
                plate(job.plate()),
                job.steps().stream().map(this::step).toList(),
                job.current(),
                zeros,
                job.person(),
                job.notes(),
                job.notices());
    }

    private StepState step(StepState step) {
        return new StepState(
                step.key(),
                step.step(),
                step.progress(),
                step.adjusting(),
                step.superseded(),
                step.openedNanos(),
                step.armedNanos(),
                step.doneNanos(),
                step.readings().stream().map(this::reading).toList(),
                step.verdicts().stream().map(this::verdict).toList(),
                step.ticked(),
                step.marks(),
                step.remarks(),
                step.waitingFor(),
                step.skipReason(),
                step.clocking());
    }

    /** Of a reading. */
    public StageReading reading(StageReading reading) {
        List<ChannelReading> channels =
                reading.channels().stream().map(this::part).toList();
        return new StageReading(
                reading.step(),
                reading.purpose(),
                reading.timeNanos(),
                reading.byHand(),
                reading.handReason(),
                channels);
    }

    private ChannelReading part(ChannelReading part) {
        Unit unit = unit(part.role());
        Conversion change = part.unit().to(unit);
        return new ChannelReading(
                part.role(),
                change.apply(part.value()),
                width(change, part.standardUncertainty()),
                width(change, part.settleUncertainty()),
                change.applyDifference(part.zeroOffset()),
                unit,
                part.fromNanos(),
                part.toNanos(),
                part.settled(),
                part.reason(),
                part.rule());
    }

    private Verdict verdict(Verdict verdict) {
        Unit unit = verdict.limit().unit();
        Unit shown = switch (unit.dimension()) {
            case PRESSURE -> pressure;
            case TEMPERATURE -> temperature;
            case TEMPERATURE_DIFFERENCE -> temperature.difference();
            default -> unit;
        };
        Conversion change = unit.to(shown);
        return new Verdict(
                verdict.subject(),
                change.apply(verdict.value()),
                width(change, verdict.expandedUncertainty()),
                verdict.limit().to(shown),
                verdict.outcome());
    }
}
