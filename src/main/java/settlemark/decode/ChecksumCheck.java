package settlemark.decode;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Checksum;
import settlemark.profile.CrcTable;
import settlemark.profile.Wire;

/** The checksum at the end of a frame: compares it, and writes it. */
public final class ChecksumCheck {
    private static final HexFormat DIGITS = HexFormat.of().withUpperCase();

    private final Checksum checksum;
    private final @Nullable CrcTable table;
    private final byte[] leadIn;
    private final long mask;

    public ChecksumCheck(Checksum checksum) {
        this.checksum = checksum;
        this.table = checksum.algorithm() instanceof Checksum.Crc crc ? new CrcTable(crc) : null;
        this.leadIn = checksum.leadIn().toBytes();
        this.mask = checksum.algorithm().width() == 64
                ? -1L
                : (1L << checksum.algorithm().width()) - 1;
    }

    /** Why the frame's checksum is not right, null where it is. */
    public @Nullable String complaint(byte[] bytes, int from, int to) {
        int leadInAt = to - checksum.bytesAtEnd();
        int first = from + checksum.coversFrom();
        if (leadInAt < first) {
            return "checksum missing: the frame has only " + (to - from) + " bytes";
        }
        for (int i = 0; i < leadIn.length; i++) {
            if (bytes[leadInAt + i] != leadIn[i]) {
                return "checksum missing: no " + Ascii.quoted(leadIn, 0, leadIn.length) + " before it";
            }
        }
        long expected = compute(bytes, first, leadInAt);
        int at = leadInAt + leadIn.length;
        int end = at + checksum.bytes();
        if (checksum.hex() && !areHexDigits(bytes, at, end)) {
            return "checksum must be " + checksum.bytes() + " hexadecimal digits, got " + Ascii.quoted(bytes, at, end);
        }
        long got = checksum.hex() ? hexBits(bytes, at) : bits(bytes, at, checksum.bytes());
        return got == expected ? null : mismatch(bytes, at, end, expected);
    }

    /** Writes lead-in and checksum at the end of a frame. */
    void write(byte[] bytes, int from, int to) {
        int leadInAt = to - checksum.bytesAtEnd();
        System.arraycopy(leadIn, 0, bytes, leadInAt, leadIn.length);
        long value = compute(bytes, from + checksum.coversFrom(), leadInAt);
        int at = leadInAt + leadIn.length;
        if (checksum.hex()) {
            writeHex(value, bytes, at);
        } else {
            RawBits.writeBits(value, bytes, at, checksum.bytes(), checksum.order());
        }
    }

    private long compute(byte[] bytes, int from, int to) {
        if (table != null) {
            return table.of(bytes, from, to);
        }
        long sum = 0;
        boolean xor = checksum.algorithm() instanceof Checksum.Xor;
        for (int i = from; i < to; i++) {
            sum = xor ? sum ^ bytes[i] & 0xFF : sum + (bytes[i] & 0xFF);
        }
        boolean negated = checksum.algorithm() instanceof Checksum.Sum s && s.negated();
        return (negated ? -sum : sum) & mask;
    }

    private long bits(byte[] bytes, int at, int count) {
        if (count == 2 && checksum.order().ordinal() <= Wire.Order.BIG.ordinal()) {
            return RawBits.int16(bytes, at, checksum.order() == Wire.Order.LITTLE) & 0xFFFFL;
        }
        return RawBits.bits(bytes, at, count, checksum.order());
    }

    private String mismatch(byte[] bytes, int at, int to, long expected) {
        String got = checksum.hex() ? Ascii.quoted(bytes, at, to) : Ascii.hex(bytes, at, to);
        byte[] right = new byte[checksum.bytes()];
        if (checksum.hex()) {
            writeHex(expected, right, 0);
            return "checksum " + got + " where the bytes give " + Ascii.quoted(right, 0, right.length);
        }
        RawBits.writeBits(expected, right, 0, right.length, checksum.order());
        return "checksum " + got + " where the bytes give " + Ascii.hex(right, 0, right.length);
    }

    private static boolean areHexDigits(byte[] bytes, int from, int to) {
        for (int i = from; i < to; i++) {
            if (!HexFormat.isHexDigit(bytes[i])) {
                return false;
            }
        }
        return true;
    }

    /** The number of hexadecimal digits, in the checksum's byte order. */
    private long hexBits(byte[] bytes, int at) {
        byte[] raw = DIGITS.parseHex(new String(bytes, at, checksum.bytes(), StandardCharsets.US_ASCII));
        return RawBits.bits(raw, 0, raw.length, checksum.order());
    }

    private void writeHex(long value, byte[] bytes, int at) {
        byte[] raw = new byte[checksum.bytes() / 2];
        RawBits.writeBits(value, raw, 0, raw.length, checksum.order());
        byte[] digits = DIGITS.formatHex(raw).getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(digits, 0, bytes, at, digits.length);
    }
}
