package settlemark.document;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.nodes.Tag;
import org.snakeyaml.engine.v2.resolver.CoreScalarResolver;
import org.snakeyaml.engine.v2.resolver.ScalarResolver;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

/** Plain scalars by the YAML 1.2 core schema (YAML 1.2.2, 10.3.2); quoted ones are text. */
final class Scalars {
    /** More digits than any number in a document needs; a longer one costs quadratic time. */
    private static final int MAXIMUM_NUMBER_LENGTH = 64;

    private static final int MAXIMUM_SHOWN_LENGTH = 30;

    private static final ScalarResolver RESOLVER = new CoreScalarResolver(false);
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private Scalars() {}

    /** Why a scalar is not taken, null where it is. */
    static @Nullable String refusal(ScalarEvent event) {
        if (event.getTag().isPresent()) {
            return "tag " + shown(event.getTag().get()) + " is not supported; quote the value if it is text";
        }
        Tag tag = tag(event);
        if (tag == Tag.FLOAT && event.getValue().matches("[-+]?\\.(inf|Inf|INF|nan|NaN|NAN)")) {
            return event.getValue() + " is not a number that can be used here; quote it if it is text";
        }
        boolean number = tag == Tag.INT || tag == Tag.FLOAT;
        if (number && event.getValue().length() > MAXIMUM_NUMBER_LENGTH) {
            return "a number of " + event.getValue().length() + " characters; at most " + MAXIMUM_NUMBER_LENGTH
                    + " are read";
        }
        boolean tooLarge = tag == Tag.FLOAT && Double.isInfinite(Double.parseDouble(event.getValue()));
        return tooLarge ? "number " + shown(event.getValue()) + " is too large; quote it if it is text" : null;
    }

    /** A long text may be a secret that was not quoted. */
    static String shown(String text) {
        return text.length() <= MAXIMUM_SHOWN_LENGTH ? text : "of " + text.length() + " characters";
    }

    static JsonNode read(ScalarEvent event) {
        Tag tag = tag(event);
        String text = event.getValue();
        if (tag == Tag.INT) {
            return integer(text);
        } else if (tag == Tag.FLOAT) {
            return NODES.numberNode(Double.parseDouble(text));
        } else if (tag == Tag.BOOL) {
            return NODES.booleanNode(text.charAt(0) == 't' || text.charAt(0) == 'T');
        } else if (tag == Tag.NULL) {
            return NODES.nullNode();
        }
        return NODES.stringNode(text);
    }

    private static Tag tag(ScalarEvent event) {
        return event.isPlain() ? RESOLVER.resolve(event.getValue(), true) : Tag.STR;
    }

    private static JsonNode integer(String text) {
        BigInteger value;
        if (text.startsWith("0x")) {
            value = new BigInteger(text.substring(2), 16);
        } else if (text.startsWith("0o")) {
            value = new BigInteger(text.substring(2), 8);
        } else {
            value = new BigInteger(text);
        }
        if (value.bitLength() <= 31) {
            return NODES.numberNode(value.intValueExact());
        }
        return value.bitLength() <= 63 ? NODES.numberNode(value.longValueExact()) : NODES.numberNode(value);
    }
}
