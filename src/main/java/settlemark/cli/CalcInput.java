package settlemark.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import settlemark.calc.Formula;
import settlemark.calc.Inputs;
import settlemark.calc.Parameter;
import settlemark.measure.Quantity;
import settlemark.measure.Spelling;
import settlemark.measure.Unit;

/** {@code key=value} of the command line, with units in the trade's spelling or in UCUM. */
final class CalcInput {
    private static final String NUMBER = "([+-]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?)";
    private static final Pattern VALUE = Pattern.compile(NUMBER + "(?:\\s*(?:\\+-|\u00b1)\\s*" + NUMBER + ")?\\s*(.*)");
    private static final Pattern COMMA = Pattern.compile("[+-]?[0-9]+,[0-9]+.*");

    private CalcInput() {}

    /** Takes one argument more; adds what is wrong to the problems. */
    static Inputs add(Inputs inputs, Formula formula, String argument, List<String> problems) {
        int equals = argument.indexOf('=');
        if (equals <= 0) {
            problems.add("\"" + argument + "\" must be key=value, such as pressure=\"3.5 inH2O\"");
            return inputs;
        }
        String key = argument.substring(0, equals).strip();
        String text = argument.substring(equals + 1).strip();
        Optional<Parameter> parameter =
                formula.parameters().stream().filter(p -> p.key().equals(key)).findFirst();
        if (parameter.isPresent() && parameter.get() instanceof Parameter.Choice choice) {
            return inputs.with(key, meant(choice, text));
        }
        return quantity(key, text, formula, problems)
                .map(q -> inputs.with(key, q))
                .orElse(inputs);
    }

    /** A choice however it is capitalised and hyphenated. */
    private static String meant(Parameter.Choice choice, String said) {
        return choice.choices().stream()
                .filter(c -> plain(c).equals(plain(said)))
                .findFirst()
                .orElse(said);
    }

    private static String plain(String text) {
        return text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    }

    /** A number with its unit, and a standard uncertainty after +- where there is one. */
    static Optional<Quantity> quantity(String key, String text, Formula formula, List<String> problems) {
        if (COMMA.matcher(text).matches()) {
            problems.add(key + " must be a number, got \"" + text + "\" (use a point)");
            return Optional.empty();
        }
        Matcher value = VALUE.matcher(text);
        if (!value.matches()) {
            problems.add(key + " must be a number and its unit, such as \"" + example(key, formula) + "\", got \""
                    + text + "\"");
            return Optional.empty();
        }
        Optional<Unit> unit = unit(value.group(3));
        if (unit.isEmpty()) {
            problems.add(key + " has an unknown unit \"" + value.group(3) + "\"; write it as in \""
                    + example(key, formula) + "\" or in UCUM");
            return Optional.empty();
        }
        double uncertainty = value.group(2) == null ? 0 : Math.abs(Double.parseDouble(value.group(2)));
        return Optional.of(new Quantity(Double.parseDouble(value.group(1)), uncertainty, unit.get()));
    }

    static Optional<Unit> unit(String text) {
        return text.isBlank() ? Optional.of(Unit.ucum("1")) : Spelling.unit(text);
    }

    private static String example(String key, Formula formula) {
        return formula.parameters().stream()
                .filter(p -> p.key().equals(key) && p instanceof Parameter.Number)
                .map(p -> "3.5 " + ((Parameter.Number) p).shown().code())
                .findFirst()
                .orElse("3.5 Pa");
    }
}
