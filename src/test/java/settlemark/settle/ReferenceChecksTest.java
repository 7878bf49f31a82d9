package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.measure.Unit;
import tools.jackson.databind.JsonNode;

/** The arithmetic against certified and tabulated values. */
final class ReferenceChecksTest {
    private static final JsonNode CHECKS = Traces.json("refchecks.json");
    private static final int CAPACITY = 64;

    /** NIST StRD, linear regression, Norris: y, x in pairs. */
    private static final double[] NORRIS = {
        0.1, 0.2, 338.8, 337.4, 118.1, 118.2, 888.0, 884.6, 9.2, 10.1, 228.1, 226.5, 668.5, 666.3, 998.5, 996.3, 449.1,
        448.6, 778.9, 777.0, 559.2, 558.2, 0.3, 0.4, 0.1, 0.6, 778.1, 775.5, 668.8, 666.9, 339.3, 338.0, 448.9, 447.5,
        10.8, 11.6, 557.7, 556.0, 228.3, 228.1, 998.0, 995.8, 888.8, 887.6, 119.6, 120.2, 0.3, 0.3, 557.6, 556.8, 0.6,
        0.3, 339.3, 339.1, 888.0, 887.2, 778.9, 779.0, 10.2, 11.1, 117.6, 118.3, 228.9, 229.2, 668.4, 669.1, 449.2,
        448.9, 0.2, 0.5, 998.5, 999.0
    };

    /** Each pair becomes a bin of its own; a line does not mind the order. */
    private static WindowFit norris(double shiftX, double shiftY) {
        double narrowSeconds = 1e-3;
        BinRing ring = new BinRing(narrowSeconds, CAPACITY);
        for (int i = 0; i < NORRIS.length; i += 2) {
            ring.add(NORRIS[i + 1] + shiftX, NORRIS[i] + shiftY);
        }
        ring.add(2000 + shiftX, 0);
        WindowFit window = new WindowFit(1000, narrowSeconds, new WindowFit.Room(CAPACITY));
        window.fit(ring, 999 + shiftX, 0);
        assertThat(window.filled()).isTrue();
        assertThat(window.bins()).isEqualTo(36);
        return window;
    }

    @Test
    void fitsNorrisAsCertified() {
        JsonNode certified = CHECKS.get("norris").get("certified");
        WindowFit window = norris(0, 0);
        double slope = certified.get("slope").doubleValue();
        assertThat(window.slopePerSecond()).isCloseTo(slope, within(1e-13));
        assertThat(window.meanValue() - window.slopePerSecond() * window.meanSeconds())
                .isCloseTo(certified.get("intercept").doubleValue(), within(1e-11));
        assertThat(Math.sqrt(window.residualVariance()))
                .isCloseTo(certified.get("rsd").doubleValue(), within(1e-12));
        assertThat(Math.sqrt(window.residualVariance() / window.squaredSeconds()))
                .isCloseTo(certified.get("se_slope").doubleValue(), within(1e-15));
    }

    /** Plain sums lose the third digit here. */
    @Test
    void aFarOriginCostsNoDigitsButThoseOfTheData() {
        double slope = norris(1e9, 1e6).slopePerSecond();
        assertThat(slope).isCloseTo(CHECKS.get("norris_shift_x1e9_y1e6_slope").doubleValue(), within(1e-9));
        assertThat(CHECKS.get("naive_sums_same_shift_slope").doubleValue()).isNotCloseTo(slope, within(1e-4));
    }

    /** NIST StRD, univariate, NumAcc1 to NumAcc4: one value, then two in turn. */
    @ParameterizedTest
    @CsvSource({
        "NumAcc1, 10000002,   10000001,   10000003,   2,    0",
        "NumAcc2, 1.2,        1.1,        1.3,        1000, 1e-14",
        "NumAcc3, 1000000.2,  1000000.1,  1000000.3,  1000, 1e-9",
        "NumAcc4, 10000000.2, 10000000.1, 10000000.3, 1000, 1e-8"
    })
    void aBinKeepsTheMean(String name, double first, double low, double high, int others, double tolerance) {
        BinRing ring = new BinRing(2000, 4);
        ring.add(0, first);
        for (int i = 1; i <= others; i++) {
            ring.add(i, i % 2 == 1 ? low : high);
        }
        assertThat(ring.add(2000, 0)).isTrue();
        double expected = CHECKS.get(name).get("mean").doubleValue();
        assertThat(ring.meanValue(0)).isCloseTo(expected, within(tolerance));
    }

    /** Second column: a printed table with three or four decimals; first: computed to six. */
    @Test
    void quantilesOfStudentsTAgreeWithTables() {
        StudentT studentT = new StudentT(0.95, 100);
        JsonNode table = CHECKS.get("t95");
        assertThat(table.size()).isEqualTo(9);
        for (String degrees : table.propertyNames()) {
            double quantile = studentT.quantile(Integer.parseInt(degrees));
            assertThat(quantile).isCloseTo(table.get(degrees).get(0).doubleValue(), within(1e-6));
            assertThat(quantile).isCloseTo(table.get(degrees).get(1).doubleValue(), within(6e-4));
            assertThat(studentT.quantile(Integer.parseInt(degrees))).isEqualTo(quantile);
        }
    }

    @Test
    void aWindowHasItsNumbers() {
        JsonNode given = CHECKS.get("window_fixture");
        BinRing ring = new BinRing(1, CAPACITY);
        for (int i = 0; i < given.get("n").intValue(); i++) {
            ring.add(i + 0.5, given.get("x").get(i).doubleValue());
        }
        ring.add(20, 3.5);
        SettleSettings settings = SettleSettings.defaults(SettleKind.GAS);
        LineProof proof = new LineProof(settings, 20, new StudentT(0.95, CAPACITY), new WindowFit.Room(CAPACITY));
        WindowFit window = proof.window();
        proof.look(ring, 20, 0, 0);
        assertThat(window.bins()).isEqualTo(20);
        assertThat(window.slopePerSecond()).isCloseTo(given.get("m").doubleValue(), within(1e-16));
        assertThat(window.residualVariance()).isCloseTo(given.get("s2").doubleValue(), within(1e-17));
        double plain = given.get("var_m_iid").doubleValue();
        assertThat(window.residualVariance() / window.squaredSeconds()).isCloseTo(plain, within(1e-20));
        assertThat(window.correlatedVariance())
                .isCloseTo(given.get("var_m_HAC_L5").doubleValue(), within(1e-20));
        assertThat(window.noiseVariance()).isCloseTo(plain, within(1e-20));
        // The reference took Student t from a series that is good to 1e-4.
        assertThat(proof.couldMove()).isCloseTo(given.get("ub_H30_a05").doubleValue(), within(5e-7));
        assertThat(proof.holds()).isFalse();
    }

    /** A degree Celsius is 1.8 degrees Fahrenheit, by definition. */
    @Test
    void settingsFollowTheUnit() {
        double factor = Unit.FAHRENHEIT.to(Unit.CELSIUS).slope();
        SettleSettings celsius = SettleSettings.defaults(SettleKind.STACK).scaled(factor);
        assertThat(celsius.driftLimit()).isCloseTo(2 / 1.8, within(1e-12));
        assertThat(celsius.band()).isCloseTo(4 / 1.8, within(1e-12));
        assertThat(celsius.horizonSeconds()).isEqualTo(120);
    }
}
