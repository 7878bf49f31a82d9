package settlemark.session;

import java.util.List;
import settlemark.decode.Rejected;
import settlemark.settle.StageReading;

/**
 * What a session has gained since the last batch; one durable commit.
 *
 * @param firstSequence sequence number of the first event, from 0 in each session
 * @param events in order
 * @param samples what the bytes among them gave
 * @param rejected frames that were refused, with the probe's index
 * @param readings taken meanwhile
 * @param untilNanos session time up to which this is everything
 */
public record WriteBatch(
        long firstSequence,
        List<SessionEvent> events,
        List<SampleBlock> samples,
        List<ProbeRejected> rejected,
        List<StageReading> readings,
        long untilNanos) {
    public WriteBatch {
        events = List.copyOf(events);
        samples = List.copyOf(samples);
        rejected = List.copyOf(rejected);
        readings = List.copyOf(readings);
    }

    public record ProbeRejected(int probe, Rejected rejected) {}

    public boolean isEmpty() {
        return events.isEmpty() && samples.isEmpty() && readings.isEmpty() && rejected.isEmpty();
    }

    /** The same without its events, for where they are stored already. */
    public WriteBatch results() {
        return new WriteBatch(firstSequence + events.size(), List.of(), samples, rejected, readings, untilNanos);
    }

    /** How many samples of a probe are in it. */
    public long samplesOf(int probe) {
        return samples.stream()
                .filter(s -> s.probe() == probe)
                .mapToLong(SampleBlock::size)
                .sum();
    }
}
