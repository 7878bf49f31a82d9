package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static settlemark.chart.ChartTheme.contrast;

import java.awt.Color;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.chart.ChartTheme;

/** Contrast after WCAG 2.2: 1.4.3 asks 4.5 for text, 1.4.6 asks 7, 1.4.11 asks 3 for lines and marks. */
class TokensTest {
    private static ChartTheme theme(boolean dark) {
        return new Look(dark, 1, Look.USUAL_PIXELS_PER_MM).theme();
    }

    private static List<Color> grounds(ChartTheme theme) {
        return List.of(theme.sheet(), theme.fold(), theme.window());
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void everyTextStandsOutOnEveryGround(boolean dark) {
        ChartTheme theme = theme(dark);
        for (Color ground : grounds(theme)) {
            for (Color text : List.of(theme.ink(), theme.ink2(), theme.fault(), theme.notice())) {
                assertThat(contrast(text, ground)).isGreaterThanOrEqualTo(4.5);
            }
        }
        assertThat(contrast(theme.primaryText(), theme.primary())).isGreaterThanOrEqualTo(7);
        assertThat(contrast(theme.sheet(), theme.fault())).isGreaterThanOrEqualTo(4.5);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void readoutsStandOutEvenWhenTheyAreOld(boolean dark) {
        ChartTheme theme = theme(dark);
        assertThat(contrast(theme.ink(), theme.sheet())).isGreaterThanOrEqualTo(7);
        assertThat(contrast(theme.ink2(), theme.sheet())).isGreaterThanOrEqualTo(7);
        assertThat(contrast(theme.ink(), theme.settled())).isGreaterThanOrEqualTo(7);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void linesStandOut(boolean dark) {
        ChartTheme theme = theme(dark);
        for (Color ground : grounds(theme)) {
            assertThat(contrast(theme.rule(), ground)).isGreaterThanOrEqualTo(3);
            // The ring of the focus.
            assertThat(contrast(theme.series().get(1), ground)).isGreaterThanOrEqualTo(3);
        }
        for (Color trace : theme.series()) {
            assertThat(contrast(trace, theme.sheet())).isGreaterThanOrEqualTo(3);
        }
        assertThat(contrast(theme.series().get(1), theme.band())).isGreaterThanOrEqualTo(3);
        assertThat(contrast(theme.series().get(1), theme.settled())).isGreaterThanOrEqualTo(3);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void nothingButSeriesFaultAndNoticeHasAColour(boolean dark) {
        ChartTheme theme = theme(dark);
        for (Color calm :
                List.of(theme.sheet(), theme.fold(), theme.window(), theme.ink(), theme.ink2(), theme.rule())) {
            float[] hsb = Color.RGBtoHSB(calm.getRed(), calm.getGreen(), calm.getBlue(), null);
            int spread = Math.max(calm.getRed(), Math.max(calm.getGreen(), calm.getBlue()))
                    - Math.min(calm.getRed(), Math.min(calm.getGreen(), calm.getBlue()));
            assertThat(spread).as("%s, hue %.2f", calm, hsb[0]).isLessThanOrEqualTo(20);
        }
    }
}
