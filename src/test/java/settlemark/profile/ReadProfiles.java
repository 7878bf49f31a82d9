package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;

/** Reads good profiles. */
final class ReadProfiles {
    private ReadProfiles() {}

    static Profile read(String text) {
        ProfileReading reading = ProfileReader.read("p.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.problems()).as(text).isEmpty();
        return reading.orThrow();
    }

    /** What a field of a message holds. */
    static Field.Content field(Message message, String name) {
        return message.fields().stream()
                .filter(field -> field.name().equals(name))
                .findFirst()
                .orElseThrow()
                .content();
    }
}
