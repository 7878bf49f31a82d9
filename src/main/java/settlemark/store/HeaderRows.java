package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import settlemark.job.JobPlan;
import settlemark.job.RatingPlate;
import settlemark.job.SettleForm;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.RawBytes;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.settle.SettleChoices;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** A session's header as rows of session, probe and profile. A profile comes back by reading its text again. */
final class HeaderRows {
    private static final String INSERT = "INSERT INTO session (key, title, started_at, zone, pressure_unit,"
            + " temperature_unit, simulated, plan, plate, version, keeps_bytes, settle)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"
            + " RETURNING number";
    private static final String INSERT_PROFILE =
            "INSERT INTO profile (digest, id, name, text) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING";
    private static final String INSERT_PROBE = "INSERT INTO probe (session, position, name, scheme, path, profile,"
            + " roles, identity) VALUES (?, ?, ?, ?, ?, ?, ?, ?)";
    private static final String SELECT = "SELECT key, title, started_at, zone, pressure_unit, temperature_unit, plan,"
            + " plate, version, settle FROM session WHERE number = ?";
    private static final String FROM_PROBES =
            " FROM probe JOIN profile ON profile.digest = probe.profile WHERE session = ? ORDER BY position";
    private static final String SELECT_PROBES =
            "SELECT probe.name, scheme, path, roles, identity, digest, id, text" + FROM_PROBES;
    private static final String SELECT_IDENTITY =
            "SELECT identity FROM probe WHERE name = ? ORDER BY session DESC LIMIT 1";

    private HeaderRows() {}

    /** Within the caller's transaction; returns the session's number. */
    static long insert(Connection connection, SessionHeader header, RawBytes bytes) throws SQLException {
        long number;
        try (PreparedStatement insert = connection.prepareStatement(INSERT)) {
            insert.setString(1, header.key());
            insert.setString(2, header.title());
            insert.setString(3, header.startedAt().toString());
            insert.setString(4, header.zone().getId());
            insert.setString(5, UnitText.of(header.pressureUnit()));
            insert.setString(6, UnitText.of(header.temperatureUnit()));
            insert.setBoolean(7, header.simulated());
            insert.setString(
                    8, header.plan().map(p -> Json.text(JobJson.plan(p))).orElse(null));
            insert.setString(
                    9, header.plate().map(p -> Json.text(JobJson.plate(p))).orElse(null));
            insert.setString(10, header.version());
            insert.setBoolean(11, bytes == RawBytes.KEPT);
            insert.setString(12, settle(header.settle()));
            try (ResultSet row = insert.executeQuery()) {
                row.next();
                number = row.getLong(1);
            }
        }
        insertProbes(connection, number, header.probes());
        return number;
    }

