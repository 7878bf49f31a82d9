package settlemark.store;

import java.util.List;
import settlemark.codec.Groups;
import settlemark.codec.PackedGroups;
import settlemark.codec.PackedSamples;
import settlemark.session.SampleBlock;

/**
 * A block of samples as it is stored.
 *
 * @param lowNanos time of the earliest sample
 * @param highNanos time of the latest
 * @param summary packed statistics of level 0
 * @param block packed samples
 */
record SealedSamples(int probe, long lowNanos, long highNanos, byte[] summary, byte[] block) {
    /** @param blocks of one probe, none empty */
    static SealedSamples pack(int probe, List<SampleBlock> blocks) {
        List<Groups> groups = blocks.stream()
                .map(b -> Groups.of(b, Sealing.SAMPLES_PER_GROUP))
                .toList();
        return new SealedSamples(
                probe, low(groups), high(groups), PackedGroups.pack(groups), PackedSamples.pack(blocks));
    }

    /** Time of the earliest sample of any channel. */
    static long low(List<Groups> channels) {
        long low = Long.MAX_VALUE;
        for (Groups channel : channels) {
            for (long time : channel.lows()) {
                low = Math.min(low, time);
            }
        }
        return low;
    }

    /** Time of the latest. */
    static long high(List<Groups> channels) {
        long high = Long.MIN_VALUE;
        for (Groups channel : channels) {
            for (long time : channel.highs()) {
                high = Math.max(high, time);
            }
        }
        return high;
    }
}
