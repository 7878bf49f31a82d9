package settlemark.profile;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import settlemark.measure.SampleStatus;
import tools.jackson.databind.JsonNode;

/** The frames that prove a profile. */
final class ExampleReader {
    private ExampleReader() {}

    /** All examples that could be read, in the document's order. */
    static List<Example> readAll(Section root) {
        Set<String> channels = new TreeSet<>();
        root.items("channels").forEach(channel -> channels.add(channel.text("id", "")));
        List<Example> examples = new ArrayList<>();
        int number = 0;
        for (Section section : root.items("examples")) {
            number++;
            if (section.isClean()) {
                read(section, number, channels).ifPresent(examples::add);
            }
        }
        return examples;
    }

    private static Optional<Example> read(Section section, int number, Set<String> channels) {
        String name = section.text("name", "example " + number);
        if (!exactlyOne(section, name, "hex", "text") | !exactlyOne(section, name, "gives", "rejected")) {
            return Optional.empty();
        }
        Optional<ByteText> bytes = section.has("hex") ? Words.hex(section, "hex") : Optional.of(text(section));
        Optional<Map<String, Example.Expected>> gives = gives(section, channels);
        if (bytes.isEmpty() || gives.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Example(
                name,
                0,
                bytes.get(),
                gives.get(),
                Map.of(),
                Set.of(),
                section.text("rejected", ""),
                Example.Circumstances.NONE,
                section.line(),
                section.column()));
    }

    private static boolean exactlyOne(Section section, String name, String one, String other) {
        if (section.has(one) != section.has(other)) {
            return true;
        }
        String got = section.has(one) ? "both" : "none";
        section.error(name + " must have exactly one of " + one + ", " + other + ", got " + got);
        return false;
    }

    private static ByteText text(Section section) {
        return ByteText.of(section.text("text", "").getBytes(StandardCharsets.UTF_8));
    }

    private static Optional<Map<String, Example.Expected>> gives(Section section, Set<String> channels) {
        Map<String, Example.Expected> gives = new LinkedHashMap<>();
        Optional<Section> values = section.child("gives");
        if (values.isEmpty()) {
            return Optional.of(gives);
        }
        boolean known = true;
        for (String channel : values.get().keys()) {
            if (!channels.contains(channel)) {
                values.get()
                        .error(
                                channel,
                                "no channel is called \"" + channel + "\"; there are " + String.join(", ", channels));
                known = false;
            }
            gives.put(channel, expected(values.get().node(channel)));
        }
        return known ? Optional.of(gives) : Optional.empty();
    }

    private static Example.Expected expected(JsonNode value) {
        return value.isNumber()
                ? new Example.Expected(value.asDouble(), SampleStatus.OK)
                : new Example.Expected(Double.NaN, Words.status(value.asString()));
    }
}
