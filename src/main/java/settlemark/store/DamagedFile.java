package settlemark.store;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import settlemark.session.StoreException;

/**
 * A copy of a damaged workspace and its log that can be opened. Where its list of tables cannot be read any more, the head
 * of the file (sqlite.org/fileformat2.html, section 1.3) and then the pages of that list are made again as in a new
 * workspace, whose tables begin at the same pages.
 */
final class DamagedFile implements AutoCloseable {
    private static final int HEAD_BYTES = 100;
    private static final int PAGE_BYTES = 4096;
    private static final int CHANGE_COUNTER_AT = 24;
    private static final int PAGES_AT = 28;
    private static final int FREE_PAGES_AT = 32;
    private static final int VALID_FOR_AT = 92;
    private static final String SCHEMA_PAGES = "SELECT pageno FROM dbstat WHERE name = 'sqlite_schema'";

    private final Path folder;
    private final Path copy;
    private final Failures failures;
    private final List<String> steps = new ArrayList<>();
    private Connection connection;

    private DamagedFile(Path folder, Path copy, Failures failures) throws SQLException {
        this.folder = folder;
        this.copy = copy;
        this.failures = failures;
        this.connection = tolerant(copy);
    }

    /** @param beside folder in which there is room for the copy */
    static DamagedFile of(Path file, Path beside) throws StoreException {
        Failures failures = new Failures(file);
        try {
            long needed = Files.size(file) + (Connections.cutOff(file) ? Files.size(Connections.log(file)) : 0);
            long free = Files.getFileStore(beside).getUsableSpace();
            if (free < 2 * needed) {
                throw failures.fault("a repair needs " + 2 * needed + " bytes in " + beside + ", and " + free
                        + " are free; free space, or name a file on another disk with --to");
            }
            Path folder = Files.createTempDirectory(beside, ".repair-");
            boolean made = false;
            try {
                Path copy = folder.resolve("damaged.settlemark");
                Files.copy(file, copy, StandardCopyOption.REPLACE_EXISTING);
                if (Connections.cutOff(file)) {
                    Files.copy(Connections.log(file), Connections.log(copy));
                }
                DamagedFile damaged = new DamagedFile(folder, copy, failures);
                damaged.open();
                made = true;
                return damaged;
            } finally {
                if (!made) {
                    remove(folder);
                }
            }
        } catch (IOException e) {
            throw failures.fault("it cannot be copied into " + beside + " to be repaired (" + e + ")", e);
        } catch (SQLException e) {
            throw failures.of("cannot be opened", e);
        }
    }

    Connection connection() {
        return connection;
    }

    /** What had to be done before it could be opened. */
    List<String> steps() {
        return List.copyOf(steps);
    }

    private static Connection tolerant(Path copy) throws SQLException {
        Connection connection = Connections.scratch(copy);
        Connections.run(connection, "PRAGMA writable_schema = 1");
        return connection;
    }

    private void open() throws SQLException, StoreException, IOException {
        if (readable()) {
            return;
        }
        Map<Integer, byte[]> pages = freshPages();
        byte[] head = Arrays.copyOf(Objects.requireNonNull(pages.get(1)), HEAD_BYTES);
        patch(Map.of(1, head));
        steps.add("the head of the file, its first " + HEAD_BYTES + " bytes, was made again");
        if (readable()) {
            return;
        }
        patch(pages);
        steps.add("the first page and the list of tables were made again as in a new workspace");
        if (!readable()) {
            throw failures.damaged("is damaged so much that no table can be found in it; nothing was saved");
        }
    }

