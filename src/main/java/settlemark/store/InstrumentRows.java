package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import settlemark.job.CorrectionPoint;
import settlemark.job.InstrumentCard;
import settlemark.session.Instruments;
import settlemark.session.LastUse;
import settlemark.session.StoreException;

/** Instruments as rows: a card a row, its points and its last zeros beside it. */
final class InstrumentRows implements Instruments {
    static final String ALL = "SELECT serial, name, kind, calibrated, due, battery_percent, battery_at FROM instrument"
            + " ORDER BY serial";
    static final String POINTS = "SELECT serial, channel, true_value, indicated, uncertainty, unit FROM"
            + " correction_point ORDER BY serial, position";
    static final String ZEROS =
            "SELECT serial, channel, zero, unit, taken_at, session FROM instrument_zero ORDER BY serial, channel";
    private static final String PUT =
            "INSERT INTO instrument (serial, name, kind, calibrated, due) VALUES (?, ?, ?, ?, ?)"
                    + " ON CONFLICT (serial) DO UPDATE SET name = excluded.name, kind = excluded.kind,"
                    + " calibrated = excluded.calibrated, due = excluded.due";
    private static final String CLEAR = "DELETE FROM correction_point WHERE serial = ?";
    private static final String PUT_POINT = "INSERT INTO correction_point (serial, position, channel, true_value,"
            + " indicated, uncertainty, unit) VALUES (?, ?, ?, ?, ?, ?, ?)";
    private static final String REMOVE = "DELETE FROM instrument WHERE serial = ?";
    private static final String BATTERY = "UPDATE instrument SET battery_percent = ?, battery_at = ? WHERE serial = ?";
    private static final String PUT_ZERO =
            "INSERT OR REPLACE INTO instrument_zero (serial, channel, zero, unit, taken_at, session)"
                    + " SELECT serial, ?, ?, ?, ?, ? FROM instrument WHERE serial = ?";

    private final Readers readers;
    private final Failures failures;
    private final Supplier<Writer> writer;

    /** @param writer throws where the workspace was opened for reading only */
    InstrumentRows(Readers readers, Failures failures, Supplier<Writer> writer) {
        this.readers = readers;
        this.failures = failures;
        this.writer = writer;
    }

    @Override
    public List<Kept> all() throws StoreException {
        return readers.read(connection -> {
            Map<String, List<CorrectionPoint>> points = grouped(connection, POINTS, InstrumentRows::point);
            Map<String, List<LastUse.Zero>> zeros = grouped(connection, ZEROS, InstrumentRows::zero);
            List<Kept> all = new ArrayList<>();
            for (StoredRow row : rows(connection, ALL)) {
                all.add(failures.decode("instrument " + row.value(0), () -> {
                    String serial = row.text(0);
                    return kept(row, points.getOrDefault(serial, List.of()), zeros.getOrDefault(serial, List.of()));
                }));
            }
            return all;
        });
    }

    private <T> Map<String, List<T>> grouped(Connection connection, String query, Function<StoredRow, T> reading)
            throws SQLException, StoreException {
        Map<String, List<T>> groups = new LinkedHashMap<>();
        for (StoredRow row : rows(connection, query)) {
            T item = failures.decode("instrument " + row.value(0), () -> reading.apply(row));
            groups.computeIfAbsent(row.text(0), s -> new ArrayList<>()).add(item);
        }
        return groups;
    }

    private static List<StoredRow> rows(Connection connection, String query) throws SQLException {
        List<StoredRow> rows = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(query);
                ResultSet row = select.executeQuery()) {
            int columns = row.getMetaData().getColumnCount();
            while (row.next()) {
                rows.add(StoredRow.of(row, columns));
            }
        }
        return rows;
    }

    /** @param row as {@link #ALL} gives it */
    static Kept kept(StoredRow row, List<CorrectionPoint> points, List<LastUse.Zero> zeros) {
        try {
            InstrumentCard card =
                    new InstrumentCard(row.text(0), row.text(1), row.text(2), day(row, 3), day(row, 4), points);
            double battery = row.value(5) instanceof Number percent ? percent.doubleValue() : Double.NaN;
            Optional<Instant> at = row.value(6) == null ? Optional.empty() : Optional.of(Instant.parse(row.text(6)));
            return new Kept(card, new LastUse(battery, at, zeros));
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("a day of it cannot be read: " + e.getMessage(), e);
        }
    }

    private static Optional<LocalDate> day(StoredRow row, int column) {
        return row.value(column) == null ? Optional.empty() : Optional.of(LocalDate.parse(row.text(column)));
    }

    /** @param row as {@link #POINTS} gives it */
    static CorrectionPoint point(StoredRow row) {
        return new CorrectionPoint(row.text(1), real(row, 2), real(row, 3), real(row, 4), UnitText.read(row.text(5)));
    }

    /** @param row as {@link #ZEROS} gives it */
    static LastUse.Zero zero(StoredRow row) {
        try {
            return new LastUse.Zero(
                    row.text(1), real(row, 2), UnitText.read(row.text(3)), Instant.parse(row.text(4)), row.text(5));
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("a zero's time cannot be read: " + e.getMessage(), e);
        }
    }

    private static double real(StoredRow row, int column) {
        if (row.value(column) instanceof Number number) {
            return number.doubleValue();
        }
        throw new IllegalArgumentException("column " + (column + 1) + " must be a number, got " + row.value(column));
    }

    @Override
    public Optional<Kept> find(String serial) throws StoreException {
        return all().stream()
                .filter(k -> k.card().serial().equals(serial.strip()))
                .findFirst();
    }

    @Override
    public void put(List<InstrumentCard> cards) throws StoreException {
        writer.get().commit("cannot keep instruments", connection -> {
            for (InstrumentCard card : cards) {
                String[] columns = {card.serial(), card.name(), card.kind(), text(card.calibrated()), text(card.due())};
                change(connection, PUT, (Object[]) columns);
                change(connection, CLEAR, card.serial());
                for (int i = 0; i < card.points().size(); i++) {
                    CorrectionPoint point = card.points().get(i);
                    change(
                            connection,
                            PUT_POINT,
                            card.serial(),
                            i,
                            point.channel(),
                            point.trueValue(),
                            point.indicated(),
                            point.expandedUncertainty(),
                            UnitText.of(point.unit()));
                }
            }
            return cards;
        });
    }

    private static @Nullable String text(Optional<LocalDate> day) {
        return day.map(LocalDate::toString).orElse(null);
    }

    @Override
    public boolean remove(String serial) throws StoreException {
        return writer.get()
                        .commit(
                                "cannot remove instrument " + serial,
                                connection -> change(connection, REMOVE, serial.strip()))
                > 0;
    }

    @Override
    public void used(String serial, LastUse use) throws StoreException {
        writer.get().commit("cannot note how instrument " + serial + " was used", connection -> {
            if (use.batteryAt().isPresent()) {
                change(
                        connection,
                        BATTERY,
                        use.batteryPercent(),
                        use.batteryAt().get().toString(),
                        serial);
            }
            for (LastUse.Zero zero : use.zeros()) {
                change(
                        connection,
                        PUT_ZERO,
                        zero.channel(),
                        zero.value(),
                        UnitText.of(zero.unit()),
                        zero.takenAt().toString(),
                        zero.session(),
                        serial);
            }
            return use;
        });
    }

    private static int change(Connection connection, String statement, @Nullable Object... values) throws SQLException {
        try (PreparedStatement change = connection.prepareStatement(statement)) {
            for (int i = 0; i < values.length; i++) {
                change.setObject(i + 1, values[i]);
            }
            return change.executeUpdate();
        }
    }
}
