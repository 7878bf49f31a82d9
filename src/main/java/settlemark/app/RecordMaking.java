package settlemark.app;

import java.io.IOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import settlemark.record.EverySample;
import settlemark.record.RecordFiles;
import settlemark.session.JobRecord;
import settlemark.session.ProbeKeys;
import settlemark.session.ProbeSetup;
import settlemark.session.RawBytes;
import settlemark.session.RecordForm;
import settlemark.session.RecordSource;
import settlemark.session.RecordWriter;
import settlemark.session.Rereading;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/** Makes the record of a stored session. */
final class RecordMaking {
    private RecordMaking() {}

    record Made(JobRecord record, List<Path> files) {}

    /** What is done with a record. */
    interface Writing {
        List<Path> write(JobRecord record, RecordWriter.SampleSource samples) throws StoreException, IOException;
    }

    private interface Counts {
        long of(int probe) throws StoreException;
    }

    /** Empty where the session is no job. */
    static Optional<Made> make(SessionStore store, long session, Path folder) throws StoreException, IOException {
        return make(store, session, ProbeKeys.NONE, "", folder);
    }

    /** In the form that the workspace is set to. */
    static Optional<Made> make(SessionStore store, long session, ProbeKeys keys, String fingerprint, Path folder)
            throws StoreException, IOException {
        return make(store, session, keys, fingerprint, RecordForms.of(store.settings()), folder);
    }

    /**
     * Empty where the session is no job.
     *
     * @param fingerprint of the key that will seal it, empty where it is not sealed
     * @throws IOException also where the key of a probe is missing that it was stored with
     */
    static Optional<Made> make(
            SessionStore store, long session, ProbeKeys keys, String fingerprint, RecordForm form, Path folder)
            throws StoreException, IOException {
        RawBytes.require(store, session);
        SessionHeader header = store.header(session);
        if (header.plan().isEmpty()) {
            return Optional.empty();
        }
        boolean fresh = Files.notExists(folder);
        Optional<Made> done = Optional.empty();
        try {
            done = beside(
                    new EverySample(header, samples(store, session), made(folder)),
                    () -> record(store, session, keys),
                    new RecordFiles(fingerprint, form));
            return done;
        } finally {
            if (fresh && done.isEmpty()) {
                removeEmpty(folder);
            }
        }
    }

    private static void removeEmpty(Path folder) throws IOException {
        try {
            Files.deleteIfExists(folder);
        } catch (DirectoryNotEmptyException e) {
            // somebody else has put something there meanwhile
        }
    }

    /** Empty where the session is no job. */
    static Optional<Made> make(SessionStore store, long session, ProbeKeys keys, Writing writing)
            throws StoreException, IOException {
        return write(record(store, session, keys), samples(store, session), writing);
    }

    private static Optional<JobRecord> record(SessionStore store, long session, ProbeKeys keys)
            throws StoreException, IOException {
        Optional<JobRecord> record = RecordSource.of(store, session, keys);
        checkKeys(record, probe -> store.sampleCount(session, probe));
        return record.map(with(Besides.of(store, session)));
    }

    private static RecordWriter.SampleSource samples(SessionStore store, long session) {
        return (probe, channel) -> store.samples(session, probe, channel, 0, Long.MAX_VALUE);
    }

    /** In the form that the workspace is set to. */
    static Optional<Made> make(SessionStore store, Rereading rereading, ProbeKeys keys, String fingerprint, Path folder)
            throws StoreException, IOException {
        return make(store, rereading, keys, fingerprint, RecordForms.of(store.settings()), folder);
    }

    /** Of what was decoded again; empty where the session is no job. */
    static Optional<Made> make(
            SessionStore store, Rereading rereading, ProbeKeys keys, String fingerprint, RecordForm form, Path folder)
            throws StoreException, IOException {
        return make(
                store,
                rereading,
                keys,
                (record, samples) -> new RecordFiles(fingerprint, form).write(record, samples, made(folder)));
    }

    /** Of what was decoded again; empty where the session is no job. */
    static Optional<Made> make(SessionStore store, Rereading rereading, ProbeKeys keys, Writing writing)
            throws StoreException, IOException {
        Optional<JobRecord> record = RecordSource.of(store, rereading, keys);
        checkKeys(record, probe -> store.rereadings().sampleCount(rereading, probe));
        return write(
                record.map(with(Besides.of(store, rereading.session()))),
                (probe, channel) -> store.rereadings().samples(rereading, probe, channel, 0, Long.MAX_VALUE),
                writing);
    }

    private static UnaryOperator<JobRecord> with(JobRecord.Beside beside) {
        return record -> record.with(beside);
    }

    /** Made without the key that it was stored with, a record would lack readings and not say so. */
    private static void checkKeys(Optional<JobRecord> record, Counts stored) throws StoreException, IOException {
        List<ProbeSetup> probes = record.map(r -> r.header().probes()).orElse(List.of());
        for (int i = 0; i < probes.size(); i++) {
            ProbeSetup probe = probes.get(i);
            if (ProbeKeys.mayNeedOne(probe.profile())
                    && record.orElseThrow().instruments().get(i).samples() < stored.of(i)) {
                throw new IOException("the frames of probe " + probe.name()
                        + " are protected, and without the key that they were stored with the record would lack its"
                        + " readings: say --key " + probe.name() + "=FILE");
            }
        }
    }

    private static Optional<Made> write(Optional<JobRecord> record, RecordWriter.SampleSource samples, Writing writing)
            throws StoreException, IOException {
        if (record.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Made(record.get(), writing.write(record.get(), samples)));
    }

    private interface Source {
        Optional<JobRecord> record() throws StoreException, IOException;
    }

    /** Writes the samples while the session is run through again: they are half of the work each. */
    private static Optional<Made> beside(EverySample samples, Source source, RecordFiles files)
            throws StoreException, IOException {
        try (samples) {
            Optional<JobRecord> record;
            try (Meanwhile<EverySample> written = new Meanwhile<>("writing the samples", () -> written(samples))) {
                record = source.record();
                written.result();
            }
            return record.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Made(record.get(), files.write(record.get(), samples)));
        }
    }

    private static EverySample written(EverySample samples) throws StoreException, IOException {
        RecordFiles.warm();
        samples.write();
        return samples;
    }

    private static Path made(Path folder) throws IOException {
        try {
            return Files.createDirectories(folder);
        } catch (IOException e) {
            throw new IOException(
                    "the folder " + folder.toAbsolutePath()
                            + " for the record cannot be made; name another one with --out",
                    e);
        }
    }
}
