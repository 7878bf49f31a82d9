package settlemark.store;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import settlemark.decode.Rejected;
import settlemark.session.SampleBlock;
import settlemark.session.WriteBatch;

/** A batch as rows, through statements that are prepared once. */
final class BatchRows {
    private static final String INSERT_REJECTED = "INSERT INTO {t}rejected ({key}, batch, part, probe, time_nanos,"
            + " stream_offset, reason) VALUES (?, ?, ?, ?, ?, ?, ?)";
    private static final String ADD_SAMPLES =
            "UPDATE {t}probe SET samples = samples + ? WHERE {key} = ? AND position = ?";

    private final PreparedStatement addSamples;
    private final PreparedStatement insertRejected;
    private final PreparedStatement insertReading;
    private final PreparedStatement insertChannelReading;

    BatchRows(Statements statements, Results results) throws SQLException {
        addSamples = statements.of(results.sql(ADD_SAMPLES));
        insertRejected = statements.of(results.sql(INSERT_REJECTED));
        insertReading = statements.of(results.sql(ReadingRows.INSERT));
        insertChannelReading = statements.of(results.sql(ReadingRows.INSERT_CHANNEL));
    }

    /**
     * What of a batch has rows of its own, within the caller's transaction.
     *
     * @param key number of the session, or id of the rereading
     */
    void insert(long key, long number, WriteBatch batch) throws SQLException {
        countSamples(key, batch.samples());
        for (int i = 0; i < batch.rejected().size(); i++) {
            insertRejected(key, number, i, batch.rejected().get(i));
        }
        for (int i = 0; i < batch.readings().size(); i++) {
            ReadingRows.insert(
                    insertReading,
                    insertChannelReading,
                    key,
                    number,
                    i,
                    batch.readings().get(i));
        }
    }

    private void countSamples(long key, List<SampleBlock> blocks) throws SQLException {
        Map<Integer, Long> samples = new TreeMap<>();
        for (SampleBlock block : blocks) {
            samples.merge(block.probe(), (long) block.size(), Long::sum);
        }
        addSamples.setLong(2, key);
        for (Map.Entry<Integer, Long> gained : samples.entrySet()) {
            addSamples.setLong(1, gained.getValue());
            addSamples.setInt(3, gained.getKey());
            addSamples.executeUpdate();
        }
    }

    private void insertRejected(long key, long number, int part, WriteBatch.ProbeRejected refused) throws SQLException {
        Rejected rejected = refused.rejected();
        insertRejected.setLong(1, key);
        insertRejected.setLong(2, number);
        insertRejected.setInt(3, part);
        insertRejected.setInt(4, refused.probe());
        insertRejected.setLong(5, rejected.timeNanos());
        insertRejected.setLong(6, rejected.offset());
        insertRejected.setString(7, rejected.reason());
        insertRejected.executeUpdate();
    }
}
