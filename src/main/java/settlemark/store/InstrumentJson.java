package settlemark.store;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import settlemark.job.Act;
import settlemark.job.CorrectionPoint;
import settlemark.job.InstrumentCard;
import settlemark.measure.Role;
import settlemark.settle.FromInstrument;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What was said of an instrument, and what it adds to a reading, as JSON and back to an equal one. */
final class InstrumentJson {
    private InstrumentJson() {}

    static ObjectNode act(ObjectNode node, Act.Instrument act) {
        node.set("card", card(act.card()));
        ObjectNode places = node.putObject("places");
        new TreeMap<>(act.places()).forEach((role, channel) -> places.put(role.name(), channel));
        return node.put("said-by-probe", act.saidByProbe());
    }

    static Act.Instrument act(JsonNode node) {
        Map<Role, String> places = new EnumMap<>(Role.class);
        JsonNode stored = node.required("places");
        stored.propertyNames()
                .forEach(name ->
                        places.put(Role.valueOf(name), stored.required(name).stringValue()));
        return new Act.Instrument(
                card(node.required("card")),
                places,
                node.required("said-by-probe").booleanValue());
    }

    private static ObjectNode card(InstrumentCard card) {
        ObjectNode node = Json.object()
                .put("serial", card.serial())
                .put("name", card.name())
                .put("kind", card.kind());
        card.calibrated().ifPresent(day -> node.put("calibrated", day.toString()));
        card.due().ifPresent(day -> node.put("due", day.toString()));
        ArrayNode points = node.putArray("points");
        card.points().forEach(p -> points.add(point(p)));
        return node;
    }

    private static InstrumentCard card(JsonNode node) {
        return new InstrumentCard(
                Json.string(node, "serial"),
                Json.string(node, "name"),
                Json.string(node, "kind"),
                day(node, "calibrated"),
                day(node, "due"),
                Json.list(node, "points", InstrumentJson::point));
    }

    private static Optional<LocalDate> day(JsonNode node, String field) {
        return node.has(field) ? Optional.of(LocalDate.parse(Json.string(node, field))) : Optional.empty();
    }

    private static ObjectNode point(CorrectionPoint point) {
        ObjectNode node = Json.object().put("channel", point.channel()).put("unit", UnitText.of(point.unit()));
        Json.number(node, "true", point.trueValue());
        Json.number(node, "indicated", point.indicated());
        Json.number(node, "uncertainty", point.expandedUncertainty());
        return node;
    }

    private static CorrectionPoint point(JsonNode node) {
        return new CorrectionPoint(
                Json.string(node, "channel"),
                Json.number(node, "true"),
                Json.number(node, "indicated"),
                Json.number(node, "uncertainty"),
                UnitText.read(Json.string(node, "unit")));
    }

    /** Null where nothing is known of the instrument. */
    static @Nullable String text(FromInstrument its) {
        if (its.equals(FromInstrument.NONE)) {
            return null;
        }
        ObjectNode node = Json.object().put("serial", its.serial()).put("remark", its.remark());
        Json.number(node, "correction", its.correction());
        Json.number(node, "uncertainty", its.standardUncertainty());
        return Json.text(node);
    }

    static FromInstrument read(@Nullable String text) {
        if (text == null) {
            return FromInstrument.NONE;
        }
        JsonNode node = Json.read(text);
        return new FromInstrument(
                Json.string(node, "serial"),
                Json.number(node, "correction"),
                Json.number(node, "uncertainty"),
                Json.string(node, "remark"));
    }
}
