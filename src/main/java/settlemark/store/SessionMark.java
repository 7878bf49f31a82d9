package settlemark.store;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HexFormat;
import java.util.List;

/**
 * A short text that is another one as soon as a session's header is, or anything was stored of its events, was packed anew or
 * is missing. Made of what stands beside the packed blocks and of their lengths, so that none is unpacked for it.
 */
final class SessionMark {
    private static final List<String> ROWS = List.of(
            "SELECT key, started_at, zone, pressure_unit, temperature_unit, plan, plate, version, ended_nanos, keeps_bytes,"
                    + " settle FROM session WHERE number = ?",
            "SELECT position, name, profile, roles FROM probe WHERE session = ? ORDER BY position",
            "SELECT first_sequence, next_sequence, low_nanos, high_nanos, length(block) FROM event_block"
                    + " WHERE session = ? ORDER BY next_sequence",
            "SELECT number, next_sequence, until_nanos, length(events) FROM frame WHERE session = ? ORDER BY number");

    private SessionMark() {}

    static String of(Connection connection, long session) throws SQLException {
        MessageDigest digest = sha256();
        for (String rows : ROWS) {
            try (PreparedStatement select = connection.prepareStatement(rows)) {
                select.setLong(1, session);
                try (ResultSet row = select.executeQuery()) {
                    add(digest, row);
                }
            }
        }
        return HexFormat.of().formatHex(digest.digest(), 0, 16);
    }

    /** Each value behind its length, so that none can pass for a part of its neighbour. */
    private static void add(MessageDigest digest, ResultSet row) throws SQLException {
        int columns = row.getMetaData().getColumnCount();
        while (row.next()) {
            for (int i = 1; i <= columns; i++) {
                String value = row.getString(i);
                byte[] bytes = value == null ? new byte[0] : value.getBytes(StandardCharsets.UTF_8);
                digest.update((value == null ? "-" : bytes.length + ":").getBytes(StandardCharsets.US_ASCII));
                digest.update(bytes);
            }
        }
        digest.update((byte) '.');
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
