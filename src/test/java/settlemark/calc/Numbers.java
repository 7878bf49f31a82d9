package settlemark.calc;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import settlemark.measure.Dimension;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/** The numbers of a call in the order and the units in which its formula computes. */
final class Numbers {
    private Numbers() {}

    static double[] of(TypicalCall call) {
        return read(call, Quantity::value);
    }

    static double[] uncertaintiesOf(TypicalCall call) {
        return read(call, Quantity::standardUncertainty);
    }

    private static double[] read(TypicalCall call, ToDoubleFunction<Quantity> figure) {
        List<Double> numbers = new ArrayList<>();
        for (Parameter parameter : call.formula().parameters()) {
            if (parameter instanceof Parameter.Number number) {
                given(call.inputs(), number.key())
                        .ifPresent(q -> numbers.add(figure.applyAsDouble(computed(call.formula(), number, q))));
            }
        }
        return numbers.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static Optional<Quantity> given(Inputs inputs, String key) {
        return Optional.ofNullable(inputs.numbers().get(key));
    }

    /** In the formula's unit; as it is where the formula takes any unit (these calls give all in one). */
    static Quantity computed(Formula formula, Parameter.Number number, Quantity given) {
        if (formula.inAnyUnit()) {
            return given;
        }
        Unit unit = number.unit().dimension() == Dimension.TEMPERATURE_DIFFERENCE
                ? given.unit().difference()
                : given.unit();
        Quantity read = new Quantity(given.value(), given.standardUncertainty(), unit);
        return read.to(number.unit());
    }
}
