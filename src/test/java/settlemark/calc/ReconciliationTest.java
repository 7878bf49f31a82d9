package settlemark.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/** Simulated jobs: the truth is known, the looks carry errors of their stated uncertainties. */
class ReconciliationTest {
    private static final int JOBS = 1000;
    private static final long SEED = 20_260_314L;
    private static final Unit FLOW = Unit.ucum("[cft_i]/h");
    private static final Unit HEAT = Unit.ucum("[Btu_IT]/[cft_i]");
    private static final Unit POWER = Unit.ucum("[Btu_IT]/h");
    /** Relative standard uncertainties. Orifice: coefficient 1 %, half of 0.5 % of the pressure, of 0.5 % of the density. */
    private static final double ORIFICE = Math.sqrt(0.01 * 0.01 + 2 * 0.0025 * 0.0025);

    private static final double METER = 0.006;
    private static final double VALUE = 0.006;
    private static final double AIR = 0.025;

    /** What is wrong in a job, as factors of what each look should say. */
    private record Planted(double orifice, double meter, double value, double air) {}

    private static HeatLooks job(Random random, Planted planted) {
        double flow = 60 + 100 * random.nextDouble();
        double heat = 950 + 150 * random.nextDouble();
        return new HeatLooks(
                Optional.of(look(flow * planted.orifice(), ORIFICE, FLOW, random)),
                Optional.of(look(flow * planted.meter(), METER, FLOW, random)),
                look(heat * planted.value(), VALUE, HEAT, random),
                Optional.of(look(flow * heat * planted.air(), AIR, POWER, random)));
    }

    private static Quantity look(double truth, double relative, Unit unit, Random random) {
        return new Quantity(truth * Math.exp(relative * random.nextGaussian()), truth * relative, unit);
    }

    private static int found(Planted planted, Reconciliation.Look look) {
        Random random = new Random(SEED);
        int found = 0;
        for (int i = 0; i < JOBS; i++) {
            Reconciliation result = Reconciliation.of(job(random, planted));
            if (result.suspects().stream().anyMatch(s -> s.look() == look)) {
                found++;
            }
        }
        System.out.println("ReconciliationTest " + planted + " seed " + SEED + ": " + found + " of " + JOBS);
        return found;
    }

    @Test
    void goodDataRaisesFewAlarms() {
        Random random = new Random(SEED);
        int alarms = 0;
        for (int i = 0; i < JOBS; i++) {
            alarms += Reconciliation.of(job(random, new Planted(1, 1, 1, 1))).agrees() ? 0 : 1;
        }
        System.out.println("ReconciliationTest good data seed " + SEED + ": " + alarms + " alarms of " + JOBS);
        assertThat(alarms).isLessThanOrEqualTo(JOBS * 2 / 100);
    }

    @Test
    void aWrongOrificeIsFound() {
        // The look supposes 6 % more area than is there, or less.
        assertThat(found(new Planted(1.06, 1, 1, 1), Reconciliation.Look.ORIFICE))
                .isGreaterThan(JOBS * 90 / 100);
        assertThat(found(new Planted(1 / 1.06, 1, 1, 1), Reconciliation.Look.ORIFICE))
                .isGreaterThan(JOBS * 90 / 100);
    }

    @Test
    void aHeatingValueOnAnotherBasisIsFound() {
        assertThat(found(new Planted(1, 1, 1.15, 1), Reconciliation.Look.HEATING_VALUE))
                .isGreaterThan(JOBS * 90 / 100);
    }

    @Test
    void aMisreadDialIsFound() {
        assertThat(found(new Planted(1, 2, 1, 1), Reconciliation.Look.METER)).isEqualTo(JOBS);
        assertThat(found(new Planted(1, 0.5, 1, 1), Reconciliation.Look.METER)).isEqualTo(JOBS);
    }

    @Test
    void theMeaningOfAMisreadDialIsSaid() {
        Reconciliation result = Reconciliation.of(job(new Random(1), new Planted(1, 2, 1, 1)));
        assertThat(result.suspects().get(0).meaning()).contains("another dial");
        assertThat(result.suspects().get(0).ratio()).isCloseTo(2, within(0.1));
    }

    /** Weighted mean of two looks, by hand: weights 1/0.01^2 and 1/0.02^2. */
    @Test
    void twoRatesAreWeighedByTheirUncertainty() {
        HeatLooks looks = new HeatLooks(
                Optional.of(new Quantity(100, 2, FLOW)),
                Optional.of(new Quantity(102, 1.02, FLOW)),
                new Quantity(1000, 1, HEAT),
                Optional.empty());
        Reconciliation result = Reconciliation.of(looks);
        double mean = Math.exp((Math.log(100) / 0.0004 + Math.log(102) / 0.0001) / (1 / 0.0004 + 1 / 0.0001));
        assertThat(result.input().to(POWER).value()).isCloseTo(1000 * mean, within(1e-6 * 1000 * mean));
        assertThat(result.degreesOfFreedom()).isEqualTo(1);
        double apart = Math.log(1.02);
        assertThat(result.chiSquare()).isCloseTo(apart * apart / 0.0005, within(1e-9));
        assertThat(result.agrees()).isTrue();
    }

