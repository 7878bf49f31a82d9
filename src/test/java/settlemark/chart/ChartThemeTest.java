package settlemark.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ChartThemeTest {
    static List<ChartTheme> themes() {
        return List.of(ChartTheme.LIGHT, ChartTheme.DARK, ChartTheme.PRINT);
    }

    /** Known ratios: black on white is 21 by definition (WCAG 2.2); #767676 on white is the published 4.54. */
    @org.junit.jupiter.api.Test
    void contrastAgreesWithPublishedRatios() {
        assertThat(ChartTheme.contrast(Color.BLACK, Color.WHITE)).isCloseTo(21, within(1e-9));
        assertThat(ChartTheme.contrast(Color.WHITE, Color.BLACK)).isCloseTo(21, within(1e-9));
        assertThat(ChartTheme.contrast(new Color(0x767676), Color.WHITE)).isCloseTo(4.54, within(0.005));
    }

    /** WCAG 2.2, 1.4.3 and 1.4.6. */
    @ParameterizedTest
    @MethodSource("themes")
    void textReachesFourAndAHalfAndReadoutsSeven(ChartTheme theme) {
        for (Color ground : List.of(theme.sheet(), theme.fold(), theme.window())) {
            for (Color text : List.of(theme.ink2(), theme.fault(), theme.notice())) {
                assertThat(ChartTheme.contrast(text, ground)).isGreaterThanOrEqualTo(4.5);
            }
            assertThat(ChartTheme.contrast(theme.ink(), ground)).isGreaterThanOrEqualTo(7);
        }
        assertThat(ChartTheme.contrast(theme.primaryText(), theme.primary())).isGreaterThanOrEqualTo(7);
        for (Color fill : List.of(theme.band(), theme.settled())) {
            assertThat(ChartTheme.contrast(theme.ink(), fill)).isGreaterThanOrEqualTo(7);
            assertThat(ChartTheme.contrast(theme.ink2(), fill)).isGreaterThanOrEqualTo(4.5);
        }
    }

    /** WCAG 2.2, 1.4.11: what must be seen to understand a drawing. */
    @ParameterizedTest
    @MethodSource("themes")
    void linesReachThreeOnEveryGroundThatTheyAreDrawnOn(ChartTheme theme) {
        for (Color line : theme.series()) {
            assertThat(ChartTheme.contrast(line, theme.sheet())).isGreaterThanOrEqualTo(3);
        }
        assertThat(ChartTheme.contrast(theme.rule(), theme.sheet())).isGreaterThanOrEqualTo(3);
        for (LineStyle style : LineStyle.values()) {
            if (style.bearsFills() && style != LineStyle.GHOST) {
                for (Color fill : List.of(theme.band(), theme.settled())) {
                    assertThat(ChartTheme.contrast(style.color(theme), fill)).isGreaterThanOrEqualTo(3);
                }
            }
        }
    }

    @org.junit.jupiter.api.Test
    void everyStyleIsToldApartWithoutColour() {
        List<String> shapes = java.util.Arrays.stream(LineStyle.values())
                .map(s -> s.stroke(1).getLineWidth() + java.util.Arrays.toString(s.dash(1)))
                .toList();
        assertThat(shapes).doesNotHaveDuplicates();
    }
}
