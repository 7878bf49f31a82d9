package settlemark.profile;

import com.google.re2j.Pattern;
import com.google.re2j.PatternSyntaxException;
import java.util.Optional;

/** Regular expressions, small enough that none can fill the memory. */
final class PatternReader {
    private PatternReader() {}

    static Optional<Pattern> read(Section section, String key) {
        String text = section.text(key, "");
        if (!PatternSize.isSmall(text)) {
            section.error(
                    key,
                    key + " is too large: its counted repetitions would fill the memory; use smaller"
                            + " counts, and no \\Q");
            return Optional.empty();
        }
        try {
            return Optional.of(Pattern.compile(text));
        } catch (PatternSyntaxException e) {
            section.error(
                    key, key + " is no regular expression: " + e.getDescription() + " in \"" + e.getPattern() + "\"");
            return Optional.empty();
        }
    }
}
