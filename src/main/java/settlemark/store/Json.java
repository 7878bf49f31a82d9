package settlemark.store;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Small JSON documents inside the tables. Every field is named by hand: renaming something in the code must not change
 * what is stored. Numbers that JSON lacks (NaN, the infinities) are strings in Java's notation.
 */
final class Json {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private Json() {}

    static ObjectNode object() {
        return MAPPER.createObjectNode();
    }

    static String text(JsonNode node) {
        return MAPPER.writeValueAsString(node);
    }

    static JsonNode read(String text) {
        return MAPPER.readTree(text);
    }

    static String string(JsonNode node, String field) {
        return node.required(field).stringValue();
    }

    static void number(ObjectNode node, String field, double value) {
        if (Double.isFinite(value)) {
            node.put(field, value);
        } else {
            node.put(field, Double.toString(value));
        }
    }

    static double number(JsonNode node, String field) {
        JsonNode value = node.required(field);
        return value.isString() ? Double.parseDouble(value.stringValue()) : value.doubleValue();
    }

    static void strings(ObjectNode node, String field, List<String> values) {
        ArrayNode array = node.putArray(field);
        values.forEach(array::add);
    }

    static List<String> strings(JsonNode node, String field) {
        return list(node, field, JsonNode::stringValue);
    }

    static <T> List<T> list(JsonNode node, String field, Function<JsonNode, T> reading) {
        List<T> values = new ArrayList<>();
        for (JsonNode value : node.required(field)) {
            values.add(reading.apply(value));
        }
        return values;
    }

    /**
     * Refuses a document with a field that writing it again would not give: the name of a field that may be missing was
     * damaged, and what it held would be passed over.
     */
    static void requireKnown(JsonNode stored, JsonNode again) {
        stored.propertyNames().forEach(name -> {
            if (!again.has(name)) {
                throw new IllegalArgumentException("it has an unknown field \"" + name + "\"");
            }
            requireKnown(stored.required(name), again.required(name));
        });
        for (int i = 0; stored.isArray() && i < Math.min(stored.size(), again.size()); i++) {
            requireKnown(stored.get(i), again.get(i));
        }
    }
}
