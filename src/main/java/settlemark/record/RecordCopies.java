package settlemark.record;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import settlemark.session.JobRecord;
import settlemark.session.RecordForm;
import settlemark.session.RecordWriter;
import settlemark.session.StoreException;

/**
 * Single files of a record where a person wants them. They are copies without a seal, and the PDF says so; JSON and CSV
 * have the bytes of the sealed record's. Each appears when it is whole, and none that is there is overwritten.
 */
public final class RecordCopies {
    private final JobRecord record;
    private final RecordWriter.SampleSource samples;
    private final RecordForm form;

    /** @param form paper and units of the PDF */
    public RecordCopies(JobRecord record, RecordWriter.SampleSource samples, RecordForm form) {
        this.record = record;
        this.samples = samples;
        this.form = form;
    }

    public Path pdf(Path file) throws IOException, StoreException {
        String digest = RecordFiles.digest(record, samples, OutputStream.nullOutputStream());
        return whole(file, new PdfRecord(record, digest, "", form)::write);
    }

    public Path json(Path file) throws IOException, StoreException {
        return whole(file, out -> text(out, w -> w.write(new RecordJson(record).text())));
    }

    /** The readings as a file or, in a folder that is there, the readings and every sample. */
    public List<Path> csv(Path to) throws IOException, StoreException {
        if (!Files.isDirectory(to)) {
            return List.of(readings(to));
        }
        Path readings = named(to, "-readings.csv");
        Path everySample = named(to, "-samples.csv");
        SessionExport.refuseExisting(everySample);
        return List.of(readings(readings), everySample(everySample));
    }

    /** The same tables in another form. */
    public List<Path> tables(Path to, String ending, SessionExport.Conversion conversion)
            throws IOException, StoreException {
        if (!Files.isDirectory(to)) {
            return List.of(SessionExport.converted(to, this::readings, conversion));
        }
        Path readings = named(to, "-readings" + ending);
        Path everySample = named(to, "-samples" + ending);
        SessionExport.refuseExisting(everySample);
        return List.of(
                SessionExport.converted(readings, this::readings, conversion),
                SessionExport.converted(everySample, this::everySample, conversion));
    }

    private Path named(Path folder, String end) {
        return folder.resolve(RecordFiles.fileName(record.header()) + end);
    }

    private Path readings(Path file) throws IOException, StoreException {
        return whole(file, out -> text(out, w -> new ReadingsCsv(record).write(w)));
    }

    private Path everySample(Path file) throws IOException, StoreException {
        return whole(file, out -> new SamplesCsv(record.header()).write(out, samples));
    }

    private static Path whole(Path file, WholeFile.Content content) throws IOException, StoreException {
        SessionExport.refuseExisting(file);
        try (WholeFile whole = SessionExport.whole(file)) {
            whole.write(content);
            return whole.appear();
        }
    }

    private interface Text {
        void to(Writer writer) throws IOException, StoreException;
    }

    private static void text(OutputStream out, Text text) throws IOException, StoreException {
        Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        text.to(writer);
        writer.flush();
    }
}
