package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import settlemark.decode.Rejected;
import settlemark.profile.Profile;
import settlemark.session.ProbeSetup;
import settlemark.session.Rereading;
import settlemark.session.Rereadings;
import settlemark.session.SampleBlock;
import settlemark.session.SessionStore;
import settlemark.session.Span;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;
import settlemark.settle.StageReading;

/** Rereadings in tables of their own; the rows of the day are never touched. */
final class SqliteRereadings implements Rereadings {
    private static final String SESSION_PROBES = "SELECT count(*) FROM probe WHERE session = ?";
    private static final String INCOMPLETE = "SELECT id FROM rereading WHERE session = ? AND complete = 0";
    private static final String INSERT = "INSERT INTO rereading (session, number, made_at, version) VALUES (?1,"
            + " (SELECT coalesce(max(number), 0) + 1 FROM rereading WHERE session = ?1), ?2, ?3)"
            + " RETURNING id, number";
    private static final String INSERT_PROBE =
            "INSERT INTO reread_probe (rereading, position, profile, roles) VALUES (?, ?, ?, ?)";
    private static final String STATE = "SELECT complete FROM rereading WHERE id = ?";
    private static final String COMPLETE = "UPDATE rereading SET complete = 1 WHERE id = ?";
    private static final String SELECT =
            "SELECT id, number, made_at, version FROM rereading WHERE session = ? AND complete = 1 ORDER BY number";
    static final String SELECT_PROBES = "SELECT probe.name, scheme, path, reread_probe.roles, identity, digest,"
            + " profile.id AS id, text FROM reread_probe JOIN rereading ON rereading.id = reread_probe.rereading"
            + " JOIN probe ON probe.session = rereading.session AND probe.position = reread_probe.position"
            + " JOIN profile ON profile.digest = reread_probe.profile"
            + " WHERE reread_probe.rereading = ? ORDER BY reread_probe.position";

    /** In an order in which nothing is left that points to what is gone. */
    private static final List<String> REMOVE = List.of(
            "DELETE FROM reread_channel_reading WHERE rereading = ?",
            "DELETE FROM reread_reading WHERE rereading = ?",
            "DELETE FROM reread_rejected WHERE rereading = ?",
            "DELETE FROM reread_sample_block WHERE rereading = ?",
            "DELETE FROM reread_summary WHERE rereading = ?",
            "DELETE FROM reread_frame WHERE rereading = ?",
            "DELETE FROM reread_probe WHERE rereading = ?",
            "DELETE FROM rereading WHERE id = ?");

    private final Readers readers;
    private final Failures failures;
    private final Function<String, Profile> profiles;
    private final Supplier<Writer> writer;

    /** @param writer throws where the workspace was opened for reading only */
    SqliteRereadings(Readers readers, Failures failures, Function<String, Profile> profiles, Supplier<Writer> writer) {
        this.readers = readers;
        this.failures = failures;
        this.profiles = profiles;
        this.writer = writer;
    }

    @Override
    public Rereading begin(long session, List<ProbeSetup> probes, Instant madeAt, String version)
            throws StoreException {
        return writer.get().commit("cannot begin to read session " + session + " again", connection -> {
            checkProbes(connection, session, probes);
            removeIncomplete(connection, session);
            try (PreparedStatement insert = connection.prepareStatement(INSERT)) {
                insert.setLong(1, session);
                insert.setString(2, madeAt.toString());
                insert.setString(3, version);
                try (ResultSet row = insert.executeQuery()) {
                    row.next();
                    Rereading begun = new Rereading(row.getLong(1), session, row.getInt(2), madeAt, version, probes);
                    insertProbes(connection, begun);
                    return begun;
                }
            }
        });
    }

    private static void checkProbes(Connection connection, long session, List<ProbeSetup> probes) throws SQLException {
        long known = ResultReader.count(connection, SESSION_PROBES, session);
        if (known == 0 || known != probes.size()) {
            throw new IllegalArgumentException(
                    "session " + session + " has " + known + " probes, and a rereading of it has " + probes.size());
        }
    }

