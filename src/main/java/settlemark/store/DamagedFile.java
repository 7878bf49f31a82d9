package settlemark.store;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import settlemark.session.StoreException;

/**
 * A copy of a damaged workspace and its log that can be opened. Where the first page says nothing sensible any more, its
 * head (sqlite.org/fileformat2.html, section 1.3) and then all of it is made again as in a new workspace, whose tables
 * begin at the same pages.
 */
final class DamagedFile implements AutoCloseable {
    private static final int HEAD_BYTES = 100;
    private static final int PAGE_BYTES = 4096;
    private static final int CHANGE_COUNTER_AT = 24;
    private static final int PAGES_AT = 28;
    private static final int FREE_PAGES_AT = 32;
    private static final int VALID_FOR_AT = 92;

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
        byte[] first = firstPage();
        patch(first, HEAD_BYTES);
        steps.add("the head of the file, its first " + HEAD_BYTES + " bytes, was made again");
        if (readable()) {
            return;
        }
        patch(first, PAGE_BYTES);
        steps.add("the first page was made again as that of a new workspace");
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
        if (former && tables.containsKey("table session")) {
            bringUp(identity.version());
            return true;
        }
        Set<String> fresh = StructureCheck.fresh().keySet();
        if (tables.keySet()
                .containsAll(fresh.stream().filter(t -> t.startsWith("table ")).toList())) {
            return true;
        }
        // A sound list of other tables: it is no damage that it is not ours.
        if (!tables.isEmpty() && identity.applicationId() != Schema.APPLICATION_ID
                || identity.version() > Schema.MIGRATIONS.size() && tables.containsKey("table session")) {
            Schema.check(identity, failures);
        }
        return false;
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

    /** The first page of a new workspace, for a file of that length. */
    private byte[] firstPage() throws SQLException, StoreException, IOException {
        Path fresh = folder.resolve("new.settlemark");
        Opening.write(fresh, new Failures(fresh)).close();
        byte[] page = new byte[PAGE_BYTES];
        try (RandomAccessFile in = new RandomAccessFile(fresh.toFile(), "r")) {
            in.readFully(page);
        }
        ByteBuffer head = ByteBuffer.wrap(page);
        head.putInt(VALID_FOR_AT, head.getInt(CHANGE_COUNTER_AT));
        head.putInt(PAGES_AT, Math.toIntExact(Files.size(copy) / PAGE_BYTES));
        head.putLong(FREE_PAGES_AT, 0);
        return page;
    }

    private void patch(byte[] page, int length) throws SQLException, IOException {
        connection.close();
        try (RandomAccessFile out = new RandomAccessFile(copy.toFile(), "rw")) {
            out.write(page, 0, length);
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
