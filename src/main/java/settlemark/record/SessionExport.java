package settlemark.record;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import settlemark.session.Attachment;
import settlemark.session.Note;
import settlemark.session.Papers;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;

/**
 * Writes a session for other programs. Each file appears when it is whole, and none that is there is overwritten. Samples
 * go out as {@link SampleColumns} says, notes as CSV, attachments as they were added.
 */
public final class SessionExport {
    private static final List<String> NOTE_COLUMNS = List.of("session", "session_nanos", "written_at", "text");

    private final long session;
    private final SessionHeader header;
    private final ExportSource source;
    private final Papers papers;

    public SessionExport(long session, SessionHeader header, ExportSource source, Papers papers) {
        this.session = session;
        this.header = header;
        this.source = source;
        this.papers = papers;
    }

    /** Makes a file of another form out of exported samples. */
    @FunctionalInterface
    public interface Conversion {
        /** @param into is not there yet */
        void convert(Path csv, Path into) throws IOException, StoreException;
    }

    /** All samples in one file. */
    public Path samples(Path file) throws IOException, StoreException {
        refuseExisting(file);
        try (WholeFile whole = whole(file)) {
            whole.write(out -> {
                Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
                new SamplesExport(header, source).write(writer);
                writer.flush();
            });
            return whole.appear();
        }
    }

    /** All samples in one file of another form. */
    public Path samples(Path file, Conversion conversion) throws IOException, StoreException {
        return converted(file, this::samples, conversion);
    }

    /** Writes a CSV file that is not there yet. */
    interface Csv {
        Path write(Path file) throws IOException, StoreException;
    }

    static Path converted(Path file, Csv source, Conversion conversion) throws IOException, StoreException {
        refuseExisting(file);
        Path csv = Files.createTempFile(folder(file), "." + file.getFileName() + ".", ".csv");
        Path made = csv.resolveSibling(csv.getFileName() + ".part");
        try {
            Files.delete(csv);
            source.write(csv);
            conversion.convert(csv, made);
            return Files.move(made, file);
        } finally {
            Files.deleteIfExists(csv);
            Files.deleteIfExists(made);
        }
    }

    private static Path folder(Path file) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new IOException("there is no folder " + folder + "; make it first, or name another file");
        }
        return folder;
    }

    static WholeFile whole(Path file) throws IOException {
        return new WholeFile(folder(file), String.valueOf(file.getFileName()));
    }

    static void refuseExisting(Path file) throws IOException {
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new IOException(file + " is there already and is not overwritten; choose another name");
        }
    }

    /** Samples, and where there are any, notes and attachments, in a folder. */
    public List<Path> all(Path folder) throws IOException, StoreException {
        String key = RecordFiles.fileName(header);
        List<Note> notes = papers.notes(session);
        List<Attachment> attachments = papers.attachments(session);
        Path samples = folder.resolve(key + "-samples.csv");
        Path noteFile = folder.resolve(key + "-notes.csv");
        Path attached = folder.resolve(key + "-attachments");
        refuseExisting(samples);
        if (!notes.isEmpty()) {
            refuseExisting(noteFile);
        }
        if (!attachments.isEmpty()) {
            refuseExisting(attached);
        }
        List<Path> files = new ArrayList<>(List.of(samples(samples)));
        if (!notes.isEmpty()) {
            files.add(notes(noteFile, notes));
        }
        if (!attachments.isEmpty()) {
            Files.createDirectory(attached);
            for (int i = 0; i < attachments.size(); i++) {
                files.add(attachment(attached, i + 1, attachments.get(i)));
            }
        }
        return files;
    }

    private Path notes(Path file, List<Note> notes) throws IOException, StoreException {
        try (WholeFile whole = whole(file)) {
            whole.write(out -> {
                CsvWriter csv = CsvWriter.builder().build(new OutputStreamWriter(out, StandardCharsets.UTF_8));
                csv.writeRecord(NOTE_COLUMNS);
                for (Note note : notes) {
                    csv.writeRecord(
                            GuardedText.of(header.key()),
                            note.timeNanos().isPresent()
                                    ? Long.toString(note.timeNanos().getAsLong())
                                    : "",
                            note.writtenAt().toString(),
                            GuardedText.of(note.text()));
                }
                csv.flush();
            });
            return whole.appear();
        }
    }

    /** With its number before its name: two may have the same. */
    private Path attachment(Path folder, int number, Attachment attachment) throws IOException, StoreException {
        byte[] content = papers.content(attachment);
        try (WholeFile whole = new WholeFile(folder, number + "-" + attachment.name())) {
            whole.write(out -> out.write(content));
            return whole.appear();
        }
    }
}
