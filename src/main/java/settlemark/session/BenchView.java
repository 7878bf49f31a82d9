package settlemark.session;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Channel;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.settle.SettleSettings;
import settlemark.settle.SettleState;

/**
 * Every channel of a log at one instant, for a screen of many; immutable.
 *
 * @param snapshot the session beside it
 * @param rows by probe and by the order of its profile
 */
public record BenchView(Snapshot snapshot, List<Row> rows) {
    public BenchView {
        rows = List.copyOf(rows);
    }

    /**
     * One channel, in the unit that its profile gives it.
     *
     * @param probe index in the header
     * @param channel as the profile describes it
     * @param place where it is connected, null where it has no role
     * @param unit of everything here
     * @param value the last, NaN where it was no measurement
     * @param status what the gauge said
     * @param timeNanos session time of the last sample, -1 before the first
     * @param stale nothing has come for three periods
     * @param state of its detector, null where such a channel has none
     * @param settings of its detector, null where it has none
     * @param settledUntilNanos when it was last settled, -1 where it never was
     * @param spark its last minute
     */
    public record Row(
            int probe,
            Channel channel,
            @Nullable Role place,
            Unit unit,
            double value,
            SampleStatus status,
            long timeNanos,
            boolean stale,
            @Nullable SettleState state,
            @Nullable SettleSettings settings,
            long settledUntilNanos,
            Spark spark) {

        /** Where it is connected; empty where it has no role. */
        public Optional<Role> role() {
            return Optional.ofNullable(place);
        }
    }
}
