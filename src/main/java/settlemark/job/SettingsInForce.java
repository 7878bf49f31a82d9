package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import settlemark.settle.SettleKind;
import settlemark.settle.StageReading;

/** The settings of what counts as settled, as they were changed in the course of a job. */
final class SettingsInForce {
    private final List<SettingsChange> changes = new ArrayList<>();

    /** What changes nothing is none. */
    boolean are(long timeNanos, Act.Settings said, String person) {
        SettingsChange change = new SettingsChange(timeNanos, said.from(), said.to(), person);
        return !change.words().isEmpty() && changes.add(change);
    }

    List<SettingsChange> all() {
        return List.copyOf(changes);
    }

    /** A remark for each setting of a reading's channels that is not what the job began with. */
    List<String> words(StageReading reading) {
        if (changes.isEmpty()) {
            return List.of();
        }
        SettingsChange last = changes.get(changes.size() - 1);
        SettingsChange whole =
                new SettingsChange(last.timeNanos(), changes.get(0).from(), last.to(), last.by());
        List<SettleKind> kinds = reading.channels().stream()
                .filter(c -> !c.role().gasAnalysis())
                .map(c -> SettleForm.kind(c.role()))
                .distinct()
                .toList();
        return kinds.stream()
                .flatMap(kind -> whole.words(kind).stream())
                .map(line -> "Settled by other settings than the job began with: " + line + ".")
                .toList();
    }
}
