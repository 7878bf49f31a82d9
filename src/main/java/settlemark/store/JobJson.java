package settlemark.store;

import java.util.List;
import settlemark.job.Fuel;
import settlemark.job.JobPlan;
import settlemark.job.Limit;
import settlemark.job.PlanStep;
import settlemark.job.RatingPlate;
import settlemark.job.SettleForm;
import settlemark.job.Site;
import settlemark.job.StagePlate;
import settlemark.job.StepKind;
import settlemark.job.StepLimit;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.SettleChoices;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A plan and a rating plate as JSON, and back to an equal one. */
final class JobJson {
    private JobJson() {}

    static ObjectNode plan(JobPlan plan) {
        ObjectNode node = Json.object();
        node.put("key", plan.key());
        node.put("title", plan.title());
        Json.strings(node, "fuels", plan.fuels().stream().map(Fuel::name).toList());
        Json.strings(node, "stages", plan.stages());
        ArrayNode steps = node.putArray("steps");
        plan.steps().forEach(s -> steps.add(step(s)));
        if (!plan.settle().isNone()) {
            SettleForm.write(plan.settle(), node.putObject("settled"));
        }
        return node;
    }

    static JobPlan plan(JsonNode node) {
        List<PlanStep> steps = Json.list(node, "steps", JobJson::step);
        JobPlan read = new JobPlan(
                Json.string(node, "key"),
                Json.string(node, "title"),
                node.has("fuels")
                        ? Json.list(node, "fuels", f -> Fuel.valueOf(f.stringValue()))
                        : List.of(Fuel.values()),
                node.has("stages") ? Json.strings(node, "stages") : stages(steps),
                steps,
                node.has("settled") ? SettleForm.read(node.required("settled")) : SettleChoices.NONE);
        Json.requireKnown(node, plan(read));
        return read;
    }

    /** Plans that were stored before they named their stages name them in their steps. */
    private static List<String> stages(List<PlanStep> steps) {
        return steps.stream()
                .map(PlanStep::stage)
                .filter(s -> !s.isEmpty())
                .distinct()
                .toList();
    }

    private static ObjectNode step(PlanStep step) {
        ObjectNode node = Json.object();
        node.put("key", step.key());
        node.put("kind", step.kind().name());
        node.put("stage", step.stage());
        node.put("group", step.group());
        node.put("name", step.name());
        node.put("title", step.title());
        node.put("instruction", step.instruction());
        node.put("caution", step.caution());
        node.put("press", step.press());
        Json.strings(node, "required", step.required().stream().map(Role::name).toList());
        Json.strings(node, "ticks", step.ticks());
        Json.number(node, "settleSeconds", step.watch().settleSeconds());
        Json.number(node, "holdSeconds", step.watch().holdSeconds());
        ArrayNode limits = node.putArray("limits");
        step.limits().forEach(l -> limits.add(limit(l.limit()).put("subject", l.subject())));
        SettleForm.write(step.settledBy(), node);
        if (step.pressuresFirst()) {
            node.put("pressuresFirst", true);
        }
        return node;
    }

    private static PlanStep step(JsonNode node) {
        return new PlanStep(
                Json.string(node, "key"),
                StepKind.valueOf(Json.string(node, "kind")),
                Json.string(node, "stage"),
                Json.string(node, "group"),
                Json.string(node, "name"),
                Json.string(node, "title"),
                Json.string(node, "instruction"),
                Json.string(node, "caution"),
                Json.string(node, "press"),
                Json.list(node, "required", r -> Role.valueOf(r.stringValue())),
                Json.strings(node, "ticks"),
                node.has("holdSeconds")
                        ? new PlanStep.Watch(Json.number(node, "settleSeconds"), Json.number(node, "holdSeconds"))
                        : PlanStep.Watch.NONE,
                node.has("limits") ? Json.list(node, "limits", JobJson::own) : List.of(),
                SettleForm.settledBy(node.path("settled")),
                node.path("pressuresFirst").asBoolean(false));
    }

    private static StepLimit own(JsonNode node) {
        return new StepLimit(Json.string(node, "subject"), limit(node));
    }

    static ObjectNode plate(RatingPlate plate) {
        ObjectNode node = Json.object();
        node.put("appliance", plate.appliance());
        node.put("fuel", plate.fuel().name());
        ArrayNode stages = node.putArray("stages");
        plate.stages().forEach(s -> stages.add(stage(s)));
        node.set("inlet", limit(plate.inlet()));
        node.set("rise", limit(plate.rise()));
        if (!plate.statics().isOpen()) {
            node.set("statics", limit(plate.statics()));
        }
        if (!plate.control().isOpen()) {
            node.set("control", limit(plate.control()));
        }
        if (plate.site().known()) {
            ObjectNode site = node.putObject("site");
            Json.number(site, "altitudeFeet", plate.site().altitudeFeet());
            site.put("derating", plate.site().derating().name());
            Json.number(site, "factor", plate.site().factor());
        }
        return node;
    }

    static RatingPlate plate(JsonNode node) {
        return new RatingPlate(
                Json.string(node, "appliance"),
                Fuel.valueOf(Json.string(node, "fuel")),
                Json.list(node, "stages", JobJson::stage),
                limit(node.required("inlet")),
                limit(node.required("rise")),
                asked(node, "statics"),
                asked(node, "control"),
                node.has("site") ? site(node.required("site")) : Site.UNKNOWN);
    }

    private static Limit asked(JsonNode node, String name) {
        return node.has(name) ? limit(node.required(name)) : Limit.open(Unit.INCH_OF_WATER, "not asked");
    }

    private static Site site(JsonNode node) {
        return new Site(
                Json.number(node, "altitudeFeet"),
                Site.Derating.valueOf(Json.string(node, "derating")),
                Json.number(node, "factor"));
    }

    private static ObjectNode stage(StagePlate stage) {
        ObjectNode node = Json.object();
        node.put("key", stage.key());
        node.put("name", stage.name());
        Json.number(node, "manifoldTarget", stage.manifoldTarget());
        Json.number(node, "manifoldTolerance", stage.manifoldTolerance());
        node.put("unit", UnitText.of(stage.unit()));
        Json.number(node, "inputBtuPerHour", stage.inputBtuPerHour());
        return node;
    }

    private static StagePlate stage(JsonNode node) {
        return new StagePlate(
                Json.string(node, "key"),
                Json.string(node, "name"),
                Json.number(node, "manifoldTarget"),
                Json.number(node, "manifoldTolerance"),
                UnitText.read(Json.string(node, "unit")),
                Json.number(node, "inputBtuPerHour"));
    }

    private static ObjectNode limit(Limit limit) {
        ObjectNode node = Json.object();
        Json.number(node, "lower", limit.lower());
        Json.number(node, "upper", limit.upper());
        node.put("unit", UnitText.of(limit.unit()));
        node.put("source", limit.source());
        return node;
    }

    private static Limit limit(JsonNode node) {
        return new Limit(
                Json.number(node, "lower"),
                Json.number(node, "upper"),
                UnitText.read(Json.string(node, "unit")),
                Json.string(node, "source"));
    }
}
