package settlemark.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import settlemark.document.Document;
import settlemark.document.DocumentLimits;
import settlemark.document.DocumentSchema;
import settlemark.document.Problem;
import settlemark.measure.Role;
import settlemark.settle.SettleChoices;
import tools.jackson.databind.JsonNode;

/**
 * Reads a job plan from its YAML or JSON text; finds all problems at once, each with its line, column and remedy. The
 * schema is checked first, then what a schema cannot say: that the acts exist, and that the steps fit each other.
 */
public final class PlanReader {
    private final Document document;
    private final List<Problem> problems;
    private final Map<String, String> stages = new LinkedHashMap<>();
    private final Map<String, String> keys = new HashMap<>();

    private PlanReader(Document document, List<Problem> problems) {
        this.document = document;
        this.problems = problems;
    }

    /**
     * Reads a plan.
     *
     * @param fileName for messages
     * @param text the document's bytes, UTF-8, at most 1 MiB
     */
    public static PlanReading read(String fileName, byte[] text) {
        List<Problem> problems = new ArrayList<>();
        Optional<Document> document = Document.read(fileName, text, DocumentLimits.DEFAULT, problems);
        Optional<JobPlan> plan = document.flatMap(d -> {
            SchemaHolder.SCHEMA.check(d, problems);
            return clean(problems) ? new PlanReader(d, problems).plan() : Optional.empty();
        });
        problems.sort(null);
        return new PlanReading(clean(problems) ? plan : Optional.empty(), problems);
    }

    private static boolean clean(List<Problem> problems) {
        return problems.stream().noneMatch(Problem::isError);
    }

    private Optional<JobPlan> plan() {
        JsonNode root = document.root();
        JsonNode named = root.path("stages");
        for (int i = 0; i < named.size(); i++) {
            String key = named.get(i).path("key").asString();
            if (stages.put(key, named.get(i).path("name").asString()) != null) {
                error("/stages/" + i, "stage \"" + key + "\" stands twice; give each stage its own key");
            }
        }
        List<PlanStep> steps = new ArrayList<>();
        JsonNode acts = root.path("steps");
        for (int i = 0; i < acts.size(); i++) {
            step("/steps/" + i, acts.get(i)).ifPresent(steps::add);
        }
        order(steps, acts);
        SettleChoices settle = settle(root.path("settled"));
        return clean(problems)
                ? Optional.of(new JobPlan(
                        root.path("id").asString(),
                        root.path("title").asString(),
                        fuels(root.path("fuels")),
                        List.copyOf(stages.keySet()),
                        steps,
                        settle))
                : Optional.empty();
    }

    private SettleChoices settle(JsonNode set) {
        try {
            SettleChoices choices = set.isMissingNode() ? SettleChoices.NONE : SettleForm.read(set);
            SettleForm.problems(choices).forEach(p -> error("/settled", p));
            return choices;
        } catch (IllegalArgumentException e) {
            error("/settled", String.valueOf(e.getMessage()));
            return SettleChoices.NONE;
        }
    }

    private static List<Fuel> fuels(JsonNode named) {
        if (named.isMissingNode()) {
            return List.of(Fuel.values());
        }
        List<Fuel> fuels = new ArrayList<>();
        named.forEach(n -> fuels.add(Fuel.valueOf(constant(n.asString()))));
        return fuels;
    }

    /** What everything else rests on: a plate first, a zero before a pressure, a record at the end. */
    private void order(List<PlanStep> steps, JsonNode acts) {
        if (steps.size() != acts.size()) {
            return;
        }
        if (steps.get(0).kind() != StepKind.PLATE) {
            error("/steps/0", "the first act is \"plate\": every limit comes from it");
        }
        if (steps.get(steps.size() - 1).kind() != StepKind.RECORD) {
            error("/steps/" + (steps.size() - 1), "the last act is \"record\"");
        }
        boolean zeroed = false;
        for (int i = 0; i < steps.size(); i++) {
            StepKind kind = steps.get(i).kind();
            if (kind == StepKind.ZERO) {
                zeroed = true;
            } else if (kind.measuring() && kind != StepKind.COMBUSTION && !zeroed) {
                error("/steps/" + i, "a pressure is read before any zero; put the act \"zero\" before it");
                return;
            }
        }
    }

