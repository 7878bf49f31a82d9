package settlemark.profile;

import java.util.Optional;

/**
 * What the word of a field's type says.
 *
 * @param word as the document writes it
 * @param kind of a number in bytes, empty for text and utf8
 * @param bits of a number in bytes, 0 for text and utf8
 */
record NumberType(String word, Optional<Wire.Kind> kind, int bits) {
    /** The schema has seen to it that it is one. */
    static NumberType of(String word) {
        int digits = word.length();
        while (digits > 0 && Character.isDigit(word.charAt(digits - 1))) {
            digits--;
        }
        Optional<Wire.Kind> kind = switch (word.substring(0, digits)) {
            case "int" -> Optional.of(Wire.Kind.SIGNED);
            case "uint" -> Optional.of(Wire.Kind.UNSIGNED);
            case "bcd" -> Optional.of(Wire.Kind.BCD);
            case "float" -> Optional.of(Wire.Kind.IEEE_FLOAT);
            case "medfloat" -> Optional.of(Wire.Kind.MEDICAL_FLOAT);
            default -> Optional.empty();
        };
        // "utf8" ends in a digit too, but is no number.
        return kind.isPresent()
                ? new NumberType(word, kind, Integer.parseInt(word.substring(digits)))
                : new NumberType(word, kind, 0);
    }

    boolean is(Wire.Kind wanted) {
        return kind.filter(wanted::equals).isPresent();
    }

    boolean isText() {
        return word.equals("text");
    }

    boolean isCharacters() {
        return word.equals("utf8");
    }
}
