package settlemark.session;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.settle.StageReading;

/**
 * Decodes a stored session again: its events go through the pipeline as on the day, with the profiles of a correction.
 * With the session's own profiles the results are the same again.
 */
public final class Rereader {
    /** After so many events what they gave is written. */
    private static final int EVENTS_PER_BATCH = 4096;

    private final SessionStore store;
    private final Rereading rereading;
    private final Correction correction;
    private final LiveSession pipeline;
    private final List<Tally> tallies = new ArrayList<>();
    private final List<StageReading> readings = new ArrayList<>();
    private int waiting;

    private Rereader(SessionStore store, Rereading rereading, Correction correction, ProbeKeys keys) {
        this.store = store;
        this.rereading = rereading;
        this.correction = correction;
        this.pipeline = new LiveSession(correction.header(), keys);
        rereading.probes().forEach(p -> tallies.add(new Tally()));
    }

    private static final class Tally {
        private long bytes;
        private long samples;
        private long rejected;
        private String firstRejected = "";
    }

    /**
     * Reads a session again and stores the results beside those of the day. Where a new profile does not fit or the
     * store fails, nothing of them is kept.
     *
     * @param keys of probes whose frames are protected
     * @param madeAt wall clock
     * @param version of the program
     */
    public static RereadReport run(
            SessionStore store, long session, Correction correction, ProbeKeys keys, Instant madeAt, String version)
            throws StoreException {
        RawBytes.require(store, session);
        Rereading begun = store.rereadings().begin(session, correction.header().probes(), madeAt, version);
        try {
            Rereader rereader = new Rereader(store, begun, correction, keys);
            store.events(session, rereader::take);
            rereader.write();
            RereadReport report = rereader.report();
            if (report.kept().isPresent()) {
                store.rereadings().complete(begun);
            } else {
                store.rereadings().discard(begun);
            }
            return report;
        } catch (StoreException | RuntimeException e) {
            discard(store, begun, e);
            throw e;
        }
    }

    /** Where even that fails, it stays unlisted, and the next rereading removes it. */
    private static void discard(SessionStore store, Rereading begun, Exception because) {
        try {
            store.rereadings().discard(begun);
        } catch (StoreException | RuntimeException e) {
            because.addSuppressed(e);
        }
    }

    private void take(SessionEvent stored) throws StoreException {
        if (stored instanceof SessionEvent.Bytes bytes) {
            tallies.get(bytes.probe()).bytes += bytes.chunk().bytes().length;
        }
        pipeline.take(correction.event(stored));
        waiting++;
        if (waiting == EVENTS_PER_BATCH) {
            write();
        }
    }

    private void write() throws StoreException {
        WriteBatch batch = pipeline.drain().results();
        waiting = 0;
        for (int i = 0; i < tallies.size(); i++) {
            tallies.get(i).samples += batch.samplesOf(i);
        }
        for (WriteBatch.ProbeRejected refused : batch.rejected()) {
            Tally tally = tallies.get(refused.probe());
            tally.rejected++;
            if (tally.rejected == 1) {
                tally.firstRejected = refused.rejected().reason();
            }
        }
        readings.addAll(batch.readings());
        store.rereadings().append(rereading, batch);
    }

    private RereadReport report() throws StoreException {
        List<RereadReport.Probe> probes = new ArrayList<>();
        for (int i = 0; i < tallies.size(); i++) {
            probes.add(probe(i, tallies.get(i)));
        }
        boolean fits = probes.stream().allMatch(RereadReport.Probe::fits);
        return new RereadReport(
                rereading.session(),
                fits ? Optional.of(rereading) : Optional.empty(),
                probes,
                ReadingChange.between(store.readings(rereading.session()), readings),
                correction.lost());
    }

    private RereadReport.Probe probe(int index, Tally tally) throws StoreException {
        ProbeSetup before = correction.former().probes().get(index);
        long[] rejectedBefore = {0};
        store.rejected(rereading.session(), index, r -> rejectedBefore[0]++);
        return new RereadReport.Probe(
                before.name(),
                before.profile(),
                correction.header().probes().get(index).profile(),
                tally.bytes,
                store.sampleCount(rereading.session(), index),
                tally.samples,
                rejectedBefore[0],
                tally.rejected,
                tally.firstRejected);
    }
}
