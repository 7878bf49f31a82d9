package settlemark.session;

import java.util.List;
import java.util.Optional;

/**
 * A probe as a screen shows it; immutable.
 *
 * @param setup which probe
 * @param link what its link last said
 * @param words the link's sentence
 * @param samples accepted so far
 * @param rejectedFrames refused so far
 * @param lastRejected why the last one was refused, empty where none was
 * @param losses times that the link was lost
 * @param lastNanos session time of the last bytes, -1 before the first
 * @param stale nothing has come for three periods
 * @param batteryPercent NaN where it does not say
 * @param health empty where nothing is wrong
 * @param facts what the device has said about itself, in the order of its profile
 */
public record ProbeView(
        ProbeSetup setup,
        LinkChange link,
        String words,
        long samples,
        long rejectedFrames,
        String lastRejected,
        long losses,
        long lastNanos,
        boolean stale,
        double batteryPercent,
        Optional<Health> health,
        List<Fact> facts) {
    /** Id of the fact that shipped profiles give a serial number. */
    private static final String SERIAL_NUMBER = "serial-number";

    public ProbeView {
        facts = List.copyOf(facts);
    }

    /** What the device says its serial number is; empty where it says none. */
    public Optional<String> serialNumber() {
        return facts.stream()
                .filter(f -> f.id().equals(SERIAL_NUMBER))
                .map(f -> f.words().strip())
                .filter(words -> !words.isEmpty())
                .reduce((former, last) -> last);
    }

    /** The same with something else that is wrong, where nothing is so far. */
    ProbeView orElse(Optional<Health> other) {
        if (health.isPresent() || other.isEmpty()) {
            return this;
        }
        return new ProbeView(
                setup,
                link,
                words,
                samples,
                rejectedFrames,
                lastRejected,
                losses,
                lastNanos,
                stale,
                batteryPercent,
                other,
                facts);
    }

    /**
     * What a device says about itself, such as its serial number; never checked against anything.
     *
     * @param id key within the profile
     * @param label for people
     * @param words as the device says them, may be empty
     * @param timeNanos session time since which it says these words
     */
    public record Fact(String id, String label, String words, long timeNanos) {}

    /** The four open classes of NAMUR NE 107, worst first. */
    public enum HealthClass {
        FAILURE('F'),
        FUNCTION_CHECK('C'),
        OUT_OF_SPECIFICATION('S'),
        MAINTENANCE_REQUIRED('M');

        private final char letter;

        HealthClass(char letter) {
            this.letter = letter;
        }

        public char letter() {
            return letter;
        }
    }

    /** @param words such as {@code air battery 14 %} */
    public record Health(HealthClass health, String words) {}
}
