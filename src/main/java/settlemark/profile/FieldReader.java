package settlemark.profile;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The fields: where each stands and what stands there. */
final class FieldReader {
    private FieldReader() {}

    /** All fields that could be read, in the document's order. */
    static List<Field> readAll(Section root) {
        List<Field> fields = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (Section section : root.items("fields")) {
            if (!section.isClean()) {
                continue;
            }
            String name = section.text("name", "");
            if (!names.add(name)) {
                section.error("name", "field \"" + name + "\" stands twice; give each its own name");
            }
            read(section, name).ifPresent(fields::add);
        }
        return fields;
    }

    private static Optional<Field> read(Section section, String name) {
        Optional<Field.Place> place = PlaceReader.read(section, name);
        if (place.isEmpty() || !keysFit(section, name)) {
            return Optional.empty();
        }
        Optional<Field.Content> content =
                section.has("literal") ? literal(section, place.get()) : NumberReader.read(section, place.get());
        return content.map(c -> new Field(name, place.get(), c, Optional.empty(), section.line()));
    }

    private static boolean keysFit(Section section, String name) {
        if (section.has("literal") == section.has("type")) {
            String got = section.has("type") ? "both" : "none";
            section.error("field \"" + name + "\" must have exactly one of type, literal, got " + got);
            return false;
        }
        boolean fit = true;
        for (String key : section.keys()) {
            if (section.has("literal")
                    && !List.of("name", "at", "column", "pattern", "literal").contains(key)) {
                section.error(key, key + " means nothing beside a literal; remove it");
                fit = false;
            }
        }
        return fit;
    }

    private static Optional<Field.Content> literal(Section section, Field.Place place) {
        if (place instanceof Field.AtByte) {
            return Words.hex(section, "literal").map(Field.Literal::new);
        }
        String text = section.text("literal", "");
        return Optional.of(new Field.Literal(ByteText.of(text.getBytes(StandardCharsets.UTF_8))));
    }
}
