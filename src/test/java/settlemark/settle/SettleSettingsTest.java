package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

final class SettleSettingsTest {
    private static SettleSettings with(double limit, List<Double> windows, double confidence) {
        return new SettleSettings(SettleKind.GAS, limit, 0.05, 30, 1, windows, 3, 5, false, confidence);
    }

    private static SettleSettings with(double dwell, double gap) {
        return new SettleSettings(SettleKind.GAS, 0.02, 0.05, 30, 1, List.of(20.0), dwell, gap, false, 0.95);
    }

    @Test
    void refuseTimesThatAreNone() {
        assertThat(with(0, 5).dwellSeconds()).isZero();
        assertThatThrownBy(() -> with(-1, 5)).hasMessageContaining("dwell time must not be negative, got -1.0");
        assertThatThrownBy(() -> with(Double.POSITIVE_INFINITY, 5)).hasMessageContaining("got Infinity");
        assertThatThrownBy(() -> with(Double.NaN, 5)).hasMessageContaining("got NaN");
        assertThatThrownBy(() -> with(3, Double.POSITIVE_INFINITY)).hasMessageContaining("gap must be positive");
    }

    @Test
    void refuseSizesThatAreNone() {
        List<Double> windows = List.of(20.0);
        assertThatThrownBy(() -> new SettleSettings(SettleKind.GAS, 0.02, 0, 30, 1, windows, 3, 5, false, 0.95))
                .hasMessage("band must be positive, got 0.0");
        assertThatThrownBy(() -> new SettleSettings(SettleKind.GAS, 0.02, 0.05, -1, 1, windows, 3, 5, false, 0.95))
                .hasMessage("horizon must be positive, got -1.0");
        assertThatThrownBy(() -> new SettleSettings(SettleKind.GAS, 0.02, 0.05, 30, 0, windows, 3, 5, false, 0.95))
                .hasMessage("bin must be positive, got 0.0");
        SettleSettings wide = new SettleSettings(SettleKind.GAS, 0.02, 0.05, 30, 2, List.of(17.0), 3, 5, false, 0.95);
        assertThat(wide.mostBins()).isEqualTo(11);
        assertThatThrownBy(
                        () -> new SettleSettings(SettleKind.GAS, 0.02, 0.05, 30, 2, List.of(15.0), 3, 5, false, 0.95))
                .hasMessageContaining("over 8 to 120 bins of 2.0 s");
    }

    @Test
    void windowsHoldNineToAHundredAndTwentyBins() {
        assertThat(with(0.02, List.of(8.1), 0.95).mostBins()).isEqualTo(11);
        assertThatThrownBy(() -> with(0.02, List.of(8.0), 0.95)).hasMessageContaining("over 8 to");
        assertThat(with(0.02, List.of(120.0), 0.95).mostBins()).isEqualTo(122);
        assertThatThrownBy(() -> with(0.02, List.of(120.1), 0.95)).hasMessageContaining("120 bins");
        List<Double> eight = List.of(9.0, 10.0, 11.0, 12.0, 13.0, 14.0, 15.0, 16.0);
        assertThat(with(0.02, eight, 0.95).windowSeconds()).hasSize(8);
        List<Double> nine = List.of(9.0, 10.0, 11.0, 12.0, 13.0, 14.0, 15.0, 16.0, 17.0);
        assertThatThrownBy(() -> with(0.02, nine, 0.95)).hasMessageContaining("got 9");
    }

    @Test
    void whereTheTimeConstantIsLearntTheCurveHasRoom() {
        assertThat(SettleSettings.defaults(SettleKind.AIR).mostBins()).isEqualTo(122);
        SettleSettings air = SettleSettings.defaults(SettleKind.AIR);
        SettleSettings shorter = new SettleSettings(air.kind(), 0.5, 1, 180, 3, List.of(60.0), 6, 15, true, 0.95);
        assertThat(shorter.mostBins()).isEqualTo(120);
    }

    @Test
    void windowsGrowForSlowProbesUntilTheShortestHoldsNineSamples() {
        SettleSettings gas = SettleSettings.defaults(SettleKind.GAS);
        assertThat(gas.pacedFor(2)).isEqualTo(gas);
        SettleSettings slow = gas.pacedFor(10);
        assertThat(slow.windowSeconds()).startsWith(100.0, 200.0);
        assertThat(slow.binSeconds()).isEqualTo(5);
        assertThat(slow.dwellSeconds()).isEqualTo(15);
        assertThat(slow.horizonSeconds()).isEqualTo(30);
        assertThat(slow.gapSeconds()).isEqualTo(5);
    }

    @Test
    void refuseWhatCannotBe() {
        List<Double> windows = List.of(20.0, 40.0);
        assertThat(with(0.02, windows, 0.95).mostBins()).isEqualTo(42);
        assertThatThrownBy(() -> with(0, windows, 0.95)).hasMessageContaining("drift limit must be positive, got 0.0");
        assertThatThrownBy(() -> with(Double.NaN, windows, 0.95)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> with(0.02, windows, 0.5)).hasMessageContaining("confidence");
        assertThatThrownBy(() -> with(0.02, windows, 1)).hasMessageContaining("below 1, got 1.0");
        assertThatThrownBy(() -> with(Double.POSITIVE_INFINITY, windows, 0.95)).hasMessageContaining("Infinity");
        assertThatThrownBy(() -> with(0.02, List.of(), 0.95)).hasMessageContaining("1 to 8 windows, got 0");
        assertThatThrownBy(() -> with(0.02, List.of(40.0, 20.0), 0.95)).hasMessageContaining("must grow");
        assertThatThrownBy(() -> with(0.02, List.of(5.0), 0.95)).hasMessageContaining("got [5.0]");
        assertThatThrownBy(() -> with(0.02, List.of(1e6), 0.95)).hasMessageContaining("to 120 bins");
    }
}
