package settlemark.job;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import settlemark.document.Document;
import settlemark.document.Problem;
import settlemark.measure.Dimension;
import settlemark.measure.Unit;
import tools.jackson.databind.JsonNode;

/**
 * What a schema cannot see of a plate: units, reversed ranges, stages that stand twice, a place that cannot be. Each looks at
 * its own fields alone and only where they can be read, so that it is told beside the schema's errors elsewhere.
 */
final class PlateChecks {
    private final Document document;
    private final List<Problem> problems;

    private PlateChecks(Document document, List<Problem> problems) {
        this.document = document;
        this.problems = problems;
    }

    /** @param problems gets an error for each that is found */
    static void check(Document document, List<Problem> problems) {
        PlateChecks checks = new PlateChecks(document, problems);
        JsonNode root = document.root();
        for (String range : List.of("inlet", "rise")) {
            checks.reversed("/" + range, root.path(range));
        }
        for (String pressure : List.of("inlet", "statics", "control")) {
            checks.unit("/" + pressure + "/unit", root.path(pressure).path("unit"), Dimension.PRESSURE);
        }
        checks.unit("/rise/unit", root.path("rise").path("unit"), Dimension.TEMPERATURE);
        checks.stages(root.path("stages"));
        checks.site(root.path("altitude"));
    }

    private void stages(JsonNode stages) {
        Set<String> keys = new HashSet<>();
        for (int i = 0; i < stages.size(); i++) {
            String at = "/stages/" + i;
            JsonNode stage = stages.path(i);
            JsonNode key = stage.path("key");
            if (key.isString() && !keys.add(key.stringValue())) {
                error(at, "stage \"" + key.stringValue() + "\" stands twice; give each its own key");
            }
            unit(at + "/unit", stage.path("unit"), Dimension.PRESSURE);
            unit(at + "/input-unit", stage.path("input-unit"), Dimension.POWER);
        }
    }

    private void reversed(String at, JsonNode range) {
        JsonNode least = range.path("least");
        JsonNode most = range.path("most");
        if (least.isNumber() && most.isNumber() && least.doubleValue() > most.doubleValue()) {
            error(
                    at + "/least",
                    "the range begins at " + least.doubleValue() + " and ends at " + most.doubleValue()
                            + ": it is reversed; exchange them");
        }
    }

    private void site(JsonNode site) {
        Optional<Unit> unit = unit("/altitude/unit", site.path("unit"), Dimension.LENGTH);
        JsonNode value = site.path("value");
        if (unit.isPresent() && value.isNumber()) {
            Site.altitudeProblem(unit.get().to(Site.FOOT).apply(value.doubleValue()))
                    .ifPresent(p -> error("/altitude/value", p));
        }
        JsonNode factor = site.path("factor");
        Optional<Site.Derating> derating = derating(site);
        if (derating.isPresent() && (factor.isNumber() || factor.isMissingNode())) {
            Site.factorProblem(derating.get(), factor.asDouble(Double.NaN))
                    .ifPresent(p -> error(factor.isMissingNode() ? "/altitude" : "/altitude/factor", p));
        }
    }

    /** None where none is said; empty where it is no word of the language. */
    static Optional<Site.Derating> derating(JsonNode site) {
        JsonNode word = site.path("derating");
        if (word.isMissingNode()) {
            return Optional.of(Site.Derating.NONE);
        }
        for (Site.Derating derating : Site.Derating.values()) {
            if (word.isString()
                    && derating.name()
                            .toLowerCase(Locale.ROOT)
                            .replace('_', '-')
                            .equals(word.stringValue())) {
                return Optional.of(derating);
            }
        }
        return Optional.empty();
    }

    /** The unit, empty where there is none or it is wrong; what is no text or an empty one the schema tells. */
    private Optional<Unit> unit(String at, JsonNode node, Dimension dimension) {
        if (!node.isString() || node.stringValue().isEmpty()) {
            return Optional.empty();
        }
        String code = node.stringValue();
        Optional<Unit> unit = Unit.find(code).filter(u -> u.dimension() == dimension);
        if (unit.isEmpty()) {
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
        }
        return unit;
    }

    private void error(String pointer, String message) {
        problems.add(document.error(pointer, message));
    }
}
