package settlemark.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/** A value of the wrong kind, with the slip that usually leads to it. */
final class TypeMessages {
    private static final Map<String, String> WORDS = Map.of(
            "number", "a number",
            "integer", "a whole number",
            "string", "text",
            "boolean", "true or false",
            "array", "a list",
            "object", "a mapping of keys to values",
            "null", "empty");

    private TypeMessages() {}

    static String of(String name, JsonNode wanted, JsonNode value, Optional<String> title, String got) {
        List<String> types = types(wanted);
        if (types.contains("string") && isBracketedWord(value)) {
            String word = "[" + value.get(0).asString() + "]";
            return "is read as a list because of its square brackets; quote it: " + name + ": \"" + word + "\"";
        }
        // The title of a whole part is its name, not what its value looks like.
        String expected = title.filter(t -> !types.contains("object")).orElseGet(() -> words(types));
        return "must be " + expected + ", got " + got + remedy(types, value, got);
    }

    private static boolean isBracketedWord(JsonNode value) {
        return value.isArray() && value.size() == 1 && value.get(0).isString();
    }

    private static String remedy(List<String> types, JsonNode value, String got) {
        boolean number = types.contains("number") || types.contains("integer");
        if (value.isString() && number) {
            return numberRemedy(value.asString());
        } else if (value.isString() && types.contains("boolean")) {
            return booleanRemedy(value.asString().toLowerCase(Locale.ROOT));
        } else if (types.contains("string") && (value.isNumber() || value.isBoolean())) {
            return " (quote it: \"" + got + "\")";
        } else if (types.contains("array") && value.isValueNode() && !value.isNull()) {
            return " (write a list: [" + value.asString() + "])";
        }
        return "";
    }

    private static String numberRemedy(String text) {
        if (text.matches("[-+]?\\d*,\\d+")) {
            return " (use a point)";
        } else if (text.matches("[-+]?(\\d+(\\.\\d*)?|\\.\\d+)")) {
            return " (without quotes)";
        } else if (text.matches("[-+]?[\\d.]+\\s*\\S+")) {
            return " (the number alone, without its unit)";
        }
        return "";
    }

    private static String booleanRemedy(String word) {
        return switch (word) {
            case "yes", "on", "y", "true" -> " (write true)";
            case "no", "off", "n", "false" -> " (write false)";
            default -> "";
        };
    }

    private static List<String> types(JsonNode wanted) {
        List<String> types = new ArrayList<>();
        if (wanted.isArray()) {
            wanted.forEach(type -> types.add(type.asString()));
        } else {
            types.add(wanted.asString());
        }
        return types;
    }

    private static String words(List<String> types) {
        List<String> words = new ArrayList<>();
        types.forEach(type -> words.add(WORDS.getOrDefault(type, type)));
        return String.join(" or ", words);
    }
}
