package settlemark.store;

import java.util.ArrayList;
import java.util.List;
import settlemark.codec.PackedSamples;
import settlemark.session.SampleBlock;
import settlemark.session.Span;

/**
 * What of packed samples can be read, and what of them cannot.
 *
 * @param samples channels whose digests hold
 * @param broken the others
 */
record BlockContent(List<SampleBlock> samples, List<Broken> broken) {
    /** Stands for every channel and probe. */
    static final int ALL = -1;

    BlockContent {
        samples = List.copyOf(samples);
        broken = List.copyOf(broken);
    }

    /**
     * What cannot be read.
     *
     * @param probe {@link #ALL} where even that cannot be known
     * @param channel {@link #ALL} where it is all of them
     * @param span empty stretch where it is not known
     */
    record Broken(int probe, int channel, Span span, String words) {}

    /** @param unknown span of what cannot even be listed */
    static BlockContent of(byte[] bytes, Span unknown) {
        PackedSamples packed;
        try {
            packed = PackedSamples.of(bytes);
        } catch (IllegalArgumentException e) {
            return new BlockContent(List.of(), List.of(new Broken(ALL, ALL, unknown, words(e))));
        }
        List<SampleBlock> samples = new ArrayList<>();
        List<Broken> broken = new ArrayList<>();
        for (PackedSamples.Part part : packed.parts()) {
            try {
                samples.add(checked(packed.read(part), part));
            } catch (IllegalArgumentException e) {
                Span span = new Span(part.lowNanos(), part.highNanos());
                broken.add(new Broken(part.probe(), part.channel(), span, words(e)));
            }
        }
        return new BlockContent(samples, broken);
    }

    /** The head's limits are of the times; what was written so wrongly that they are not must be noticed as well. */
    private static SampleBlock checked(SampleBlock block, PackedSamples.Part part) {
        long low = Long.MAX_VALUE;
        long high = Long.MIN_VALUE;
        for (long time : block.timesNanos()) {
            low = Math.min(low, time);
            high = Math.max(high, time);
        }
        if (low != part.lowNanos() || high != part.highNanos()) {
            throw new IllegalArgumentException("the block says that its times go from " + part.lowNanos() + " to "
                    + part.highNanos() + " ns, and they go from " + low + " to " + high + " ns");
        }
        return block;
    }

    private static String words(IllegalArgumentException e) {
        return "samples cannot be read: " + e.getMessage();
    }

    long size() {
        return samples.stream().mapToLong(SampleBlock::size).sum();
    }
}
