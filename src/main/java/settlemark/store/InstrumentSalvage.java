package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import settlemark.job.CorrectionPoint;
import settlemark.session.Damage;
import tools.jackson.core.JacksonException;

/**
 * Moves the instruments of a damaged workspace into a new one. An instrument whose points are not all there comes over
 * without any: a curve with a hole would correct falsely.
 */
final class InstrumentSalvage {
    private static final List<String> CARD =
            List.of("serial", "name", "kind", "calibrated", "due", "battery_percent", "battery_at");
    private static final List<String> POINT =
            List.of("serial", "position", "channel", "true_value", "indicated", "uncertainty", "unit");
    private static final List<String> ZERO = List.of("serial", "channel", "zero", "unit", "taken_at", "session");
    private static final String POINTS_OF = "SELECT serial, channel, true_value, indicated, uncertainty, unit, position"
            + " FROM correction_point WHERE serial = ? ORDER BY position";
    private static final String ZEROS_OF =
            "SELECT " + String.join(", ", ZERO) + " FROM instrument_zero WHERE serial = ?";

    private final Connection from;
    private final Connection into;
    private final Findings lost;

    InstrumentSalvage(Connection from, Connection into, Findings lost) {
        this.from = from;
        this.into = into;
        this.lost = lost;
    }

    void run() throws SQLException {
        try {
            for (StoredRow row : rows(InstrumentRows.ALL)) {
                one(row);
            }
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            lost.add(Damage.ofFile("instruments that cannot be read"));
        }
    }

    private void one(StoredRow row) throws SQLException {
        String serial = String.valueOf(row.value(0));
        List<StoredRow> points = new ArrayList<>();
        List<CorrectionPoint> understood = new ArrayList<>();
        boolean whole = true;
        try {
            points.addAll(rows(POINTS_OF, serial));
            for (StoredRow point : points) {
                understood.add(InstrumentRows.point(point));
            }
            InstrumentRows.kept(row, understood, List.of());
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            whole = false;
        } catch (IllegalArgumentException | JacksonException e) {
            whole = false;
        }
        try {
            InstrumentRows.kept(row, List.of(), List.of());
        } catch (IllegalArgumentException e) {
            lost.add(Damage.ofFile("instrument " + serial + ", which cannot be understood: " + e.getMessage()));
            return;
        }
        RowCopy.insert(into, "instrument", CARD, row);
        if (whole) {
            for (StoredRow point : points) {
                insertPoint(point);
            }
        } else {
            lost.add(Damage.ofFile(
                    "the correction points of instrument " + serial + ", which cannot be understood: enter them anew"));
        }
        zeros(serial);
    }

    private void insertPoint(StoredRow point) throws SQLException {
        String sql = "INSERT INTO correction_point (" + String.join(", ", POINT) + ") VALUES (?, ?, ?, ?, ?, ?, ?)";
        try (PreparedStatement insert = into.prepareStatement(sql)) {
            insert.setObject(1, point.value(0));
            insert.setObject(2, point.value(6));
            for (int i = 1; i < POINT.size() - 1; i++) {
                insert.setObject(i + 2, point.value(i));
            }
            insert.executeUpdate();
        }
    }

    private void zeros(String serial) throws SQLException {
        try {
            for (StoredRow zero : rows(ZEROS_OF, serial)) {
                InstrumentRows.zero(zero);
                RowCopy.insert(into, "instrument_zero", ZERO, zero);
            }
        } catch (SQLException e) {
            RowScan.requireDamage(e);
            lost.add(Damage.ofFile("last zeros of instrument " + serial));
        } catch (IllegalArgumentException | JacksonException e) {
            lost.add(Damage.ofFile("a last zero of instrument " + serial + ": " + e.getMessage()));
        }
    }

    private List<StoredRow> rows(String query, String... values) throws SQLException {
        List<StoredRow> rows = new ArrayList<>();
        try (PreparedStatement select = from.prepareStatement(query)) {
            for (int i = 0; i < values.length; i++) {
                select.setString(i + 1, values[i]);
            }
            try (ResultSet row = select.executeQuery()) {
                int columns = row.getMetaData().getColumnCount();
                while (row.next()) {
                    rows.add(StoredRow.of(row, columns));
                }
            }
        }
        return rows;
    }
}
