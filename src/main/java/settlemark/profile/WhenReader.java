package settlemark.profile;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/** The conditions of fields, once all fields of the message are known. */
final class WhenReader {
    private final List<Section> sections;
    private final List<Field> fields;

    WhenReader(Section message, List<Field> fields) {
        this.sections = message.items("fields");
        this.fields = fields;
    }

    /** The fields with their conditions. */
    List<Field> complete(Map<Section, Field> read) {
        List<Field> complete = new ArrayList<>();
        read.forEach((section, field) -> complete.add(new Field(
                field.name(),
                field.place(),
                field.content(),
                section.child("when").flatMap(this::condition),
                field.line())));
        return complete;
    }

    private Optional<Field.Condition> condition(Section when) {
        String name = when.text("field", "");
        List<Section> named = sections.stream()
                .filter(section -> section.text("name", "").equals(name))
                .toList();
        if (named.isEmpty()) {
            List<String> names =
                    sections.stream().map(section -> section.text("name", "")).toList();
            when.unknown("field", "field of the same message", name, names);
            return Optional.empty();
        }
        if (named.get(0).has("when")) {
            when.error("field", "field \"" + name + "\" has a when itself; name a field that stands in every frame");
            return Optional.empty();
        }
        for (int i = 0; i < fields.size(); i++) {
            if (fields.get(i).name().equals(name)) {
                return condition(when, i);
            }
        }
        return Optional.empty();
    }

    private Optional<Field.Condition> condition(Section when, int index) {
        Field other = fields.get(index);
        if (!(other.content() instanceof Field.Binary binary) || !binary.wire().isInteger()) {
            when.error("field", "field \"" + other.name() + "\" is no integer in bytes; when needs one such as uint8");
            return Optional.empty();
        }
        RawRange range = RawRange.of(binary);
        List<Long> raws = new ArrayList<>();
        for (JsonNode value : when.values("is")) {
            Optional<Long> raw = range.raw(value);
            if (raw.isEmpty()) {
                when.error("is", "is must be " + range.expected() + ", got " + Words.shown(value.toString()));
                return Optional.empty();
            }
            raws.add(raw.get());
        }
        return Optional.of(new Field.Condition(index, raws));
    }
}
