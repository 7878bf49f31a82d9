package settlemark.document;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;

/**
 * A YAML 1.2 or JSON text as a tree that knows where in the text each value and each key stands. Values are found by
 * JSON Pointer (RFC 6901), such as {@code /channels/0/unit}.
 *
 * <p>Scalars follow the YAML 1.2 core schema: {@code no} is text, {@code 012} is twelve, {@code 0x1F} is a number.
 * Duplicate keys, aliases, tags and further documents in the same text are errors.
 */
public final class Document {
    private final String file;
    private final JsonNode root;
    private final Map<String, Position> values;
    private final Map<String, Position> keys;
    private final Map<String, String> written;

    Document(
            String file,
            JsonNode root,
            Map<String, Position> values,
            Map<String, Position> keys,
            Map<String, String> written) {
        this.file = file;
        this.root = root;
        this.values = new HashMap<>(values);
        this.keys = new HashMap<>(keys);
        this.written = new HashMap<>(written);
    }

    /**
     * Reads a document's text; adds what is wrong with it to the problems.
     *
     * @return the tree, empty where the text could not be read as a whole
     */
    public static Optional<Document> read(String file, byte[] text, DocumentLimits limits, List<Problem> problems) {
        Optional<String> characters = TextReader.read(file, text, limits, problems);
        return characters.flatMap(c -> new TreeReader(file, limits, problems).read(c));
    }

    /** Name as the person gave it. */
    public String file() {
        return file;
    }

    public JsonNode root() {
        return root;
    }

    /** Line of a value, from 1; of the nearest value around it where the document has none there. */
    public int line(String pointer) {
        return position(pointer).line();
    }

    /** Column of a value, from 1; of the nearest value around it where the document has none there. */
    public int column(String pointer) {
        return position(pointer).column();
    }

    /** The text of a value that is written without quotes, empty for any other. */
    Optional<String> written(String pointer) {
        return Optional.ofNullable(written.get(pointer));
    }

    /** An error at a value. */
    public Problem error(String pointer, String message) {
        return at(position(pointer), Severity.ERROR, message);
    }

    /** A warning at a value. */
    public Problem warning(String pointer, String message) {
        return at(position(pointer), Severity.WARNING, message);
    }

    /** An error at a key rather than at its value. */
    public Problem errorAtKey(String pointer, String message) {
        Position key = keys.get(pointer);
        return at(key == null ? position(pointer) : key, Severity.ERROR, message);
    }

    private Problem at(Position position, Severity severity, String message) {
        return new Problem(file, position.line(), position.column(), severity, message);
    }

    private Position position(String pointer) {
        String at = pointer;
        while (true) {
            Position position = values.get(at);
            if (position != null) {
                return position;
            }
            int slash = at.lastIndexOf('/');
            if (slash < 0) {
                return Position.START;
            }
            at = at.substring(0, slash);
        }
    }
}
