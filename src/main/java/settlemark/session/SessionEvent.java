package settlemark.session;

import settlemark.job.Act;
import settlemark.measure.Chunk;

/**
 * Everything that goes into a session, in the order in which the pipeline took it. The header and these give the same
 * readings again.
 */
public sealed interface SessionEvent {
    /** Session time in nanoseconds. */
    long timeNanos();

    record Bytes(int probe, Chunk chunk) implements SessionEvent {
        @Override
        public long timeNanos() {
            return chunk.timeNanos();
        }
    }

    record Link(int probe, long timeNanos, LinkChange change, String words) implements SessionEvent {}

    record Done(long timeNanos, Act act) implements SessionEvent {}

    /**
     * The computer slept, or the wall clock was set; moves no sample.
     *
     * @param slept true: slept that long; false: the wall clock jumped by that much, forward positive
     */
    record Clock(long timeNanos, boolean slept, long amountNanos, String words) implements SessionEvent {}
}
