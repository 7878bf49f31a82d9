package settlemark.profile;

import com.google.re2j.Pattern;
import com.google.re2j.PatternSyntaxException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where a field stands in its frame. */
final class PlaceReader {
    private static final List<String> PLACES = List.of("at", "column", "pattern");

    private PlaceReader() {}

    static Optional<Field.Place> read(Section section, String name) {
        List<String> named = new ArrayList<>(PLACES);
        named.retainAll(section.keys());
        if (named.size() != 1) {
            String got = named.isEmpty() ? "none" : String.join(" and ", named);
            section.error("field \"" + name + "\" must have exactly one of at, column, pattern, got " + got);
            return Optional.empty();
        }
        return switch (named.get(0)) {
            case "at" -> Optional.of(new Field.AtByte(section.integer("at", 0)));
            case "column" -> Optional.of(new Field.InColumn(section.integer("column", 0)));
            default -> pattern(section);
        };
    }

    private static Optional<Field.Place> pattern(Section section) {
        String text = section.text("pattern", "");
        if (!PatternSize.isSmall(text)) {
            section.error(
                    "pattern",
                    "pattern is too large: its counted repetitions would fill the memory; use smaller"
                            + " counts, and no \\Q");
            return Optional.empty();
        }
        try {
            Pattern pattern = Pattern.compile(text);
            if (pattern.groupCount() == 1) {
                return Optional.of(new Field.ByPattern(pattern));
            }
            section.error(
                    "pattern",
                    "pattern must have exactly one group in round brackets, got " + pattern.groupCount()
                            + " (write (?:...) for brackets that only hold together)");
        } catch (PatternSyntaxException e) {
            section.error(
                    "pattern",
                    "pattern is no regular expression: " + e.getDescription() + " in \"" + e.getPattern() + "\"");
        }
        return Optional.empty();
    }
}
