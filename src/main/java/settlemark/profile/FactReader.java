package settlemark.profile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What the device says about itself in words. */
final class FactReader {
    private FactReader() {}

    static List<FactSource> readAll(Section root, FieldIndex fields) {
        List<FactSource> facts = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (Section section : root.items("facts")) {
            if (!section.isClean()) {
                continue;
            }
            String id = section.text("id", "");
            if (!ids.add(id)) {
                section.error("id", "fact \"" + id + "\" stands twice; give each its own id");
            }
            String name = section.text("field", "");
            Optional<FieldRef> ref = fields.find(section, "field", name);
            if (ref.isPresent() && !(fields.field(ref.get()).content() instanceof Field.Characters)) {
                section.error("field", "field \"" + name + "\" is not of type utf8, which a fact needs");
                ref = Optional.empty();
            }
            ref.map(r -> new FactSource(id, section.text("label", id), r, section.line()))
                    .ifPresent(facts::add);
        }
        return facts;
    }
}
