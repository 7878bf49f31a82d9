package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

/**
 * Other settings of what counts as settled, said by a person in the course of a job.
 *
 * @param timeNanos from when on they hold
 * @param from what held before
 * @param to what holds since, the whole of it
 * @param by who said so, empty where the person had not said their name yet
 */
public record SettingsChange(long timeNanos, SettleChoices from, SettleChoices to, String by) {
    /** What differs, a line for each setting: its kind of channel, its name, what it is now and what it was. */
    public List<String> words() {
        List<String> lines = new ArrayList<>();
        for (SettleKind kind : SettleKind.values()) {
            lines.addAll(words(kind));
        }
        return List.copyOf(lines);
    }

    /** What differs of one kind of channel. */
    List<String> words(SettleKind kind) {
        SettleSettings old = from.settings(kind);
        SettleSettings now = to.settings(kind);
        String unit = SettleForm.unit(kind).symbol();
        List<Optional<String>> lines = List.of(
                line(kind, "drift limit", of(old.driftLimit(), unit), of(now.driftLimit(), unit)),
                line(kind, "band", of(old.band(), unit), of(now.band(), unit)),
                line(kind, "look ahead", of(old.horizonSeconds(), "s"), of(now.horizonSeconds(), "s")),
                line(kind, "windows", windows(old), windows(now)),
                line(kind, "dwell", of(old.dwellSeconds(), "s"), of(now.dwellSeconds(), "s")),
                line(kind, "slowest hunting", hunting(from.of(kind)), hunting(to.of(kind))));
        return lines.stream().flatMap(Optional::stream).toList();
    }

    private static Optional<String> line(SettleKind kind, String what, String old, String now) {
        return old.equals(now)
                ? Optional.empty()
                : Optional.of(name(kind) + ", " + what + " " + now + " instead of " + old);
    }

    private static String name(SettleKind kind) {
        return switch (kind) {
            case GAS -> "gas pressure";
            case AIR -> "air temperature";
            case STACK -> "stack temperature";
        };
    }

    private static String of(double value, String unit) {
        return Figure.of(value) + " " + unit;
    }

    private static String windows(SettleSettings settings) {
        return settings.windowSeconds().stream().map(Figure::of).collect(Collectors.joining(",")) + " s";
    }

    private static String hunting(SettleAdjustment set) {
        return Double.isNaN(set.huntingSeconds()) ? "none" : of(set.huntingSeconds(), "s");
    }
}
