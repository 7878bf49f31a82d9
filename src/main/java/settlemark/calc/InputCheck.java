package settlemark.calc;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/** Whether inputs are what a formula asks for. */
final class InputCheck {
    private final Formula formula;
    private final Inputs inputs;
    private final List<String> problems = new ArrayList<>();

    InputCheck(Formula formula, Inputs inputs) {
        this.formula = formula;
        this.inputs = inputs;
    }

    void run() throws RefusedInputException {
        Set<String> known = new TreeSet<>();
        formula.parameters().forEach(p -> known.add(p.key()));
        Set<String> given = new TreeSet<>(inputs.numbers().keySet());
        given.addAll(inputs.choices().keySet());
        given.removeAll(known);
        given.forEach(key ->
                problems.add(formula.name() + " has no input \"" + key + "\"; it has " + String.join(", ", known)));
        Set<String> alternative = new HashSet<>();
        for (List<String> group : formula.alternatives()) {
            alternative.addAll(group);
            checkGroup(group);
        }
        for (Parameter parameter : formula.parameters()) {
            boolean needed = !parameter.optional() && !alternative.contains(parameter.key());
            check(parameter, needed);
        }
        if (!problems.isEmpty()) {
            throw new RefusedInputException(problems);
        }
    }

    private void checkGroup(List<String> group) {
        long count = group.stream().filter(inputs::has).count();
        if (count != 1) {
            problems.add("exactly one of " + String.join(", ", group) + " must be given, got " + count);
        }
    }

    private void check(Parameter parameter, boolean needed) {
        if (!inputs.has(parameter.key())) {
            if (needed) {
                problems.add(parameter.key() + " is missing: " + parameter.words() + hint(parameter));
            }
        } else if (parameter instanceof Parameter.Choice choice) {
            checkChoice(choice);
        } else {
            checkNumber((Parameter.Number) parameter);
        }
    }

    private static String hint(Parameter parameter) {
        if (parameter instanceof Parameter.Choice choice) {
            return ", one of " + String.join(", ", choice.choices());
        }
        Parameter.Number number = (Parameter.Number) parameter;
        return ", " + range(number, number.shown());
    }

    private void checkChoice(Parameter.Choice choice) {
        String said = inputs.choices().get(choice.key());
        if (said == null || !choice.choices().isEmpty() && !choice.choices().contains(said)) {
            problems.add(choice.key() + " must be one of " + String.join(", ", choice.choices()) + ", got "
                    + (said == null ? "a number" : "\"" + said + "\""));
        }
    }

    private void checkNumber(Parameter.Number number) {
        Optional<Quantity> given = inputs.number(number.key());
        if (given.isEmpty()) {
            problems.add(number.key() + " must be a number with a unit such as "
                    + number.shown().code());
            return;
        }
        Unit unit = given.get().unit();
        if (unit.dimension() != number.unit().dimension()) {
            problems.add(number.key() + " must be in a unit such as "
                    + number.shown().code() + ", got " + unit.code());
            return;
        }
        double si = unit.to(number.unit()).apply(given.get().value());
        if (!number.holds(si)) {
            problems.add(String.format(
                    Locale.ROOT,
                    "%s must be %s, got %s %s",
                    number.key(),
                    range(number, unit),
                    Significant.digits(given.get().value()),
                    unit.code()));
        }
    }

    private static String range(Parameter.Number number, Unit unit) {
        double low = number.unit().to(unit).apply(number.least());
        double high = number.unit().to(unit).apply(number.most());
        return Significant.digits(Math.min(low, high)) + " to " + Significant.digits(Math.max(low, high)) + " "
                + unit.code();
    }
}
