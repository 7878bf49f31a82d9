package settlemark.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import settlemark.session.DemoHands.Call;

/**
 * Over a whole cycle (cold, low fire, high fire, off, overrun, rest) the gas heat that went in equals the heat that the
 * air took, the flue's loss and the change of what is stored. The sums are taken here from the truth alone, by the
 * trapezoidal rule, not from inside the model.
 */
class EnergyBalanceTest {
    private static final double SECONDS_PER_HOUR = 3600;

    private record Cycle(double gasBtu, double airBtu, double flueBtu, double storedBtu, RigTruth end) {
        double imbalance() {
            return (gasBtu - airBtu - flueBtu - storedBtu) / gasBtu;
        }
    }

    private static Cycle cycle(long stepNanos) {
        Furnace furnace = new Furnace(stepNanos);
        RigTruth start = furnace.truth();
        RigTruth last = start;
        double gas = 0;
        double air = 0;
        double flue = 0;
        long end = 3600_000_000_000L;
        while (furnace.timeNanos() < end) {
            furnace.call(callAt(furnace.timeNanos() / 1e9));
            furnace.otherLoad(furnace.timeNanos() / 1e9 > 1500 && furnace.timeNanos() / 1e9 < 1800);
            furnace.step();
            RigTruth now = furnace.truth();
            double halfHours = (now.timeNanos() - last.timeNanos()) / 1e9 / SECONDS_PER_HOUR / 2;
            gas += halfHours * (last.gasHeatBtuPerHour() + now.gasHeatBtuPerHour());
            air += halfHours * (last.airHeatBtuPerHour() + now.airHeatBtuPerHour());
            flue += halfHours * (last.flueLossBtuPerHour() + now.flueLossBtuPerHour());
            last = now;
        }
        return new Cycle(gas, air, flue, last.storedBtu() - start.storedBtu(), last);
    }

    private static Call callAt(double seconds) {
        if (seconds < 60 || seconds > 2700) {
            return Call.OFF;
        }
        return seconds < 1200 ? Call.LOW : Call.HIGH;
    }

    /**
     * Tolerance 1e-5 of the gas heat. What is left is the error of integration: the flame and the blower jump within a
     * step of 20 ms; it is measured below by quartering the step.
     */
    @Test
    void closesOverAWholeCycle() {
        Cycle cycle = cycle(20_000_000);
        System.out.println("energy balance, 20 ms: " + cycle.imbalance() + " of " + cycle.gasBtu() + " Btu");
        assertThat(cycle.gasBtu()).isGreaterThan(40_000);
        assertThat(cycle.airBtu()).isGreaterThan(0.7 * cycle.gasBtu());
        assertThat(cycle.imbalance()).isCloseTo(0, within(1e-5));
    }

    @Test
    void integrationErrorIsFarBelowWhatAnInstrumentSees() {
        Cycle coarse = cycle(20_000_000);
        Cycle fine = cycle(5_000_000);
        System.out.println("energy balance, 5 ms: " + fine.imbalance());
        assertThat(Math.abs(fine.imbalance())).isLessThan(Math.abs(coarse.imbalance()));
        assertThat(coarse.end().supplyDegF()).isCloseTo(fine.end().supplyDegF(), within(0.001));
        assertThat(coarse.end().exchangerDegF()).isCloseTo(fine.end().exchangerDegF(), within(0.001));
        assertThat(coarse.gasBtu() / fine.gasBtu()).isCloseTo(1, within(1e-4));
    }

    /** A heating bill's view: heat into the air is the plate's efficiency once everything is warm. */
    @Test
    void steadyEfficiencyIsThatOfTheFurnace() {
        Furnace furnace = new Furnace(20_000_000);
        furnace.call(Call.HIGH);
        for (int i = 0; i < 150_000; i++) {
            furnace.step();
        }
        RigTruth truth = furnace.truth();
        assertThat(truth.airHeatBtuPerHour() / truth.gasHeatBtuPerHour()).isCloseTo(0.80, within(0.001));
        assertThat(truth.flueLossBtuPerHour() / truth.gasHeatBtuPerHour()).isCloseTo(0.20, within(0.001));
    }
}
