package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import settlemark.measure.Channel;
import settlemark.profile.Profile;
import settlemark.session.Damage;
import settlemark.session.ProbeSetup;
import settlemark.session.RawBytes;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;

/** Checks what one session or rereading has of rows besides its samples and events. Within the caller's transaction. */
final class SessionCheck {
    private static final String PROBES = "SELECT name, samples FROM probe WHERE session = ? ORDER BY position";
    private static final String REREAD_PROBES =
            "SELECT '', samples FROM reread_probe WHERE rereading = ? ORDER BY position";
    private static final String KEEPS = "SELECT keeps_bytes FROM session WHERE number = ?";
    private static final String SIMULATED = "SELECT simulated FROM session WHERE number = ?";
    private static final String REJECTED =
            "SELECT count(*) FROM {t}rejected WHERE {key} = ? AND (probe < 0 OR probe >= ?)";

    private final Connection connection;
    private final Failures failures;
    private final Function<String, Profile> profiles;
    private final Survey survey;
    private final Findings findings;
    private long samples;
    private long events;
    private long readings;

    SessionCheck(
            Connection connection,
            Failures failures,
            Function<String, Profile> profiles,
            Survey survey,
            Findings findings) {
        this.connection = connection;
        this.failures = failures;
        this.profiles = profiles;
        this.survey = survey;
        this.findings = findings;
    }

    long samples() {
        return samples;
    }

    long events() {
        return events;
    }

    long readings() {
        return readings;
    }

    /** Returns whether it has a header that can be read. */
    boolean session(long session) throws SQLException {
        String name = Results.OF_THE_DAY.name(session);
        Optional<List<ProbeSetup>> setups =
                guarded(name, () -> header(session, name).probes());
        List<ProbeFacts> probes = facts(name, PROBES, session, setups);
        results(Results.OF_THE_DAY, session, name, probes);
        guarded(name, () -> {
            boolean keeps = ResultReader.count(connection, KEEPS, session) == 1;
            RawBytes bytes = keeps ? RawBytes.KEPT : RawBytes.DROPPED;
            events += new EventCheck(connection, failures, session, probes.size(), bytes, survey, findings).run();
            return bytes;
        });
        return setups.isPresent();
    }

    private SessionHeader header(long session, String name) throws SQLException, StoreException {
        SessionHeader header = HeaderRows.find(connection, failures, profiles, session)
                .orElseThrow(() -> failures.damaged("is damaged: " + name + " has no header"));
        if (header.simulated() != (ResultReader.count(connection, SIMULATED, session) == 1)) {
            findings.add(Damage.of(name, "its row and its probes' profiles disagree on whether it is simulated"));
        }
        return header;
    }

    /** @param name such as {@code rereading 1 of session 3} */
    void rereading(long id, String name) throws SQLException {
        Optional<List<ProbeSetup>> setups = guarded(
                name,
                () -> HeaderRows.probes(connection, failures, profiles, SqliteRereadings.SELECT_PROBES, id, name));
        results(Results.OF_A_REREADING, id, name, facts(name, REREAD_PROBES, id, setups));
    }

    private void results(Results results, long key, String name, List<ProbeFacts> probes) throws SQLException {
        guarded(name, () -> {
            samples += new SeriesCheck(connection, results, key, name, probes, survey, findings).run();
            return key;
        });
        guarded(name, () -> {
            readings +=
                    ReadingRows.all(connection, failures, results, key, name).size();
            return key;
        });
        guarded(name, () -> {
            long strange = ResultReader.count(connection, results.sql(REJECTED), key, probes.size());
            if (strange > 0) {
                findings.add(Damage.of(name, strange + " refused frames are of a probe that it does not have"));
            }
            return key;
        });
    }

    private List<ProbeFacts> facts(String name, String query, long key, Optional<List<ProbeSetup>> setups)
            throws SQLException {
        return guarded(name, () -> {
                    List<ProbeFacts> probes = new ArrayList<>();
                    try (PreparedStatement select = connection.prepareStatement(query)) {
                        select.setLong(1, key);
                        try (ResultSet row = select.executeQuery()) {
                            while (row.next()) {
                                probes.add(facts(probes.size(), row.getString(1), row.getLong(2), setups));
                            }
                        }
                    }
                    return probes;
                })
                .orElse(List.of());
    }

    private static ProbeFacts facts(int position, String name, long samples, Optional<List<ProbeSetup>> setups) {
        Optional<ProbeSetup> setup = setups.filter(s -> position < s.size()).map(s -> s.get(position));
        List<String> channels = setup.map(
                        s -> s.channels().stream().map(Channel::name).toList())
                .orElse(List.of());
        return new ProbeFacts(setup.map(ProbeSetup::name).orElse(name), channels, samples);
    }

    @FunctionalInterface
    private interface Look<T> {
        T at() throws SQLException, StoreException;
    }

    /** What cannot be read is damage of whatever it belongs to, and the next thing is looked at all the same. */
    private <T> Optional<T> guarded(String name, Look<T> look) throws SQLException {
        try {
            return Optional.of(look.at());
        } catch (StoreException e) {
            findings.add(Damage.of(name, WorkspaceCheck.without(failures, String.valueOf(e.getMessage()))));
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            findings.add(Damage.of(name, "rows cannot be read: " + e.getMessage()));
        } catch (IllegalArgumentException | NullPointerException e) {
            findings.add(Damage.of(name, "rows cannot be understood: " + e.getMessage()));
        }
        return Optional.empty();
    }
}