    /** Whether its tables are those of a workspace, of this format or brought up to it. */
    private boolean readable() throws SQLException, StoreException {
        Map<String, String> tables;
        Schema.Identity identity;
        try {
            if (Schema.number(connection, "PRAGMA page_size") != PAGE_BYTES) {
                return false;
            }
            identity = Schema.read(connection);
            tables = StructureCheck.tables(connection);
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            return false;
        }
        boolean former = identity.version() >= 1 && identity.version() < Schema.MIGRATIONS.size();
        Map<String, String> fresh = StructureCheck.fresh(former ? identity.version() : Schema.MIGRATIONS.size());
        if (former && tables.containsKey("table session")) {
            texts(tables, fresh);
            bringUp(identity.version());
            return true;
        }
        if (tables.keySet()
                .containsAll(fresh.keySet().stream()
                        .filter(t -> t.startsWith("table "))
                        .toList())) {
            texts(tables, fresh);
            return true;
        }
        // A sound list of other tables: it is no damage that it is not ours.
        if (!tables.isEmpty() && identity.applicationId() != Schema.APPLICATION_ID
                || identity.version() > Schema.MIGRATIONS.size() && tables.containsKey("table session")) {
            Schema.check(identity, failures);
        }
        return false;
    }

    /** Rows are in the order of a table's columns, whatever a damaged text says that these are called. */
    private void texts(Map<String, String> found, Map<String, String> fresh) throws SQLException {
        List<String> made = new ArrayList<>();
        try (PreparedStatement update =
                connection.prepareStatement("UPDATE sqlite_schema SET sql = ? WHERE type || ' ' || name = ?")) {
            for (Map.Entry<String, String> table : fresh.entrySet()) {
                String text = found.get(table.getKey());
                if (text != null && !text.equals(table.getValue())) {
                    update.setString(1, table.getValue());
                    update.setString(2, table.getKey());
                    update.executeUpdate();
                    made.add(table.getKey());
                }
            }
        }
        if (!made.isEmpty()) {
            connection.close();
            connection = tolerant(copy);
            steps.add("the text of " + String.join(", ", made) + " in the list of tables was made again");
        }
    }

    private void bringUp(int format) throws SQLException, StoreException {
        try {
            Schema.migrate(connection, Schema.MIGRATIONS, failures);
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            throw failures.damaged(
                    "has the older format " + format + ", and is damaged where it would be brought up from ("
                            + e.getMessage() + "); nothing was saved",
                    e);
        }
        steps.add("it was brought up from format " + format + " to " + Schema.MIGRATIONS.size());
    }

    /** By number the pages that hold the list of tables of a new workspace; the first is for a file of that length. */
    private Map<Integer, byte[]> freshPages() throws SQLException, StoreException, IOException {
        Path fresh = folder.resolve("new.settlemark");
        Map<Integer, byte[]> pages = new TreeMap<>();
        try (Connection made = Opening.write(fresh, new Failures(fresh));
                Statement statement = made.createStatement();
                ResultSet row = statement.executeQuery(SCHEMA_PAGES)) {
            while (row.next()) {
                pages.put(row.getInt(1), new byte[PAGE_BYTES]);
            }
        }
        try (RandomAccessFile in = new RandomAccessFile(fresh.toFile(), "r")) {
            for (Map.Entry<Integer, byte[]> page : pages.entrySet()) {
                in.seek((page.getKey() - 1L) * PAGE_BYTES);
                in.readFully(page.getValue());
            }
        }
        ByteBuffer head = ByteBuffer.wrap(Objects.requireNonNull(pages.get(1)));
        head.putInt(VALID_FOR_AT, head.getInt(CHANGE_COUNTER_AT));
        head.putInt(PAGES_AT, Math.toIntExact(Files.size(copy) / PAGE_BYTES));
        head.putLong(FREE_PAGES_AT, 0);
        return pages;
    }

    /** @param pages by number, or the beginnings of pages */
    private void patch(Map<Integer, byte[]> pages) throws SQLException, IOException {
        connection.close();
        try (RandomAccessFile out = new RandomAccessFile(copy.toFile(), "rw")) {
            for (Map.Entry<Integer, byte[]> page : pages.entrySet()) {
                out.seek((page.getKey() - 1L) * PAGE_BYTES);
                out.write(page.getValue());
            }
        }
        connection = tolerant(copy);
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            // a damaged copy that is thrown away
        }
        remove(folder);
    }

    private static void remove(Path folder) {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException e) {
            // its name says what it is
        }
    }
}
