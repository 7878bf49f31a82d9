package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScreenRulerTest {
    @ParameterizedTest
    @CsvSource({"5, 5", "500, 500", "50.25, 50.25", "4.99, 0", "500.01, 0", "fifty, 0", "-50, 0", "5e1, 0", "'', 0"})
    void aLengthIsFiveToFiveHundredMillimetres(String typed, double millimetres) {
        assertThat(ScreenRuler.millimetres(typed)).isEqualTo(millimetres);
    }

    @Test
    void theLineIsShownUntilItsLengthIsTyped() {
        DeskPaneTest.onEdt(() -> {
            Look look = Painting.look();
            ChoiceFace line = new ChoiceFace(look, i -> {});
            InlineRow row = new InlineRow(look);
            List<Double> measured = new ArrayList<>();
            List<String> wrong = new ArrayList<>();
            ScreenRuler.ask(line, row, measured::add, wrong::add);
            assertThat(line.ruled()).isTrue();
            row.field().setText("40");
            row.field().postActionEvent();
            assertThat(line.ruled()).isFalse();
            assertThat(measured).containsExactly(line.rulerPx() / 40.0);
            ScreenRuler.ask(line, row, measured::add, wrong::add);
            row.field().setText("long");
            row.field().postActionEvent();
            assertThat(wrong).containsExactly("long");
            assertThat(measured).hasSize(1);
            return 0;
        });
    }
}
