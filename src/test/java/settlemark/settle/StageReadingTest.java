package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;
import settlemark.measure.Unit;

final class StageReadingTest {
    private static ChannelReading reading(Role role, double value, double uncertainty) {
        return new ChannelReading(
                role, value, uncertainty, 0.01, 0.02, Unit.INCH_OF_WATER, 5, 9, true, "moved 0", "a-rule");
    }

    @Test
    void aChannelIsFoundByItsRole() {
        ChannelReading inlet = reading(Role.INLET, 7, 0.01);
        StageReading stage = new StageReading("high", "left", 12, false, "", List.of(inlet));
        assertThat(stage.channel(Role.INLET)).contains(inlet);
        assertThat(stage.channel(Role.MANIFOLD)).isEmpty();
    }

    @Test
    void aCorrectionIsAddedWithItsUncertainty() {
        ChannelReading before = reading(Role.MANIFOLD, 3.5, 0.03);
        ChannelReading after = before.correctedBy(new FromInstrument("S-1", -0.1, 0.04, ""));
        assertThat(after.value()).isCloseTo(3.4, within(1e-12));
        assertThat(after.standardUncertainty()).isCloseTo(0.05, within(1e-12));
        assertThat(after.expandedUncertainty()).isCloseTo(0.1, within(1e-12));
        assertThat(after.instrument().serial()).isEqualTo("S-1");
        assertThat(after.rule()).isEqualTo("a-rule");
        assertThat(after.fromNanos()).isEqualTo(5);
        assertThat(after.toNanos()).isEqualTo(9);
    }

    @Test
    void anInstrumentWithoutCorrectionIsNamedOnly() {
        ChannelReading before = reading(Role.MANIFOLD, 3.5, 0.03);
        ChannelReading after = before.correctedBy(FromInstrument.uncorrected("S-1", "too long ago"));
        assertThat(after.value()).isEqualTo(3.5);
        assertThat(after.standardUncertainty()).isEqualTo(0.03);
        assertThat(after.instrument().remark()).isEqualTo("too long ago");
        assertThat(after.instrument().corrects()).isFalse();
        assertThat(before.instrument()).isEqualTo(FromInstrument.NONE);
        assertThat(before.withStandardUncertainty(0.2).standardUncertainty()).isEqualTo(0.2);
    }

    @Test
    void aReadingThatNoRuleWasAskedOfHasNone() {
        ChannelReading plain = new ChannelReading(Role.STACK, 350, 1, 1, 0, Unit.FAHRENHEIT, 0, 1, false, "not yet");
        assertThat(plain.rule()).isEmpty();
        assertThat(plain.instrument()).isEqualTo(FromInstrument.NONE);
    }

    @Test
    void aCorrectionHasAnUncertainty() {
        assertThat(new FromInstrument("", 0.1, 0.02, "").expandedUncertainty()).isEqualTo(0.04);
        assertThat(new FromInstrument("", 0.1, 0, "").corrects()).isTrue();
        assertThatThrownBy(() -> new FromInstrument("", 0.1, Double.NaN, "")).hasMessageContaining("got 0.1 with NaN");
        assertThatThrownBy(() -> new FromInstrument("", Double.NaN, 0.1, "")).hasMessageContaining("got NaN with 0.1");
        assertThatThrownBy(() -> new FromInstrument("", 0.1, -0.1, "")).hasMessageContaining("0 or more");
    }
}
