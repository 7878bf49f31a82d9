package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StripLayoutTest {
    private static final List<Boolean> AT_LEFT_HIGH =
            List.of(false, false, false, true, true, true, true, false, false, false, false);

    private static int needed(Look look) {
        return new WorkFace(look).neededWidth() + 4;
    }

    @ParameterizedTest
    @CsvSource({"1280, 1", "1366, 1", "1920, 1", "1920, 1.25", "1280, 1.25", "2560, 2"})
    void theWidthIsSharedWithoutRestAndTheOpenColumnGetsWhatItNeeds(int width, double textScale) {
        Look look = Painting.look(textScale);
        StripLayout layout = StripLayout.of(width, look, AT_LEFT_HIGH, 7, needed(look));
        int sum = layout.heads()
                + layout.widths().stream().mapToInt(Integer::intValue).sum();
        assertThat(sum).isEqualTo(width);
        assertThat(layout.widths().get(7)).isGreaterThanOrEqualTo(needed(look));
        assertThat(layout.widths()).allMatch(w -> w >= 22);
    }

    @Test
    void foldedColumnsGiveWayFirst() {
        Look look = Painting.look();
        assertThat(StripLayout.of(1280, look, AT_LEFT_HIGH, 7, needed(look)).cells())
                .isTrue();
        Look large = Painting.look(1.25);
        StripLayout tight = StripLayout.of(1280, large, AT_LEFT_HIGH, 7, needed(large));
        assertThat(tight.cells()).isFalse();
        assertThat(tight.heads()).isZero();
    }

    @Test
    void formCellsAreWiderThanSliversButNotWasteful() {
        Look look = Painting.look();
        StripLayout layout = StripLayout.of(1920, look, AT_LEFT_HIGH, 7, needed(look));
        assertThat(layout.widths().get(3)).isEqualTo(92);
        assertThat(layout.widths().get(0)).isEqualTo(26);
    }
}
