package settlemark.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import settlemark.session.SampleBlock;
import settlemark.session.Span;
import settlemark.session.StoreException;

/** Checks the frames of one session or rereading: their numbering and the samples in them. */
final class FrameCheck {
    private static final Span NEVER = new Span(0, -1);

    private final Connection connection;
    private final Results results;
    private final long key;
    private final Consumer<SampleBlock> samples;
    private final Reporter reporter;
    private long expected = -1;

    /** Hears what is damaged. */
    @FunctionalInterface
    interface Reporter {
        void damage(int probe, int channel, @Nullable Span span, String words);
    }

    FrameCheck(Connection connection, Results results, long key, Consumer<SampleBlock> samples, Reporter reporter) {
        this.connection = connection;
        this.results = results;
        this.key = key;
        this.samples = samples;
        this.reporter = reporter;
    }

    void run() throws SQLException, StoreException {
        RowScan scan = new RowScan(
                connection,
                results.sql("{t}frame"),
                List.of(results.sql("{key}"), "number"),
                List.of("samples", "until_nanos"));
        scan.between(key, key, row -> {
            try {
                frame(row.number(1), row.bytes(2));
            } catch (IllegalArgumentException e) {
                reporter.damage(BlockContent.ALL, BlockContent.ALL, null, "a frame cannot be read: " + e.getMessage());
            }
        });
        if (!scan.unread().isEmpty()) {
            reporter.damage(
                    BlockContent.ALL, BlockContent.ALL, null, "frames, what was stored last, cannot all be read");
        }
    }

    private void frame(long number, byte[] bytes) {
        if (expected >= 0 && number != expected) {
            reporter.damage(
                    BlockContent.ALL,
                    BlockContent.ALL,
                    null,
                    "what was stored last is not all there: after frame " + (expected - 1) + " comes frame " + number);
        }
        expected = number + 1;
        BlockContent content = BlockContent.of(bytes, NEVER);
        content.samples().forEach(samples);
        for (BlockContent.Broken broken : content.broken()) {
            Span span = broken.span().equals(NEVER) ? null : broken.span();
            reporter.damage(broken.probe(), broken.channel(), span, "frame " + number + ": " + broken.words());
        }
    }
}
