package settlemark.profile;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import settlemark.document.Document;
import settlemark.document.Problem;
import tools.jackson.databind.JsonNode;

/**
 * A part of the document with typed access to its values. Where the schema has found a part wrong, it is not clean and
 * nothing may be read from it.
 */
final class Section {
    private final Document document;
    private final List<Problem> problems;
    private final Set<String> wrong;
    private final String pointer;
    private final JsonNode node;

    private Section(Document document, List<Problem> problems, Set<String> wrong, String pointer, JsonNode node) {
        this.document = document;
        this.problems = problems;
        this.wrong = wrong;
        this.pointer = pointer;
        this.node = node;
    }

    static Section root(Document document, List<Problem> problems, Set<String> wrong) {
        return new Section(document, problems, wrong, "", document.root());
    }

    /** Whether the schema has found nothing wrong at or below this part. */
    boolean isClean() {
        return wrong.stream().noneMatch(w -> w.equals(pointer) || w.startsWith(pointer + "/"));
    }

    boolean isMapping() {
        return node.isObject();
    }

    boolean has(String key) {
        return node.has(key);
    }

    Optional<Section> child(String key) {
        JsonNode value = node.get(key);
        return value == null ? Optional.empty() : Optional.of(below(key, value));
    }

    List<Section> items(String key) {
        Optional<Section> list = child(key);
        List<Section> items = new ArrayList<>();
        if (list.isPresent() && list.get().node.isArray()) {
            JsonNode array = list.get().node;
            for (int i = 0; i < array.size(); i++) {
                items.add(list.get().below(String.valueOf(i), array.get(i)));
            }
        }
        return items;
    }

    List<String> keys() {
        return new ArrayList<>(node.propertyNames());
    }

    JsonNode node(String key) {
        return node.path(key);
    }

    String text(String key, String otherwise) {
        JsonNode value = node.get(key);
        return value == null ? otherwise : value.asString(otherwise);
    }

    int integer(String key, int otherwise) {
        JsonNode value = node.get(key);
        return value == null ? otherwise : (int) value.asDouble(otherwise);
    }

    double number(String key, double otherwise) {
        JsonNode value = node.get(key);
        return value == null ? otherwise : value.asDouble(otherwise);
    }

    boolean flag(String key) {
        return flag(key, false);
    }

    boolean flag(String key, boolean otherwise) {
        return node.path(key).asBoolean(otherwise);
    }

    /** The texts of a value that is one text or a list of them. */
    List<String> texts(String key) {
        return values(key).stream().map(JsonNode::asString).toList();
    }

    /** The values of a value that is one or a list of them; none where there is none. */
    List<JsonNode> values(String key) {
        JsonNode value = node.path(key);
        List<JsonNode> values = new ArrayList<>();
        if (value.isArray()) {
            value.forEach(values::add);
        } else if (!value.isMissingNode()) {
            values.add(value);
        }
        return values;
    }

    /** Those of the keys that stand here. */
    List<String> present(List<String> keys) {
        return keys.stream().filter(this::has).toList();
    }

    /** A whole number of any size; the schema has seen to it that it is whole. */
    BigInteger bits(String key) {
        return node.path(key).bigIntegerValue();
    }

    int line() {
        return document.line(pointer);
    }

    int column() {
        return document.column(pointer);
    }

    void error(String message) {
        problems.add(document.error(pointer, message));
    }

    void error(String key, String message) {
        problems.add(document.error(pointer(key), message));
    }

    /** At the key itself rather than at its value. */
    void errorAtKey(String key, String message) {
        problems.add(document.errorAtKey(pointer(key), message));
    }

    void warning(String message) {
        problems.add(document.warning(pointer, message));
    }

    void warning(String key, String message) {
        problems.add(document.warning(pointer(key), message));
    }

    private Section below(String key, JsonNode value) {
        return new Section(document, problems, wrong, pointer(key), value);
    }

    private String pointer(String key) {
        return pointer + "/" + key.replace("~", "~0").replace("/", "~1");
    }
}
