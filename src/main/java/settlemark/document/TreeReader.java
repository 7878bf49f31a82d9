package settlemark.document;

import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.events.SequenceStartEvent;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** YAML events to a tree. JSON is read as the YAML that it is. */
final class TreeReader {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final String file;
    private final DocumentLimits limits;
    private final List<Problem> problems;
    private final Map<String, Position> values = new HashMap<>();
    private final Map<String, Position> keys = new HashMap<>();
    private final Map<String, String> written = new HashMap<>();
    private int nodes;

    TreeReader(String file, DocumentLimits limits, List<Problem> problems) {
        this.file = file;
        this.limits = limits;
        this.problems = problems;
    }

    Optional<Document> read(String text) {
        LoadSettings settings = LoadSettings.builder()
                .setLabel(file)
                .setCodePointLimit(limits.maximumBytes())
                .build();
        try {
            return document(new Parse(settings).parseString(text).iterator());
        } catch (MarkedYamlEngineException e) {
            Position position = Position.of(e.getProblemMark().or(e::getContextMark));
            report(position, SyntaxMessages.of(e));
        } catch (YamlEngineException e) {
            report(Position.START, "not a YAML text: " + SyntaxMessages.firstLine(e.getMessage()));
        } catch (Refused e) {
            report(e.position, e.getMessage());
        }
        return Optional.empty();
    }

    private Optional<Document> document(Iterator<Event> events) {
        events.next(); // start of stream
        Event first = events.next();
        if (first.getEventId() == Event.ID.StreamEnd) {
            report(Position.START, "the document is empty");
            return Optional.empty();
        }
        JsonNode root = node(events.next(), events, "", 1);
        events.next(); // end of document
        Event after = events.next();
        if (after.getEventId() != Event.ID.StreamEnd) {
            report(Position.of(after.getStartMark()), "a second document starts here; one file holds one document");
        }
        return Optional.of(new Document(file, root, values, keys, written));
    }

    private JsonNode node(Event event, Iterator<Event> events, String pointer, int depth) {
        Position position = Position.of(event.getStartMark());
        values.put(pointer, position);
        if (++nodes > limits.maximumNodes()) {
            throw new Refused(position, "the document has more than " + limits.maximumNodes() + " values");
        }
        if (depth > limits.maximumNesting()) {
            throw new Refused(position, "nested more than " + limits.maximumNesting() + " levels deep");
        }
        if (event instanceof ScalarEvent scalar) {
            if (scalar.isPlain()) {
                written.put(pointer, scalar.getValue());
            }
            return scalar(scalar, position);
        } else if (event instanceof SequenceStartEvent) {
            return sequence(events, pointer, depth);
        } else if (event instanceof MappingStartEvent) {
            return mapping(events, pointer, depth);
        }
        String alias = event instanceof AliasEvent a ? a.getAlias().toString() : event.toString();
        report(
                position,
                "alias " + Scalars.shown("*" + alias)
                        + " is not supported here; write the value out, or quote it if it is text");
        return NODES.nullNode();
    }

    private JsonNode sequence(Iterator<Event> events, String pointer, int depth) {
        ArrayNode array = NODES.arrayNode();
        for (Event e = events.next(); e.getEventId() != Event.ID.SequenceEnd; e = events.next()) {
            array.add(node(e, events, pointer + "/" + array.size(), depth + 1));
        }
        return array;
    }

    private JsonNode mapping(Iterator<Event> events, String pointer, int depth) {
        ObjectNode object = NODES.objectNode();
        for (Event e = events.next(); e.getEventId() != Event.ID.MappingEnd; e = events.next()) {
            Position position = Position.of(e.getStartMark());
            if (!(e instanceof ScalarEvent scalar)) {
                throw new Refused(position, "a key must be plain text");
            }
            String key = scalar.getValue();
            String at = pointer + "/" + PathNames.escaped(key);
            Position earlier = keys.get(at);
            JsonNode value = node(events.next(), events, at, depth + 1);
            if (earlier == null) {
                keys.put(at, position);
                object.set(key, value);
            } else {
                report(position, "key \"" + key + "\" stands twice, first in line " + earlier.line() + "; keep one");
            }
        }
        return object;
    }

    private JsonNode scalar(ScalarEvent event, Position position) {
        @Nullable String refusal = Scalars.refusal(event);
        if (refusal != null) {
            report(position, refusal);
            return NODES.stringNode(event.getValue());
        }
        return Scalars.read(event);
    }

    private void report(Position position, String message) {
        problems.add(new Problem(file, position.line(), position.column(), Severity.ERROR, message));
    }

    /** Ends the reading; the rest of the text could only repeat the fault. */
    private static final class Refused extends RuntimeException {
        private static final long serialVersionUID = 1L;
        private final transient Position position;

        Refused(Position position, String message) {
            super(message, null, false, false);
            this.position = position;
        }

        @Override
        public String getMessage() {
            return String.valueOf(super.getMessage());
        }
    }
}
