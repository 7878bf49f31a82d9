package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import settlemark.decode.Rejected;
import settlemark.session.Note;
import settlemark.session.RawBytes;
import settlemark.session.Rereading;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;

/** A workspace with something of everything, and ways to hurt it. */
final class Workspace {
    static final int PAGE = 4096;
    static final Instant NOW = Instant.parse("2026-03-15T10:00:00Z");

    /** So many seconds of the long sessions: several sealed blocks, statistics above them, and frames. */
    static final int SECONDS = 3600;

    /** So many of the first session where no statistics above the blocks' are wanted: three blocks, the last not full. */
    static final int SHORT_SECONDS = 900;

    /** Made once and copied from then on: the bytes by the seconds of the first session. */
    private static final Map<Integer, byte[]> MADE = new HashMap<>();

    private Workspace() {}

    /**
     * Sessions: 1 ended, long enough for one level of statistics above the blocks', with a rereading, notes and an
     * attachment; 2 cut off; 3 ended, without bytes.
     */
    static void fill(Path file) throws Exception {
        fill(file, SECONDS);
    }

    /** The same with a first session too short for statistics above its blocks'. */
    static void fillShort(Path file) throws Exception {
        fill(file, SHORT_SECONDS);
    }

    /** Samples of all sessions and the rereading: ten a second on each of four channels. */
    static long samples(int seconds) {
        return 40L * (seconds + 500 + 500 + 500);
    }

    private static synchronized void fill(Path file, int seconds) throws Exception {
        byte[] made = MADE.get(seconds);
        if (made == null) {
            make(file, seconds);
            MADE.put(seconds, Files.readAllBytes(file));
        } else {
            Files.write(file, made);
        }
    }

    private static void make(Path file, int seconds) throws StoreException {
        try (SqliteStore store = Fixtures.open(file)) {
            long first = store.begin(Fixtures.log("first"));
            for (int n = 0; n < seconds; n += 50) {
                store.append(first, minute(n, 50));
            }
            store.end(first, seconds * Fixtures.SECOND);
            long second = store.begin(Fixtures.job("second"));
            for (int n = 0; n < 500; n += 5) {
                store.append(second, minute(n, 5));
            }
            long third = store.begin(Fixtures.log("third"), RawBytes.DROPPED);
            for (int n = 0; n < 500; n += 50) {
                store.append(third, minute(n, 50));
            }
            store.end(third, 500 * Fixtures.SECOND);
            Rereading again = store.rereadings().begin(first, Fixtures.probes(), NOW, "test");
            for (int n = 0; n < 500; n += 50) {
                store.rereadings().append(again, minute(n, 50).results());
            }
            store.rereadings().complete(again);
            store.papers().note(first, new Note(OptionalLong.of(5), NOW, "wind from the north"));
            store.papers().attach(second, "plate.jpg", "image/jpeg", NOW, new byte[] {1, 2, 3});
            store.settings().put("size", "1.5");
        }
    }

    /** Several seconds of the fixtures as one batch. */
    static WriteBatch minute(int from, int count) {
        WriteBatch all = Fixtures.second(from);
        List<settlemark.session.SessionEvent> events = new ArrayList<>(all.events());
        List<settlemark.session.SampleBlock> samples = new ArrayList<>(all.samples());
        List<settlemark.settle.StageReading> readings = new ArrayList<>(all.readings());
        for (int n = from + 1; n < from + count; n++) {
            WriteBatch second = Fixtures.second(n);
            events.addAll(second.events());
            samples.addAll(second.samples());
            readings.addAll(second.readings());
        }
        List<WriteBatch.ProbeRejected> rejected =
                List.of(new WriteBatch.ProbeRejected(1, new Rejected(from, 40, "checksum")));
        return new WriteBatch(from * 20L, events, samples, rejected, readings, (from + count) * Fixtures.SECOND);
    }

    static Connection raw(Path file) throws SQLException {
        return DriverManager.getConnection("jdbc:sqlite:" + file);
    }

    static void sql(Path file, String... changes) throws SQLException {
        try (Connection connection = raw(file);
                Statement statement = connection.createStatement()) {
            for (String change : changes) {
                statement.executeUpdate(change);
            }
        }
    }

