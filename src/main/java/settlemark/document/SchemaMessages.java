package settlemark.document;

import com.networknt.schema.Error;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/** A schema error in the words of a person who writes the document. */
final class SchemaMessages {
    private final Document document;
    private final JsonNode schemaRoot;

    SchemaMessages(Document document, JsonNode schemaRoot) {
        this.document = document;
        this.schemaRoot = schemaRoot;
    }

    Problem problem(Error error) {
        String at = error.getInstanceLocation().toString();
        String name = PathNames.of(at);
        String keyword = error.getKeyword();
        return switch (keyword) {
            case "additionalProperties" ->
                document.errorAtKey(at + "/" + PathNames.escaped(error.getProperty()), unknownKey(error));
            case "required" -> document.error(at, name + " needs " + key(error.getProperty()));
            case "dependentRequired" ->
                document.errorAtKey(
                        at + "/" + PathNames.escaped(error.getProperty()),
                        error.getProperty() + " needs " + key(String.valueOf(error.getArguments()[0])) + " beside it");
            default -> document.error(at, name + " " + complaint(error, at));
        };
    }

    private String complaint(Error error, String at) {
        // As the document has it; the checker saw large numbers in another form.
        JsonNode value = document.root().at(at);
        JsonNode wanted = error.getSchemaNode();
        if (parentSchema(error).path("writeOnly").asBoolean(false)) {
            return "must be " + title(error).orElse("of another form") + ", got a value that is not shown here";
        }
        // A number as the person has written it, such as 0x10000.
        String got = value.isNumber() ? document.written(at).orElseGet(() -> shown(value)) : shown(value);
        return switch (error.getKeyword()) {
            case "type" -> TypeMessages.of(PathNames.last(at), wanted, value, title(error), got);
            case "enum" ->
                "must be one of " + title(error).orElseGet(() -> list(wanted)) + ", got " + got
                        + nearest(value, wanted);
            case "const" -> "must be " + shown(wanted) + ", got " + got;
            case "minimum" -> "must be at least " + wanted + ", got " + got;
            case "maximum" -> "must be at most " + wanted + ", got " + got;
            case "exclusiveMinimum" -> "must be more than " + wanted + ", got " + got;
            case "exclusiveMaximum" -> "must be less than " + wanted + ", got " + got;
            case "minLength" -> "must not be shorter than " + wanted + " characters, got " + got;
            case "maxLength" ->
                "must not be longer than " + wanted + " characters, got "
                        + value.asString().length();
            case "pattern" -> "must be " + title(error).orElse("text like " + wanted) + ", got " + got;
            case "minItems" -> "must have at least " + wanted + " in its list, got " + value.size();
            case "maxItems" -> "must have at most " + wanted + " in its list, got " + value.size();
            case "uniqueItems" -> "must not list the same thing twice";
            case "minProperties", "maxProperties" -> entries(error, wanted, value);
            default -> error.getMessage();
        };
    }

    private String entries(Error error, JsonNode wanted, JsonNode value) {
        List<String> known = knownKeys(error);
        if (known.isEmpty()) {
            String bound = error.getKeyword().equals("minProperties") ? "at least " : "at most ";
            return "must have " + bound + wanted + " entries, got " + value.size();
        }
        String got = value.isEmpty() ? "none" : String.join(" and ", value.propertyNames());
        boolean several = parentSchema(error).path("maxProperties").asInt(0) != 1;
        return "must have " + (several ? "at least" : "exactly") + " one of " + String.join(", ", known) + ", got "
                + got;
    }

    private String unknownKey(Error error) {
        List<String> known = knownKeys(error);
        if (error.getProperty().matches("\\d+")) {
            return "unknown key " + key(error.getProperty()) + "; a decimal comma before it? Use a point";
        }
        String remedy = NearestWord.to(error.getProperty(), known)
                .map(word -> "did you mean " + key(word) + "?")
                .orElse("known here: " + String.join(", ", known));
        return "unknown key " + key(error.getProperty()) + "; " + remedy;
    }

    private List<String> knownKeys(Error error) {
        return new ArrayList<>(parentSchema(error).path("properties").propertyNames());
    }

    private Optional<String> title(Error error) {
        JsonNode title = parentSchema(error).path("title");
        return title.isString() ? Optional.of(title.asString()) : Optional.empty();
    }

    private JsonNode parentSchema(Error error) {
        String location = error.getSchemaLocation().toString();
        String pointer = location.substring(location.indexOf('#') + 1);
        int slash = pointer.lastIndexOf('/');
        return schemaRoot.at(slash < 0 ? "" : pointer.substring(0, slash));
    }

    private static String nearest(JsonNode value, JsonNode wanted) {
        List<String> words = new ArrayList<>();
        wanted.forEach(word -> words.add(word.asString("")));
        return NearestWord.to(value.asString(""), words)
                .map(word -> "; did you mean " + word + "?")
                .orElse("");
    }

    private static String list(JsonNode words) {
        List<String> texts = new ArrayList<>();
        words.forEach(word -> texts.add(word.asString("")));
        return String.join(", ", texts);
    }

    private static String key(String name) {
        return "\"" + name + "\"";
    }

    static String shown(JsonNode value) {
        if (value.isArray()) {
            return "a list";
        } else if (value.isObject()) {
            return "a mapping";
        } else if (value.isNull()) {
            return "nothing";
        }
        String text = value.toString();
        return text.length() <= 60 ? text : text.substring(0, 57) + "...";
    }
}
