package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;
import settlemark.codec.PackedRows;
import settlemark.codec.PackedSamples;
import settlemark.session.SampleBlock;
import settlemark.session.StoreException;

/**
 * Where one session or rereading is being written. A commit is a row of {@code frame}; when enough has come together it
 * is packed in blocks, and one frame with what is left over takes the place of all up to it. Packing may go on on another
 * thread while commits follow; the first of them that finds it done writes the blocks. The last frame stays when all is
 * sealed, and says how far the series goes. For the writer's thread and within its transactions; after a failed one it is
 * thrown away and read again from the frames.
 */
final class Series {
    private static final int MOST_FRAMES = 256;
    private static final long MOST_FRAME_BYTES = 1 << 20;
    private static final int EVENTS_PER_BLOCK = 4096;
    private static final long EVENT_BYTES_PER_BLOCK = 1 << 16;

    private static final String FRAMES =
            "SELECT number, next_sequence, until_nanos, samples, events FROM {t}frame WHERE {key} = ? ORDER BY number";
    private static final String INSERT = "INSERT INTO {t}frame ({key}, number, next_sequence, until_nanos, samples,"
            + " events) VALUES (?, ?, ?, ?, ?, ?)";
    private static final String DELETE = "DELETE FROM {t}frame WHERE {key} = ? AND number <= ?";

    private final Results results;
    private final long key;
    private final Executor packer;
    private final OpenPart open = new OpenPart();
    private long number = -1;
    private long nextSequence;
    private long untilNanos;
    private int frames;
    private long frameBytes;

    /** What is being packed; it is no longer in the open part. */
    private @Nullable CompletableFuture<SeriesCut.Packed> packing;

    private Series(Results results, long key, Executor packer) {
        this.results = results;
        this.key = key;
        this.packer = packer;
    }

