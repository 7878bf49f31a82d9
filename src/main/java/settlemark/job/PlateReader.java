package settlemark.job;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import settlemark.document.Document;
import settlemark.document.DocumentLimits;
import settlemark.document.DocumentSchema;
import settlemark.document.Problem;
import settlemark.measure.Dimension;
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
            PlateReader reader = new PlateReader(d, problems);
            boolean clean = clean(problems);
            reader.reversed("/inlet", d.root().path("inlet"));
            reader.reversed("/rise", d.root().path("rise"));
            return clean ? reader.plate() : Optional.empty();
        });
        problems.sort(null);
        return new PlateReading(clean(problems) ? plate : Optional.empty(), problems);
    }

    private static boolean clean(List<Problem> problems) {
        return problems.stream().noneMatch(Problem::isError);
    }

    private Optional<RatingPlate> plate() {
        JsonNode root = document.root();
        List<StagePlate> stages = new ArrayList<>();
        Set<String> keys = new HashSet<>();
        for (int i = 0; i < root.path("stages").size(); i++) {
            String at = "/stages/" + i;
            JsonNode node = root.path("stages").get(i);
            if (!keys.add(node.path("key").asString())) {
                error(at, "stage \"" + node.path("key").asString() + "\" stands twice; give each its own key");
            }
            stage(at, node).ifPresent(stages::add);
        }
        Limit inlet = range("/inlet", root.path("inlet"), Dimension.PRESSURE);
        Limit rise = root.has("rise")
                ? range("/rise", root.path("rise"), Dimension.TEMPERATURE)
                : Limit.open(Unit.FAHRENHEIT_DIFFERENCE, "not asked");
        Limit statics = most("/statics", root.path("statics"), PLATE);
        Limit control = most("/control", root.path("control"), CONTROL);
        Site site = site(root.path("altitude"));
        if (!clean(problems)) {
            return Optional.empty();
        }
        RatingPlate plate = new RatingPlate(
                root.path("appliance").asString(),
                Fuel.valueOf(constant(root.path("fuel").asString())),
                stages,
                inlet,
                rise,
                statics,
                control,
                site);
        plate.doubts().forEach(d -> problems.add(document.warning("/stages", d)));
        return Optional.of(plate);
    }

    private Optional<StagePlate> stage(String at, JsonNode node) {
        Unit unit = node.has("unit") ? unit(at + "/unit", node.path("unit"), Dimension.PRESSURE) : Unit.INCH_OF_WATER;
        Unit power = node.has("input-unit")
                ? unit(at + "/input-unit", node.path("input-unit"), Dimension.POWER)
                : Clocking.INPUT;
        if (!clean(problems)) {
            return Optional.empty();
        }
        double manifold = node.path("manifold").asDouble(Double.NaN);
        double customary =
                Math.max(Unit.INCH_OF_WATER.to(unit).applyDifference(TOLERANCE_IN_H2O), TOLERANCE_PART * manifold);
        double tolerance =
                Double.isNaN(manifold) ? Double.NaN : node.path("tolerance").asDouble(customary);
        double input = power.to(Clocking.INPUT).apply(node.path("input").asDouble(Double.NaN));
        return Optional.of(new StagePlate(
                node.path("key").asString(), node.path("name").asString(), manifold, tolerance, unit, input));
    }

    private Limit range(String at, JsonNode node, Dimension dimension) {
        Unit named = unit(at + "/unit", node.path("unit"), dimension);
        Unit unit = dimension == Dimension.TEMPERATURE && named.dimension() == dimension ? named.difference() : named;
        double least = node.path("least").asDouble();
        double most = node.path("most").asDouble();
        return least > most ? Limit.open(unit, PLATE) : new Limit(least, most, unit, PLATE);
    }

    /** Told beside what the schema finds, so that one reading of the mistakes is enough. */
    private void reversed(String at, JsonNode node) {
        JsonNode least = node.path("least");
        JsonNode most = node.path("most");
        if (least.isNumber() && most.isNumber() && least.doubleValue() > most.doubleValue()) {
            error(
                    at + "/least",
                    "the range begins at " + least.doubleValue() + " and ends at " + most.doubleValue()
                            + ": it is reversed; exchange them");
        }
    }

    private Limit most(String at, JsonNode node, String source) {
        if (node.isMissingNode()) {
            return Limit.open(Unit.INCH_OF_WATER, "not asked");
        }
        Unit unit = unit(at + "/unit", node.path("unit"), Dimension.PRESSURE);
        return new Limit(Double.NEGATIVE_INFINITY, node.path("most").asDouble(), unit, source);
    }

    private Site site(JsonNode node) {
        if (node.isMissingNode()) {
            return Site.UNKNOWN;
        }
        Unit unit = unit("/altitude/unit", node.path("unit"), Dimension.LENGTH);
        if (unit.dimension() != Dimension.LENGTH) {
            return Site.UNKNOWN;
        }
        try {
            return new Site(
                    unit.to(Site.FOOT).apply(node.path("value").asDouble()),
                    Site.Derating.valueOf(constant(node.path("derating").asString("none"))),
                    node.path("factor").asDouble(Double.NaN));
        } catch (IllegalArgumentException e) {
            error("/altitude", String.valueOf(e.getMessage()));
            return Site.UNKNOWN;
        }
    }

    private static String constant(String word) {
        return word.toUpperCase(Locale.ROOT).replace('-', '_');
    }

    private Unit unit(String at, JsonNode node, Dimension dimension) {
        String code = node.asString();
        Optional<Unit> unit = Unit.find(code);
        if (unit.isEmpty() || unit.get().dimension() != dimension) {
            error(
                    at,
                    "\"" + code + "\" is no unit of " + dimension.name().toLowerCase(Locale.ROOT)
                            + "; write a UCUM code such as "
                            + switch (dimension) {
                                case PRESSURE -> "[in_i'H2O] or mbar";
                                case TEMPERATURE -> "[degF] or K";
                                case LENGTH -> "[ft_i] or m";
                                default -> "[Btu_IT]/h or kW";
                            });
            return Unit.INCH_OF_WATER;
        }
        return unit.get();
    }

    private void error(String pointer, String message) {
        problems.add(document.error(pointer, message));
    }

    /** Compiled when the first plate is read. */
    private static final class SchemaHolder {
        static final DocumentSchema SCHEMA = DocumentSchema.of(Plans.resource("plate.schema.json"));
    }
}
