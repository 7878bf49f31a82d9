package settlemark.settle;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * What has been set for each kind of channel.
 *
 * @param adjustments by kind; a kind that is not in it has the defaults
 */
public record SettleChoices(Map<SettleKind, SettleAdjustment> adjustments) {
    /** The defaults for everything. */
    public static final SettleChoices NONE = new SettleChoices(Map.of());

    public SettleChoices {
        Map<SettleKind, SettleAdjustment> set = new EnumMap<>(SettleKind.class);
        adjustments.forEach((kind, adjustment) -> {
            if (!adjustment.equals(SettleAdjustment.NONE)) {
                set.put(kind, adjustment);
            }
        });
        adjustments = Collections.unmodifiableMap(set);
    }

    /** What has been set for a kind. */
    public SettleAdjustment of(SettleKind kind) {
        return adjustments.getOrDefault(kind, SettleAdjustment.NONE);
    }

    /**
     * The settings of a kind, in its defaults' units: inches of water, degrees Fahrenheit.
     *
     * @throws IllegalArgumentException where what is set cannot be, in words
     */
    public SettleSettings settings(SettleKind kind) {
        return of(kind).of(SettleSettings.defaults(kind));
    }

    /** What is set here or, where it is not, there. */
    public SettleChoices over(SettleChoices other) {
        Map<SettleKind, SettleAdjustment> both = new EnumMap<>(SettleKind.class);
        for (SettleKind kind : SettleKind.values()) {
            both.put(kind, of(kind).over(other.of(kind)));
        }
        return new SettleChoices(both);
    }

    /** Whether nothing is set. */
    public boolean isNone() {
        return adjustments.isEmpty();
    }
}
