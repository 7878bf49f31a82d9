package settlemark.decode;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import settlemark.profile.Wire;

/** Integers in bytes, in any order of the bytes. */
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

    static short int16(byte[] bytes, int at, boolean little) {
        return (short) (little ? SHORT_LITTLE : SHORT_BIG).get(bytes, at);
    }

    static int int32(byte[] bytes, int at, boolean little) {
        return (int) (little ? INT_LITTLE : INT_BIG).get(bytes, at);
    }

    static long int64(byte[] bytes, int at, boolean little) {
        return (long) (little ? LONG_LITTLE : LONG_BIG).get(bytes, at);
    }

    /** The bits of a wire's bytes, in the low bits. */
    static long bits(Wire wire, byte[] bytes, int at) {
        return bits(bytes, at, wire.bytes(), wire.order());
    }

    static long bits(byte[] bytes, int at, int count, Wire.Order order) {
        long bits = 0;
        for (int i = count - 1; i >= 0; i--) {
            bits = bits << 8 | bytes[at + place(order, i, count)] & 0xFFL;
        }
        return bits;
    }

    static void writeBits(long bits, byte[] bytes, int at, int count, Wire.Order order) {
        for (int i = 0; i < count; i++) {
            bytes[at + place(order, i, count)] = (byte) (bits >>> 8 * i);
        }
    }

    static void writeBits(long bits, byte[] bytes, int at, Wire wire) {
        writeBits(bits, bytes, at, wire.bytes(), wire.order());
    }

    /** Where the byte of a rank stands, the lowest having rank 0. Swapping the bytes of a word flips the lowest bit. */
    private static int place(Wire.Order order, int rank, int count) {
        return switch (order) {
            case LITTLE -> rank;
            case BIG -> count - 1 - rank;
            case BIG_WORDS_SWAPPED -> rank ^ 1;
            case LITTLE_WORDS_SWAPPED -> count - 1 - rank ^ 1;
        };
    }
}
