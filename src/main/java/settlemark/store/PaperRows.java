package settlemark.store;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.Supplier;
import settlemark.session.Attachment;
import settlemark.session.Note;
import settlemark.session.Papers;
import settlemark.session.StoreException;

/** Notes and attachments as rows. */
final class PaperRows implements Papers {
    /** Behind the id. */
    static final List<String> NOTE_COLUMNS = List.of("session", "time_nanos", "written_at", "text");

    private static final String SESSION = "SELECT count(*) FROM session WHERE number = ?";
    private static final String INSERT_NOTE =
            "INSERT INTO note (session, time_nanos, written_at, text) VALUES (?, ?, ?, ?)";
    private static final String NOTES =
            "SELECT id, session, time_nanos, written_at, text FROM note WHERE session = ? ORDER BY id";
    private static final String INSERT_ATTACHMENT = "INSERT INTO attachment (session, name, media_type, added_at,"
            + " digest, content) VALUES (?, ?, ?, ?, ?, ?) RETURNING id";
    private static final String ATTACHMENTS = "SELECT id, name, media_type, added_at, digest, length(content)"
            + " FROM attachment WHERE session = ? ORDER BY id";
    private static final String CONTENT = "SELECT content FROM attachment WHERE id = ?";

    private final Readers readers;
    private final Failures failures;
    private final Supplier<Writer> writer;

    /** @param writer throws where the workspace was opened for reading only */
    PaperRows(Readers readers, Failures failures, Supplier<Writer> writer) {
        this.readers = readers;
        this.failures = failures;
        this.writer = writer;
    }

    @Override
    public void note(long session, Note note) throws StoreException {
        writer.get().commit("cannot keep a note of session " + session, connection -> {
            requireSession(connection, session);
            insert(connection, session, note);
            return note;
        });
    }

    /** Within the caller's transaction. */
    static void insert(Connection connection, long session, Note note) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(INSERT_NOTE)) {
            insert.setLong(1, session);
            if (note.timeNanos().isPresent()) {
                insert.setLong(2, note.timeNanos().getAsLong());
            } else {
                insert.setNull(2, Types.INTEGER);
            }
            insert.setString(3, note.writtenAt().toString());
            insert.setString(4, note.text());
            insert.executeUpdate();
        }
    }

    private static void requireSession(Connection connection, long session) throws SQLException {
        if (ResultReader.count(connection, SESSION, session) == 0) {
            throw new IllegalArgumentException("the workspace has no session " + session);
        }
    }

    @Override
    public List<Note> notes(long session) throws StoreException {
        return readers.read(connection -> {
            List<Note> notes = new ArrayList<>();
            try (PreparedStatement select = connection.prepareStatement(NOTES)) {
                select.setLong(1, session);
                try (ResultSet row = select.executeQuery()) {
                    while (row.next()) {
                        StoredRow stored = StoredRow.of(row, 1 + NOTE_COLUMNS.size());
                        notes.add(failures.decode("a note of session " + session, () -> note(stored)));
                    }
                }
            }
            return notes;
        });
    }

    /** @param row with the id before {@link #NOTE_COLUMNS} */
    static Note note(StoredRow row) {
        OptionalLong time = row.value(2) == null ? OptionalLong.empty() : OptionalLong.of(row.number(2));
        try {
            return new Note(time, Instant.parse(row.text(3)), row.text(4));
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("a note's date cannot be read: " + e.getMessage(), e);
        }
    }

    @Override
    public Attachment attach(long session, String name, String mediaType, Instant addedAt, byte[] content)
            throws StoreException {
        Attachment.checkName(name);
        Attachment.checkSize(name, content.length);
        String digest = digest(content);
        return writer.get().commit("cannot keep attachment " + name + " of session " + session, connection -> {
            requireSession(connection, session);
            try (PreparedStatement insert = connection.prepareStatement(INSERT_ATTACHMENT)) {
                insert.setLong(1, session);
                insert.setString(2, name);
                insert.setString(3, mediaType);
                insert.setString(4, addedAt.toString());
                insert.setString(5, digest);
                insert.setBytes(6, content);
                try (ResultSet row = insert.executeQuery()) {
                    row.next();
                    return new Attachment(row.getLong(1), name, mediaType, addedAt, digest, content.length);
                }
            }
        });
    }

    @Override
    public List<Attachment> attachments(long session) throws StoreException {
        return readers.read(connection -> {
            List<Attachment> attachments = new ArrayList<>();
            try (PreparedStatement select = connection.prepareStatement(ATTACHMENTS)) {
                select.setLong(1, session);
                try (ResultSet row = select.executeQuery()) {
                    while (row.next()) {
                        StoredRow stored = StoredRow.of(row, 6);
                        attachments.add(failures.decode(
                                "an attachment of session " + session,
                                () -> new Attachment(
                                        stored.number(0),
                                        stored.text(1),
                                        stored.text(2),
                                        Instant.parse(stored.text(3)),
                                        stored.text(4),
                                        stored.number(5))));
                    }
                }
            }
            return attachments;
        });
    }

    @Override
    public byte[] content(Attachment attachment) throws StoreException {
        return readers.read(connection -> {
            try (PreparedStatement select = connection.prepareStatement(CONTENT)) {
                select.setLong(1, attachment.id());
                try (ResultSet row = select.executeQuery()) {
                    if (!row.next()) {
                        throw new IllegalArgumentException("the workspace has no attachment " + attachment.id());
                    }
                    byte[] content = row.getBytes(1);
                    if (content == null || !digest(content).equals(attachment.digest())) {
                        throw failures.damaged("is damaged: attachment \"" + attachment.name()
                                + "\" does not have the digest it was stored with");
                    }
                    return content;
                }
            }
        });
    }

    static String digest(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
