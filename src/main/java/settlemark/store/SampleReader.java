package settlemark.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import settlemark.codec.PackedSamples;
import settlemark.session.SampleBlock;
import settlemark.session.Span;
import settlemark.session.StoreException;

/**
 * Reads samples out of sealed blocks and then out of the frames, within the caller's transaction, so that nothing that is
 * being sealed is seen twice or not at all.
 */
final class SampleReader {
    private static final String BLOCKS = "SELECT low_nanos, high_nanos, block FROM {t}sample_block"
            + " WHERE {key} = ? AND probe = ? AND high_nanos >= ? AND low_nanos <= ? ORDER BY number";
    private static final String BLOCK =
            "SELECT low_nanos, high_nanos, block FROM {t}sample_block WHERE {key} = ? AND probe = ? AND number = ?";
    private static final String LATEST = "SELECT low_nanos, high_nanos, block FROM {t}sample_block"
            + " WHERE {key} = ? AND probe = ? ORDER BY high_nanos DESC";
    private static final String FRAMES = "SELECT number, samples FROM {t}frame WHERE {key} = ? ORDER BY number";

    private final Connection connection;
    private final Failures failures;
    private final Results results;
    private final long key;
    private final String name;
    private final int probe;

    /** @param name of the session or rereading, for messages */
    SampleReader(Connection connection, Failures failures, Results results, long key, String name, int probe) {
        this.connection = connection;
        this.failures = failures;
        this.results = results;
        this.key = key;
        this.name = name;
        this.probe = probe;
    }

    @FunctionalInterface
    private interface Reading<T> {
        T of(PackedSamples samples);
    }

    /** Samples of one channel with {@code from <= time <= to}, in order of time. */
    SampleBlock samples(int channel, Span span) throws SQLException, StoreException {
        SampleRange range = new SampleRange(probe, channel, span.fromNanos(), span.toNanos());
        try (PreparedStatement select = connection.prepareStatement(results.sql(BLOCKS))) {
            select.setLong(1, key);
            select.setInt(2, probe);
            select.setLong(3, span.fromNanos());
            select.setLong(4, span.toNanos());
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    for (SampleBlock block : read(row, channel, p -> between(p, channel, span))) {
                        range.add(block);
                    }
                }
            }
        }
        for (SampleBlock block : open(channel, span)) {
            range.add(block);
        }
        return range.block();
    }

    private List<SampleBlock> between(PackedSamples samples, int channel, Span span) {
        List<SampleBlock> blocks = new ArrayList<>();
        for (PackedSamples.Part part : samples.parts()) {
            boolean meets = part.highNanos() >= span.fromNanos() && part.lowNanos() <= span.toNanos();
            if (part.probe() == probe && part.channel() == channel && meets) {
                blocks.add(samples.between(part, span.fromNanos(), span.toNanos()));
            }
        }
        return blocks;
    }

    /** What a channel has in the frames, as it came. */
    List<SampleBlock> open(int channel, Span span) throws SQLException, StoreException {
        List<SampleBlock> blocks = new ArrayList<>();
        try (PreparedStatement select = connection.prepareStatement(results.sql(FRAMES))) {
            select.setLong(1, key);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    long frame = row.getLong(1);
                    Supplier<String> what = () -> "samples of " + name + ", probe " + probe + ", channel " + channel
                            + ", not sealed yet, frame " + frame;
                    byte[] bytes = row.getBytes(2);
                    blocks.addAll(failures.decode(what, () -> between(PackedSamples.of(bytes), channel, span)));
                }
            }
        }
        return blocks;
    }

    /** For {@link #block}. */
    PreparedStatement selectBlock() throws SQLException {
        return connection.prepareStatement(results.sql(BLOCK));
    }

    /** One of the blocks that statistics of level 0 are of, for a part of it to be read. */
    PackedSamples block(PreparedStatement select, long number) throws SQLException, StoreException {
        select.setLong(1, key);
        select.setInt(2, probe);
        select.setLong(3, number);
        try (ResultSet row = select.executeQuery()) {
            if (!row.next()) {
                throw failures.damaged(
                        "is damaged: of " + name + ", probe " + probe + ", block " + number + " of samples is missing");
            }
            return read(row, -1, p -> p);
        }
    }

    /** The sample with the latest time; empty where there is none. */
    SampleBlock last(int channel) throws SQLException, StoreException {
        SampleRange range = new SampleRange(probe, channel, Long.MIN_VALUE, Long.MAX_VALUE);
        Span always = new Span(Long.MIN_VALUE, Long.MAX_VALUE);
        try (PreparedStatement select = connection.prepareStatement(results.sql(LATEST))) {
            select.setLong(1, key);
            select.setInt(2, probe);
            try (ResultSet row = select.executeQuery()) {
                long latest = Long.MIN_VALUE;
                while (row.next() && row.getLong(2) >= latest) {
                    for (SampleBlock block : read(row, channel, p -> between(p, channel, always))) {
                        range.add(block);
                        latest = Math.max(latest, range.highNanos());
                    }
                }
            }
        }
        for (SampleBlock block : open(channel, always)) {
            range.add(block);
        }
        return range.last();
    }

    private <T> T read(ResultSet row, int channel, Reading<T> reading) throws SQLException, StoreException {
        long low = row.getLong(1);
        long high = row.getLong(2);
        byte[] bytes = row.getBytes(3);
        return failures.decode(() -> what(channel, low, high), () -> reading.of(PackedSamples.of(bytes)));
    }

    /** Says what is damaged, with its channel unless it is all of them. */
    private String what(int channel, long lowNanos, long highNanos) {
        return "samples of " + name + ", probe " + probe + (channel < 0 ? "" : ", channel " + channel) + ", from "
                + seconds(lowNanos) + " to " + seconds(highNanos);
    }

    static String seconds(long nanos) {
        return String.format(Locale.ROOT, "%.3f s", nanos / 1e9);
    }
}
