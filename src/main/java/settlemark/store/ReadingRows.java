package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import settlemark.measure.Role;
import settlemark.session.StoreException;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Stage readings as rows, a channel's part a row. A REAL column holds neither NaN nor the sign of zero: such a number
 * is NULL there, and its text stands in the column {@code odd}, a JSON object by column name.
 */
final class ReadingRows {
    static final String INSERT = "INSERT INTO {t}reading ({key}, batch, part, step, purpose, time_nanos, by_hand,"
            + " hand_reason) VALUES (?, ?, ?, ?, ?, ?, ?, ?)";
    static final String INSERT_CHANNEL = "INSERT INTO {t}channel_reading ({key}, batch, part, position, role, value,"
            + " standard_uncertainty, settle_uncertainty, zero_offset, unit, from_nanos, to_nanos, settled, reason, odd,"
            + " rule, instrument) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";
    private static final String SELECT = "SELECT batch, part, step, purpose, time_nanos, by_hand, hand_reason"
            + " FROM {t}reading WHERE {key} = ? ORDER BY batch, part";
    private static final String SELECT_CHANNELS = "SELECT role, value, standard_uncertainty, settle_uncertainty,"
            + " zero_offset, unit, from_nanos, to_nanos, settled, reason, odd, rule, instrument FROM {t}channel_reading"
            + " WHERE {key} = ? AND batch = ? AND part = ? ORDER BY position";

    private ReadingRows() {}

    static void insert(
            PreparedStatement insert,
            PreparedStatement insertChannel,
            long key,
            long batch,
            int part,
            StageReading reading)
            throws SQLException {
        insert.setLong(1, key);
        insert.setLong(2, batch);
        insert.setInt(3, part);
        insert.setString(4, reading.step());
        insert.setString(5, reading.purpose());
        insert.setLong(6, reading.timeNanos());
        insert.setBoolean(7, reading.byHand());
        insert.setString(8, reading.handReason());
        insert.executeUpdate();
        insertChannel.setLong(1, key);
        insertChannel.setLong(2, batch);
        insertChannel.setInt(3, part);
        for (int i = 0; i < reading.channels().size(); i++) {
            insertChannel.setInt(4, i);
            insert(insertChannel, reading.channels().get(i));
        }
    }

    private static void insert(PreparedStatement insert, ChannelReading channel) throws SQLException {
        ObjectNode odd = Json.object();
        insert.setString(5, channel.role().name());
        real(insert, 6, "value", channel.value(), odd);
        real(insert, 7, "standard_uncertainty", channel.standardUncertainty(), odd);
        real(insert, 8, "settle_uncertainty", channel.settleUncertainty(), odd);
        real(insert, 9, "zero_offset", channel.zeroOffset(), odd);
        insert.setString(10, UnitText.of(channel.unit()));
        insert.setLong(11, channel.fromNanos());
        insert.setLong(12, channel.toNanos());
        insert.setBoolean(13, channel.settled());
        insert.setString(14, channel.reason());
        if (odd.isEmpty()) {
            insert.setNull(15, Types.VARCHAR);
        } else {
            insert.setString(15, Json.text(odd));
        }
        insert.setString(16, channel.rule());
        insert.setString(17, InstrumentJson.text(channel.instrument()));
        insert.executeUpdate();
    }

    private static void real(PreparedStatement insert, int index, String column, double value, ObjectNode odd)
            throws SQLException {
        if (Double.isNaN(value) || Double.compare(value, -0.0) == 0) {
            insert.setNull(index, Types.REAL);
            odd.put(column, Double.toString(value));
        } else {
            insert.setDouble(index, value);
        }
    }

    /** @param of whose they are, for messages */
    static List<StageReading> all(Connection connection, Failures failures, Results results, long key, String of)
            throws SQLException, StoreException {
        List<StageReading> readings = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(results.sql(SELECT));
                PreparedStatement selectChannels = connection.prepareStatement(results.sql(SELECT_CHANNELS))) {
            select.setLong(1, key);
            selectChannels.setLong(1, key);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    selectChannels.setLong(2, row.getLong(1));
                    selectChannels.setInt(3, row.getInt(2));
                    String what = "reading " + (readings.size() + 1) + " of " + of;
                    readings.add(new StageReading(
                            row.getString(3),
                            row.getString(4),
                            row.getLong(5),
                            row.getBoolean(6),
                            row.getString(7),
                            channels(selectChannels, failures, what)));
                }
            }
        }
        return readings;
    }

    private static List<ChannelReading> channels(PreparedStatement select, Failures failures, String what)
            throws SQLException, StoreException {
        List<ChannelReading> channels = new ArrayList<>();
        try (ResultSet row = select.executeQuery()) {
            while (row.next()) {
                String odd = row.getString("odd");
                JsonNode odds = failures.decode(what, () -> odd == null ? Json.object() : Json.read(odd));
                String role = row.getString("role");
                String unit = row.getString("unit");
                String instrument = row.getString("instrument");
                channels.add(new ChannelReading(
                        failures.decode(what, () -> Role.valueOf(role)),
                        real(row, "value", odds, failures, what),
                        real(row, "standard_uncertainty", odds, failures, what),
                        real(row, "settle_uncertainty", odds, failures, what),
                        real(row, "zero_offset", odds, failures, what),
                        failures.decode(what, () -> UnitText.read(unit)),
                        row.getLong("from_nanos"),
                        row.getLong("to_nanos"),
                        row.getBoolean("settled"),
                        row.getString("reason"),
                        row.getString("rule"),
                        failures.decode(what, () -> InstrumentJson.read(instrument))));
            }
        }
        return channels;
    }

    private static double real(ResultSet row, String column, JsonNode odds, Failures failures, String what)
            throws SQLException, StoreException {
        double value = row.getDouble(column);
        return row.wasNull() ? failures.decode(what, () -> Json.number(odds, column)) : value;
    }
}
