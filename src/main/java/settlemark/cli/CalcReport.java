package settlemark.cli;

import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import settlemark.calc.Formula;
import settlemark.calc.Parameter;
import settlemark.calc.Result;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Formulas and their results, for people and for programs. */
final class CalcReport {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final MathContext DIGITS = new MathContext(6);

    private CalcReport() {}

    static void result(Result result, PrintWriter out) {
        String unit = result.quantity().unit().symbol();
        String value = digits(result.quantity().value());
        String uncertainty = result.quantity().standardUncertainty() > 0
                ? " \u00b1 " + digits(result.quantity().expandedUncertainty()) + " (k = 2)"
                : "";
        out.println(value + uncertainty + (unit.equals("1") ? "" : " " + unit));
        result.contributions().forEach(c -> out.println("  from " + c.key() + ": " + digits(c.standardUncertainty())));
        out.println("source: " + result.source());
        out.println("valid: " + result.validity());
        result.warnings().forEach(warning -> out.println("note: " + warning));
    }

    static void json(Result result, PrintWriter out) {
        ObjectNode node = MAPPER.createObjectNode();
        node.put("value", result.quantity().value());
        node.put("unit", result.quantity().unit().code());
        node.put("uncertainty", result.quantity().standardUncertainty());
        node.put("formula", result.formula());
        node.put("source", result.source());
        node.put("validity", result.validity());
        node.put("linear", result.linear());
        ArrayNode contributions = node.putArray("contributions");
        result.contributions()
                .forEach(c ->
                        contributions.addObject().put("input", c.key()).put("uncertainty", c.standardUncertainty()));
        ArrayNode warnings = node.putArray("warnings");
        result.warnings().forEach(warnings::add);
        out.println(MAPPER.writeValueAsString(node));
    }

    static void list(List<Formula> formulas, PrintWriter out) {
        for (Formula formula : formulas) {
            out.println(formula.name() + " " + keys(formula));
            out.println("    " + formula.words() + units(formula));
        }
    }

    static void describe(Formula formula, PrintWriter out) {
        out.println(formula.name() + ": " + formula.words());
        for (Parameter parameter : formula.parameters()) {
            out.println("  " + parameter.key() + (parameter.optional() ? " (may be left out)" : "") + ": "
                    + parameter.words() + ", " + kind(parameter));
        }
        formula.alternatives().forEach(group -> out.println("  exactly one of " + String.join(", ", group)));
        out.println("source: " + formula.source());
        out.println("valid: " + formula.validity());
    }

    static void listJson(List<Formula> formulas, PrintWriter out) {
        ArrayNode array = MAPPER.createArrayNode();
        for (Formula formula : formulas) {
            ObjectNode node = array.addObject();
            node.put("name", formula.name());
            node.put("words", formula.words());
            ArrayNode inputs = node.putArray("inputs");
            formula.parameters().forEach(parameter -> input(parameter, inputs.addObject()));
            node.put("unit", formula.customaryUnit().code());
            node.put("metricUnit", formula.metricUnit().code());
            node.put("source", formula.source());
            node.put("validity", formula.validity());
        }
        out.println(MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(array));
    }

    private static void input(Parameter parameter, ObjectNode node) {
        node.put("key", parameter.key());
        node.put("words", parameter.words());
        node.put("optional", parameter.optional());
        if (parameter instanceof Parameter.Number number) {
            node.put("unit", number.shown().code());
        } else if (parameter instanceof Parameter.Choice choice) {
            ArrayNode choices = node.putArray("choices");
            choice.choices().forEach(choices::add);
        }
    }

    private static String units(Formula formula) {
        String customary = formula.customaryUnit().symbol();
        String metric = formula.metricUnit().symbol();
        if (customary.equals("1")) {
            return "";
        }
        return ", " + (customary.equals(metric) ? customary : customary + " or " + metric);
    }

    private static String keys(Formula formula) {
        StringBuilder keys = new StringBuilder();
        for (Parameter parameter : formula.parameters()) {
            boolean alternative = formula.alternatives().stream().anyMatch(g -> g.contains(parameter.key()));
            keys.append(keys.isEmpty() ? "" : " ")
                    .append(parameter.optional() || alternative ? "[" + parameter.key() + "]" : parameter.key());
        }
        return keys.toString();
    }

    private static String kind(Parameter parameter) {
        if (parameter instanceof Parameter.Number number) {
            return "such as " + number.shown().code();
        }
        List<String> choices = ((Parameter.Choice) parameter).choices();
        if (choices.isEmpty()) {
            return "such as mbar";
        }
        return choices.size() > 8
                ? choices.get(0) + " to " + choices.get(choices.size() - 1)
                : "one of " + String.join(", ", choices);
    }

    static String digits(double number) {
        BigDecimal rounded = new BigDecimal(number).round(DIGITS).stripTrailingZeros();
        return Math.abs(rounded.precision() - rounded.scale()) <= 9 || rounded.signum() == 0
                ? rounded.toPlainString()
                : rounded.toString();
    }
}
