package settlemark.document;

import java.math.BigDecimal;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A copy of a tree for the schema check. The checker compares with whole-number bounds in 64 bits and throws on a
 * floating-point number beyond them, such as 1e300 for a baud rate; as a whole number of any length it is compared well.
 */
final class LargeNumbers {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private LargeNumbers() {}

    static JsonNode asIntegers(JsonNode node) {
        if (node.isFloatingPointNumber() && Math.abs(node.asDouble()) >= 0x1p63) {
            return NODES.numberNode(new BigDecimal(node.asDouble()).toBigIntegerExact());
        } else if (node.isArray()) {
            ArrayNode copy = NODES.arrayNode();
            node.forEach(item -> copy.add(asIntegers(item)));
            return copy;
        } else if (node.isObject()) {
            ObjectNode copy = NODES.objectNode();
            node.propertyNames().forEach(key -> copy.set(key, asIntegers(node.get(key))));
            return copy;
        }
        return node;
    }
}
