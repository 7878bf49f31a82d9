package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.re2j.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class PatternSizeTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "([+-]?[0-9]+\\.[0-9]{2})",
                "P1\\s+([+-]?\\d{1,3}(?:\\.\\d{1,4})?)",
                "([0-9]{1,5})x{3}y{2,}",
                "[]({]+(a)",
                "[^]]{1,20}(\\d)",
                "a{,5}(b)",
                "[^]{9999}](b)",
                "[]{9999}](b)",
                "[\\]{9999}](b)",
                "\\((\\d+)\\)"
            })
    void ordinaryPatternsAreSmall(String pattern) {
        assertThat(PatternSize.isSmall(pattern)).isTrue();
        assertThat(Pattern.compile(pattern).groupCount()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "((a{1000}){1000})",
                "(((((a{30}){30}){30}){30}){30})",
                "((a{1000}){1000}",
                "(a{1000}){1000}){1000}",
                "(a){1000}{1000}",
                "([ab]{1000}b){1000}",
                "([(\\])]{1000}){1000}",
                "\\Q[\\E((a{1000}){1000})",
                "((?:x{999,}){999})",
                "(((\\pN{1000}){1000}))",
                "((a{999999999}))",
                "a{6000}(b{6000})",
                "a{6000}(b{6000}",
                "\\d{10001}"
            })
    void patternsThatWouldFillTheMemoryAreNot(String pattern) {
        assertThat(PatternSize.isSmall(pattern)).isFalse();
    }

    /** A letter costs one, a class four, a group two beside what it holds. */
    @ParameterizedTest
    @CsvSource({"a{%d}, 10000", "[xyz]{%d}, 2500", "(a){%d}, 3333", "((a)b){%d}, 1666", "abc{%d}, 9998"})
    void theLimitIsTakenAndNoMore(String pattern, int most) {
        assertThat(PatternSize.isSmall(pattern.formatted(most))).isTrue();
        assertThat(PatternSize.isSmall(pattern.formatted(most + 1))).isFalse();
    }
}
