package settlemark.ui;

import java.util.List;
import settlemark.chart.LaneGroup;
import settlemark.chart.ValueRange;
import settlemark.job.RatingPlate;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.ChannelView;
import settlemark.session.Snapshot;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/**
 * The axis of each row of the strip, the same in every column. It begins with what the plate makes likely and only
 * ever grows, so that folding a column changes no axis.
 *
 * @param pressure in the job's unit of pressure
 * @param air in the job's unit of temperature
 * @param airKnown whether the air axis already stands on a measured temperature
 */
record Axes(ValueRange pressure, ValueRange air, boolean airKnown) {
    /** Room above and below, as a part of the span. */
    private static final double ROOM = 0.06;
    /** Where the plate's rise is not asked. */
    private static final double USUAL_RISE_DEG_F = 60;

    static Axes of(RatingPlate plate, Unit pressureUnit, Unit temperatureUnit) {
        double high = plate.inlet().to(pressureUnit).lower() * 2;
        if (!Double.isFinite(high) || high <= 0) {
            high = plate.inlet().to(pressureUnit).upper();
        }
        double rise = plate.rise().isOpen()
                ? Unit.FAHRENHEIT_DIFFERENCE.to(temperatureUnit.difference()).apply(USUAL_RISE_DEG_F)
                : plate.rise().to(temperatureUnit.difference()).upper();
        return new Axes(new ValueRange(-ROOM * high, high), new ValueRange(0, rise * 1.4), false);
    }

    /** These axes, grown where a value of now lies beyond them. */
    Axes with(Snapshot snapshot) {
        Axes grown = this;
        for (ChannelView channel : snapshot.channels()) {
            if (Double.isFinite(channel.value()) && !channel.stale()) {
                grown = grown.with(channel.role(), channel.value());
            }
        }
        return grown;
    }

    /** These axes, grown to hold everything that was read. */
    Axes with(List<StageReading> readings) {
        Axes grown = this;
        for (StageReading reading : readings) {
            for (ChannelReading part : reading.channels()) {
                grown = grown.with(part.role(), part.value());
            }
        }
        return grown;
    }

    ValueRange of(Role role) {
        return role.dimension() == Dimension.PRESSURE ? pressure : air;
    }

    private Axes with(Role role, double value) {
        if (LaneGroup.of(role).hasOwnAxis()) {
            return this;
        }
        if (role.dimension() == Dimension.PRESSURE) {
            return new Axes(grow(pressure, value), air, airKnown);
        }
        if (!airKnown && role == Role.RETURN) {
            double span = air.high() - air.low();
            double low = Math.floor((value - span * 0.15) / 5) * 5;
            return new Axes(pressure, new ValueRange(low, low + span), true);
        }
        return airKnown ? new Axes(pressure, grow(air, value), true) : this;
    }

    private static ValueRange grow(ValueRange range, double value) {
        double room = (range.high() - range.low()) * ROOM;
        if (value > range.high()) {
            return new ValueRange(range.low(), value + room);
        }
        return value < range.low() ? new ValueRange(value - room, range.high()) : range;
    }
}
