package settlemark.record;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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

    /** @param folder where the record goes, which is there */
    public EverySample(SessionHeader header, RecordWriter.SampleSource samples, Path folder) {
        this.header = header;
        this.samples = samples;
        this.folder = folder;
        this.file = new WholeFile(folder, RecordFiles.fileName(header) + "-samples.csv");
    }

    public void write() throws IOException, StoreException {
        file.write(out -> {
            Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            new SamplesCsv(header).write(writer, samples);
            writer.flush();
        });
    }

    Path folder() {
        return folder;
    }

    byte[] content() throws IOException {
        return Files.readAllBytes(file.part());
    }

    Path appear() throws IOException {
        return file.appear();
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
