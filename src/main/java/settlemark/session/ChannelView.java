package settlemark.session;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Channel;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.settle.Forecast;
import settlemark.settle.FromInstrument;
import settlemark.settle.Heading;
import settlemark.settle.SettleSettings;
import settlemark.settle.SettleState;

/**
 * A channel with a role, as a screen shows it; immutable.
 *
 * @param role where it is connected
 * @param probe index of its probe in the header
 * @param channel as the profile describes it
 * @param unit the job's unit, in which everything here is
 * @param value the last value, zero taken off and the instrument's correction added; NaN where it was no measurement
 * @param status what the gauge said
 * @param timeNanos session time of the last sample, -1 before the first
 * @param stale true where nothing has come for three periods
 * @param zeroOffset what is taken off
 * @param resolution in the job's unit, NaN where unknown
 * @param settle the detector's state, before the zero is taken off
 * @param settings the detector's settings
 * @param trace recent past, before the zero is taken off
 * @param settledSpans stretches in which it was settled, oldest first
 * @param instrument which it is and what it corrects at this value; a pressure is corrected once its zero is known
 * @param expectedEnd where its approach is expected to end, zero taken off and corrected; null while that is not known
 * @param expectedHeading where a gas pressure is heading, zero taken off and corrected; null while that is not known
 */
public record ChannelView(
        Role role,
        int probe,
        Channel channel,
        Unit unit,
        double value,
        SampleStatus status,
        long timeNanos,
        boolean stale,
        double zeroOffset,
        double resolution,
        SettleState settle,
        SettleSettings settings,
        Trace trace,
        List<Span> settledSpans,
        FromInstrument instrument,
        @Nullable Forecast expectedEnd,
        Heading.@Nullable Estimate expectedHeading) {
    public ChannelView {
        settledSpans = List.copyOf(settledSpans);
    }

    /** What the instrument's correction adds now, 0 where it corrects nothing. */
    public double correction() {
        return instrument.corrects() ? instrument.correction() : 0;
    }

    /** The last value as the instrument indicates it, zero taken off. */
    public double indicated() {
        return value - correction();
    }

    /** Where its approach is expected to end, zero taken off; empty while that is not known. */
    public Optional<Forecast> forecast() {
        return Optional.ofNullable(expectedEnd);
    }

    /** Where a gas pressure is heading, zero taken off; empty while that is not known, and for temperatures. */
    public Optional<Heading.Estimate> heading() {
        return Optional.ofNullable(expectedHeading);
    }
}
