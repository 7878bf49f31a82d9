package settlemark.codec;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/** What a {@link BitWriter} wrote. Every call throws IllegalArgumentException where the bytes end too early. */
final class BitReader {
    private static final VarHandle LONGS = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

    /** So many bits can be looked at in one go wherever a byte begins. */
    private static final int AHEAD = 56;

    private final byte[] in;
    private final long end;
    private long at;

    BitReader(byte[] bytes, int from, int length) {
        // With words of zeros behind, so that a whole one can be fetched anywhere.
        in = new byte[length + 3 * Long.BYTES];
        System.arraycopy(bytes, from, in, 0, length);
        end = 8L * length;
    }

    /** The next bits, at least {@link #AHEAD} of them; zeros behind the end. */
    private long ahead(long from) {
        return (long) LONGS.get(in, (int) (from >>> 3)) >>> (from & 7);
    }

    /** Goes to a bit that is not before the first nor behind the last. */
    void goTo(long bit) {
        if (bit < 0 || bit > end) {
            throw new IllegalArgumentException("the column ends too early, after " + end / 8 + " bytes");
        }
        at = bit;
    }

    long at() {
        return at;
    }

    long bits(int count) {
        if (count > AHEAD) {
            long low = bits(AHEAD);
            return low | bits(count - AHEAD) << AHEAD;
        }
        long value = ahead(at) & (1L << count) - 1;
        goTo(at + count);
        return value;
    }

    /** Numbers of one width. */
    void packed(long[] to, int from, int count, int width) {
        long place = at;
        goTo(place + (long) count * width);
        if (width > AHEAD) {
            at = place;
            for (int i = from; i < from + count; i++) {
                to[i] = bits(width);
            }
            return;
        }
        long mask = (1L << width) - 1;
        for (int i = from; i < from + count; i++) {
            to[i] = ahead(place) & mask;
            place += width;
        }
    }

    /**
     * Numbers in Rice's code.
     *
     * @param width of their lower bits, at most 31
     * @param most so many ones stand for a number that is written out; at most 24
     */
    void rice(long[] to, int from, int count, int width, int most) {
        long mask = (1L << width) - 1;
        long place = at;
        for (int i = from; i < from + count && place <= end; i++) {
            long ahead = ahead(place);
            int ones = Long.numberOfTrailingZeros(~ahead);
            if (ones < most) {
                // 23 ones, a zero and 31 bits are what can be looked at in one go
                to[i] = (long) ones << width | ahead >>> ones + 1 & mask;
                place += ones + 1 + width;
            } else {
                goTo(place + most);
                to[i] = bits(Long.SIZE);
                place = at;
            }
        }
        goTo(place);
    }

    long number() {
        long value = 0;
        for (int shift = 0; shift < Long.SIZE; shift += 7) {
            long part = bits(8);
            value |= (part & 0x7f) << shift;
            if (part < 0x80) {
                return value;
            }
        }
        throw new IllegalArgumentException("a number has more than ten bytes");
    }

    long signed() {
        return Residual.unfold(number());
    }

    /** A number from 0 to a limit. */
    int number(int most, String what) {
        long value = number();
        if (value < 0 || value > most) {
            throw new IllegalArgumentException(what + " must be 0 to " + most + ", got " + value);
        }
        return (int) value;
    }

    /** Nothing may be left but the zeros that fill the last byte. */
    void finish() {
        if (end - at >= 8 || ahead(at) != 0) {
            throw new IllegalArgumentException("the column has " + (end - at) + " bits too many");
        }
    }
}
