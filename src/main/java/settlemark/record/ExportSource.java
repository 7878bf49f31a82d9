package settlemark.record;

import settlemark.session.SampleBlock;
import settlemark.session.Span;
import settlemark.session.StoreException;

/** Where the samples of an export come from: what was decoded on the day, or a rereading. */
public interface ExportSource {
    /** Session time of the last thing stored. */
    long durationNanos();

    /** Samples of all channels. */
    long samples() throws StoreException;

    /** Samples of one channel within a stretch of time, both ends included, in order. */
    SampleBlock samples(int probe, int channel, Span span) throws StoreException;
}
