package settlemark.profile;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import settlemark.document.Document;
import settlemark.document.NearestWord;
import settlemark.document.Problem;
import tools.jackson.databind.JsonNode;

/**
 * A part of the document with typed access to its values. Where the schema has found a part wrong, it is not clean and
 * nothing may be read from it.
 */
final class Section {
    private static final int NAMES_SHOWN = 20;
    private static final int NAMES_COMPARED = 1000;
    /** In a text with so many problems nobody reads suggestions, and they cost time. */
    private static final int NEAREST_WORDS = 50;

    private final Document document;
    private final List<Problem> problems;
    /** Pointers of all parts in which something is wrong. */
    private final Set<String> unclean;

    private final String pointer;
    private final JsonNode node;

    private Section(Document document, List<Problem> problems, Set<String> unclean, String pointer, JsonNode node) {
        this.document = document;
        this.problems = problems;
        this.unclean = unclean;
        this.pointer = pointer;
        this.node = node;
    }

    static Section root(Document document, List<Problem> problems, Set<String> wrong) {
        Set<String> unclean = new HashSet<>();
        for (String pointer : wrong) {
            String part = pointer;
            // What holds a part that is known to be unclean is known too.
            while (unclean.add(part) && !part.isEmpty()) {
                part = part.substring(0, part.lastIndexOf('/'));
            }
        }
        return new Section(document, problems, unclean, "", document.root());
    }

    /** Whether the schema has found nothing wrong at or below this part. */
    boolean isClean() {
        return !unclean.contains(pointer);
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

    /** A name that nothing has; says which was probably meant, or which there are. */
    void unknown(String key, String kind, String name, Collection<String> names) {
        List<String> known = names.stream().distinct().limit(NAMES_COMPARED).toList();
        Optional<String> near = problems.size() < NEAREST_WORDS ? NearestWord.to(name, known) : Optional.empty();
        String remedy =
                near.map(word -> "did you mean \"" + word + "\"?").orElseGet(() -> "there are " + listed(known));
        error(key, "no " + kind + " is called \"" + Words.shown(name) + "\"; " + remedy);
    }

    private static String listed(List<String> names) {
        if (names.isEmpty()) {
            return "none";
        }
        String first = String.join(", ", names.subList(0, Math.min(NAMES_SHOWN, names.size())));
        return names.size() > NAMES_SHOWN ? first + " and more" : first;
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
        return new Section(document, problems, unclean, pointer(key), value);
    }

    private String pointer(String key) {
        return pointer + "/" + key.replace("~", "~0").replace("/", "~1");
    }
}
