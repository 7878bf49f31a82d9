package settlemark.record;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import settlemark.session.RecordWriter;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;

/**
 * The largest of a record's files, every sample as CSV. It needs nothing of the job, so that it can be written by a thread of
 * its own while the session is run through again. Closed without a record made of it, nothing of it stays.
 */
public final class EverySample implements Closeable {
    private final SessionHeader header;
    private final RecordWriter.SampleSource samples;
    private final Path folder;
    private final WholeFile file;
    private final MessageDigest digest = RecordFiles.sha256();

    /** @param folder where the record goes, which is there */
    public EverySample(SessionHeader header, RecordWriter.SampleSource samples, Path folder) {
        this.header = header;
        this.samples = samples;
        this.folder = folder;
        this.file = new WholeFile(folder, RecordFiles.fileName(header) + "-samples.csv");
    }

    public void write() throws IOException, StoreException {
        file.write(out -> new SamplesCsv(header).write(new DigestOutputStream(out, digest), samples));
    }

    Path folder() {
        return folder;
    }

    /** SHA-256 that has seen the samples, for the record's other files to follow. */
    MessageDigest digest() {
        return digest;
    }

    Path appear() throws IOException {
        return file.appear();
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
