package settlemark.profile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import settlemark.measure.SampleStatus;

/** What an example must give. */
final class ExpectationReader {
    private static final String ABSENT = "absent";

    /** Message of each channel or fact that could be read. */
    private final Map<String, Integer> channels = new LinkedHashMap<>();

    private final Map<String, Integer> facts = new LinkedHashMap<>();
    private final List<String> channelNames;
    private final List<String> factNames;

    ExpectationReader(Section root, List<ChannelSource> sources, List<FactSource> factSources) {
        sources.forEach(source -> channels.put(source.channel().name(), source.message()));
        factSources.forEach(fact -> facts.put(fact.id(), fact.field().message()));
        channelNames = ids(root, "channels");
        factNames = ids(root, "facts");
    }

    private static List<String> ids(Section root, String key) {
        return root.items(key).stream().map(item -> item.text("id", "")).toList();
    }

    /**
     * What was read.
     *
     * @param gives by channel
     * @param facts by fact
     * @param absent channels
     */
    record Expectations(Map<String, Example.Expected> gives, Map<String, String> facts, Set<String> absent) {}

    /** Empty where something is wrong. */
    Optional<Expectations> read(Section example, String name, int message) {
        Map<String, Example.Expected> gives = new LinkedHashMap<>();
        Map<String, String> said = new LinkedHashMap<>();
        Set<String> absent = new HashSet<>();
        List<Boolean> known = new ArrayList<>();
        example.child("gives")
                .ifPresent(section -> section.keys().forEach(channel -> {
                    known.add(isKnown(section, "channel", channel, message));
                    String word = section.text(channel, "");
                    if (word.equals(ABSENT)) {
                        absent.add(channel);
                    } else {
                        gives.put(channel, expected(section, channel, word));
                    }
                }));
        example.child("facts")
                .ifPresent(section -> section.keys().forEach(fact -> {
                    known.add(isKnown(section, "fact", fact, message));
                    said.put(fact, section.text(fact, ""));
                }));
        if (known.contains(false)) {
            return Optional.empty();
        }
        if (!example.has("rejected") && gives.isEmpty() && said.isEmpty()) {
            example.error("gives", name + " must give something beside what is absent: it would prove nothing");
            return Optional.empty();
        }
        return Optional.of(new Expectations(gives, said, absent));
    }

    private boolean isKnown(Section section, String kind, String name, int message) {
        boolean channel = kind.equals("channel");
        List<String> names = channel ? channelNames : factNames;
        if (!names.contains(name)) {
            section.unknown(name, kind, name, names);
            return false;
        }
        int from = (channel ? channels : facts).getOrDefault(name, message);
        if (from != message) {
            section.error(
                    name,
                    kind + " \"" + name + "\" comes from another message than this example's; name it under message");
        }
        return from == message;
    }

    private static Example.Expected expected(Section gives, String channel, String word) {
        return gives.node(channel).isNumber()
                ? new Example.Expected(gives.number(channel, 0), SampleStatus.OK)
                : new Example.Expected(Double.NaN, Words.status(word));
    }
}
