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
            room();
            LONGS.set(out, words * Long.BYTES, held);
            words++;
            held = heldBits == 0 ? 0 : value >>> (Long.SIZE - heldBits);
            all -= Long.SIZE;
        }
        heldBits = all;
    }

    /** In bits. */
    long size() {
        return (long) words * Long.SIZE + heldBits;
    }

    /** All bits of another one behind those of this. */
    void append(BitWriter other) {
        for (int i = 0; i < other.words; i++) {
            bits((long) LONGS.get(other.out, i * Long.BYTES), Long.SIZE);
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
        room();
        LONGS.set(out, words * Long.BYTES, held);
        return Arrays.copyOf(out, words * Long.BYTES + (heldBits + 7) / 8);
    }

    private void room() {
        if ((words + 1) * Long.BYTES > out.length) {
            out = Arrays.copyOf(out, out.length * 2);
        }
    }
}