    /** @param packer where blocks are packed; they are written by the commit that finds them ready */
    static Series read(Connection connection, Failures failures, Results results, long key, Executor packer)
            throws SQLException, StoreException {
        Series series = new Series(results, key, packer);
        try (PreparedStatement select = connection.prepareStatement(results.sql(FRAMES))) {
            select.setLong(1, key);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    series.take(row, failures);
                }
            }
        }
        return series;
    }

    private void take(ResultSet row, Failures failures) throws SQLException, StoreException {
        number = row.getLong(1);
        nextSequence = row.getLong(2);
        untilNanos = row.getLong(3);
        byte[] samples = row.getBytes(4);
        byte[] events = row.getBytes(5);
        String what = "what " + results.name(key) + " has gained last, frame " + number;
        open.add(failures.decode(what, () -> blocks(samples)), failures.decode(what, () -> PackedRows.unpack(events)));
        frames++;
    }

    private static List<SampleBlock> blocks(byte[] bytes) {
        PackedSamples packed = PackedSamples.of(bytes);
        return packed.parts().stream().map(packed::read).toList();
    }

    /** Number of the last commit, -1 before the first. */
    long number() {
        return number;
    }

    long nextSequence() {
        return nextSequence;
    }

    /**
     * Adds what a commit brings.
     *
     * @param next sequence number of the next event
     * @param until session time up to which this is everything
     */
    void append(
            Statements statements,
            Failures failures,
            List<SampleBlock> samples,
            List<PackedRows.Row> events,
            long next,
            long until)
            throws SQLException, StoreException {
        number++;
        nextSequence = next;
        untilNanos = until;
        open.add(samples, events);
        Sealing sealing = new Sealing(statements, failures, results, key);
        if (packing != null && (packing.isDone() || full())) {
            writePacked(statements, sealing);
        }
        if (packing == null && full()) {
            packing = CompletableFuture.supplyAsync(cut(Sealing.ROWS)::pack, packer);
            if (packing.isDone()) {
                writePacked(statements, sealing);
                return;
            }
        }
        frames++;
        frameBytes += insert(statements, frame(samples, events));
    }

    private SeriesCut.Frame frame(List<SampleBlock> samples, List<PackedRows.Row> events) {
        return new SeriesCut.Frame(
                number, nextSequence, untilNanos, PackedSamples.packQuickly(samples), PackedRows.pack(events, true));
    }

    /** Seals all that is left. */
    void end(Statements statements, Failures failures) throws SQLException, StoreException {
        Sealing sealing = new Sealing(statements, failures, results, key);
        writePacked(statements, sealing);
        if (number >= 0) {
            write(statements, sealing, cut(1).pack());
        }
    }

    private boolean full() {
        return frames >= MOST_FRAMES
                || frameBytes >= MOST_FRAME_BYTES
                || open.events().size() >= EVENTS_PER_BLOCK
                || open.eventBytes() >= EVENT_BYTES_PER_BLOCK
                || open.probes().values().stream().anyMatch(p -> p.rows() >= Sealing.ROWS);
    }

    /**
     * Takes out what is ready.
     *
     * @param least of a probe with fewer samples in every channel nothing is sealed
     */
    private SeriesCut cut(int least) {
        List<List<SampleBlock>> samples = new ArrayList<>();
        for (ProbeColumns columns : open.probes().values()) {
            while (columns.rows() >= least) {
                samples.add(columns.oldest(Sealing.ROWS));
                columns.remove(Sealing.ROWS);
            }
        }
        boolean worth = open.events().size() >= EVENTS_PER_BLOCK / 4 || open.eventBytes() >= EVENT_BYTES_PER_BLOCK / 4;
        List<List<PackedRows.Row>> events = worth || least == 1 ? cutEvents() : List.of();
        frames = 0;
        frameBytes = 0;
        return new SeriesCut(
                number, nextSequence, untilNanos, samples, events, open.samples(), List.copyOf(open.events()));
    }

    private List<List<PackedRows.Row>> cutEvents() {
        List<List<PackedRows.Row>> blocks = new ArrayList<>();
        List<PackedRows.Row> events = List.copyOf(open.events());
        int from = 0;
        while (from < events.size()) {
            int to = from;
            long bytes = 0;
            while (to < events.size() && to - from < EVENTS_PER_BLOCK && bytes < 2 * EVENT_BYTES_PER_BLOCK) {
                bytes += events.get(to).content().length;
                to++;
            }
            blocks.add(events.subList(from, to));
            from = to;
        }
        open.removeEvents();
        return blocks;
    }

    /** Waits for what is being packed. */
    private void writePacked(Statements statements, Sealing sealing) throws SQLException, StoreException {
        if (packing != null) {
            SeriesCut.Packed packed = packing.join();
            packing = null;
            write(statements, sealing, packed);
        }
    }

    private void write(Statements statements, Sealing sealing, SeriesCut.Packed packed)
            throws SQLException, StoreException {
        for (SealedSamples samples : packed.samples()) {
            sealing.samples(samples);
        }
        for (SealedEvents events : packed.events()) {
            sealing.events(events);
        }
        PreparedStatement delete = statements.of(results.sql(DELETE));
        delete.setLong(1, key);
        delete.setLong(2, packed.rest().number());
        delete.executeUpdate();
        insert(statements, packed.rest());
    }

    static PreparedStatement insertFrame(Connection connection, Results results) throws SQLException {
        return connection.prepareStatement(results.sql(INSERT));
    }

    /** Returns how many bytes it takes. */
    private long insert(Statements statements, SeriesCut.Frame frame) throws SQLException {
        PreparedStatement insert = statements.of(results.sql(INSERT));
        insert.setLong(1, key);
        insert.setLong(2, frame.number());
        insert.setLong(3, frame.nextSequence());
        insert.setLong(4, frame.untilNanos());
        insert.setBytes(5, frame.samples());
        insert.setBytes(6, frame.events());
        insert.executeUpdate();
        return frame.size();
    }
}
