package settlemark.seal;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A seal as JSON text, and back to an equal one. */
public final class SealText {
    /** Largest text that is read: a week of four probes is a twentieth of this. */
    public static final int LARGEST_BYTES = 64 << 20;

    private static final int FORM = 1;
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private SealText() {}

    public static String write(Seal seal) {
        ObjectNode node = MAPPER.createObjectNode();
        node.put("form", FORM);
        node.put("session", seal.session());
        node.put("simulated", seal.simulated());
        node.put("sealed", seal.madeAt().toString());
        node.put("program", seal.program());
        node.put("root", seal.rootHex());
        ArrayNode parts = node.putArray("parts");
        for (SealedPart part : seal.parts()) {
            parts.addObject().put("name", part.name()).put("sha256", part.hex());
        }
        seal.signature().into(node);
        return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(node) + "\n";
    }

    /** @throws SealException where the text is no seal of a form that this program knows */
    public static Seal read(String text) throws SealException {
        try {
            JsonNode node = MAPPER.readTree(text);
            int form = node.required("form").asInt(0);
            if (form != FORM) {
                throw new SealException(
                        "the seal has form " + form + ", this program knows form " + FORM + "; use a newer program");
            }
            List<SealedPart> parts = new ArrayList<>();
            for (JsonNode part : node.required("parts")) {
                parts.add(new SealedPart(
                        part.required("name").stringValue(),
                        HexFormat.of().parseHex(part.required("sha256").stringValue())));
            }
            Seal seal = new Seal(
                    node.required("session").stringValue(),
                    node.required("simulated").booleanValue(),
                    Instant.parse(node.required("sealed").stringValue()),
                    node.required("program").stringValue(),
                    parts,
                    Signature.in(node));
            if (!seal.rootHex().equals(node.required("root").stringValue())) {
                throw new SealException("the seal was changed: its root does not belong to its parts");
            }
            // A digit in another case or a bit that carries nothing is a change all the same; mail may end lines anew.
            if (!write(seal).equals(text.replace("\r\n", "\n"))) {
                throw new SealException("the seal was changed: its text is not as seals are written");
            }
            return seal;
        } catch (JacksonException | IllegalArgumentException | DateTimeException e) {
            throw new SealException("this is no seal, or it was changed: " + e.getMessage(), e);
        }
    }
}
