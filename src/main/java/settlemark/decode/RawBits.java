package settlemark.decode;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import settlemark.profile.Wire;

/** Numbers in bytes: integers sign- or zero-extended to 64 bits, IEEE numbers as the bits of the double. */
final class RawBits {
    private static final VarHandle SHORT_LITTLE = view(short[].class, ByteOrder.LITTLE_ENDIAN);
    private static final VarHandle SHORT_BIG = view(short[].class, ByteOrder.BIG_ENDIAN);
    private static final VarHandle INT_LITTLE = view(int[].class, ByteOrder.LITTLE_ENDIAN);
    private static final VarHandle INT_BIG = view(int[].class, ByteOrder.BIG_ENDIAN);
    private static final VarHandle LONG_LITTLE = view(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final VarHandle LONG_BIG = view(long[].class, ByteOrder.BIG_ENDIAN);

    private RawBits() {}

    private static VarHandle view(Class<?> arrayType, ByteOrder order) {
        return MethodHandles.byteArrayViewVarHandle(arrayType, order);
    }

    static long read(Wire wire, byte[] bytes, int at) {
        long bits = bits(bytes, at, wire.bytes(), wire.order() == Wire.Order.LITTLE);
        int unused = 64 - 8 * wire.bytes();
        return switch (wire.kind()) {
            case UNSIGNED, BCD, MEDICAL_FLOAT -> bits;
            case SIGNED -> bits << unused >> unused;
            case IEEE_FLOAT -> ieee(bits, wire.bytes());
        };
    }

    /** The value of a raw number, before scale and offset. */
    static double value(Wire wire, long raw) {
        if (wire.kind() == Wire.Kind.IEEE_FLOAT) {
            return Double.longBitsToDouble(raw);
        }
        boolean beyondSigned = wire.kind() == Wire.Kind.UNSIGNED && raw < 0;
        // Halved with the lowest bit kept for rounding: the largest 64-bit numbers have no signed form.
        return beyondSigned ? (double) (raw >>> 1 | raw & 1) * 2 : (double) raw;
    }

    static void write(Wire wire, long raw, byte[] bytes, int at) {
        long bits = raw;
        if (wire.kind() == Wire.Kind.IEEE_FLOAT && wire.bytes() == 4) {
            bits = Float.floatToIntBits((float) Double.longBitsToDouble(raw));
        }
        writeBits(bits, bytes, at, wire.bytes(), wire.order());
    }

    static void writeBits(long bits, byte[] bytes, int at, int count, Wire.Order order) {
        for (int i = 0; i < count; i++) {
            int place = order == Wire.Order.LITTLE ? i : count - 1 - i;
            bytes[at + place] = (byte) (bits >>> 8 * i);
        }
    }

    static long bits(byte[] bytes, int at, int count, boolean little) {
        return switch (count) {
            case 1 -> bytes[at] & 0xFFL;
            case 2 -> (short) (little ? SHORT_LITTLE : SHORT_BIG).get(bytes, at) & 0xFFFFL;
            case 4 -> (int) (little ? INT_LITTLE : INT_BIG).get(bytes, at) & 0xFFFFFFFFL;
            case 8 -> (long) (little ? LONG_LITTLE : LONG_BIG).get(bytes, at);
            default -> byteByByte(bytes, at, count, little);
        };
    }

    private static long byteByByte(byte[] bytes, int at, int count, boolean little) {
        long bits = 0;
        for (int i = 0; i < count; i++) {
            bits = bits << 8 | bytes[at + (little ? count - 1 - i : i)] & 0xFFL;
        }
        return bits;
    }

    private static long ieee(long bits, int count) {
        double value = count == 4 ? Float.intBitsToFloat((int) bits) : Double.longBitsToDouble(bits);
        return Double.doubleToLongBits(value);
    }
}
