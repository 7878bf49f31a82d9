package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import settlemark.measure.Role;
import settlemark.profile.Profile;
import settlemark.session.DeviceUse;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;

/**
 * Devices are remembered by the sessions that were streamed from them, in the rows of probe: nothing else is stored of
 * them, so nothing can contradict it.
 */
final class DeviceRows {
    private static final String SELECT = "SELECT session, position, scheme, path, identity, roles FROM probe WHERE"
            + " identity <> '' ORDER BY session DESC, position";
    private static final String NO_ROLES = "{}";

    private DeviceRows() {}

    private static final class Row {
        private final long session;
        private final int position;
        private String roles;

        Row(long session, int position, String roles) {
            this.session = session;
            this.position = position;
            this.roles = roles;
        }
    }

    static List<DeviceUse> all(Connection connection, Failures failures, Function<String, Profile> profiles)
            throws SQLException, StoreException {
        List<DeviceUse> uses = new ArrayList<>();
        for (Row row : newest(connection)) {
            SessionHeader header = HeaderRows.find(connection, failures, profiles, row.session)
                    .orElseThrow(() -> failures.damaged("is damaged: session " + row.session + " has no header"));
            ProbeSetup last = header.probes().get(row.position);
            uses.add(new DeviceUse(withRoles(last, row, failures), row.session, row.position, header.startedAt()));
        }
        return uses;
    }

    private static List<Row> newest(Connection connection) throws SQLException {
        Map<String, Row> rows = new LinkedHashMap<>();
        try (PreparedStatement select = connection.prepareStatement(SELECT);
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                ProbeAddress address = new ProbeAddress(row.getString("scheme"), row.getString("path"));
                String key = row.getString("identity") + " " + DeviceUse.unit(address);
                String roles = row.getString("roles");
                Row known = rows.get(key);
                if (known == null) {
                    rows.put(key, new Row(row.getLong("session"), row.getInt("position"), roles));
                } else if (known.roles.equals(NO_ROLES)) {
                    known.roles = roles;
                }
            }
        }
        return List.copyOf(rows.values());
    }

    /** Roles of an earlier session, as far as the channels of the last one's profile can have them. */
    private static ProbeSetup withRoles(ProbeSetup last, Row row, Failures failures) throws StoreException {
        Map<String, Role> roles =
                new HashMap<>(failures.decode("the roles of a probe", () -> HeaderRows.roles(Json.read(row.roles))));
        roles.entrySet()
                .removeIf(e -> last.profile()
                        .channelIndex(e.getKey())
                        .filter(i -> last.channels().get(i).dimension()
                                == e.getValue().dimension())
                        .isEmpty());
        return new ProbeSetup(last.name(), last.address(), last.profile(), roles, last.identity());
    }
}
