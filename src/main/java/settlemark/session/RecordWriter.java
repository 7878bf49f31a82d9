package settlemark.session;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Writes a record. */
public interface RecordWriter {
    /**
     * Writes the files of a record into a folder, each whole or not at all.
     *
     * @return the files, the one for people first
     */
    List<Path> write(JobRecord record, SampleSource samples, Path folder) throws IOException, StoreException;

    /** Where the samples of the session are read from. */
    interface SampleSource {
        SampleBlock samples(int probe, int channel) throws StoreException;
    }
}
