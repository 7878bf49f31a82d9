package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

final class SettleSettingsTest {
    private static SettleSettings with(double limit, List<Double> windows, double confidence) {
        return new SettleSettings(SettleKind.GAS, limit, 0.05, 30, 1, windows, 3, 5, false, confidence);
    }

    @Test
    void refuseWhatCannotBe() {
        List<Double> windows = List.of(20.0, 40.0);
        assertThat(with(0.02, windows, 0.95).mostBins()).isEqualTo(42);
        assertThatThrownBy(() -> with(0, windows, 0.95)).hasMessageContaining("drift limit must be positive, got 0.0");
        assertThatThrownBy(() -> with(Double.NaN, windows, 0.95)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> with(0.02, windows, 0.5)).hasMessageContaining("confidence");
        assertThatThrownBy(() -> with(0.02, List.of(), 0.95)).hasMessageContaining("1 to 8 windows, got 0");
        assertThatThrownBy(() -> with(0.02, List.of(40.0, 20.0), 0.95)).hasMessageContaining("must grow");
        assertThatThrownBy(() -> with(0.02, List.of(5.0), 0.95)).hasMessageContaining("got [5.0]");
        assertThatThrownBy(() -> with(0.02, List.of(1e6), 0.95)).hasMessageContaining("to 120 bins");
    }
}
