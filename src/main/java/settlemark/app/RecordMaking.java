package settlemark.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import settlemark.record.RecordFiles;
import settlemark.session.JobRecord;
import settlemark.session.RecordSource;
import settlemark.session.RecordWriter;
import settlemark.session.Rereading;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/** Makes the record of a stored session. */
final class RecordMaking {
    private RecordMaking() {}

    record Made(JobRecord record, List<Path> files) {}

    /** Empty where the session is no job. */
    static Optional<Made> make(SessionStore store, long session, Path folder) throws StoreException, IOException {
        return write(
                RecordSource.of(store, session),
                (probe, channel) -> store.samples(session, probe, channel, 0, Long.MAX_VALUE),
                folder);
    }

    /** Of what was decoded again; empty where the session is no job. */
    static Optional<Made> make(SessionStore store, Rereading rereading, Path folder)
            throws StoreException, IOException {
        return write(
                RecordSource.of(store, rereading),
                (probe, channel) -> store.rereadings().samples(rereading, probe, channel, 0, Long.MAX_VALUE),
                folder);
    }

    private static Optional<Made> write(Optional<JobRecord> record, RecordWriter.SampleSource samples, Path folder)
            throws StoreException, IOException {
        if (record.isEmpty()) {
            return Optional.empty();
        }
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new IOException(
                    "the folder " + folder.toAbsolutePath()
                            + " for the record cannot be made; name another one with --out",
                    e);
        }
        List<Path> files = new RecordFiles().write(record.get(), samples, folder);
        return Optional.of(new Made(record.get(), files));
    }
}
