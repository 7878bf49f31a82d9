package settlemark.cli;

import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** JSON objects of the commands' {@code --json}, one a line. */
final class JsonLine {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private JsonLine() {}

    static ObjectNode object() {
        return MAPPER.createObjectNode();
    }

    /** A number, or null where there is none: JSON knows no others. */
    static void number(ObjectNode object, String field, double value) {
        if (Double.isFinite(value)) {
            object.put(field, value);
        } else {
            object.putNull(field);
        }
    }

    static String text(ObjectNode object) {
        return MAPPER.writeValueAsString(object);
    }
}
