package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
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
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Commands;
import settlemark.cli.Program;
import settlemark.session.Note;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/** One bit of two sealed minutes is changed: in the data, a reading, an act, a profile, a file of the record or the seal. */
final class SealFlipsTest {
    private static final long SEED = 20260314;

    /** Columns that hold what was measured, done or said. */
    private static final List<String> CONTENT = List.of(
            "event_block.block",
            "frame.samples",
            "frame.events",
            "sample_block.block",
            "reading.step",
            "reading.purpose",
            "reading.time_nanos",
            "reading.hand_reason",
            "channel_reading.value",
            "channel_reading.standard_uncertainty",
            "channel_reading.zero_offset",
            "channel_reading.unit",
            "channel_reading.reason",
            "profile.text",
            "session.title",
            "session.plan",
            "session.plate",
            "session.zone",
            "session.version",
            "probe.name",
            "probe.path",
            "probe.roles",
            "note.text",
            "note.written_at",
            "attachment.content",
            "attachment.digest");

    /** What is left of a frame after everything in it was sealed in blocks: it carries nothing and is not read. */
    private static final int EMPTY_FRAME_BYTES = 10;

    @TempDir
    private Path folder = Path.of("");

    private Path workspace = Path.of("");
    private Path seal = Path.of("");
    private List<Path> files = List.of();

    @BeforeEach
    void twoMinutesSealed() throws Exception {
        workspace = folder.resolve("w.settlemark");
        try (SqliteStore store = Workspaces.demo(Optional.of(workspace))) {
            long session = TwoMinutes.in(store);
            assertThat(store.readings(session)).as("the zero").hasSize(1);
            store.papers()
                    .note(session, new Note(OptionalLong.empty(), Instant.parse("2026-03-14T10:30:00Z"), "dusty"));
            store.papers()
                    .attach(session, "list.txt", "text/plain", Instant.parse("2026-03-14T10:31:00Z"), new byte[] {1, 2
                    });
            files = RecordMaking.make(store, session, folder.resolve("records"))
                    .orElseThrow()
                    .files();
            seal = Sealing.seal(store, session, files, Instant.parse("2026-03-14T11:00:00Z"));
        }
    }

    private record Found(int code, String words) {}

    private Found verify() throws Exception {
        StringWriter text = new StringWriter();
        try (SqliteStore store = Workspaces.reading(Optional.of(workspace))) {
            int code = SealCheck.verify(seal, Optional.of(store), new PrintWriter(text));
            return new Found(code, text.toString());
        } catch (StoreException e) {
            return new Found(Program.DAMAGED, String.valueOf(e.getMessage()));
        }
    }

    private Found verifyByCommand() {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Commands.run(
                new Settlemark(),
                new PrintWriter(out),
                new PrintWriter(err),
                "verify",
                seal.toString(),
                "--workspace",
                workspace.toString());
        return new Found(code, out.toString() + err);
    }

    private interface Check {
        Found look() throws Exception;
    }

    @Test
    void aBitAnywhereIsFoundAndNamed() throws Exception {
        flips(60, this::verify);
    }

    @Test
    @Tag("long")
    void tenThousandBitsAreFoundAndNamed() throws Exception {
        flips(10_000, this::verify);
    }

    @Test
    void aBitAnywhereIsFoundByTheCommand() throws Exception {
        flips(8, this::verifyByCommand);
    }

    @Test
    @Tag("long")
    void twoHundredBitsAreFoundByTheCommand() throws Exception {
        flips(200, this::verifyByCommand);
    }

