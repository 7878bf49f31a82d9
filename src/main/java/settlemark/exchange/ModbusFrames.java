package settlemark.exchange;

import java.util.List;
import settlemark.profile.Checksum;
import settlemark.profile.CrcTable;

/** Frames of Modbus RTU: unit, function, data, CRC-16/MODBUS with its low byte first (Modbus over Serial Line 1.02). */
final class ModbusFrames {
    static final int READ_HOLDING = 3;
    static final int READ_INPUT = 4;
    static final int WRITE_ONE = 6;
    static final int WRITE_SEVERAL = 16;
    static final int EXCEPTION_BIT = 0x80;
    static final int EXCEPTION_BYTES = 5;

    /** Parameters of CRC-16/MODBUS as the public catalogues of CRC algorithms list them. */
    private static final CrcTable CRC = new CrcTable(new Checksum.Crc(16, 0x8005, 0xFFFF, true, true, 0));

    private ModbusFrames() {}

    static byte[] read(int unit, int function, int first, int count) {
        return sealed(unit, function, first >> 8, first, count >> 8, count);
    }

    /** One register by function 6, more by function 16. */
    static byte[] write(int unit, int first, List<Integer> words) {
        if (words.size() == 1) {
            return sealed(unit, WRITE_ONE, first >> 8, first, words.get(0) >> 8, words.get(0));
        }
        int[] body = new int[7 + 2 * words.size()];
        int[] head = {unit, WRITE_SEVERAL, first >> 8, first, words.size() >> 8, words.size(), 2 * words.size()};
        System.arraycopy(head, 0, body, 0, head.length);
        for (int i = 0; i < words.size(); i++) {
            body[7 + 2 * i] = words.get(i) >> 8;
            body[8 + 2 * i] = words.get(i);
        }
        return sealed(body);
    }

    static byte[] exception(int unit, int function, int code) {
        return sealed(unit, function | EXCEPTION_BIT, code);
    }

    /** The bytes, each by its low 8 bits, and their CRC. */
    static byte[] sealed(int... body) {
        byte[] frame = new byte[body.length + 2];
        for (int i = 0; i < body.length; i++) {
            frame[i] = (byte) body[i];
        }
        long crc = CRC.of(frame, 0, body.length);
        frame[body.length] = (byte) crc;
        frame[body.length + 1] = (byte) (crc >> 8);
        return frame;
    }

    /** Whether the last two bytes are the CRC of those before. */
    static boolean isSealed(byte[] bytes, int from, int to) {
        long crc = CRC.of(bytes, from, to - 2);
        return bytes[to - 2] == (byte) crc && bytes[to - 1] == (byte) (crc >> 8);
    }

    static int at(byte[] bytes, int index) {
        return bytes[index] & 0xFF;
    }

    static int word(byte[] bytes, int index) {
        return at(bytes, index) << 8 | at(bytes, index + 1);
    }

    /** The meaning of an exception code (Modbus Application Protocol 1.1b3, section 7). */
    static String exceptionWords(int code) {
        String meaning = switch (code) {
            case 1 -> "illegal function";
            case 2 -> "illegal data address";
            case 3 -> "illegal data value";
            case 4 -> "the device failed";
            case 5 -> "accepted, takes longer";
            case 6 -> "the device is busy";
            case 8 -> "memory parity error";
            case 10 -> "gateway path unavailable";
            case 11 -> "the device behind the gateway does not answer";
            default -> "not a code of the standard";
        };
        return "exception " + code + ": " + meaning;
    }
}
