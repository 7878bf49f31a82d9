package settlemark.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import settlemark.measure.Conversion;

class SensorTest {
    private static final long SEED = 7;
    private final Furnace furnace = new Furnace(20_000_000);

    private Sensor sensor(SensorErrors errors) {
        System.out.println("sensor seed " + SEED);
        return new Sensor(RigTruth::inletAtGaugeInH2o, Conversion.IDENTITY, errors, furnace.truth(), new Random(SEED));
    }

    /** Standard error of a standard deviation from n normal readings: sigma / sqrt(2 n), here 0.7 %; four of them. */
    @Test
    void noiseHasItsStandardDeviationAndNoMean() {
        Sensor sensor = sensor(new SensorErrors(0, 0, 0, 0.006, 0, 0.05));
        int n = 10_000;
        double sum = 0;
        double squares = 0;
        double neighbours = 0;
        double last = 0;
        for (int i = 0; i < n; i++) {
            double error = sensor.read(0.1) - 7.8;
            sum += error;
            squares += error * error;
            neighbours += error * last;
            last = error;
        }
        assertThat(sum / n).isCloseTo(0, within(4 * 0.006 / Math.sqrt(n)));
        assertThat(Math.sqrt(squares / n)).isCloseTo(0.006, within(4 * 0.006 / Math.sqrt(2.0 * n)));
        assertThat(neighbours / squares).isCloseTo(0, within(0.04));
    }

    /** A first-order noise of 1.5 s keeps exp(-0.1 / 1.5) = 0.935 from one reading to the next. */
    @Test
    void swirlIsSlowAndAsWideAsItSays() {
        Sensor sensor = sensor(new SensorErrors(0, 0, 0, 0, 0.05, 9));
        double squares = 0;
        double neighbours = 0;
        double last = 0;
        int n = 100_000;
        for (int i = 0; i < n; i++) {
            double error = sensor.read(0.1) - 7.8;
            squares += error * error;
            neighbours += error * last;
            last = error;
        }
        assertThat(Math.sqrt(squares / n)).isCloseTo(0.05, within(0.002));
        assertThat(neighbours / squares).isCloseTo(Math.exp(-0.1 / 1.5), within(0.01));
    }

    @Test
    void laggedSensorReaches63PercentAfterItsTimeConstant() {
        Sensor sensor = sensor(new SensorErrors(0, 0, 0, 0, 0, 9));
        furnace.portsOpen(true);
        for (int i = 0; i < 450; i++) {
            sensor.step(furnace.truth(), 0.02);
        }
        assertThat(sensor.read(0.1)).isCloseTo(7.8 * Math.exp(-1), within(1e-9));
    }

    @Test
    void gainZeroAndDriftAddUp() {
        Sensor sensor = sensor(new SensorErrors(0.01, 0.02, 0.005, 0, 0, 0.05));
        assertThat(sensor.read(0.1)).isCloseTo(7.8 * 1.01 + 0.02, within(1e-12));
        for (int i = 0; i < 50 * 900; i++) {
            sensor.step(furnace.truth(), 0.02);
        }
        assertThat(sensor.read(0.1)).isCloseTo(7.8 * 1.01 + 0.02 + 0.005 * (1 - Math.exp(-1)), within(1e-9));
    }
}
