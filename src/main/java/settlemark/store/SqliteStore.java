package settlemark.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import settlemark.decode.Rejected;
import settlemark.measure.Chunk;
import settlemark.profile.Profile;
import settlemark.session.DeviceUse;
import settlemark.session.Instruments;
import settlemark.session.Overview;
import settlemark.session.Papers;
import settlemark.session.RawBytes;
import settlemark.session.Rereadings;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.Settings;
import settlemark.session.Span;
import settlemark.session.StoreException;
import settlemark.session.StoreHealth;
import settlemark.session.WriteBatch;
import settlemark.settle.StageReading;

/**
 * A workspace in one SQLite file, with its log ({@code -wal}) and its lock ({@code .lock}) beside it while it is open.
 * Each write is one transaction that is on the disk when the call returns. A write that fails is undone as a whole and
 * may be tried again. Asking for a session that is not there, a batch out of sequence and any use after closing are
 * errors of the caller and unchecked.
 */
public final class SqliteStore implements SessionStore {
    private static final String SUMMARY = "SELECT number, key, title, started_at, ended_nanos IS NOT NULL, simulated,"
            + " max(coalesce(ended_nanos, 0), coalesce((SELECT until_nanos FROM frame WHERE frame.session ="
            + " session.number ORDER BY frame.number DESC LIMIT 1), 0)) FROM session";
    private static final String ALL = SUMMARY + " ORDER BY number DESC";
    private static final String BY_NUMBER = SUMMARY + " WHERE number = ?";
    private static final String BY_KEY = SUMMARY + " WHERE key = ?";
    private final Failures failures;
    private final Function<String, Profile> profiles;
    private final Readers readers;
    private final @Nullable Writer writer;
    private final @Nullable WriterLock lock;
    private final Rereadings rereadings;
    private final Settings settings;
    private final Papers papers;
    private final Instruments instruments;

    /** What is read: the file itself, or the copy of one of an older format. */
    private final Path read;

    private SqliteStore(
            Path file,
            Path read,
            Function<String, Profile> profiles,
            @Nullable Writer writer,
            @Nullable WriterLock lock) {
        this.failures = new Failures(file);
        this.read = read;
        this.profiles = profiles;
        this.readers = new Readers(read, failures);
        this.writer = writer;
        this.lock = lock;
        this.rereadings = new SqliteRereadings(readers, failures, profiles, this::writer);
        this.settings = new SettingRows(readers, this::writer);
        this.papers = new PaperRows(readers, failures, this::writer);
        this.instruments = new InstrumentRows(readers, failures, this::writer);
    }

    /**
     * Opens a workspace for writing and reading, and makes it where it is missing.
     *
     * @param profiles reads a profile's text; throws IllegalArgumentException or IllegalStateException where it cannot
     * @throws StoreException where it cannot be opened, with the remedy; one that was not closed in order is checked
     *     first, which reads the whole file
     */
    public static SqliteStore open(WorkspacePlace place, Function<String, Profile> profiles) throws StoreException {
        return open(place, profiles, Runnable::run);
    }

    /**
     * The same, with blocks packed on another thread while commits go on. Commits do not wait for that thread unless it
     * is a whole block behind; what it has not done when the workspace is closed is lost work, but no lost sample.
     *
     * @param packer gets some milliseconds of work for every 4096 samples of a channel, one piece a session at a time
     */
    public static SqliteStore open(WorkspacePlace place, Function<String, Profile> profiles, Executor packer)
            throws StoreException {
        return open(place, profiles, packer, MountTable.ofThisMachine());
    }

    static SqliteStore open(WorkspacePlace place, Function<String, Profile> profiles, MountTable mounts)
            throws StoreException {
        return open(place, profiles, Runnable::run, mounts);
    }

    private static SqliteStore open(
            WorkspacePlace place, Function<String, Profile> profiles, Executor packer, MountTable mounts)
            throws StoreException {
        Path file = Opening.resolve(place);
        Opening.refuseRemote(file, mounts);
        Opening.refuseReadOnly(file);
        WriterLock lock = WriterLock.take(file);
        boolean opened = false;
        try {
            Failures failures = new Failures(file);
            Writer writer = new Writer(Opening.write(file, failures), failures, packer);
            opened = true;
            return new SqliteStore(file, file, profiles, writer, lock);
        } finally {
            if (!opened) {
                lock.close();
            }
        }
    }

    /**
     * Opens an existing workspace for reading only, also while another process writes to it, and also on a medium that
     * cannot be written.
     *
     * @param profiles reads a profile's text; throws IllegalArgumentException or IllegalStateException where it cannot
     */
    public static SqliteStore openForReading(Path file, Function<String, Profile> profiles) throws StoreException {
        return openForReading(file, profiles, MountTable.ofThisMachine());
    }

    static SqliteStore openForReading(Path file, Function<String, Profile> profiles, MountTable mounts)
            throws StoreException {
        Path resolved = Opening.resolve(WorkspacePlace.chosen(file));
        if (!Files.exists(resolved)) {
            throw new Failures(resolved).fault("there is none yet; name another file with --workspace");
        }
        Opening.refuseRemote(resolved, mounts);
        Path read = Opening.readable(resolved, new Failures(resolved));
        return new SqliteStore(resolved, read, profiles, null, null);
    }

