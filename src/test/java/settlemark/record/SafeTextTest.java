package settlemark.record;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Text that means to be taken for something else. */
final class SafeTextTest {
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@sum", "\uff1d1", "\uff0b1", "\uff0d1", "\uff201"})
    void noCellBeginsAFormula(String text) {
        assertThat(Cells.text(text)).isEqualTo("'" + text);
    }

    @Test
    void marksOfDirectionAndControlsAreSeenAndNothingIsLost() {
        assertThat(SafeText.visible("a\u202Eb\u2066c\u0007d\ne")).isEqualTo("a\\u202eb\\u2066c\\u0007d\ne");
        assertThat(SafeText.escaped("{\"a\":\"\u202E\"}")).isEqualTo("{\"a\":\"\\u202e\"}");
        assertThat(SafeText.plain("a\u202Eb\u0000c")).isEqualTo("ab c");
        assertThat(Cells.text("\u202E=1")).isEqualTo("\\u202e=1");
        assertThat(SafeText.visible("\u05D0 Zo\u00EB")).isEqualTo("\u05D0 Zo\u00EB");
    }
}
