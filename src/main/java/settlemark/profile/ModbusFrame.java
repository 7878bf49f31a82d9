package settlemark.profile;

import java.util.List;
import java.util.Optional;

/**
 * What every good answer with registers looks like (Modbus Application Protocol 1.1b3, 6.3 and 6.4; Modbus over Serial
 * Line 1.02, 2.5.1): unit, function, count of bytes, registers, CRC with its low byte first.
 */
final class ModbusFrame {
    private static final int HEADER_BYTES = 3;

    private ModbusFrame() {}

    /** Offset of a register in the answer, counted from the first one that is asked for. */
    static int offset(int index) {
        return HEADER_BYTES + 2 * index;
    }

    static Framing framing(Source.Registers registers) {
        return new Framing.Fixed(ByteText.EMPTY, registers.answerBytes());
    }

    static Checksum checksum(int line) {
        Checksum.Crc crc = new Checksum.Crc(16, 0x8005, 0xFFFF, true, true, 0);
        return new Checksum(crc, Wire.Order.LITTLE, 0, 0, false, ByteText.EMPTY, line);
    }

    /** What stands before the registers after the unit, whose address may be another than the profile's. */
    static List<Field> header(Source.Registers registers, int line) {
        return List.of(
                literal("(function)", 1, registers.function(), line),
                literal("(byte count)", 2, 2 * registers.count(), line));
    }

    private static Field literal(String name, int offset, int value, int line) {
        Field.Literal literal = new Field.Literal(ByteText.of(new byte[] {(byte) value}));
        return new Field(name, new Field.AtByte(offset), literal, Optional.empty(), line);
    }
}