    /** The file, without links. */
    public Path file() {
        return failures.file();
    }

    @Override
    public long begin(SessionHeader header, RawBytes bytes) throws StoreException {
        return writer().begin(header, bytes);
    }

    @Override
    public void append(long session, WriteBatch batch) throws StoreException {
        writer().append(session, batch);
    }

    @Override
    public void end(long session, long timeNanos) throws StoreException {
        writer().end(session, timeNanos);
    }

    /** Whether it was opened for writing too. */
    public boolean writes() {
        return writer != null;
    }

    @Override
    public void reopen(long session) throws StoreException {
        writer().reopen(session);
    }

    private Writer writer() {
        if (writer == null) {
            throw new IllegalStateException("workspace " + file() + " was opened for reading only");
        }
        return writer;
    }

    @Override
    public List<Summary> sessions() throws StoreException {
        return readers.read(connection -> {
            try (PreparedStatement select = connection.prepareStatement(ALL)) {
                return summaries(select);
            }
        });
    }

    @Override
    public Optional<Summary> find(String numberOrKey) throws StoreException {
        return readers.read(connection -> {
            Optional<Summary> byNumber = find(connection, BY_NUMBER, numberOrKey);
            return byNumber.isPresent() ? byNumber : find(connection, BY_KEY, numberOrKey);
        });
    }

    /** SQLite compares a number given as text with a column of integers by its value. */
    private Optional<Summary> find(Connection connection, String query, String value)
            throws SQLException, StoreException {
        try (PreparedStatement select = connection.prepareStatement(query)) {
            select.setString(1, value);
            return summaries(select).stream().findFirst();
        }
    }

    private List<Summary> summaries(PreparedStatement select) throws SQLException, StoreException {
        List<Summary> summaries = new ArrayList<>();
        try (ResultSet row = select.executeQuery()) {
            while (row.next()) {
                long number = row.getLong(1);
                String startedAt = row.getString(4);
                summaries.add(new Summary(
                        number,
                        row.getString(2),
                        row.getString(3),
                        failures.decode("the start of session " + number, () -> Instant.parse(startedAt)),
                        row.getBoolean(5),
                        row.getBoolean(6),
                        row.getLong(7)));
            }
        }
        return summaries;
    }

    @Override
    public SessionHeader header(long session) throws StoreException {
        return readers.read(connection -> HeaderRows.find(connection, failures, profiles, session)
                .orElseThrow(() -> new IllegalArgumentException("the workspace has no session " + session)));
    }

    @Override
    public String mark(long session) throws StoreException {
        return readers.read(connection -> SessionMark.of(connection, session));
    }

    @Override
    public String lastIdentity(String probe) throws StoreException {
        return readers.read(connection -> HeaderRows.lastIdentity(connection, probe));
    }

    @Override
    public List<DeviceUse> devices() throws StoreException {
        return readers.read(connection -> DeviceRows.all(connection, failures, profiles));
    }

    @Override
    public RawBytes rawBytes(long session) throws StoreException {
        return new EventReader(readers, failures, session).rawBytes();
    }

    @Override
    public void events(long session, Sink<SessionEvent> sink) throws StoreException {
        new EventReader(readers, failures, session).events(sink);
    }

    @Override
    public void bytes(long session, int probe, Span span, Sink<Chunk> sink) throws StoreException {
        new EventReader(readers, failures, session).bytes(probe, span, sink);
    }

    @Override
    public List<StageReading> readings(long session) throws StoreException {
        return results(session).readings();
    }

    @Override
    public SampleBlock samples(long session, int probe, int channel, long fromNanos, long toNanos)
            throws StoreException {
        return results(session).samples(probe, channel, new Span(fromNanos, toNanos));
    }

    @Override
    public SampleBlock last(long session, int probe, int channel) throws StoreException {
        return results(session).last(probe, channel);
    }

    @Override
    public List<Overview> overview(
            long session, int probe, List<Integer> channels, Span span, int columns, Overview.Edges edges)
            throws StoreException {
        return results(session).overview(probe, channels, span, columns, edges);
    }

    @Override
    public long sampleCount(long session, int probe) throws StoreException {
        return results(session).sampleCount(probe);
    }

    @Override
    public void rejected(long session, int probe, Sink<Rejected> sink) throws StoreException {
        results(session).rejected(probe, sink);
    }

    private ResultReader results(long session) {
        return new ResultReader(readers, failures, Results.OF_THE_DAY, session, "session " + session);
    }

    @Override
    public Settings settings() {
        return settings;
    }

    @Override
    public StoreHealth health() {
        return Health.of(file());
    }

    @Override
    public Papers papers() {
        return papers;
    }

    @Override
    public Instruments instruments() {
        return instruments;
    }

    @Override
    public Rereadings rereadings() {
        return rereadings;
    }

    /** The writer's connection goes last: it moves the log into the file and removes it. */
    @Override
    public void close() throws StoreException {
        try {
            readers.close();
            if (writer != null) {
                writer.close();
            }
        } catch (SQLException e) {
            throw failures.of("cannot be closed", e);
        } finally {
            if (lock != null) {
                lock.close();
            }
            if (!read.equals(file())) {
                Opening.removeCopy(read);
            }
        }
    }
}
