package settlemark.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import settlemark.record.RecordFiles;
import settlemark.session.JobRecord;
import settlemark.session.RecordSource;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/** Makes the record of a stored session. */
final class RecordMaking {
    private RecordMaking() {}

    record Made(JobRecord record, List<Path> files) {}

    /** Empty where the session is no job. */
    static Optional<Made> make(SessionStore store, long session, Path folder) throws StoreException, IOException {
        Optional<JobRecord> record = RecordSource.of(store, session);
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
        List<Path> files = new RecordFiles()
                .write(
                        record.get(),
                        (probe, channel) -> store.samples(session, probe, channel, 0, Long.MAX_VALUE),
                        folder);
        return Optional.of(new Made(record.get(), files));
    }
}
