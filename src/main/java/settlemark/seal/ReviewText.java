package settlemark.seal;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A review as JSON text, and back to an equal one. */
public final class ReviewText {
    /** Largest text that is read. */
    public static final int LARGEST_BYTES = 1 << 16;

    private static final int FORM = 1;
    /** Of a review that judges again. */
    private static final int FORM_AGAIN = 2;

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private ReviewText() {}

    public static String write(Review review) {
        ObjectNode node = MAPPER.createObjectNode();
        node.put("review", review.again().isPresent() ? FORM_AGAIN : FORM);
        node.put("session", review.session());
        node.put("seal_root", review.sealRoot());
        node.put("accepted", review.accepted());
        node.put("person", review.person());
        node.put("comment", review.comment());
        node.put("made", review.madeAt().toString());
        review.again().ifPresent(a -> node.set("judged_again", again(a)));
        review.signature().into(node);
        return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(node) + "\n";
    }

    private static ObjectNode again(JudgedAgain again) {
        ObjectNode node = MAPPER.createObjectNode();
        ArrayNode under = node.putArray("under");
        again.under().forEach(under::add);
        ArrayNode changes = node.putArray("changes");
        again.changes()
                .forEach(c -> changes.addObject()
                        .put("step", c.step())
                        .put("figure", c.figure())
                        .put("from", c.from())
                        .put("to", c.to()));
        return node;
    }

    private static JudgedAgain again(JsonNode node) {
        List<String> under = new ArrayList<>();
        node.required("under").forEach(u -> under.add(u.stringValue()));
        List<JudgedAgain.Change> changes = new ArrayList<>();
        node.required("changes")
                .forEach(c -> changes.add(new JudgedAgain.Change(
                        c.required("step").stringValue(),
                        c.required("figure").stringValue(),
                        c.required("from").stringValue(),
                        c.required("to").stringValue())));
        return new JudgedAgain(under, changes);
    }

    /** @throws SealException where the text is no review of a form that this program knows */
    public static Review read(String text) throws SealException {
        try {
            JsonNode node = MAPPER.readTree(text);
            int form = node.required("review").asInt(0);
            if (form != FORM && form != FORM_AGAIN) {
                throw new SealException("the review has form " + form + ", this program knows forms " + FORM + " and "
                        + FORM_AGAIN + "; use a newer program");
            }
            Review review = new Review(
                    node.required("session").stringValue(),
                    node.required("seal_root").stringValue(),
                    node.required("accepted").booleanValue(),
                    node.required("person").stringValue(),
                    node.required("comment").stringValue(),
                    Instant.parse(node.required("made").stringValue()),
                    form == FORM_AGAIN ? Optional.of(again(node.required("judged_again"))) : Optional.empty(),
                    Signature.in(node));
            if (!write(review).equals(text.replace("\r\n", "\n"))) {
                throw new SealException("the review was changed: its text is not as reviews are written");
            }
            return review;
        } catch (JacksonException | IllegalArgumentException | DateTimeException e) {
            throw new SealException("this is no review, or it was changed: " + e.getMessage(), e);
        }
    }
}
