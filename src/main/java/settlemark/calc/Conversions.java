package settlemark.calc;

import java.util.List;
import java.util.function.Function;
import settlemark.measure.Dimension;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/** What is computed in whatever unit the inputs come in. */
final class Conversions {
    private Conversions() {}

    /** All numbers in the unit of the first one; widths by the slope alone. */
    static Inputs inOneUnit(Inputs inputs, String leading, String width) throws RefusedInputException {
        Quantity first = inputs.numbers().get(leading);
        if (first == null) {
            return inputs;
        }
        Unit one = Unit.ucum("1");
        Inputs plain = new Inputs(java.util.Map.of(), inputs.choices());
        for (var entry : inputs.numbers().entrySet()) {
            boolean isWidth = entry.getKey().equals(width);
            Function<Unit, Unit> kind = unit -> isWidth ? unit.difference() : unit;
            Unit from = kind.apply(entry.getValue().unit());
            Unit to = kind.apply(first.unit());
            if (from.dimension() != to.dimension() || from.dimension() == Dimension.OTHER && !from.equals(to)) {
                throw new RefusedInputException(List.of(entry.getKey() + " must be in a unit of the same kind as "
                        + leading + ", " + first.unit().code() + ", got " + from.code()));
            }
            double slope = Math.abs(from.to(to).slope());
            plain = plain.with(
                    entry.getKey(),
                    new Quantity(
                            from.to(to).apply(entry.getValue().value()),
                            entry.getValue().standardUncertainty() * slope,
                            one));
        }
        return plain;
    }
}
