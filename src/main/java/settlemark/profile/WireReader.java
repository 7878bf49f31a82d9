package settlemark.profile;

import java.util.Optional;

/** How a number travels: the bytes around it and their order. */
final class WireReader {
    private static final int LARGEST_BITS = 64;

    private final Section field;
    private final NumberType type;
    private final boolean modbus;

    WireReader(Section field, NumberType type, boolean modbus) {
        this.field = field;
        this.type = type;
        this.modbus = modbus;
    }

    Optional<Wire> read() {
        int end = field.integer("bit", 0) + type.bits();
        if (end > LARGEST_BITS) {
            field.error(
                    "bit",
                    "bit must leave room for the " + type.bits() + " bits of " + type.word()
                            + " within 64 bits: at most " + (LARGEST_BITS - type.bits()) + ", got "
                            + field.integer("bit", 0));
            return Optional.empty();
        }
        if (modbus && type.is(Wire.Kind.BCD) && type.bits() % 16 != 0) {
            field.error("type", "type must fill whole registers: bcd16, bcd32, bcd48 or bcd64, got " + type.word());
            return Optional.empty();
        }
        int bytes = (end + 7) / 8;
        return order(modbus ? bytes + bytes % 2 : bytes)
                .map(order -> new Wire(type.kind().orElseThrow(), modbus ? bytes + bytes % 2 : bytes, order));
    }

    private Optional<Wire.Order> order(int bytes) {
        boolean big = field.text("byte-order", modbus ? "big" : "little").equals("big");
        if (!field.has("word-order")) {
            if (modbus && bytes > 2) {
                field.error(type.word() + " takes " + bytes / 2 + " registers and needs word-order: big where the first"
                        + " register has the high word, little where it has the low word");
                return Optional.empty();
            }
            return Optional.of(big ? Wire.Order.BIG : Wire.Order.LITTLE);
        }
        if (bytes <= 2 || bytes % 2 != 0) {
            field.error("word-order", "word-order needs 32, 48 or 64 bits, got " + 8 * bytes + "; remove it");
            return Optional.empty();
        }
        boolean bigWords = field.text("word-order", "").equals("big");
        if (big) {
            return Optional.of(bigWords ? Wire.Order.BIG : Wire.Order.BIG_WORDS_SWAPPED);
        }
        return Optional.of(bigWords ? Wire.Order.LITTLE_WORDS_SWAPPED : Wire.Order.LITTLE);
    }
}
