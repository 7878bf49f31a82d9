package settlemark.profile;

import java.util.Locale;
import java.util.Optional;
import settlemark.measure.SampleStatus;

/** Words of the language for things of the program. */
final class Words {
    private Words() {}

    static SampleStatus status(String word) {
        return SampleStatus.valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    static Wire.Order order(Section section) {
        return section.text("byte-order", "little").equals("big") ? Wire.Order.BIG : Wire.Order.LITTLE;
    }

    /** The wire format of a type such as {@code int16}; the schema has seen to it that it is one. */
    static Wire wire(String type, Wire.Order order) {
        int digits = type.length();
        while (Character.isDigit(type.charAt(digits - 1))) {
            digits--;
        }
        int bytes = Integer.parseInt(type.substring(digits)) / 8;
        Wire.Kind kind = switch (type.substring(0, digits)) {
            case "int" -> Wire.Kind.SIGNED;
            case "uint" -> Wire.Kind.UNSIGNED;
            default -> Wire.Kind.IEEE_FLOAT;
        };
        return new Wire(kind, bytes, order);
    }

    /** Bytes from hexadecimal digits; an odd number of them or none is a problem. */
    static Optional<ByteText> hex(Section section, String key) {
        String text = section.text(key, "");
        try {
            Optional<ByteText> bytes = Optional.of(ByteText.ofHex(text)).filter(b -> !b.isEmpty());
            if (bytes.isEmpty()) {
                section.error(key, key + " must be one byte at least, such as \"A5\", got blanks");
            }
            return bytes;
        } catch (IllegalArgumentException e) {
            String shown = text.length() <= 60 ? text : text.substring(0, 57) + "...";
            section.error(
                    key,
                    key + " must be pairs of hexadecimal digits, such as \"A5 5A\", got \"" + shown.strip() + "\"");
            return Optional.empty();
        }
    }
}
