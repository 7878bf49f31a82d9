package settlemark.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

final class ReadingChangeTest {
    private static ChannelReading part(Role role, double value) {
        return new ChannelReading(role, value, 0.01, 0.005, 0, Unit.INCH_OF_WATER, 1, 2, true, "settled");
    }

    private static StageReading reading(String step, String purpose, ChannelReading... parts) {
        return new StageReading(step, purpose, 2, false, "", List.of(parts));
    }

    @Test
    void equalReadingsHaveNoChange() {
        List<StageReading> readings =
                List.of(reading("found-low", "found", part(Role.INLET, 7), part(Role.MANIFOLD, Double.NaN)));
        assertThat(ReadingChange.between(readings, List.copyOf(readings))).isEmpty();
    }

    @Test
    void onlyTheChangedChannelIsNamed() {
        List<StageReading> before =
                List.of(reading("found-low", "found", part(Role.INLET, 7), part(Role.MANIFOLD, 1.5)));
        List<StageReading> after =
                List.of(reading("found-low", "found", part(Role.INLET, 7), part(Role.MANIFOLD, 1.65)));
        assertThat(ReadingChange.between(before, after))
                .containsExactly(new ReadingChange(
                        "found-low",
                        "found",
                        Role.MANIFOLD,
                        Optional.of(part(Role.MANIFOLD, 1.5)),
                        Optional.of(part(Role.MANIFOLD, 1.65))));
    }

    @Test
    void readingsOfOneStepAreComparedOneByOne() {
        List<StageReading> before = List.of(
                reading("left", "adjusted", part(Role.MANIFOLD, 3)),
                reading("left", "adjusted", part(Role.MANIFOLD, 4)),
                reading("left", "left", part(Role.MANIFOLD, 5)));
        List<StageReading> after = List.of(
                reading("left", "adjusted", part(Role.MANIFOLD, 3)),
                reading("left", "left", part(Role.MANIFOLD, 5)),
                reading("close", "close", part(Role.INLET, 0)));
        assertThat(ReadingChange.between(before, after))
                .containsExactly(
                        new ReadingChange(
                                "left",
                                "adjusted",
                                Role.MANIFOLD,
                                Optional.of(part(Role.MANIFOLD, 4)),
                                Optional.empty()),
                        new ReadingChange(
                                "close", "close", Role.INLET, Optional.empty(), Optional.of(part(Role.INLET, 0))));
    }
}
