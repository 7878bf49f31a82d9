package settlemark.decode;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Conversion;
import settlemark.measure.Unit;
import settlemark.profile.Curve;
import settlemark.profile.Field;
import settlemark.profile.Message;
import settlemark.profile.Wire;

/**
 * The Characteristic Presentation Format (descriptor 0x2904) of a characteristic: how its number travels, the power of
 * ten that it counts in, and its unit. Source: Bluetooth Core Specification, Vol 3, Part G, 3.3.3.5.
 *
 * @param format code of the number's type
 * @param exponent power of ten, for integers
 * @param unit number of the unit
 */
record Presentation(int format, int exponent, int unit) {
    private static final int BYTES = 7;

    /** Format codes by the type they name; others name no number that a field can be. */
    private static final Map<Integer, Wire> WIRES = Map.ofEntries(
            Map.entry(0x04, wire(Wire.Kind.UNSIGNED, 1)),
            Map.entry(0x06, wire(Wire.Kind.UNSIGNED, 2)),
            Map.entry(0x07, wire(Wire.Kind.UNSIGNED, 3)),
            Map.entry(0x08, wire(Wire.Kind.UNSIGNED, 4)),
            Map.entry(0x09, wire(Wire.Kind.UNSIGNED, 6)),
            Map.entry(0x0A, wire(Wire.Kind.UNSIGNED, 8)),
            Map.entry(0x0C, wire(Wire.Kind.SIGNED, 1)),
            Map.entry(0x0E, wire(Wire.Kind.SIGNED, 2)),
            Map.entry(0x0F, wire(Wire.Kind.SIGNED, 3)),
            Map.entry(0x10, wire(Wire.Kind.SIGNED, 4)),
            Map.entry(0x11, wire(Wire.Kind.SIGNED, 6)),
            Map.entry(0x12, wire(Wire.Kind.SIGNED, 8)),
            Map.entry(0x14, wire(Wire.Kind.IEEE_FLOAT, 4)),
            Map.entry(0x15, wire(Wire.Kind.IEEE_FLOAT, 8)),
            Map.entry(0x16, wire(Wire.Kind.MEDICAL_FLOAT, 2)),
            Map.entry(0x17, wire(Wire.Kind.MEDICAL_FLOAT, 4)));

    private static Wire wire(Wire.Kind kind, int bytes) {
        return new Wire(kind, bytes, Wire.Order.LITTLE);
    }

    /** Empty where the bytes are no such descriptor. */
    static Optional<Presentation> read(byte[] bytes) {
        if (bytes.length != BYTES) {
            return Optional.empty();
        }
        int unit = (int) RawBits.bits(bytes, 2, 2, Wire.Order.LITTLE);
        return Optional.of(new Presentation(bytes[0] & 0xFF, bytes[1], unit));
    }

    /**
     * The message with its first number as the descriptor says.
     *
     * @throws IllegalArgumentException where the descriptor does not fit the message, with the reason
     */
    Contents applyTo(Contents contents) {
        int index = firstNumber(contents.message());
        Unit target = contents.sources().stream()
                .filter(source -> source.fields().stream().anyMatch(ref -> ref.field() == index))
                .map(source -> source.channel().unit())
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the message has no number that a channel shows"));
        Unit said = BluetoothUnits.find(unit)
                .orElseThrow(() -> new IllegalArgumentException("unit " + hex(unit) + " is not known"));
        Field field = contents.field(index);
        Field.Binary binary = (Field.Binary) field.content();
        Wire named = WIRES.getOrDefault(format, binary.wire());
        boolean same = named.kind() == binary.wire().kind()
                && named.bytes() == binary.wire().bytes();
        Field.Binary changed = new Field.Binary(
                same ? binary.wire() : named,
                same ? binary.bits() : Optional.empty(),
                same ? binary.mask() : -1,
                curve(said.to(target), named),
                same ? binary.specials() : Map.of(),
                binary.counts());
        List<Field> fields = new ArrayList<>(contents.message().fields());
        fields.set(index, new Field(field.name(), field.place(), changed, field.when(), field.line()));
        return contents.with(with(contents.message(), fields));
    }

    private static int firstNumber(Message message) {
        for (int i = 0; i < message.fields().size(); i++) {
            if (message.fields().get(i).content() instanceof Field.Binary binary && !binary.counts()) {
                return i;
            }
        }
        throw new IllegalArgumentException("the message has no number in bytes");
    }

    private Curve curve(Conversion conversion, Wire wire) {
        boolean integer = wire.isInteger();
        double scale = integer
                ? BigDecimal.ONE
                        .scaleByPowerOfTen(exponent)
                        .multiply(BigDecimal.valueOf(conversion.slope()))
                        .doubleValue()
                : conversion.slope();
        if (scale == 0 || !Double.isFinite(scale)) {
            throw new IllegalArgumentException("exponent " + exponent + " is beyond all numbers");
        }
        return new Curve.Linear(scale, conversion.offset());
    }

    private static Message with(Message message, List<Field> fields) {
        return new Message(
                message.id(),
                message.source(),
                message.framing(),
                message.columns(),
                message.tagged(),
                message.checksum(),
                message.cipher(),
                fields,
                message.line());
    }

    private static String hex(int number) {
        return String.format(Locale.ROOT, "0x%04X", number);
    }
}
