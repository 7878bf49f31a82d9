package settlemark.session;

import settlemark.job.RatingPlate;
import settlemark.measure.Conversion;
import settlemark.measure.Dimension;
import settlemark.measure.Unit;
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
                header.shownIn(pressure, temperature, values()),
                snapshot.probes(),
                snapshot.channels().stream().map(this::channel).toList(),
                snapshot.job().map(job -> values().job(job, header.pressureUnit())),
                snapshot.stored(),
                snapshot.events());
    }

    /** The unit that values of a unit are shown in: shares of a gas and powers stay as they are. */
    public Unit shown(Unit unit) {
        return switch (unit.dimension()) {
            case PRESSURE -> pressure;
            case TEMPERATURE -> temperature;
            case TEMPERATURE_DIFFERENCE -> temperature.difference();
            default -> unit;
        };
    }

    private JobUnits values() {
        return JobUnits.ofValues(this::shown);
    }

    /** A header whose job is shown in these units. */
    public SessionHeader header(SessionHeader header) {
        return header.shownIn(pressure, temperature, values());
    }

    /** Of a plate's limits and targets. */
    public RatingPlate plate(RatingPlate plate) {
        return values().plate(plate);
    }

    /** Of a reading. */
    public StageReading reading(StageReading reading) {
        return values().reading(reading);
    }

    /** Of a channel of a bench. */
    public BenchView.Row row(BenchView.Row row) {
        Unit unit = shown(row.unit());
        Conversion change = row.unit().to(unit);
        return new BenchView.Row(
                row.probe(),
                row.channel(),
                row.place(),
                unit,
                change.apply(row.value()),
                row.status(),
                row.timeNanos(),
                row.stale(),
                row.state() == null ? null : state(row.state(), change),
                row.settings() == null ? null : row.settings().scaled(Math.abs(change.slope())),
                row.settledUntilNanos(),
                row.spark().in(change));
    }

    private ChannelView channel(ChannelView view) {
        Unit unit = shown(view.unit());
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
                JobUnits.width(change, view.resolution()),
                state(view.settle(), change),
                view.settings().scaled(Math.abs(change.slope())),
                view.trace().in(change),
                view.settledSpans(),
                JobUnits.instrument(view.instrument(), change),
                end == null
                        ? null
                        : new Forecast(
                                change.apply(end.value()),
                                JobUnits.width(change, end.uncertainty()),
                                end.secondsToSettled()),
                heading == null
                        ? null
                        : new Heading.Estimate(
                                change.apply(heading.value()), JobUnits.width(change, heading.uncertainty())));
    }

    private static SettleState state(SettleState state, Conversion change) {
        return new SettleState(
                state.phase(),
                state.timeSeconds(),
                JobUnits.width(change, state.couldMove()),
                JobUnits.width(change, state.limit()),
                JobUnits.width(change, state.swing()),
                JobUnits.width(change, state.band()),
                state.secondsToGo(),
                state.windowStartSeconds(),
                change.apply(state.value()),
                JobUnits.width(change, state.uncertainty()),
                state.reason());
    }
}
