package settlemark.store;

import settlemark.job.Act;
import settlemark.job.FormerReading;
import settlemark.job.GasHeat;
import settlemark.job.SettleForm;
import settlemark.measure.Role;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** An act as JSON with its kind, and back to an equal one. */
final class ActJson {
    private ActJson() {}

    static ObjectNode of(Act act) {
        if (act instanceof Act.Confirm confirm) {
            return step("confirm", confirm.step());
        } else if (act instanceof Act.Adjust adjust) {
            return step("adjust", adjust.step());
        } else if (act instanceof Act.CapOn capOn) {
            return step("cap-on", capOn.step());
        } else if (act instanceof Act.TakeNow take) {
            return step("take-now", take.step()).put("reason", take.reason());
        } else if (act instanceof Act.TakePressures take) {
            return step("take-pressures", take.step());
        } else if (act instanceof Act.Skip skip) {
            return step("skip", skip.step()).put("reason", skip.reason());
        } else if (act instanceof Act.Repeat repeat) {
            return step("repeat", repeat.step());
        } else if (act instanceof Act.Tick tick) {
            return step("tick", tick.step()).put("item", tick.item()).put("done", tick.done());
        } else if (act instanceof Act.MeterDial dial) {
            return step("meter-dial", dial.step()).put("cubic-feet", dial.cubicFeet());
        } else if (act instanceof Act.PointerAtMark mark) {
            return step("pointer-at-mark", mark.step());
        } else if (act instanceof Act.Unmark last) {
            return step("unmark", last.step());
        } else if (act instanceof Act.EndRun end) {
            return step("end-run", end.step());
        } else if (act instanceof Act.DropRun drop) {
            return step("drop-run", drop.step()).put("reason", drop.reason());
        } else if (act instanceof Act.Heat given) {
            return kind("heat")
                    .put("btu-per-cubic-foot", given.heat().btuPerCubicFoot())
                    .put("relative-width", given.heat().relativeWidth())
                    .put("source", given.heat().source());
        } else if (act instanceof Act.Entered entered) {
            ObjectNode node = step("entered", entered.step())
                    .put("role", entered.role().name())
                    .put("unit", UnitText.of(entered.unit()))
                    .put("instrument", entered.instrument());
            Json.number(node, "value", entered.value());
            Json.number(node, "half-width", entered.halfWidth());
            return node;
        } else if (act instanceof Act.Former former) {
            ObjectNode node = kind("former").put("when", former.when());
            ArrayNode left = node.putArray("left");
            former.left().forEach(f -> left.add(former(f)));
            return node;
        } else if (act instanceof Act.Instrument said) {
            return InstrumentJson.act(kind("instrument"), said);
        } else if (act instanceof Act.Settings said) {
            ObjectNode node = kind("settings");
            SettleForm.write(said.from(), node.putObject("from"));
            SettleForm.write(said.to(), node.putObject("to"));
            return node;
        } else if (act instanceof Act.GoOn goOn) {
            return kind("go-on").put("why", goOn.why());
        } else if (act instanceof Act.Seen seen) {
            return kind("seen").put("notice", seen.notice());
        } else if (act instanceof Act.Note note) {
            return step("note", note.step()).put("text", note.text());
        } else if (act instanceof Act.Plate plate) {
            return kind("plate").set("plate", JobJson.plate(plate.plate()));
        } else if (act instanceof Act.Person person) {
            return kind("person").put("name", person.name());
        }
        throw new IllegalArgumentException("no stored form for an act of " + act.getClass());
    }

    static Act read(JsonNode node) {
        String kind = Json.string(node, "kind");
        return switch (kind) {
            case "confirm" -> new Act.Confirm(Json.string(node, "step"));
            case "adjust" -> new Act.Adjust(Json.string(node, "step"));
            case "cap-on" -> new Act.CapOn(Json.string(node, "step"));
            case "take-now" -> new Act.TakeNow(Json.string(node, "step"), Json.string(node, "reason"));
            case "take-pressures" -> new Act.TakePressures(Json.string(node, "step"));
            case "skip" -> new Act.Skip(Json.string(node, "step"), Json.string(node, "reason"));
            case "repeat" -> new Act.Repeat(Json.string(node, "step"));
            case "tick" ->
                new Act.Tick(
                        Json.string(node, "step"),
                        Json.string(node, "item"),
                        node.required("done").booleanValue());
            case "meter-dial" ->
                new Act.MeterDial(
                        Json.string(node, "step"), node.required("cubic-feet").doubleValue());
            case "pointer-at-mark" -> new Act.PointerAtMark(Json.string(node, "step"));
            case "unmark" -> new Act.Unmark(Json.string(node, "step"));
            case "end-run" -> new Act.EndRun(Json.string(node, "step"));
            case "drop-run" -> new Act.DropRun(Json.string(node, "step"), Json.string(node, "reason"));
            case "heat" ->
                new Act.Heat(new GasHeat(
                        node.required("btu-per-cubic-foot").doubleValue(),
                        node.required("relative-width").doubleValue(),
                        Json.string(node, "source")));
            case "entered" ->
                new Act.Entered(
                        Json.string(node, "step"),
                        Role.valueOf(Json.string(node, "role")),
                        Json.number(node, "value"),
                        UnitText.read(Json.string(node, "unit")),
                        Json.number(node, "half-width"),
                        Json.string(node, "instrument"));
            case "former" -> new Act.Former(Json.string(node, "when"), Json.list(node, "left", ActJson::former));
            case "instrument" -> InstrumentJson.act(node);
            case "settings" ->
                new Act.Settings(SettleForm.read(node.required("from")), SettleForm.read(node.required("to")));
            case "go-on" -> new Act.GoOn(Json.string(node, "why"));
            case "seen" -> new Act.Seen(Json.string(node, "notice"));
            case "note" -> new Act.Note(Json.string(node, "step"), Json.string(node, "text"));
            case "plate" -> new Act.Plate(JobJson.plate(node.required("plate")));
            case "person" -> new Act.Person(Json.string(node, "name"));
            default -> throw new IllegalArgumentException("unknown act \"" + kind + "\"");
        };
    }

    private static ObjectNode former(FormerReading reading) {
        ObjectNode node = Json.object()
                .put("stage", reading.stage())
                .put("role", reading.role().name())
                .put("unit", UnitText.of(reading.unit()));
        Json.number(node, "value", reading.value());
        Json.number(node, "uncertainty", reading.expandedUncertainty());
        return node;
    }

    private static FormerReading former(JsonNode node) {
        return new FormerReading(
                Json.string(node, "stage"),
                Role.valueOf(Json.string(node, "role")),
                Json.number(node, "value"),
                Json.number(node, "uncertainty"),
                UnitText.read(Json.string(node, "unit")));
    }

    private static ObjectNode kind(String kind) {
        return Json.object().put("kind", kind);
    }

    private static ObjectNode step(String kind, String step) {
        return kind(kind).put("step", step);
    }
}
