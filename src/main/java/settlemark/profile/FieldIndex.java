package settlemark.profile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The fields of all messages by their names. */
final class FieldIndex {
    private final Map<String, FieldRef> refs = new HashMap<>();
    private final List<MessageDraft> messages;
    private final List<String> names = new ArrayList<>();

    FieldIndex(List<MessageDraft> messages) {
        this.messages = messages;
        for (int m = 0; m < messages.size(); m++) {
            names.addAll(messages.get(m).names());
            List<Field> fields = messages.get(m).fields();
            for (int f = 0; f < fields.size(); f++) {
                refs.putIfAbsent(fields.get(f).name(), new FieldRef(m, f));
            }
        }
    }

    /** Where a field stands; empty where it could not be read, or where there is none, which is a problem. */
    Optional<FieldRef> find(Section section, String key, String name) {
        if (!names.contains(name)) {
            section.unknown(key, "field", name, names);
        }
        return Optional.ofNullable(refs.get(name));
    }

    Field field(FieldRef ref) {
        return messages.get(ref.message()).fields().get(ref.field());
    }

    MessageDraft message(FieldRef ref) {
        return messages.get(ref.message());
    }
}