    /** Two ways to one input: rate times heating value, relative 0.03 and 0.04, so 0.05 by hand; and air, 0.05. */
    @Test
    void airWeighsAsMuchAsRateAndHeatingValueTogether() {
        Reconciliation result = Reconciliation.of(new HeatLooks(
                Optional.of(new Quantity(100, 3, FLOW)),
                Optional.empty(),
                new Quantity(1000, 40, HEAT),
                Optional.of(new Quantity(102_000, 5_100, POWER))));
        double mean = 100_000 * Math.sqrt(1.02);
        assertThat(result.input().to(POWER).value()).isCloseTo(mean, within(1e-6 * mean));
        assertThat(result.input().standardUncertainty() / result.input().value())
                .isCloseTo(0.05 / Math.sqrt(2), within(1e-9));
        assertThat(result.chiSquare()).isCloseTo(Math.pow(Math.log(1.02), 2) / 0.005, within(1e-9));
        assertThat(result.degreesOfFreedom()).isEqualTo(1);
        assertThat(result.agrees()).isTrue();
    }

    @Test
    void aSuspectIsHeldAgainstWhatTheOthersSay() {
        Reconciliation result = Reconciliation.of(new HeatLooks(
                Optional.of(new Quantity(100, 1, FLOW)),
                Optional.of(new Quantity(100, 1, FLOW)),
                new Quantity(1150, 5, HEAT),
                Optional.of(new Quantity(100_000, 2_000, POWER))));
        assertThat(result.suspects())
                .extracting(Reconciliation.Suspect::look)
                .containsExactlyInAnyOrder(Reconciliation.Look.HEATING_VALUE, Reconciliation.Look.AIR);
        for (Reconciliation.Suspect suspect : result.suspects()) {
            boolean value = suspect.look() == Reconciliation.Look.HEATING_VALUE;
            assertThat(suspect.ratio()).isCloseTo(value ? 1.15 : 1 / 1.15, within(1e-9));
            assertThat(suspect.chiSquareWithout()).isCloseTo(0, within(1e-9));
        }
    }

    @Test
    void oneLookHasNothingToCompare() {
        Reconciliation result = Reconciliation.of(new HeatLooks(
                Optional.empty(),
                Optional.of(new Quantity(100, 1, FLOW)),
                new Quantity(1000, 10, HEAT),
                Optional.empty()));
        assertThat(result.degreesOfFreedom()).isZero();
        assertThat(result.agrees()).isTrue();
        assertThat(result.input().standardUncertainty() / result.input().value())
                .isCloseTo(Math.sqrt(2) * 0.01, within(1e-12));
    }

    @Test
    void aLookWithoutUncertaintyIsRefused() {
        assertThatThrownBy(() -> new HeatLooks(
                        Optional.empty(),
                        Optional.of(new Quantity(100, 0, FLOW)),
                        new Quantity(1000, 10, HEAT),
                        Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("standard uncertainty above 0");
    }

    @Test
    void aDialFourTimesAsFastIsADialToo() {
        for (double factor : new double[] {4, 0.25, 0.5}) {
            Reconciliation result = Reconciliation.of(job(new Random(1), new Planted(1, factor, 1, 1)));
            assertThat(result.suspects().get(0).meaning()).contains("another dial");
        }
    }

    @Test
    void twoRatesThatDisagreeAccuseEachOther() {
        Reconciliation result = Reconciliation.of(new HeatLooks(
                Optional.of(new Quantity(100, 1, FLOW)),
                Optional.of(new Quantity(120, 1, FLOW)),
                new Quantity(1000, 5, HEAT),
                Optional.empty()));
        assertThat(result.agrees()).isFalse();
        assertThat(result.suspects())
                .extracting(Reconciliation.Suspect::look)
                .containsExactlyInAnyOrder(Reconciliation.Look.ORIFICE, Reconciliation.Look.METER);
    }

    @Test
    void looksWithoutAGasRateOrWithNothingInThemAreRefused() {
        Quantity heat = new Quantity(1000, 10, HEAT);
        assertThatThrownBy(() -> new HeatLooks(Optional.empty(), Optional.empty(), heat, Optional.empty()))
                .hasMessageContaining("a gas rate is needed");
        assertThatThrownBy(() ->
                        new HeatLooks(Optional.of(new Quantity(0, 1, FLOW)), Optional.empty(), heat, Optional.empty()))
                .hasMessageContaining("above 0");
    }
}
