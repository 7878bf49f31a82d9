package settlemark.session;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/**
 * A channel's part of a stage reading that a rereading gives otherwise than the day did.
 *
 * @param step key of the step
 * @param purpose of the reading, such as {@code found}
 * @param role of the channel
 * @param before as on the day, empty where the day has none
 * @param after as decoded again, empty where that gives none
 */
public record ReadingChange(
        String step, String purpose, Role role, Optional<ChannelReading> before, Optional<ChannelReading> after) {
    public ReadingChange {
        Objects.requireNonNull(role);
        if (before.isEmpty() && after.isEmpty()) {
            throw new IllegalArgumentException("a change has a reading before or after");
        }
    }

    /** @param nth of the readings of that step and purpose, since a step may be read more than once */
    private record Place(String step, String purpose, int nth, Role role) {}

    /** What differs in any part, in the order of the day; what only the rereading has comes last. */
    static List<ReadingChange> between(List<StageReading> before, List<StageReading> after) {
        Map<Place, ChannelReading> old = places(before);
        Map<Place, ChannelReading> now = places(after);
        List<Place> all = new ArrayList<>(old.keySet());
        now.keySet().stream().filter(p -> !old.containsKey(p)).forEach(all::add);
        return all.stream()
                .filter(p -> !Objects.equals(old.get(p), now.get(p)))
                .map(p -> new ReadingChange(
                        p.step, p.purpose, p.role, Optional.ofNullable(old.get(p)), Optional.ofNullable(now.get(p))))
                .toList();
    }

    private static Map<Place, ChannelReading> places(List<StageReading> readings) {
        Map<Place, ChannelReading> places = new LinkedHashMap<>();
        Map<List<String>, Integer> counts = new HashMap<>();
        for (StageReading reading : readings) {
            int nth = counts.merge(List.of(reading.step(), reading.purpose()), 1, Integer::sum);
            for (ChannelReading part : reading.channels()) {
                places.put(new Place(reading.step(), reading.purpose(), nth, part.role()), part);
            }
        }
        return places;
    }
}
