package settlemark.calc;

import java.util.Objects;
import java.util.Optional;
import settlemark.measure.Quantity;

/**
 * Up to three looks at one heat flow.
 *
 * @param orifice gas rate from manifold pressure and orifices, all burners together
 * @param meter gas rate from the clocked meter, on the same basis
 * @param heatingValue heat per volume on that basis
 * @param air input that rise and airflow speak for: heat given to the air over the efficiency. Only where the airflow was
 *     measured independently; one that was reckoned from the input says nothing
 */
public record HeatLooks(
        Optional<Quantity> orifice, Optional<Quantity> meter, Quantity heatingValue, Optional<Quantity> air) {
    public HeatLooks {
        Objects.requireNonNull(heatingValue);
        requirePositive(heatingValue);
        orifice.ifPresent(HeatLooks::requirePositive);
        meter.ifPresent(HeatLooks::requirePositive);
        air.ifPresent(HeatLooks::requirePositive);
        if (orifice.isEmpty() && meter.isEmpty()) {
            throw new IllegalArgumentException("a gas rate is needed, from the orifice or from the meter");
        }
    }

    private static void requirePositive(Quantity quantity) {
        if (!(quantity.value() > 0) || !(quantity.standardUncertainty() > 0)) {
            throw new IllegalArgumentException(
                    "a look needs a value and a standard uncertainty above 0, got " + quantity);
        }
    }
}
