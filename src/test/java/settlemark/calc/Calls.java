package settlemark.calc;

import java.util.Arrays;
import settlemark.measure.Quantity;
import settlemark.measure.Spelling;
import settlemark.measure.Unit;

/** Formulas called as {@code name|key=value unit|...}. */
final class Calls {
    private Calls() {}

    static Result call(String text) throws RefusedInputException {
        String[] words = text.split("\\|", -1);
        Formula formula = Formulas.find(words[0]).orElseThrow(() -> new AssertionError("no formula " + words[0]));
        Inputs inputs = Inputs.none();
        for (String argument : Arrays.asList(words).subList(1, words.length)) {
            String[] pair = argument.split("=", 2);
            boolean choice = formula.parameters().stream()
                    .anyMatch(p -> p.key().equals(pair[0]) && p instanceof Parameter.Choice);
            inputs = choice ? inputs.with(pair[0], pair[1]) : inputs.with(pair[0], quantity(pair[1]));
        }
        return formula.of(inputs);
    }

    /** {@code "3.5 inH2O"} or {@code "3.5+-0.1 inH2O"}. */
    static Quantity quantity(String text) {
        String[] words = text.split(" ", 2);
        String[] numbers = words[0].split("\\+-", -1);
        double uncertainty = numbers.length > 1 ? Double.parseDouble(numbers[1]) : 0;
        return new Quantity(
                Double.parseDouble(numbers[0]), uncertainty, words.length > 1 ? unit(words[1]) : Unit.ucum("1"));
    }

    static Unit unit(String text) {
        boolean difference = text.startsWith("difference ");
        Unit unit = Spelling.unit(difference ? text.substring(11) : text)
                .orElseThrow(() -> new AssertionError("no unit " + text));
        return difference ? unit.difference() : unit;
    }
}
