package settlemark.store;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import settlemark.measure.SampleStatus;
import settlemark.session.SampleBlock;

/**
 * Blocks of samples of formats 1 and 2, little endian: flags (1 byte), count (4), first time (8), then the other times as steps of
 * 4 bytes or, where one does not fit, of 8; the values as their 8 raw bytes, so that each comes back bit for bit; and a
 * status a sample unless all are OK.
 */
final class FormerBlocks {
    private static final int WIDE_STEPS = 1;
    private static final int WITH_STATUSES = 2;
    private static final int HEAD_BYTES = 1 + Integer.BYTES + Long.BYTES;

    private FormerBlocks() {}

    /** @throws IllegalArgumentException where the bytes are no block */
    static SampleBlock unpack(int probe, int channel, byte[] bytes) {
        ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        if (bytes.length < HEAD_BYTES) {
            throw new IllegalArgumentException(
                    "a block of samples has at least " + HEAD_BYTES + " bytes, got " + bytes.length);
        }
        int flags = in.get();
        int count = in.getInt();
        boolean wide = (flags & WIDE_STEPS) != 0;
        boolean withStatuses = (flags & WITH_STATUSES) != 0;
        if (flags >> 2 != 0 || count < 1 || count > bytes.length || size(count, wide, withStatuses) != bytes.length) {
            throw new IllegalArgumentException("a block of " + count + " samples with flags " + flags
                    + " does not have " + bytes.length + " bytes");
        }
        long[] times = new long[count];
        times[0] = in.getLong();
        for (int i = 1; i < count; i++) {
            times[i] = times[i - 1] + (wide ? in.getLong() : in.getInt());
        }
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            values[i] = Double.longBitsToDouble(in.getLong());
        }
        byte[] statuses = new byte[count];
        if (withStatuses) {
            in.get(statuses);
            checkStatuses(statuses);
        }
        return new SampleBlock(probe, channel, times, values, statuses);
    }

    private static int size(int count, boolean wide, boolean statuses) {
        long steps = (count - 1L) * (wide ? Long.BYTES : Integer.BYTES);
        return Math.toIntExact(HEAD_BYTES + steps + (long) count * (Double.BYTES + (statuses ? 1 : 0)));
    }

    private static void checkStatuses(byte[] statuses) {
        int known = SampleStatus.values().length;
        for (byte status : statuses) {
            if (status < 0 || status >= known) {
                throw new IllegalArgumentException("a sample has status " + status + ", known are 0 to " + (known - 1));
            }
        }
    }
}
