package settlemark.settle;

import java.util.Objects;
import settlemark.measure.Role;
import settlemark.measure.Unit;

/**
 * One channel's part in a stage reading: the zero offset is already taken off the value, a correction of the instrument
 * added.
 *
 * @param role where it was measured
 * @param value in the unit
 * @param standardUncertainty everything together: settling, instrument, resolution, zero; in the unit
 * @param settleUncertainty the detector's own expanded uncertainty (about 95 %), NaN where it was not settled
 * @param zeroOffset what was taken off, 0 where no zero was taken
 * @param unit of all these
 * @param fromNanos start of the window, session time
 * @param toNanos end of the window, session time
 * @param settled whether the detector had proved it
 * @param reason the detector's line
 * @param rule key of the published rule that it satisfied as well or alone, empty where none was asked
 * @param instrument what the instrument adds, where it is known
 */
public record ChannelReading(
        Role role,
        double value,
        double standardUncertainty,
        double settleUncertainty,
        double zeroOffset,
        Unit unit,
        long fromNanos,
        long toNanos,
        boolean settled,
        String reason,
        String rule,
        FromInstrument instrument) {
    public ChannelReading {
        Objects.requireNonNull(instrument);
    }

    /** By an instrument that nothing is known of. */
    public ChannelReading(
            Role role,
            double value,
            double standardUncertainty,
            double settleUncertainty,
            double zeroOffset,
            Unit unit,
            long fromNanos,
            long toNanos,
            boolean settled,
            String reason,
            String rule) {
        this(
                role,
                value,
                standardUncertainty,
                settleUncertainty,
                zeroOffset,
                unit,
                fromNanos,
                toNanos,
                settled,
                reason,
                rule,
                FromInstrument.NONE);
    }

    /** Of which no published rule was asked. */
    public ChannelReading(
            Role role,
            double value,
            double standardUncertainty,
            double settleUncertainty,
            double zeroOffset,
            Unit unit,
            long fromNanos,
            long toNanos,
            boolean settled,
            String reason) {
        this(
                role,
                value,
                standardUncertainty,
                settleUncertainty,
                zeroOffset,
                unit,
                fromNanos,
                toNanos,
                settled,
                reason,
                "");
    }

    /** The same with its correction added, where there is one. */
    public ChannelReading correctedBy(FromInstrument other) {
        double added = other.corrects() ? other.correction() : 0;
        double uncertain =
                other.corrects() ? Math.hypot(standardUncertainty, other.standardUncertainty()) : standardUncertainty;
        return with(value + added, uncertain, other);
    }

    /** The same with another standard uncertainty. */
    public ChannelReading withStandardUncertainty(double uncertainty) {
        return with(value, uncertainty, instrument);
    }

    private ChannelReading with(double otherValue, double uncertainty, FromInstrument other) {
        return new ChannelReading(
                role,
                otherValue,
                uncertainty,
                settleUncertainty,
                zeroOffset,
                unit,
                fromNanos,
                toNanos,
                settled,
                reason,
                rule,
                other);
    }

    /** Coverage factor 2. */
    public double expandedUncertainty() {
        return 2 * standardUncertainty;
    }
}