    /** A change that the table's own rules would refuse, as damaged bytes of a row do not ask for them. */
    static void against(Path file, String table, String change) throws SQLException {
        String text;
        try (Connection connection = raw(file)) {
            text = new String(
                    bytes(connection, "SELECT CAST(sql AS BLOB) FROM sqlite_schema WHERE name = '" + table + "'"),
                    StandardCharsets.UTF_8);
        }
        text(file, table, text.replace(" NOT NULL", ""));
        sql(file, "PRAGMA foreign_keys = 0", "PRAGMA ignore_check_constraints = 1", change);
        text(file, table, text);
    }

    private static void text(Path file, String table, String text) throws SQLException {
        try (Connection connection = raw(file)) {
            Connections.run(connection, "PRAGMA writable_schema = 1");
            try (PreparedStatement update =
                    connection.prepareStatement("UPDATE sqlite_schema SET sql = ? WHERE name = ?")) {
                update.setString(1, text);
                update.setString(2, table);
                update.executeUpdate();
            }
        }
    }

    static long number(Path file, String query) throws SQLException {
        try (Connection connection = raw(file)) {
            return ResultReader.count(connection, query);
        }
    }

    /** Changes a byte in the middle of a block. */
    static void damageBlock(Path file, String column, String where) throws SQLException {
        String table = where.substring(0, where.indexOf(' '));
        String condition = where.substring(where.indexOf(' '));
        try (Connection connection = raw(file)) {
            byte[] bytes = bytes(connection, "SELECT " + column + " FROM " + table + condition);
            bytes[bytes.length * 3 / 4] ^= 0x20;
            try (PreparedStatement update =
                    connection.prepareStatement("UPDATE " + table + " SET " + column + " = ?" + condition)) {
                update.setBytes(1, bytes);
                update.executeUpdate();
            }
        }
    }

    /** Puts other bytes in the place of a block. */
    static void block(Path file, String table, String where, byte[] block) throws SQLException {
        try (Connection connection = raw(file);
                PreparedStatement update =
                        connection.prepareStatement("UPDATE " + table + " SET block = ? WHERE " + where)) {
            update.setBytes(1, block);
            assertThat(update.executeUpdate()).isEqualTo(1);
        }
    }

    /** Puts other samples into the last frame of a session. */
    static void frame(Path file, long session, byte[] samples) throws SQLException {
        try (Connection connection = raw(file);
                PreparedStatement update = connection.prepareStatement(
                        "UPDATE frame SET samples = ?1 WHERE session = ?2 AND number = (SELECT max(number) FROM frame"
                                + " WHERE session = ?2)")) {
            update.setBytes(1, samples);
            update.setLong(2, session);
            assertThat(update.executeUpdate()).isEqualTo(1);
        }
    }

    private static byte[] bytes(Connection connection, String query) throws SQLException {
        try (Statement select = connection.createStatement();
                ResultSet row = select.executeQuery(query)) {
            row.next();
            return row.getBytes(1);
        }
    }

    /** Pages of a table or index, by SQLite's own account of the file: those with cells of rows, and of a kind. */
    static List<Integer> pages(Path file, String name, String type) throws SQLException {
        List<Integer> pages = new ArrayList<>();
        try (Connection connection = raw(file);
                PreparedStatement select = connection.prepareStatement(
                        "SELECT pageno FROM dbstat WHERE name = ? AND pagetype = ? ORDER BY pageno")) {
            select.setString(1, name);
            select.setString(2, type);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    pages.add(row.getInt(1));
                }
            }
        }
        return pages;
    }

    /** Overwrites a whole page, or a part of it, with one byte. */
    static void wipe(Path file, int page, int from, int length, int with) throws IOException {
        byte[] bytes = new byte[length];
        java.util.Arrays.fill(bytes, (byte) with);
        write(file, (page - 1L) * PAGE + from, bytes);
    }

    static void write(Path file, long at, byte[] bytes) throws IOException {
        try (RandomAccessFile out = new RandomAccessFile(file.toFile(), "rw")) {
            out.seek(at);
            out.write(bytes);
        }
    }

    /** Takes the last cell out of a leaf's list: its row is on the page, but nothing leads to it. */
    static void hideLastCell(Path file, int page) throws IOException {
        try (RandomAccessFile out = new RandomAccessFile(file.toFile(), "rw")) {
            long at = (page - 1L) * PAGE + 3;
            byte[] count = new byte[2];
            out.seek(at);
            out.readFully(count);
            short cells = ByteBuffer.wrap(count).getShort();
            out.seek(at);
            out.write(ByteBuffer.allocate(2).putShort((short) (cells - 1)).array());
        }
    }
}
