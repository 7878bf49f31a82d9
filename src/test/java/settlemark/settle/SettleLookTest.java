package settlemark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

final class SettleLookTest {
    private final SettleDetector detector = new SettleDetector(SettleSettings.defaults(SettleKind.GAS), 0.01);

    /** It stands, leaps, stands elsewhere, and gives no value twice in between. */
    private static double value(int i) {
        return i == 300 || i == 301 ? Double.NaN : (i < 150 ? 3.5 : 4.1) + 0.002 * Math.sin(i);
    }

    @Test
    void describedAtEachSampleItIsWhatTheDetectorSays() {
        int settled = 0;
        for (int i = 0; i < 600; i++) {
            detector.accept(i * 0.2, value(i));
            SettleLook look = detector.look();
            assertThat(look.settled()).isEqualTo(detector.state().settled());
            assertThat(look.state()).isSameAs(detector.state());
            assertThat(detector.look()).isSameAs(look);
            settled += look.settled() ? 1 : 0;
        }
        assertThat(settled).isBetween(100, 500);
    }

    @Test
    void askedTooLateItSaysSoAndWhatWasAskedInTimeStays() {
        detector.accept(0, 3.5);
        SettleLook asked = detector.look();
        SettleState then = asked.state();
        detector.accept(0.2, 3.5);
        SettleLook late = detector.look();
        detector.interrupted(0.4, "over range");
        assertThat(asked.state()).isSameAs(then);
        assertThat(late.settled()).isFalse();
        assertThatThrownBy(late::state)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("moved on");
    }
}
