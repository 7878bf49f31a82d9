package settlemark.codec;

import java.util.Arrays;
import settlemark.measure.SampleStatus;

/** Statuses as runs; one bit where all are plain. */
final class StatusColumn {
    private StatusColumn() {}

    static void write(BitWriter out, byte[] statuses) {
        boolean plain = plain(statuses);
        out.bits(plain ? 0 : 1, 1);
        for (int from = 0; !plain && from < statuses.length; ) {
            int to = from + 1;
            while (to < statuses.length && statuses[to] == statuses[from]) {
                to++;
            }
            out.number(statuses[from]);
            out.number(to - from);
            from = to;
        }
    }

    private static boolean plain(byte[] statuses) {
        for (byte status : statuses) {
            if (status != 0) {
                return false;
            }
        }
        return true;
    }

    static byte[] read(BitReader in, int count) {
        byte[] statuses = new byte[count];
        if (in.bits(1) == 0) {
            return statuses;
        }
        int known = SampleStatus.values().length - 1;
        for (int from = 0; from < count; ) {
            int status = in.number(known, "a sample's status");
            int run = in.number(count - from, "a run of statuses");
            if (run == 0) {
                throw new IllegalArgumentException("a run of statuses is empty");
            }
            Arrays.fill(statuses, from, from + run, (byte) status);
            from += run;
        }
        return statuses;
    }
}
