package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import org.sqlite.SQLiteErrorCode;
import settlemark.measure.Channel;
import settlemark.profile.Profile;
import settlemark.session.Damage;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;

/**
 * Saves profiles and the headers of sessions and rereadings. What of a header cannot be understood is given up, one thing
 * after the other, until the rest can be: first plan and plate, then times and units, then roles. Without the profiles of
 * all its probes a session cannot be saved.
 */
final class HeaderSalvage {
    private static final List<String> SESSION = List.of(
            "key",
            "title",
            "started_at",
            "zone",
            "pressure_unit",
            "temperature_unit",
            "simulated",
            "plan",
            "plate",
            "version",
            "ended_nanos",
            "keeps_bytes",
            "settle");
    private static final List<String> PROBE =
            List.of("name", "scheme", "path", "profile", "roles", "samples", "identity");

    /** What takes the place of a header that is lost. */
    private static final String NEW_HEADER = "INSERT INTO session (number, key, title, started_at, zone, pressure_unit,"
            + " temperature_unit, simulated, version, keeps_bytes) VALUES (?1, 'recovered-' || ?1,"
            + " 'Recovered session ' || ?1 || ', its header was lost', '1970-01-01T00:00:00Z', 'UTC', 'Pa', 'Cel', 1,"
            + " 'recovered', 1)";

    private static final List<String> GIVEN_UP = List.of(
            "UPDATE session SET settle = NULL WHERE number = ?",
            "UPDATE session SET plan = NULL, plate = NULL WHERE number = ?",
            "UPDATE session SET started_at = '1970-01-01T00:00:00Z', zone = 'UTC', pressure_unit = 'Pa',"
                    + " temperature_unit = 'Cel' WHERE number = ?",
            "UPDATE probe SET roles = '{}' WHERE session = ?");
    private static final List<String> GIVEN_UP_WORDS = List.of(
            "how its readings settle",
            "plan and plate",
            "when and where it began, and the job's units",
            "the roles of its channels");

    private final Connection from;
    private final Connection into;
    private final Failures failures;
    private final Function<String, Profile> profiles;
    private final Findings lost;
    private final Set<String> digests = new HashSet<>();
    private final Map<Long, StoredRow> headers = new TreeMap<>();
    private final Map<Long, Map<Long, StoredRow>> probes = new TreeMap<>();
    private final Map<Long, List<ProbeFacts>> facts = new TreeMap<>();
    private final Map<Long, List<ProbeFacts>> rereadingFacts = new TreeMap<>();

    /** A rereading as its row says. */
    record RereadingRow(long id, long session, long number, boolean complete, StoredRow row) {}

    HeaderSalvage(
            Connection from, Connection into, Failures failures, Function<String, Profile> profiles, Findings lost) {
        this.from = from;
        this.into = into;
        this.failures = failures;
        this.profiles = profiles;
        this.lost = lost;
    }

