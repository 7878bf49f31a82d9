package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import settlemark.document.Document;
import settlemark.document.DocumentLimits;
import settlemark.document.DocumentSchema;
import settlemark.document.Problem;
import settlemark.measure.Unit;
import tools.jackson.databind.JsonNode;

/**
 * Reads a rating plate from its YAML or JSON text; finds all problems at once, each with its line, column and remedy. What
 * only looks wrong is a warning: the plate itself wins.
 */
public final class PlateReader {
    /** Manifold within the greater of these: 10 CFR 430 Subpart B Appendix O, 2.3.1. */
    private static final double TOLERANCE_IN_H2O = 0.2;

    private static final double TOLERANCE_PART = 0.1;
    private static final String PLATE = "plate";
    private static final String CONTROL = "gas control";

    private final Document document;
    private final List<Problem> problems;

    private PlateReader(Document document, List<Problem> problems) {
        this.document = document;
        this.problems = problems;
    }

    /**
     * Reads a plate.
     *
     * @param fileName for messages
     * @param text the document's bytes, UTF-8, at most 1 MiB
     */
    public static PlateReading read(String fileName, byte[] text) {
        List<Problem> problems = new ArrayList<>();
        Optional<Document> document = Document.read(fileName, text, DocumentLimits.DEFAULT, problems);
        Optional<RatingPlate> plate = document.flatMap(d -> {
            SchemaHolder.SCHEMA.check(d, problems);
            PlateChecks.check(d, problems);
            return clean(problems) ? Optional.of(new PlateReader(d, problems).plate()) : Optional.empty();
        });
        problems.sort(null);
        return new PlateReading(clean(problems) ? plate : Optional.empty(), problems);
    }

    private static boolean clean(List<Problem> problems) {
        return problems.stream().noneMatch(Problem::isError);
    }

    /** Of a document in which nothing is wrong. */
    private RatingPlate plate() {
        JsonNode root = document.root();
        List<StagePlate> stages = new ArrayList<>();
        for (JsonNode stage : root.path("stages")) {
            stages.add(stage(stage));
        }
        RatingPlate plate = new RatingPlate(
                root.path("appliance").asString(),
                Fuel.valueOf(constant(root.path("fuel").asString())),
                stages,
                range(root.path("inlet")),
                root.has("rise") ? range(root.path("rise")) : Limit.open(Unit.FAHRENHEIT_DIFFERENCE, "not asked"),
                most(root.path("statics"), PLATE),
                most(root.path("control"), CONTROL),
                site(root.path("altitude")));
        plate.doubts().forEach(d -> problems.add(document.warning("/stages", d)));
        return plate;
    }

    private static StagePlate stage(JsonNode node) {
        Unit unit = node.has("unit") ? unit(node) : Unit.INCH_OF_WATER;
        Unit power = node.has("input-unit") ? Unit.ucum(node.path("input-unit").asString()) : Clocking.INPUT;
        double manifold = node.path("manifold").asDouble(Double.NaN);
        double customary =
                Math.max(Unit.INCH_OF_WATER.to(unit).applyDifference(TOLERANCE_IN_H2O), TOLERANCE_PART * manifold);
        double tolerance =
                Double.isNaN(manifold) ? Double.NaN : node.path("tolerance").asDouble(customary);
        double input = power.to(Clocking.INPUT).apply(node.path("input").asDouble(Double.NaN));
        return new StagePlate(
                node.path("key").asString(), node.path("name").asString(), manifold, tolerance, unit, input);
    }

    /** Of temperatures the plate names a rise, so its unit is of differences. */
    private static Limit range(JsonNode node) {
        return new Limit(
                node.path("least").asDouble(),
                node.path("most").asDouble(),
                unit(node).difference(),
                PLATE);
    }

    private static Limit most(JsonNode node, String source) {
        return node.isMissingNode()
                ? Limit.open(Unit.INCH_OF_WATER, "not asked")
                : new Limit(Double.NEGATIVE_INFINITY, node.path("most").asDouble(), unit(node), source);
    }

    private static Site site(JsonNode node) {
        return node.isMissingNode()
                ? Site.UNKNOWN
                : new Site(
                        unit(node).to(Site.FOOT).apply(node.path("value").asDouble()),
                        PlateChecks.derating(node).orElseThrow(),
                        node.path("factor").asDouble(Double.NaN));
    }

    private static Unit unit(JsonNode node) {
        return Unit.ucum(node.path("unit").asString());
    }

    private static String constant(String word) {
        return word.toUpperCase(Locale.ROOT).replace('-', '_');
    }

    /** Compiled when the first plate is read. */
    private static final class SchemaHolder {
        static final DocumentSchema SCHEMA = DocumentSchema.of(Plans.resource("plate.schema.json"));
    }
}
