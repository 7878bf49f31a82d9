package settlemark.codec;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;

/** Bits into bytes, the lowest first. */
final class BitWriter {
    private static final VarHandle LONGS = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

    private byte[] out = new byte[512];
    private int words;

    /** Bits that fill no whole word yet, and how many; always fewer than 64. */
    private long held;

    private int heldBits;

    /** @param count 0 to 64; of the value's bits above it none may be set */
    void bits(long value, int count) {
        held |= value << heldBits;
        int all = heldBits + count;
        if (all >= Long.SIZE) {
            room(Long.SIZE);
            LONGS.set(out, words * Long.BYTES, held);
            words++;
            held = heldBits == 0 ? 0 : value >>> (Long.SIZE - heldBits);
            all -= Long.SIZE;
        }
        heldBits = all;
    }

    /**
     * Numbers of one width.
     *
     * @param width 1 to 64
     */
    void packed(long[] numbers, int count, int width) {
        room((long) count * width);
        long some = held;
        int bits = heldBits;
        for (int i = 0; i < count; i++) {
            long number = numbers[i];
            some |= number << bits;
            bits += width;
            if (bits >= Long.SIZE) {
                LONGS.set(out, words * Long.BYTES, some);
                words++;
                bits -= Long.SIZE;
                some = bits == 0 ? 0 : number >>> (width - bits);
            }
        }
        held = some;
        heldBits = bits;
    }

    /**
     * Numbers in Rice's code: what is above the lower bits as so many ones, a zero, the lower bits.
     *
     * @param width of the lower bits, at most 31
     * @param most so many ones stand for a number that is written out; at most 24
     */
    void rice(long[] numbers, int count, int width, int most) {
        long mask = (1L << width) - 1;
        for (int i = 0; i < count; i++) {
            long number = numbers[i];
            long ones = number >>> width;
            if (ones >= 0 && ones < most) {
                bits((1L << ones) - 1 | (number & mask) << ones + 1, (int) ones + 1 + width);
            } else {
                bits((1L << most) - 1, most);
                bits(number, Long.SIZE);
            }
        }
    }

    /** In bits. */
    long size() {
        return (long) words * Long.SIZE + heldBits;
    }

    /** All bits of another one behind those of this. */
    void append(BitWriter other) {
        room(other.size());
        for (int i = 0; i < other.words; i++) {
            long word = (long) LONGS.get(other.out, i * Long.BYTES);
            LONGS.set(out, words * Long.BYTES, held | word << heldBits);
            words++;
            held = heldBits == 0 ? 0 : word >>> (Long.SIZE - heldBits);
        }
        bits(other.held, other.heldBits);
    }

    /** Seven bits at a time, small numbers short; negative ones are the largest. */
    void number(long unsigned) {
        long rest = unsigned;
        while (rest >>> 7 != 0) {
            bits(rest & 0x7f | 0x80, 8);
            rest >>>= 7;
        }
        bits(rest, 8);
    }

    /** A number of either sign, small ones short. */
    void signed(long value) {
        number(Residual.fold(value));
    }

    /** All that was written, filled up to a whole byte with zeros. */
    byte[] bytes() {
        room(Long.SIZE);
        LONGS.set(out, words * Long.BYTES, held);
        return Arrays.copyOf(out, words * Long.BYTES + (heldBits + 7) / 8);
    }

    /** For so many bits more, and a word that they do not fill. */
    private void room(long bits) {
        long needed = (words + 1 + bits / Long.SIZE) * Long.BYTES;
        if (needed > out.length) {
            out = Arrays.copyOf(out, Math.toIntExact(Math.max(needed, 2L * out.length)));
        }
    }
}
