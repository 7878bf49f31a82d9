package settlemark.ui;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.session.ChannelView;
import settlemark.session.Snapshot;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/**
 * The numbers of a finished step as they stand in its folded column and in the record's table: one source for both.
 *
 * @param values by role
 * @param rise supply less return, empty where there are not both
 */
record CellValues(Map<Role, String> values, String rise) {
    CellValues {
        values = Map.copyOf(values);
    }

    static CellValues of(StepState step, Snapshot snapshot) {
        Optional<StageReading> reading = step.reading();
        if (reading.isEmpty()) {
            return new CellValues(Map.of(), "");
        }
        Map<Role, String> values = new EnumMap<>(Role.class);
        for (ChannelReading channel : reading.get().channels()) {
            values.put(channel.role(), Numbers.fixed(channel.value(), decimals(channel.role(), snapshot)));
        }
        String rise = rise(reading.get())
                .map(r -> Numbers.fixed(r, decimals(Role.SUPPLY, snapshot)))
                .orElse("");
        return new CellValues(values, rise);
    }

    static Optional<Double> rise(StageReading reading) {
        return reading.channel(Role.SUPPLY)
                .flatMap(s -> reading.channel(Role.RETURN).map(r -> s.value() - r.value()));
    }

    static int decimals(Role role, Snapshot snapshot) {
        return snapshot.channel(role).map(Gap::decimals).orElse(2);
    }

    /** Rise of now, where both temperatures are known. */
    static Optional<Double> rise(Snapshot snapshot) {
        return snapshot.channel(Role.SUPPLY)
                .map(ChannelView::value)
                .flatMap(s -> snapshot.channel(Role.RETURN).map(r -> s - r.value()))
                .filter(Double::isFinite);
    }
}
