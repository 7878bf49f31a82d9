package settlemark.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;

final class LaneGroupTest {
    @Test
    void whatHasAnotherUnitOrLiesFarAwayHasALaneOfItsOwn() {
        assertThat(LaneGroup.of(List.of(Role.values())))
                .containsExactly(LaneGroup.PRESSURE, LaneGroup.AIR, LaneGroup.STACK, LaneGroup.SHARE, LaneGroup.TRACE);
        assertThat(LaneGroup.of(List.of(Role.CARBON_MONOXIDE, Role.INLET)))
                .containsExactly(LaneGroup.PRESSURE, LaneGroup.TRACE);
        for (Role role : Role.values()) {
            assertThat(LaneGroup.of(role).hasOwnAxis()).isEqualTo(role.gasAnalysis() || role == Role.STACK);
        }
    }

    @Test
    void aQuietAnalyserIsNotBlownUp() {
        ValueRange range = LaneGroup.SHARE.around(6.4, Double.NaN, 6.5);
        assertThat(range.high() - range.low()).isGreaterThan(2);
        assertThat(range.low()).isLessThan(6.4);
        assertThat(LaneGroup.TRACE.around().low()).isEqualTo(0);
    }
}
