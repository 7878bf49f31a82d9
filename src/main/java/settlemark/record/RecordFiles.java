package settlemark.record;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import settlemark.session.JobRecord;
import settlemark.session.RecordForm;
import settlemark.session.RecordWriter;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;

/**
 * Writes a record as {@code KEY.pdf}, {@code KEY.json}, {@code KEY-readings.csv} and {@code KEY-samples.csv}, where KEY
 * is the session's. All are written and forced to the disk under other names first: when anything fails, none of them appears. The
 * same record gives the same bytes.
 */
public final class RecordFiles implements RecordWriter {
    private final String fingerprint;
    private final RecordForm form;

    /** Of a record that will not be sealed. */
    public RecordFiles() {
        this("", RecordForm.DEFAULT);
    }

    /** @param fingerprint of the key that the record will be sealed with, printed on it; empty where there is none */
    public RecordFiles(String fingerprint, RecordForm form) {
        this.fingerprint = fingerprint;
        this.form = form;
    }

    @Override
    public List<Path> write(JobRecord record, SampleSource samples, Path folder) throws IOException, StoreException {
        Files.createDirectories(folder);
        try (EverySample everySample = new EverySample(record.header(), samples, folder)) {
            everySample.write();
            return write(record, everySample);
        }
    }

    /** @param everySample of the same session, written */
    public List<Path> write(JobRecord record, EverySample everySample) throws IOException, StoreException {
        Path folder = everySample.folder();
        String key = fileName(record.header());
        MessageDigest digest = everySample.digest();
        try (WholeFile pdf = new WholeFile(folder, key + ".pdf");
                WholeFile json = new WholeFile(folder, key + ".json");
                WholeFile readings = new WholeFile(folder, key + "-readings.csv")) {
            readings.write(out -> text(out, digest, w -> new ReadingsCsv(record).write(w)));
            json.write(out -> text(out, digest, w -> w.write(new RecordJson(record).text())));
            String content = HexFormat.of().formatHex(digest.digest());
            pdf.write(new PdfRecord(record, content, fingerprint, form)::write);
            return List.of(pdf.appear(), json.appear(), readings.appear(), everySample.appear());
        }
    }

    /** Reads ahead what takes long the first time, on a thread that has nothing better to do. */
    public static void warm() {
        Typeface.of(false);
        Typeface.of(true);
    }

    /** SHA-256 of what the record's other files hold, by which its PDF knows them. */
    static String digest(JobRecord record, SampleSource samples, OutputStream out) throws IOException, StoreException {
        MessageDigest digest = sha256();
        new SamplesCsv(record.header()).write(new DigestOutputStream(out, digest), samples);
        text(out, digest, w -> new ReadingsCsv(record).write(w));
        text(out, digest, w -> w.write(new RecordJson(record).text()));
        return HexFormat.of().formatHex(digest.digest());
    }

    interface Text {
        void to(Writer writer) throws IOException, StoreException;
    }

    static void text(OutputStream out, MessageDigest digest, Text text) throws IOException, StoreException {
        Writer writer = new OutputStreamWriter(new DigestOutputStream(out, digest), StandardCharsets.UTF_8);
        text.to(writer);
        writer.flush();
    }

    /** The key with every character that a file system might not like replaced. */
    static String fileName(SessionHeader header) {
        String name = header.key().replaceAll("[^A-Za-z0-9._-]", "-").replaceAll("^[.]+", "");
        return name.isEmpty() ? "record" : name;
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