    private Optional<PlanStep> step(String at, JsonNode own) {
        String name = own.path("act").asString();
        Optional<JsonNode> act = Acts.find(name);
        if (act.isEmpty()) {
            error(at + "/act", "no act is called \"" + name + "\"; there are " + String.join(", ", Acts.names()));
            return Optional.empty();
        }
        String stage = own.path("stage").asString("");
        if (!stage.isEmpty() && !stages.containsKey(stage)) {
            error(
                    at + "/stage",
                    "no stage is called \"" + stage + "\"; name it under \"stages\", where there "
                            + (stages.isEmpty() ? "is none" : "is " + String.join(", ", stages.keySet())));
            return Optional.empty();
        }
        try {
            PlanStep step = new Words(name, act.get(), own, stage, stages.getOrDefault(stage, "")).step();
            if (keys.put(step.key(), at) != null) {
                error(at, "a second step \"" + step.key() + "\"; give it a \"key\" of its own");
            }
            return Optional.of(step);
        } catch (IllegalArgumentException e) {
            error(at, String.valueOf(e.getMessage()));
            return Optional.empty();
        }
    }

    private void error(String pointer, String message) {
        problems.add(document.error(pointer, message));
    }

    private static String constant(String word) {
        return word.toUpperCase(Locale.ROOT).replace('-', '_');
    }

    /** One step from the customary act and what the plan changes in it. */
    private record Words(String name, JsonNode act, JsonNode own, String stage, String spoken) {
        PlanStep step() {
            String caution = text("caution", act) + (own.has("caution") ? " " + text("caution", own) : "");
            return new PlanStep(
                    own.has("key") || act.has("key") ? either("key") : name,
                    StepKind.valueOf(constant(act.path("kind").asString())),
                    stage,
                    either("group"),
                    either("name"),
                    either("title"),
                    either("instruction"),
                    caution,
                    text("press", act),
                    required(),
                    list("ticks").stream().map(JsonNode::asString).toList(),
                    new PlanStep.Watch(
                            value("settle").asDouble(0), value("hold").asDouble(0)),
                    list("limits").stream().map(PlanLimits::read).toList(),
                    SettleForm.settledBy(value("settled")),
                    own.path("pressures-first").asBoolean(false));
        }

        private List<Role> required() {
            return list("required").stream()
                    .map(n -> Role.ofWord(n.asString()).orElseThrow())
                    .toList();
        }

        private JsonNode value(String key) {
            return own.has(key) ? own.path(key) : act.path(key);
        }

        private List<JsonNode> list(String key) {
            List<JsonNode> items = new ArrayList<>();
            value(key).forEach(items::add);
            return items;
        }

        private String either(String key) {
            return text(key, own.has(key) ? own : act);
        }

        private String text(String key, JsonNode from) {
            return from.path(key).asString("").strip().replace("{stage}", stage).replace("{name}", spoken);
        }
    }

    /** The acts that plans are made of, as shipped. */
    private static final class Acts {
        private static final Document ACTS = read();

        static Optional<JsonNode> find(String name) {
            return Optional.ofNullable(ACTS.root().get(name));
        }

        static List<String> names() {
            return List.copyOf(ACTS.root().propertyNames());
        }

        private static Document read() {
            List<Problem> problems = new ArrayList<>();
            Optional<Document> read =
                    Document.read("acts.yaml", Plans.resource("acts.yaml"), DocumentLimits.DEFAULT, problems);
            return read.filter(d -> problems.isEmpty())
                    .orElseThrow(() -> new IllegalStateException("the shipped acts cannot be read: " + problems));
        }
    }

    /** Compiled when the first plan is read. */
    private static final class SchemaHolder {
        static final DocumentSchema SCHEMA = DocumentSchema.of(Plans.resource("plan.schema.json"));
    }
}