    private static void insertProbes(Connection connection, long session, List<ProbeSetup> probes) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(INSERT_PROBE)) {
            for (int i = 0; i < probes.size(); i++) {
                ProbeSetup probe = probes.get(i);
                insertProfile(connection, probe.profile());
                insert.setLong(1, session);
                insert.setInt(2, i);
                insert.setString(3, probe.name());
                insert.setString(4, probe.address().scheme());
                insert.setString(5, probe.address().path());
                insert.setString(6, probe.profile().digest());
                insert.setString(7, Json.text(roles(probe.roles())));
                insert.setString(8, probe.identity());
                insert.executeUpdate();
            }
        }
    }

    /** Within the caller's transaction; each text is stored once. */
    static void insertProfile(Connection connection, Profile profile) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(INSERT_PROFILE)) {
            insert.setString(1, profile.digest());
            insert.setString(2, profile.id());
            insert.setString(3, profile.name());
            insert.setString(4, profile.text());
            insert.executeUpdate();
        }
    }

    /** Empty where there is no such session. */
    static Optional<SessionHeader> find(
            Connection connection, Failures failures, Function<String, Profile> profiles, long session)
            throws SQLException, StoreException {
        try (PreparedStatement select = connection.prepareStatement(SELECT)) {
            select.setLong(1, session);
            try (ResultSet row = select.executeQuery()) {
                if (!row.next()) {
                    return Optional.empty();
                }
                List<ProbeSetup> probes =
                        probes(connection, failures, profiles, SELECT_PROBES, session, "session " + session);
                return Optional.of(header(row, failures, session, probes));
            }
        }
    }

    /** Of the newest session with a probe of that name; empty where there is none or nothing was known. */
    static String lastIdentity(Connection connection, String probe) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(SELECT_IDENTITY)) {
            select.setString(1, probe);
            try (ResultSet row = select.executeQuery()) {
                return row.next() ? row.getString(1) : "";
            }
        }
    }

    private static SessionHeader header(ResultSet row, Failures failures, long session, List<ProbeSetup> probes)
            throws SQLException, StoreException {
        String key = row.getString("key");
        String title = row.getString("title");
        String startedAt = row.getString("started_at");
        String zone = row.getString("zone");
        Unit pressureUnit = unit(row, "pressure_unit", failures, session);
        Unit temperatureUnit = unit(row, "temperature_unit", failures, session);
        String plan = row.getString("plan");
        String plate = row.getString("plate");
        String version = row.getString("version");
        String settle = row.getString("settle");
        return failures.decode(
                "the header of session " + session,
                () -> new SessionHeader(
                        key,
                        title,
                        Instant.parse(startedAt),
                        ZoneId.of(zone),
                        pressureUnit,
                        temperatureUnit,
                        probes,
                        plan(plan),
                        plate(plate),
                        version,
                        settle(settle)));
    }

    private static Unit unit(ResultSet row, String column, Failures failures, long session)
            throws SQLException, StoreException {
        String text = row.getString(column);
        return failures.decode("the units of session " + session, () -> UnitText.read(text));
    }

    private static Optional<JobPlan> plan(@Nullable String text) {
        return Optional.ofNullable(text).map(t -> JobJson.plan(Json.read(t)));
    }

    private static @Nullable String settle(SettleChoices choices) {
        if (choices.isNone()) {
            return null;
        }
        ObjectNode node = Json.object();
        SettleForm.write(choices, node);
        return Json.text(node);
    }

    private static SettleChoices settle(@Nullable String text) {
        return text == null ? SettleChoices.NONE : SettleForm.read(Json.read(text));
    }

    private static Optional<RatingPlate> plate(@Nullable String text) {
        return Optional.ofNullable(text).map(t -> JobJson.plate(Json.read(t)));
    }

    /**
     * Probes with their profiles.
     *
     * @param query gives name, scheme, path, roles, identity, digest, id and text, in order, for a key
     * @param of whose they are, for messages
     */
    static List<ProbeSetup> probes(
            Connection connection,
            Failures failures,
            Function<String, Profile> profiles,
            String query,
            long key,
            String of)
            throws SQLException, StoreException {
        List<ProbeSetup> probes = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(query)) {
            select.setLong(1, key);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    String name = row.getString("name");
                    String roles = row.getString("roles");
                    probes.add(new ProbeSetup(
                            name,
                            new ProbeAddress(row.getString("scheme"), row.getString("path")),
                            profile(row, failures, profiles, of),
                            failures.decode("probe " + name + " of " + of, () -> roles(Json.read(roles))),
                            row.getString("identity")));
                }
            }
        }
        return probes;
    }

    private static Profile profile(ResultSet row, Failures failures, Function<String, Profile> profiles, String of)
            throws SQLException, StoreException {
        String digest = row.getString("digest");
        String text = row.getString("text");
        String what = "profile " + row.getString("id") + " of " + of;
        Profile profile = failures.decode(what, () -> profiles.apply(text));
        if (!profile.digest().equals(digest)) {
            throw failures.damaged("is damaged: the text of " + what + " has digest " + profile.digest()
                    + ", and was stored with " + digest);
        }
        return profile;
    }

    static ObjectNode roles(Map<String, Role> roles) {
        ObjectNode node = Json.object();
        roles.forEach((channel, role) -> node.put(channel, role.name()));
        return node;
    }

    static Map<String, Role> roles(JsonNode node) {
        Map<String, Role> roles = new HashMap<>();
        node.properties()
                .forEach(p -> roles.put(p.getKey(), Role.valueOf(p.getValue().stringValue())));
        return roles;
    }
}
