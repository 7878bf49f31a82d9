package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class FiguresTest {
    @ParameterizedTest
    @CsvSource({
        "o2, O\u2082",
        "co2, CO\u2082",
        "co, CO",
        "co air-free, CO air-free",
        "inlet zero drift, inlet zero drift",
        "cooling, cooling"
    })
    void gasesStandOnThePageAsPeopleWriteThem(String word, String shown) {
        assertThat(Figures.subject(word)).isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource({"1332, 1332", "80173.4, 80\u00A0173", "-12000, \u221212\u00A0000"})
    void wholeNumbersAreInGroupsOfThreeFromFiveDigitsOn(double value, String shown) {
        assertThat(Figures.whole(value)).isEqualTo(shown);
    }
}
