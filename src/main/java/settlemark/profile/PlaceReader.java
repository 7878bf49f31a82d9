package settlemark.profile;

import com.google.re2j.Pattern;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where a field stands in its frame. */
final class PlaceReader {
    private static final List<String> PLACES = List.of("at", "column", "pattern", "register", "tag");

    private PlaceReader() {}

    static Optional<Field.Place> read(Section section, String name, FrameScope scope) {
        List<String> named = new ArrayList<>(section.present(PLACES));
        if (section.has("tag")) {
            // Beside a tag it is the offset within the value.
            named.remove("at");
        }
        if (named.size() != 1) {
            section.error("field \"" + name + "\" must have exactly one of " + String.join(", ", PLACES) + ", got "
                    + Words.got(named));
            return Optional.empty();
        }
        String place = named.get(0);
        if (section.has("nth") && !place.equals("tag")) {
            section.error("nth", "nth needs tag: it says which of several values with the same tag; remove it");
            return Optional.empty();
        }
        if (scope.registers().isPresent() && !place.equals("register")) {
            section.error(place, place + " cannot be used in a Modbus answer; use register");
            return Optional.empty();
        }
        return switch (place) {
            case "at" -> Optional.of(new Field.AtByte(section.integer("at", 0)));
            case "column" -> Optional.of(new Field.InColumn(section.integer("column", 0)));
            case "register" -> register(section, scope);
            case "tag" ->
                Optional.of(new Field.ByTag(
                        section.bits("tag").longValue(), section.integer("nth", 0), section.integer("at", 0)));
            default -> pattern(section);
        };
    }

    private static Optional<Field.Place> register(Section section, FrameScope scope) {
        if (scope.registers().isEmpty()) {
            if (!scope.registersWrong()) {
                section.error(
                        "register", "register needs ask: {function: 3, register: ..., count: ...} in its message");
            }
            return Optional.empty();
        }
        Source.Registers registers = scope.registers().get();
        int number = section.integer("register", 0);
        int first = registers.first() + scope.addressBase();
        int index = number - first;
        if (index < 0 || index >= registers.count()) {
            section.error(
                    "register",
                    "register must be one of the " + registers.count() + " that are asked for, " + first + " to "
                            + (first + registers.count() - 1) + ", got " + number);
            return Optional.empty();
        }
        return Optional.of(new Field.AtByte(ModbusFrame.offset(index)));
    }

    private static Optional<Field.Place> pattern(Section section) {
        Optional<Pattern> pattern = PatternReader.read(section, "pattern");
        if (pattern.isPresent() && pattern.get().groupCount() != 1) {
            section.error(
                    "pattern",
                    "pattern must have exactly one group in round brackets, got "
                            + pattern.get().groupCount() + " (write (?:...) for brackets that only hold together)");
            return Optional.empty();
        }
        return pattern.map(Field.ByPattern::new);
    }
}
