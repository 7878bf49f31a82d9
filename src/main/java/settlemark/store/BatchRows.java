package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import settlemark.decode.Rejected;
import settlemark.session.SampleBlock;
import settlemark.session.WriteBatch;

/** A batch as rows, through statements that are prepared once. */
final class BatchRows {
    private static final String INSERT = "INSERT INTO {t}batch ({key}, number, next_sequence, until_nanos, low_nanos,"
            + " high_nanos) VALUES (?, ?, ?, ?, ?, ?)";
    private static final String INSERT_BLOCK =
            "INSERT INTO {t}sample_block ({key}, batch, probe, channel, part, block) VALUES (?, ?, ?, ?, ?, ?)";
    private static final String INSERT_REJECTED = "INSERT INTO {t}rejected ({key}, batch, part, probe, time_nanos,"
            + " stream_offset, reason) VALUES (?, ?, ?, ?, ?, ?, ?)";
    private static final String ADD_SAMPLES =
            "UPDATE {t}probe SET samples = samples + ? WHERE {key} = ? AND position = ?";

    private final List<PreparedStatement> prepared = new ArrayList<>();
    private final PreparedStatement insert;
    private final PreparedStatement insertEvent;
    private final PreparedStatement insertBlock;
    private final PreparedStatement addSamples;
    private final PreparedStatement insertRejected;
    private final PreparedStatement insertReading;
    private final PreparedStatement insertChannelReading;

    BatchRows(Connection connection, Results results) throws SQLException {
        insert = connection.prepareStatement(results.sql(INSERT));
        insertEvent = connection.prepareStatement(EventRows.INSERT);
        insertBlock = connection.prepareStatement(results.sql(INSERT_BLOCK));
        addSamples = connection.prepareStatement(results.sql(ADD_SAMPLES));
        insertRejected = connection.prepareStatement(results.sql(INSERT_REJECTED));
        insertReading = connection.prepareStatement(results.sql(ReadingRows.INSERT));
        insertChannelReading = connection.prepareStatement(results.sql(ReadingRows.INSERT_CHANNEL));
        prepared.addAll(List.of(
                insert, insertEvent, insertBlock, addSamples, insertRejected, insertReading, insertChannelReading));
    }

    void close() throws SQLException {
        for (PreparedStatement statement : prepared) {
            statement.close();
        }
    }

    /**
     * Within the caller's transaction.
     *
     * @param key number of the session, or id of the rereading, whose batches have no events
     */
    void insert(long key, long number, WriteBatch batch) throws SQLException {
        insertBatch(key, number, batch);
        long sequence = batch.firstSequence();
        for (int i = 0; i < batch.events().size(); i++) {
            EventRows.insert(insertEvent, key, sequence + i, batch.events().get(i));
        }
        insertSamples(key, number, batch.samples());
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

    private void insertBatch(long key, long number, WriteBatch batch) throws SQLException {
        long low = Long.MAX_VALUE;
        long high = Long.MIN_VALUE;
        for (SampleBlock block : batch.samples()) {
            for (long time : block.timesNanos()) {
                low = Math.min(low, time);
                high = Math.max(high, time);
            }
        }
        insert.setLong(1, key);
        insert.setLong(2, number);
        insert.setLong(3, batch.firstSequence() + batch.events().size());
        insert.setLong(4, batch.untilNanos());
        if (low <= high) {
            insert.setLong(5, low);
            insert.setLong(6, high);
        } else {
            insert.setNull(5, Types.INTEGER);
            insert.setNull(6, Types.INTEGER);
        }
        insert.executeUpdate();
    }

    private void insertSamples(long key, long number, List<SampleBlock> blocks) throws SQLException {
        Map<Integer, Long> samples = new HashMap<>();
        insertBlock.setLong(1, key);
        insertBlock.setLong(2, number);
        for (int i = 0; i < blocks.size(); i++) {
            SampleBlock block = blocks.get(i);
            if (block.size() > 0) {
                insertBlock.setInt(3, block.probe());
                insertBlock.setInt(4, block.channel());
                insertBlock.setInt(5, i);
                insertBlock.setBytes(6, BlockCodec.pack(block));
                insertBlock.executeUpdate();
                samples.merge(block.probe(), (long) block.size(), Long::sum);
            }
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
