package settlemark.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.calc.SupplyFinding.Cause;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/**
 * A reckoned supply, no field data: lock-up 7.8 inH2O, 54.2 and 77.7 ft3/h at the two stages, 38.8 ft3/h for the other
 * load; the figures follow from a regulator with 0.4 inH2O droop per 200 ft3/h, a pipe by the low-pressure equation and a
 * cock by the square of the rate.
 */
class SupplyDiagnosisTest {
    private static final double GAUGE = 0.02;

    private static Quantity water(double value) {
        return new Quantity(value, GAUGE, Unit.INCH_OF_WATER);
    }

    private static Quantity flow(double value) {
        return new Quantity(value, 0.5, Unit.ucum("[cft_i]/h"));
    }

    private static SupplyReadings readings(double lockUp, double low, double high) {
        return new SupplyReadings(
                water(lockUp),
                water(low),
                water(high),
                flow(54.2),
                flow(77.7),
                Optional.empty(),
                Optional.empty(),
                Optional.of(water(7.8)));
    }

    private static SupplyReadings others(SupplyReadings r, double inlet) {
        return new SupplyReadings(
                r.lockUp(),
                r.low(),
                r.high(),
                r.lowFlow(),
                r.highFlow(),
                Optional.of(new SupplyReadings.Others(water(inlet), flow(38.8))),
                r.atMeter(),
                r.expected());
    }

    private static SupplyReadings meter(SupplyReadings r, double high) {
        return new SupplyReadings(
                r.lockUp(),
                r.low(),
                r.high(),
                r.lowFlow(),
                r.highFlow(),
                r.others(),
                Optional.of(new SupplyReadings.AtMeter(r.lockUp(), water(high))),
                r.expected());
    }

    private static List<Cause> causes(SupplyReadings readings) {
        return SupplyDiagnosis.of(readings).stream().map(SupplyFinding::cause).toList();
    }

    @Test
    void aSoundSupplyHasNothingToSee() {
        assertThat(causes(others(readings(7.8, 6.98, 6.83), 6.56))).containsExactly(Cause.NOTHING_SEEN);
    }

    @Test
    void aLowSpringShowsWithNothingFiring() {
        assertThat(causes(readings(5.8, 4.98, 4.83))).containsExactly(Cause.SET_LOW);
        assertThat(SupplyDiagnosis.of(readings(5.8, 4.98, 4.83)).get(0).reason())
                .startsWith("2.00 inH2O below the expected lock-up");
    }

    /** One inch of water and twice the gauge's 0.02. */
    @Test
    void aLockUpIsJudgedWithTheGaugesUncertainty() {
        assertThat(causes(readings(6.78, 5.98, 5.83))).containsExactly(Cause.NOTHING_SEEN);
        assertThat(causes(readings(6.74, 5.98, 5.83))).containsExactly(Cause.SET_LOW);
        assertThat(causes(readings(8.82, 5.98, 5.83))).containsExactly(Cause.NOTHING_SEEN);
        assertThat(causes(readings(8.86, 5.98, 5.83))).containsExactly(Cause.HIGH_LOCK_UP);
    }

    @Test
    void aHighLockUpIsWatched() {
        SupplyFinding found = SupplyDiagnosis.of(readings(10.2, 6.98, 6.83)).get(0);
        assertThat(found.cause()).isEqualTo(Cause.HIGH_LOCK_UP);
        assertThat(found.confirm()).contains("shut off");
    }

    @Test
    void aDropAloneNamesNoCause() {
        // A small pipe, a choked cock and a drooping regulator; the ratio of the drops differs, and decides nothing.
        assertThat(causes(readings(7.8, 6.47, 5.82))).containsExactly(Cause.CANNOT_TELL);
        assertThat(causes(readings(7.8, 6.05, 4.91))).containsExactly(Cause.CANNOT_TELL);
        assertThat(causes(readings(7.8, 5.75, 5.06))).containsExactly(Cause.CANNOT_TELL);
    }

    @Test
    void anotherLoadTellsTheBranchFromWhatIsShared() {
        assertThat(causes(others(readings(7.8, 6.47, 5.82), 4.43))).containsExactly(Cause.SHARED);
        assertThat(causes(others(readings(7.8, 5.75, 5.06), 3.97))).containsExactly(Cause.SHARED);
        assertThat(causes(others(readings(7.8, 6.05, 4.91), 4.65))).containsExactly(Cause.BRANCH);
    }

    @Test
    void theMetersOutletTellsPipeFromRegulator() {
        assertThat(causes(meter(others(readings(7.8, 6.47, 5.82), 4.43), 7.0))).containsExactly(Cause.PIPE);
        assertThat(causes(meter(others(readings(7.8, 5.75, 5.06), 3.97), 5.2))).containsExactly(Cause.REGULATOR);
        assertThat(causes(meter(others(readings(7.8, 6.05, 4.91), 4.65), 7.0))).containsExactly(Cause.BRANCH);
        assertThat(causes(meter(readings(7.8, 6.47, 5.82), 7.0))).containsExactly(Cause.CANNOT_TELL);
    }

    @Test
    void poorGaugesCannotTell() {
        SupplyReadings r = others(readings(7.8, 6.47, 5.82), 5.2);
        Quantity poor = new Quantity(5.2, 0.4, Unit.INCH_OF_WATER);
        SupplyReadings unsure = new SupplyReadings(
                r.lockUp(),
                r.low(),
                r.high(),
                r.lowFlow(),
                r.highFlow(),
                Optional.of(new SupplyReadings.Others(poor, flow(38.8))),
                r.atMeter(),
                r.expected());
        assertThat(causes(unsure)).containsExactly(Cause.CANNOT_TELL);
    }

    @Test
    void theReasonHoldsTheFigures() {
        SupplyFinding found =
                SupplyDiagnosis.of(others(readings(7.8, 6.47, 5.82), 4.43)).get(0);
        assertThat(found.reason()).contains("1.39 inH2O").contains("1.07 to 1.58");
    }

    @Test
    void oneStageIsRefused() {
        assertThatThrownBy(() -> new SupplyReadings(
                        water(7.8),
                        water(6.9),
                        water(6.9),
                        flow(77.7),
                        flow(77.7),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("at least 5 % above");
    }
}
