package settlemark.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import settlemark.session.StoreException;

/**
 * What is checked before a workspace is used. The file itself is never opened with anything but SQLite: its POSIX locks
 * would be lost as soon as another channel of this process to it is closed.
 */
final class Opening {
    private static final Pattern TREE = Pattern.compile("\\bTree (\\d+)\\b");

    private Opening() {}

    /** Where a file lies; the root lies in itself. */
    static Path folder(Path file) {
        return Objects.requireNonNullElse(file.toAbsolutePath().getParent(), file);
    }

    /** The path without links, of a file that need not exist in a folder that must. */
    static Path resolve(WorkspacePlace place) throws StoreException {
        Path file = place.file().toAbsolutePath().normalize();
        Path folder = folder(file);
        Failures failures = new Failures(file);
        if (Files.isDirectory(file)) {
            throw failures.fault("this is a folder; name a file");
        }
        try {
            if (place.makeFolder()) {
                Files.createDirectories(folder);
            }
            if (!Files.isDirectory(folder)) {
                throw failures.fault("its folder " + folder + " does not exist; make it, or name another file");
            }
            return Files.exists(file) ? file.toRealPath() : folder.toRealPath().resolve(file.getFileName());
        } catch (IOException e) {
            throw failures.fault(
                    "its folder " + folder + " cannot be made or reached (" + e + "); make it, or name another"
                            + " file with --workspace",
                    e);
        }
    }

    static void refuseRemote(Path file, MountTable mounts) throws StoreException {
        MountTable.Mount mount =
                mounts.of(folder(file)).filter(MountTable.Mount::remote).orElse(null);
        if (mount != null) {
            throw new Failures(file)
                    .fault("it lies on a network or shared folder (" + mount.type() + " at " + mount.point()
                            + "), where a crash or a second computer can destroy it; name a file on a disk of this"
                            + " computer with --workspace, and copy finished records to the network");
        }
    }

    static void refuseReadOnly(Path file) throws StoreException {
        Path folder = folder(file);
        if (!Files.isWritable(folder)) {
            throw new Failures(file)
                    .fault("its folder " + folder + " is read-only; make it writable, or name another file with"
                            + " --workspace");
        }
        if (Files.exists(file) && !Files.isWritable(file)) {
            throw new Failures(file).fault("the file is read-only; make it writable, or name another with --workspace");
        }
    }

    /** Opens for writing, checked and brought up to the newest format. */
    static Connection write(Path file, Failures failures) throws StoreException {
        boolean cutOff = Connections.cutOff(file);
        try {
            Connection connection = Connections.writer(file);
            try {
                Schema.check(Schema.read(connection), failures);
                Connections.useLog(connection);
                if (cutOff) {
                    refuseDamage(connection, failures);
                }
                if (Schema.migrate(connection, Schema.MIGRATIONS, failures)) {
                    // A young file's tables are still in the log: who copies the file alone would get nothing.
                    Connections.checkpoint(connection);
                    syncFolder(file);
                }
                return connection;
            } catch (SQLException | StoreException | RuntimeException e) {
                closeAfter(connection, e);
                throw e;
            }
        } catch (SQLException e) {
            throw failures.of("cannot be opened", e);
        }
    }

    /** Refuses what cannot be read by this version. */
    static void checkForReading(Connection connection, Failures failures) throws SQLException, StoreException {
        Schema.Identity identity = Schema.read(connection);
        Schema.check(identity, failures);
        if (identity.blank()) {
            throw failures.damaged("is empty, not a workspace; name another file");
        }
        if (identity.version() < 1) {
            throw failures.fault("has the older format " + identity.version() + "; open it once for writing, which"
                    + " brings it to " + Schema.MIGRATIONS.size());
        }
    }

    /**
     * What is to be read: the file itself or, where it is of an older format, a copy in the newest one in a folder of its
     * own. Neither the file nor a program that writes to it is touched.
     */
    static Path readable(Path file, Failures failures) throws StoreException {
        try (Connection reader = Connections.reader(file)) {
            checkForReading(reader, failures);
            if (Schema.read(reader).version() == Schema.MIGRATIONS.size()) {
                return file;
            }
            Path copy = Files.createTempDirectory("settlemark-").resolve("copy.settlemark");
            boolean made = false;
            try (PreparedStatement vacuum = reader.prepareStatement("VACUUM INTO ?")) {
                vacuum.setString(1, copy.toString());
                vacuum.executeUpdate();
                write(copy, failures).close();
                made = true;
                return copy;
            } finally {
                if (!made) {
                    removeCopy(copy);
                }
            }
        } catch (SQLException e) {
            throw failures.of("cannot be read", e);
        } catch (IOException e) {
            throw failures.fault(
                    "has an older format, and no copy can be made for reading (" + e + "); open it once for"
                            + " writing, which brings it up to date",
                    e);
        }
    }

    /** Removes what {@link #readable} made; what cannot be removed is left to the system. */
    static void removeCopy(Path copy) {
        for (String end : List.of("", "-wal", "-shm")) {
            try {
                Files.deleteIfExists(copy.resolveSibling(copy.getFileName() + end));
            } catch (IOException e) {
                return;
            }
        }
        removeFolder(folder(copy));
    }

    private static void removeFolder(Path folder) {
        try {
            Files.deleteIfExists(folder);
        } catch (IOException e) {
            // empty, and in the system's own folder for such things
        }
    }

    private static void refuseDamage(Connection connection, Failures failures) throws SQLException, StoreException {
        List<String> findings = Connections.quickCheck(connection);
        if (!findings.isEmpty()) {
            StringBuilder words = new StringBuilder();
            for (String finding : findings) {
                words.append(words.isEmpty() ? "" : "; ").append(named(connection, finding));
            }
            throw failures.damaged("was not closed in order and is damaged: " + words + "; keep the file and its -wal"
                    + " for rescue (what is whole can still be read), and go on in another with --workspace");
        }
    }

    /** SQLite names a table by the number of its first page. */
    static String named(Connection connection, String finding) throws SQLException {
        Matcher tree = TREE.matcher(finding);
        if (!tree.find()) {
            return finding;
        }
        try (Statement statement = connection.createStatement();
                ResultSet row =
                        statement.executeQuery("SELECT name FROM sqlite_schema WHERE rootpage = " + tree.group(1))) {
            return row.next() ? "table " + row.getString(1) + ": " + finding : finding;
        }
    }

    /** Makes the new file's name as durable as its content, on systems where a folder can be opened. */
    static void syncFolder(Path file) {
        try (FileChannel channel = FileChannel.open(folder(file), StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            // not a thing that this system does; the file itself is synced
        }
    }

    private static void closeAfter(Connection connection, Exception because) {
        try {
            connection.close();
        } catch (SQLException e) {
            because.addSuppressed(e);
        }
    }
}
