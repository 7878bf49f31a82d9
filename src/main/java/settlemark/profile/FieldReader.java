package settlemark.profile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The fields of a message: where each stands and what stands there. */
final class FieldReader {
    private static final List<String> BESIDE_A_LITERAL =
            List.of("name", "at", "column", "pattern", "register", "tag", "nth", "literal", "when");

    private final Section message;
    private final FrameScope scope;
    /** Names that are taken in the whole profile. */
    private final Set<String> taken;

    FieldReader(Section message, FrameScope scope, Set<String> taken) {
        this.message = message;
        this.scope = scope;
        this.taken = taken;
    }

    /** All fields that could be read, in the document's order. */
    List<Field> readAll() {
        Map<Section, Field> read = new LinkedHashMap<>();
        for (Section section : message.items("fields")) {
            if (!section.isClean()) {
                continue;
            }
            String name = section.text("name", "");
            if (!taken.add(name)) {
                section.error("name", "field \"" + name + "\" stands twice; give each its own name");
            }
            read(section, name).ifPresent(field -> read.put(section, field));
        }
        return new WhenReader(message, List.copyOf(read.values())).complete(read);
    }

    private Optional<Field> read(Section section, String name) {
        Optional<Field.Place> place = PlaceReader.read(section, name, scope);
        if (place.isEmpty() || !keysFit(section, name)) {
            return Optional.empty();
        }
        Optional<Field.Content> content = section.has("literal")
                ? literal(section, place.get())
                : new NumberReader(section, place.get(), scope.isModbus()).read();
        return content.map(c -> new Field(name, place.get(), c, Optional.empty(), section.line()));
    }

    private static boolean keysFit(Section section, String name) {
        if (section.has("literal") == section.has("type")) {
            String got = section.has("type") ? "both" : "none";
            section.error("field \"" + name + "\" must have exactly one of type, literal, got " + got);
            return false;
        }
        boolean fit = true;
        if (section.has("literal")) {
            List<String> foreign = new ArrayList<>(section.keys());
            foreign.removeAll(BESIDE_A_LITERAL);
            foreign.forEach(key -> section.error(key, key + " means nothing beside a literal; remove it"));
            fit = foreign.isEmpty();
        }
        return fit;
    }

    private static Optional<Field.Content> literal(Section section, Field.Place place) {
        if (place instanceof Field.InColumn || place instanceof Field.ByPattern) {
            return Optional.of(new Field.Literal(Words.utf8(section, "literal")));
        }
        return Words.hex(section, "literal").map(Field.Literal::new);
    }
}