    private void flips(int count, Check check) throws Exception {
        System.out.println("flips seed " + SEED);
        assertThat(check.look().code()).as("untouched").isEqualTo(Program.DONE);
        Random random = new Random(SEED);
        int inData = 0;
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + workspace)) {
            for (int i = 0; i < count; i++) {
                boolean file = random.nextInt(4) == 0;
                inData += file ? 0 : 1;
                if (file) {
                    flipFile(random, check);
                } else {
                    flipCell(connection, random, check);
                }
            }
        }
        assertThat(inData).isBetween(count / 2, count - 1);
        assertThat(check.look().code()).as("as it was before").isEqualTo(Program.DONE);
    }

    private void flipFile(Random random, Check check) throws Exception {
        List<Path> all = new ArrayList<>(files);
        all.add(seal);
        Path file = all.get(random.nextInt(all.size()));
        byte[] before = Files.readAllBytes(file);
        byte[] after = before.clone();
        int at = random.nextInt(after.length);
        after[at] ^= (byte) (1 << random.nextInt(8));
        Files.write(file, after);
        Found found = check.look();
        Files.write(file, before);
        String where = file.getFileName() + " byte " + at;
        assertThat(found.code()).as(where + found.words()).isEqualTo(Program.CHECK_FAILED);
        assertThat(found.words())
                .as(where)
                .containsAnyOf(file.equals(seal) ? "changed:" : "changed: file " + file.getFileName(), "missing: ");
    }

    private void flipCell(Connection connection, Random random, Check check) throws Exception {
        String place = CONTENT.get(random.nextInt(CONTENT.size()));
        String table = place.substring(0, place.indexOf('.'));
        String column = place.substring(place.indexOf('.') + 1);
        Cell cell = cell(connection, table, column, random);
        if (cell.value() == null || cell.value() instanceof byte[] bytes && bytes.length <= EMPTY_FRAME_BYTES) {
            return;
        }
        Object changed = flipped(cell.value(), random);
        set(connection, table, column, cell.key(), changed);
        Found found = check.look();
        set(connection, table, column, cell.key(), cell.value());
        assertThat(found.code())
                .as(place + " " + cell.key() + ": " + found.words())
                .isIn(Program.CHECK_FAILED, Program.DAMAGED, Program.FAULT);
        assertThat(found.words()).as(place).isNotBlank();
    }

    /** One cell, by the values of its table's primary key. */
    private record Cell(
            String key, @org.jspecify.annotations.Nullable Object value) {}

    private static Cell cell(Connection connection, String table, String column, Random random) throws SQLException {
        List<String> keys = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet info = statement.executeQuery(
                        "SELECT name FROM pragma_table_info('" + table + "') WHERE pk > 0 ORDER BY pk")) {
            while (info.next()) {
                keys.add(info.getString(1));
            }
        }
        List<Cell> cells = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(
                        "SELECT " + String.join(", ", keys) + ", " + column + " FROM " + table)) {
            while (rows.next()) {
                List<String> key = new ArrayList<>();
                for (int i = 0; i < keys.size(); i++) {
                    key.add(keys.get(i) + " = '" + rows.getString(i + 1) + "'");
                }
                cells.add(new Cell(String.join(" AND ", key), rows.getObject(keys.size() + 1)));
            }
        }
        return cells.isEmpty() ? new Cell("", null) : cells.get(random.nextInt(cells.size()));
    }

    private static void set(Connection connection, String table, String column, String key, Object value)
            throws SQLException {
        try (PreparedStatement update =
                connection.prepareStatement("UPDATE " + table + " SET " + column + " = ? WHERE " + key)) {
            update.setObject(1, value);
            assertThat(update.executeUpdate()).isEqualTo(1);
        }
    }

    private static Object flipped(Object value, Random random) {
        if (value instanceof byte[] bytes) {
            byte[] after = bytes.clone();
            after[random.nextInt(after.length)] ^= (byte) (1 << random.nextInt(8));
            return after;
        }
        if (value instanceof Double number) {
            // The top bits of the exponent make numbers that SQLite does not keep.
            return Double.longBitsToDouble(Double.doubleToRawLongBits(number) ^ 1L << random.nextInt(55));
        }
        if (value instanceof Number number) {
            return number.longValue() ^ 1L << random.nextInt(40);
        }
        StringBuilder text = new StringBuilder(value.toString());
        if (text.isEmpty()) {
            return "x";
        }
        int at = random.nextInt(text.length());
        text.setCharAt(at, (char) (text.charAt(at) ^ 1 << random.nextInt(3)));
        return text.toString();
    }
}
