package settlemark.calc;

import java.util.Objects;
import java.util.Optional;
import settlemark.measure.Quantity;

/**
 * Settled pressures of one gas supply, all gauge, with the gas rates that went with them.
 *
 * @param lockUp inlet with nothing firing
 * @param low inlet with this appliance at its low stage
 * @param high inlet with this appliance at its high stage
 * @param lowFlow gas rate of the low stage
 * @param highFlow gas rate of the high stage
 * @param others inlet at high stage with other loads firing too, where it was read
 * @param atMeter a second gauge at the meter's outlet, where there was one
 * @param expected lock-up that the supplier or the plate names, where it is known
 */
public record SupplyReadings(
        Quantity lockUp,
        Quantity low,
        Quantity high,
        Quantity lowFlow,
        Quantity highFlow,
        Optional<Others> others,
        Optional<AtMeter> atMeter,
        Optional<Quantity> expected) {
    public SupplyReadings {
        Objects.requireNonNull(lockUp);
        Objects.requireNonNull(low);
        Objects.requireNonNull(high);
        Objects.requireNonNull(others);
        Objects.requireNonNull(atMeter);
        Objects.requireNonNull(expected);
        double ratio = highFlow.to(lowFlow.unit()).value() / lowFlow.value();
        if (!(ratio > 1.05)) {
            throw new IllegalArgumentException(
                    "the high stage's gas rate must be at least 5 % above the low one's, got " + highFlow + " and "
                            + lowFlow + "; with one stage only the step of another load tells");
        }
    }

    /**
     * The other loads' step.
     *
     * @param inlet at this appliance, at high stage
     * @param flow of the other loads alone
     */
    public record Others(Quantity inlet, Quantity flow) {
        public Others {
            Objects.requireNonNull(inlet);
            if (!(flow.value() > 0)) {
                throw new IllegalArgumentException("the other loads' gas rate must be above 0, got " + flow);
            }
        }
    }

    /**
     * The meter's outlet at the same times.
     *
     * @param lockUp with nothing firing
     * @param high with this appliance at its high stage
     */
    public record AtMeter(Quantity lockUp, Quantity high) {
        public AtMeter {
            Objects.requireNonNull(lockUp);
            Objects.requireNonNull(high);
        }
    }
}
