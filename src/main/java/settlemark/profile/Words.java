package settlemark.profile;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import settlemark.measure.SampleStatus;

/** Words of the language for things of the program. */
final class Words {
    /** The Bluetooth base UUID after its first 32 bits. */
    private static final String BASE_UUID_END = "00001000800000805F9B34FB";

    private Words() {}

    static SampleStatus status(String word) {
        return SampleStatus.valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    static Source.By by(String word) {
        return Source.By.valueOf(word.toUpperCase(Locale.ROOT));
    }

    /** The byte order of a section that has no words to swap. */
    static Wire.Order order(Section section) {
        return section.text("byte-order", "little").equals("big") ? Wire.Order.BIG : Wire.Order.LITTLE;
    }

    /** An unsigned integer of whole bytes by the word under a key; the schema has seen to it that it is one. */
    static Wire unsigned(Section section, String key) {
        NumberType type = NumberType.of(section.text(key, "uint8"));
        return new Wire(Wire.Kind.UNSIGNED, type.bits() / 8, order(section));
    }

    static ByteText utf8(Section section, String key) {
        return ByteText.of(section.text(key, "").getBytes(StandardCharsets.UTF_8));
    }

    /** A UUID of 4, 8 or 32 digits; the short ones stand for a part of the Bluetooth base UUID (Core 5.4, 3.B.2.5.1). */
    static UUID uuid(String text) {
        String digits = text.replace("-", "");
        String full = digits.length() == 32 ? digits : "0".repeat(8 - digits.length()) + digits + BASE_UUID_END;
        return new UUID(Long.parseUnsignedLong(full, 0, 16, 16), Long.parseUnsignedLong(full, 16, 32, 16));
    }

    /** Which of several keys stand in a section, for a message. */
    static String got(List<String> present) {
        return present.isEmpty() ? "none" : String.join(" and ", present);
    }

    static String shown(String text) {
        return text.length() <= 60 ? text : text.substring(0, 57) + "...";
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
            section.error(
                    key,
                    key + " must be pairs of hexadecimal digits, such as \"A5 5A\", got \""
                            + shown(text).strip() + "\"");
            return Optional.empty();
        }
    }
}
