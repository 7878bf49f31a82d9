package settlemark.profile;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.SampleStatus;
import tools.jackson.databind.JsonNode;

/** Special values of a field: raw numbers or texts that are no measurement. */
final class SpecialReader {
    private SpecialReader() {}

    /** Texts by their meaning, empty where one of them is wrong. */
    static Optional<Map<SampleStatus, List<String>>> texts(Section field) {
        Map<SampleStatus, List<String>> specials = new EnumMap<>(SampleStatus.class);
        Optional<Section> special = field.child("special");
        for (String word : keys(special)) {
            List<String> texts = special.orElseThrow().texts(word).stream()
                    .map(String::strip)
                    .toList();
            if (texts.contains("")) {
                special.get().error(word, word + " must not be blank");
                return Optional.empty();
            }
            specials.put(Words.status(word), texts);
        }
        return Optional.of(specials);
    }

    /** Raw numbers by their meaning, empty where one of them does not fit. */
    static Optional<Map<SampleStatus, List<Long>>> raws(Section field, RawRange range) {
        Map<SampleStatus, List<Long>> specials = new EnumMap<>(SampleStatus.class);
        Optional<Section> special = field.child("special");
        boolean good = true;
        for (String word : keys(special)) {
            List<Long> raws = new ArrayList<>();
            for (JsonNode value : special.orElseThrow().values(word)) {
                Optional<Long> raw = range.raw(value);
                raw.ifPresent(raws::add);
                if (raw.isEmpty()) {
                    special.get()
                            .error(
                                    word,
                                    word + " must be " + range.expected() + ", got " + Words.shown(value.toString()));
                    good = false;
                }
            }
            specials.put(Words.status(word), List.copyOf(raws));
        }
        return good ? Optional.of(specials) : Optional.empty();
    }

    private static List<String> keys(Optional<Section> special) {
        return special.map(Section::keys).orElse(List.of());
    }
}
