package settlemark.store;

import java.util.List;
import settlemark.codec.PackedRows;
import settlemark.codec.PackedSamples;
import settlemark.session.SampleBlock;

/**
 * What a series had open at a commit: what of it is sealed, and what stays in that commit's frame. It shares nothing with
 * the series, so that it can be packed on another thread while the series goes on.
 *
 * @param number of the commit
 * @param nextSequence sequence number of the event after it
 * @param untilNanos session time up to which this is everything
 * @param samples for blocks, each of one probe
 * @param events for blocks
 * @param restSamples what stays
 * @param restEvents what stays
 */
record SeriesCut(
        long number,
        long nextSequence,
        long untilNanos,
        List<List<SampleBlock>> samples,
        List<List<PackedRows.Row>> events,
        List<SampleBlock> restSamples,
        List<PackedRows.Row> restEvents) {

    Packed pack() {
        return new Packed(
                new Frame(
                        number,
                        nextSequence,
                        untilNanos,
                        PackedSamples.packQuickly(restSamples),
                        PackedRows.pack(restEvents, true)),
                samples.stream()
                        .map(b -> SealedSamples.pack(b.get(0).probe(), b))
                        .toList(),
                events.stream().map(SealedEvents::pack).toList());
    }

    /** What takes the place of all frames up to one. */
    record Packed(Frame rest, List<SealedSamples> samples, List<SealedEvents> events) {}

    /** A row of {@code frame}. */
    record Frame(long number, long nextSequence, long untilNanos, byte[] samples, byte[] events) {
        long size() {
            return (long) samples.length + events.length;
        }
    }
}
