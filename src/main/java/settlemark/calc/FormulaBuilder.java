package settlemark.calc;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import settlemark.measure.Dimension;
import settlemark.measure.Unit;

/** Writes a formula down. Ranges are given in the unit that people say them in. */
final class FormulaBuilder {
    private static final String DIFFERENCE = " difference";

    final String name;
    final String words;
    final List<Parameter> parameters = new ArrayList<>();
    final List<List<String>> alternatives = new ArrayList<>();
    /** Key of the number whose unit all others are brought to, empty where each has its own. */
    String leading = "";
    /** Key of the number that is a width on the leading one's scale. */
    String width = "";
    /** Whether the result is in the leading number's unit. */
    boolean inLeading;

    Unit unit = Unit.ucum("1");
    Unit customary = unit;
    Unit metric = unit;
    String source = "";
    String validity = "";
    ToDoubleFunction<Values> evaluation = values -> Double.NaN;
    Function<Values, List<String>> warnings = values -> List.of();
    Function<Values, List<String>> refusals = values -> List.of();

    private FormulaBuilder(String name, String words) {
        this.name = name;
        this.words = words;
    }

    static FormulaBuilder formula(String name, String words) {
        return new FormulaBuilder(name, words);
    }

    FormulaBuilder number(String key, String what, String si, String shown, double least, double most) {
        return number(key, what, false, si, shown, least, most);
    }

    FormulaBuilder optional(String key, String what, String si, String shown, double least, double most) {
        return number(key, what, true, si, shown, least, most);
    }

    private FormulaBuilder number(
            String key, String what, boolean optional, String si, String shown, double least, double most) {
        Unit base = unit(si);
        Unit in = base.dimension() == Dimension.TEMPERATURE_DIFFERENCE ? unit(shown + DIFFERENCE) : unit(shown);
        double low = in.to(base).apply(least);
        double high = in.to(base).apply(most);
        parameters.add(new Parameter.Number(key, what, optional, base, in, low, high));
        return this;
    }

    private static Unit unit(String code) {
        return code.endsWith(DIFFERENCE)
                ? Unit.ucum(code.substring(0, code.length() - DIFFERENCE.length()))
                        .difference()
                : Unit.ucum(code);
    }

    FormulaBuilder choice(String key, String what, String... choices) {
        parameters.add(new Parameter.Choice(key, what, false, List.of(choices)));
        return this;
    }

    /** Exactly one of these keys must be given. */
    FormulaBuilder oneOf(String... keys) {
        alternatives.add(List.of(keys));
        return this;
    }

    /** Numbers come in any unit, all in one of the same kind; the named width is a difference on its scale. */
    FormulaBuilder inOneUnit(String leadingKey, String widthKey) {
        leading = leadingKey;
        width = widthKey;
        return this;
    }

    FormulaBuilder source(String said) {
        source = said;
        return this;
    }

    FormulaBuilder validity(String said) {
        validity = said;
        return this;
    }

    FormulaBuilder warns(Function<Values, List<String>> said) {
        warnings = said;
        return this;
    }

    /** What is wrong with inputs together where each for itself is in its range; nothing where they are good. */
    FormulaBuilder refuses(Function<Values, List<String>> said) {
        refusals = said;
        return this;
    }

    /** Units of the result: the SI unit that it is computed in, the customary and the metric one that it is shown in. */
    Formula gives(String si, String inCustomary, String inMetric, ToDoubleFunction<Values> computed) {
        unit = unit(si);
        customary = unit(inCustomary);
        metric = unit(inMetric);
        evaluation = computed;
        return new Formula(this);
    }

    /** A result in the unit that the leading number came in. */
    Formula givesLeading(ToDoubleFunction<Values> computed) {
        inLeading = true;
        return givesNumber(computed);
    }

    /** A result that is a number without a unit. */
    Formula givesNumber(ToDoubleFunction<Values> computed) {
        return gives("1", "1", "1", computed);
    }
}