    /** Both from the first and from the last on, in case a page between cannot be read. */
    void profiles() throws SQLException {
        for (String order : List.of("ASC", "DESC")) {
            try (PreparedStatement select = from.prepareStatement(
                            "SELECT digest, id, name, text FROM profile ORDER BY digest " + order);
                    ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    profile(StoredRow.of(row, 4));
                }
                return;
            } catch (SQLException e) {
                RowScan.requireDamage(e);
                lost.add(Damage.ofFile(
                        "profiles from one on, read " + (order.equals("ASC") ? "forwards" : "backwards")));
            }
        }
    }

    private void profile(StoredRow row) throws SQLException {
        String id = row.value(1) instanceof String text ? text : "without a name";
        try {
            Profile profile = profiles.apply(row.text(3));
            if (!profile.digest().equals(row.text(0))) {
                throw new IllegalArgumentException("its text has digest " + profile.digest());
            }
            if (digests.add(profile.digest())) {
                HeaderRows.insertProfile(into, profile);
            }
        } catch (IllegalArgumentException | IllegalStateException e) {
            lost.add(Damage.ofFile("profile " + id + ", whose text is damaged: " + e.getMessage()));
        }
    }

    /** The sessions of which there is a row or a probe. */
    Set<Long> read() throws SQLException, StoreException {
        new RowScan(from, "session", List.of("number"), SESSION).all(row -> headers.put(row.number(0), row));
        new RowScan(from, "probe", List.of("session", "position"), PROBE).all(this::probe);
        Set<Long> all = new HashSet<>(headers.keySet());
        all.addAll(probes.keySet());
        return all;
    }

    private void probe(StoredRow row) {
        try {
            probes.computeIfAbsent(row.number(0), s -> new TreeMap<>()).put(row.number(1), row);
        } catch (IllegalArgumentException e) {
            lost.add(Damage.ofFile("a probe whose row is damaged: " + e.getMessage()));
        }
    }

    List<ProbeFacts> facts(long session) {
        return facts.getOrDefault(session, List.of());
    }

    List<ProbeFacts> rereadingFacts(long rereading) {
        return rereadingFacts.getOrDefault(rereading, List.of());
    }

    /**
     * Returns whether it is in the new workspace now.
     *
     * @param most it has samples of so many probes at least
     */
    boolean session(long session, int most) throws SQLException, StoreException {
        String name = Results.OF_THE_DAY.name(session);
        Map<Long, StoredRow> own = probes.getOrDefault(session, Map.of());
        if (own.isEmpty() && !headers.containsKey(session)) {
            lost.add(Damage.of(name, "it has neither a header nor probes"));
            return false;
        }
        for (long position = 0; position < Math.max(most, own.size()); position++) {
            StoredRow row = own.get(position);
            if (row == null || !(row.value(5) instanceof String digest) || !digests.contains(digest)) {
                lost.add(Damage.of(
                        name, "probe number " + position + " or its profile is lost, and the session with it"));
                return false;
            }
        }
        header(session, name);
        for (StoredRow row : own.values()) {
            if (!inserted("probe", columns(List.of("session", "position"), PROBE), row)) {
                remove(session);
                lost.add(Damage.of(name, "a probe's row is damaged, and the session is lost with it"));
                return false;
            }
        }
        return understood(session, name);
    }

    private void header(long session, String name) throws SQLException {
        StoredRow row = headers.get(session);
        if (row != null && inserted("session", columns(List.of("number"), SESSION), row)) {
            return;
        }
        lost.add(Damage.of(name, "its header: title, date, place, units, plan and plate"));
        change(NEW_HEADER, session);
    }

    private static List<String> columns(List<String> first, List<String> others) {
        List<String> all = new ArrayList<>(first);
        all.addAll(others);
        return all;
    }

    private boolean inserted(String table, List<String> columns, StoredRow row) throws SQLException {
        try {
            RowCopy.insert(into, table, columns, row);
            return true;
        } catch (SQLException e) {
            SQLiteErrorCode code = Failures.code(e);
            if (code != SQLiteErrorCode.SQLITE_CONSTRAINT && code != SQLiteErrorCode.SQLITE_MISMATCH) {
                throw e;
            }
            return false;
        }
    }

    private int change(String sql, long key) throws SQLException {
        try (PreparedStatement change = into.prepareStatement(sql)) {
            change.setLong(1, key);
            return change.executeUpdate();
        }
    }

    private void remove(long session) throws SQLException {
        change("DELETE FROM probe WHERE session = ?", session);
        change("DELETE FROM session WHERE number = ?", session);
    }

    private boolean understood(long session, String name) throws SQLException {
        for (int attempt = 0; ; attempt++) {
            try {
                SessionHeader header =
                        HeaderRows.find(into, failures, profiles, session).orElseThrow();
                facts.put(session, facts(header.probes(), probes.getOrDefault(session, Map.of()), 7));
                change("UPDATE session SET simulated = " + (header.simulated() ? 1 : 0) + " WHERE number = ?", session);
                return true;
            } catch (StoreException e) {
                if (attempt == GIVEN_UP.size()) {
                    lost.add(Damage.of(name, "its header cannot be understood: " + e.getMessage()));
                    remove(session);
                    return false;
                }
                lost.add(Damage.of(name, GIVEN_UP_WORDS.get(attempt)));
                change(GIVEN_UP.get(attempt), session);
            }
        }
    }

    /** @param samples column that counts them */
    private static List<ProbeFacts> facts(List<ProbeSetup> setups, Map<Long, StoredRow> rows, int samples) {
        List<ProbeFacts> facts = new ArrayList<>();
        for (int i = 0; i < setups.size(); i++) {
            ProbeSetup setup = setups.get(i);
            StoredRow row = rows.get((long) i);
            long count = row != null && row.value(samples) instanceof Number number ? number.longValue() : -1;
            facts.add(new ProbeFacts(
                    setup.name(), setup.channels().stream().map(Channel::name).toList(), count));
        }
        return facts;
    }

    List<RereadingRow> rereadings() throws SQLException, StoreException {
        List<RereadingRow> rows = new ArrayList<>();
        RowScan scan = new RowScan(
                from, "rereading", List.of("id"), List.of("session", "number", "made_at", "version", "complete"));
        scan.all(row -> {
            try {
                rows.add(new RereadingRow(row.number(0), row.number(1), row.number(2), row.number(5) == 1, row));
            } catch (IllegalArgumentException e) {
                lost.add(Damage.ofFile("a rereading whose row is damaged: " + e.getMessage()));
            }
        });
        return rows;
    }

    /** Returns whether it is in the new workspace now. */
    boolean rereading(RereadingRow rereading) throws SQLException, StoreException {
        List<String> own = List.of("id", "session", "number", "made_at", "version", "complete");
        if (!inserted("rereading", own, rereading.row())) {
            return false;
        }
        List<String> columns = List.of("profile", "roles", "samples");
        Map<Long, StoredRow> rows = new TreeMap<>();
        new RowScan(from, "reread_probe", List.of("rereading", "position"), columns)
                .between(rereading.id(), rereading.id(), row -> rows.put(row.number(1), row));
        boolean all = rows.size() == facts(rereading.session()).size();
        for (StoredRow row : rows.values()) {
            boolean known = row.value(2) instanceof String digest && digests.contains(digest);
            all = all && known && inserted("reread_probe", columns(List.of("rereading", "position"), columns), row);
        }
        if (all) {
            try {
                List<ProbeSetup> setups = HeaderRows.probes(
                        into, failures, profiles, SqliteRereadings.SELECT_PROBES, rereading.id(), "a rereading");
                rereadingFacts.put(rereading.id(), facts(setups, rows, 4));
                return true;
            } catch (StoreException e) {
                // told by whoever asked
            }
        }
        change("DELETE FROM reread_probe WHERE rereading = ?", rereading.id());
        change("DELETE FROM rereading WHERE id = ?", rereading.id());
        return false;
    }
}