    private static void insertProbes(Connection connection, Rereading rereading) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(INSERT_PROBE)) {
            for (int i = 0; i < rereading.probes().size(); i++) {
                ProbeSetup probe = rereading.probes().get(i);
                HeaderRows.insertProfile(connection, probe.profile());
                insert.setLong(1, rereading.id());
                insert.setInt(2, i);
                insert.setString(3, probe.profile().digest());
                insert.setString(4, Json.text(HeaderRows.roles(probe.roles())));
                insert.executeUpdate();
            }
        }
    }

    @Override
    public void append(Rereading rereading, WriteBatch results) throws StoreException {
        check(rereading, results);
        Writer open = writer.get();
        open.commit("cannot store the rereading of session " + rereading.session(), connection -> {
            checkOpen(connection, rereading);
            open.append(Results.OF_A_REREADING, rereading.id(), results, List.of());
            return results;
        });
    }

    private static void check(Rereading rereading, WriteBatch results) {
        if (!results.events().isEmpty()) {
            throw new IllegalArgumentException(
                    "a rereading stores no events, got " + results.events().size());
        }
        for (SampleBlock block : results.samples()) {
            checkProbe(rereading, block.probe());
        }
        for (WriteBatch.ProbeRejected rejected : results.rejected()) {
            checkProbe(rereading, rejected.probe());
        }
    }

    private static void checkProbe(Rereading rereading, int probe) {
        if (probe < 0 || probe >= rereading.probes().size()) {
            throw new IllegalArgumentException("rereading " + rereading.number() + " has "
                    + rereading.probes().size() + " probes, and none with index " + probe);
        }
    }

    /** Whether it still takes anything. */
    private static void checkOpen(Connection connection, Rereading rereading) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(STATE)) {
            select.setLong(1, rereading.id());
            try (ResultSet row = select.executeQuery()) {
                if (!row.next()) {
                    throw new IllegalStateException("rereading " + rereading.number() + " was removed");
                }
                if (row.getBoolean(1)) {
                    throw new IllegalStateException("rereading " + rereading.number() + " is complete");
                }
            }
        }
    }

    @Override
    public void complete(Rereading rereading) throws StoreException {
        Writer open = writer.get();
        open.commit("cannot complete the rereading of session " + rereading.session(), connection -> {
            checkOpen(connection, rereading);
            open.seal(Results.OF_A_REREADING, rereading.id());
            return change(connection, COMPLETE, rereading.id());
        });
        open.checkpoint();
    }

    @Override
    public void discard(Rereading rereading) throws StoreException {
        writer.get().commit("cannot remove a half-made rereading", connection -> {
            checkOpen(connection, rereading);
            return remove(connection, rereading.id());
        });
    }

    private void removeIncomplete(Connection connection, long session) throws SQLException {
        List<Long> ids = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(INCOMPLETE)) {
            select.setLong(1, session);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    ids.add(row.getLong(1));
                }
            }
        }
        for (long id : ids) {
            remove(connection, id);
        }
    }

    private int remove(Connection connection, long id) throws SQLException {
        writer.get().forget(Results.OF_A_REREADING, id);
        int rows = 0;
        for (String statement : REMOVE) {
            rows += change(connection, statement, id);
        }
        return rows;
    }

    private static int change(Connection connection, String statement, long id) throws SQLException {
        try (PreparedStatement change = connection.prepareStatement(statement)) {
            change.setLong(1, id);
            return change.executeUpdate();
        }
    }

    @Override
    public List<Rereading> of(long session) throws StoreException {
        return readers.read(connection -> {
            List<Rereading> found = new ArrayList<>();
            try (PreparedStatement select = connection.prepareStatement(SELECT)) {
                select.setLong(1, session);
                try (ResultSet row = select.executeQuery()) {
                    while (row.next()) {
                        found.add(rereading(connection, row, session));
                    }
                }
            }
            return found;
        });
    }

    private Rereading rereading(Connection connection, ResultSet row, long session)
            throws SQLException, StoreException {
        long id = row.getLong(1);
        int number = row.getInt(2);
        String madeAt = row.getString(3);
        String name = name(number, session);
        return new Rereading(
                id,
                session,
                number,
                failures.decode("the date of " + name, () -> Instant.parse(madeAt)),
                row.getString(4),
                HeaderRows.probes(connection, failures, profiles, SELECT_PROBES, id, name));
    }

    static String name(int number, long session) {
        return "rereading " + number + " of session " + session;
    }

    private ResultReader results(Rereading rereading) {
        String name = name(rereading.number(), rereading.session());
        return new ResultReader(readers, failures, Results.OF_A_REREADING, rereading.id(), name);
    }

    @Override
    public List<StageReading> readings(Rereading rereading) throws StoreException {
        return results(rereading).readings();
    }

    @Override
    public SampleBlock samples(Rereading rereading, int probe, int channel, long fromNanos, long toNanos)
            throws StoreException {
        return results(rereading).samples(probe, channel, new Span(fromNanos, toNanos));
    }

    @Override
    public long sampleCount(Rereading rereading, int probe) throws StoreException {
        return results(rereading).sampleCount(probe);
    }

    @Override
    public void rejected(Rereading rereading, int probe, SessionStore.Sink<Rejected> sink) throws StoreException {
        results(rereading).rejected(probe, sink);
    }
}
