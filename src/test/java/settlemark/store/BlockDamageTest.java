package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.Overview;
import settlemark.session.SampleBlock;
import settlemark.session.Span;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;

/**
 * One byte of a sealed block is changed, anywhere: where it matters it is found and said with session, channel and time,
 * and every other channel, stretch of time and session is read as before.
 */
final class BlockDamageTest {
    private static final int BLOCKS = 3;
    private static final int CHANNELS = 2;
    private static final long PERIOD = 100_000_000L;

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    @BeforeEach
    void threeBlocksOfTwoSessions() throws StoreException {
        try (SqliteStore store = Fixtures.open(file())) {
            for (String key : List.of("one", "two")) {
                long session = store.begin(Fixtures.log(key));
                for (int block = 0; block < BLOCKS; block++) {
                    store.append(session, batch(block));
                }
                store.end(session, BLOCKS * Sealing.ROWS * PERIOD);
            }
        }
    }

    private static WriteBatch batch(int block) {
        SampleBlock[] blocks = new SampleBlock[CHANNELS];
        for (int channel = 0; channel < CHANNELS; channel++) {
            blocks[channel] = samples(channel, block);
        }
        return new WriteBatch(0, List.of(), List.of(blocks), List.of(), List.of(), 5);
    }

    private static SampleBlock samples(int channel, int block) {
        Random random = new Random(10L * block);
        long[] times = new long[Sealing.ROWS];
        Arrays.setAll(times, i -> ((long) block * Sealing.ROWS + i) * PERIOD + random.nextInt(50));
        double[] values = new double[Sealing.ROWS];
        Random noise = new Random(10L * block + channel);
        Arrays.setAll(values, i -> Math.rint(3500 + noise.nextGaussian() * 2) / 1000);
        return new SampleBlock(0, channel, times, values, new byte[Sealing.ROWS]);
    }

    private static Span span(int block) {
        return new Span(block * Sealing.ROWS * PERIOD, (block + 1) * Sealing.ROWS * PERIOD - 1);
    }

    @Test
    void damageAnywhereIsSaidWithItsPlaceAndCostsNothingElse() throws Exception {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        byte[] whole;
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file())) {
            whole = block(connection);
        }
        int oneLost = 0;
        int trials = 150;
        for (int trial = 0; trial < trials; trial++) {
            byte[] damaged = whole.clone();
            int at = trial < 20 ? trial : random.nextInt(whole.length);
            damaged[at] ^= (byte) (1 + random.nextInt(255));
            try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file())) {
                put(connection, damaged);
            }
            try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
                int lost = lost(store);
                assertThat(lost).as("byte " + at).isBetween(1, CHANNELS);
                oneLost += lost == 1 ? 1 : 0;
                allElseIsRead(store);
            }
        }
        System.out.println(trials + " damaged blocks, " + oneLost + " lost one channel, the rest both");
        assertThat(oneLost).isGreaterThan(trials / 4);
    }

    private static byte[] block(Connection connection) throws Exception {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(
                        "SELECT block FROM sample_block WHERE session = 1 AND probe = 0 AND number = 1")) {
            return row.getBytes(1);
        }
    }

    private static void put(Connection connection, byte[] block) throws Exception {
        try (PreparedStatement update = connection.prepareStatement(
                "UPDATE sample_block SET block = ? WHERE session = 1 AND probe = 0 AND number = 1")) {
            update.setBytes(1, block);
            assertThat(update.executeUpdate()).isEqualTo(1);
        }
    }

    /** How many channels of the damaged block are refused; one that is read is as it was. */
    private static int lost(SqliteStore store) throws StoreException {
        int lost = 0;
        for (int channel = 0; channel < CHANNELS; channel++) {
            try {
                SampleBlock read = store.samples(1, 0, channel, 0, Long.MAX_VALUE);
                assertThat(read.size()).isEqualTo(BLOCKS * Sealing.ROWS);
                assertThat(Arrays.copyOfRange(read.values(), Sealing.ROWS, 2 * Sealing.ROWS))
                        .isEqualTo(samples(channel, 1).values());
            } catch (StoreException e) {
                assertThat(e.kind()).isEqualTo(StoreException.Cause.DAMAGED);
                assertThat(e)
                        .hasMessageContaining(
                                "samples of session 1, probe 0, channel " + channel + ", from 409.600 s to 819.100 s")
                        .hasMessageContaining("workspace ");
                lost++;
            }
        }
        return lost;
    }

    private static void allElseIsRead(SqliteStore store) throws StoreException {
        for (int channel = 0; channel < CHANNELS; channel++) {
            for (int block : new int[] {0, 2}) {
                Span span = span(block);
                SampleBlock read = store.samples(1, 0, channel, span.fromNanos(), span.toNanos());
                assertThat(read.values()).isEqualTo(samples(channel, block).values());
                assertThat(read.timesNanos()).isEqualTo(samples(channel, block).timesNanos());
            }
            assertThat(store.samples(2, 0, channel, 0, Long.MAX_VALUE).size()).isEqualTo(BLOCKS * Sealing.ROWS);
        }
        Overview overview = store.overview(
                        1, 0, List.of(0), new Span(0, BLOCKS * Sealing.ROWS * PERIOD), 5, Overview.Edges.ALIGNED)
                .get(0);
        assertThat(Arrays.stream(overview.counts()).sum()).isEqualTo(BLOCKS * Sealing.ROWS);
    }

    @Test
    void damagedStatisticsAreSaidToo() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("UPDATE sample_block SET summary = zeroblob(length(summary)) WHERE number = 1");
        }
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            assertThat(store.samples(1, 0, 0, 0, Long.MAX_VALUE).size()).isEqualTo(BLOCKS * Sealing.ROWS);
            Span all = new Span(0, BLOCKS * Sealing.ROWS * PERIOD);
            org.assertj.core.api.Assertions.assertThatThrownBy(
                            () -> store.overview(1, 0, List.of(0), all, 5, Overview.Edges.ALIGNED))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("statistics of session 1, probe 0, from 409.600 s to 819.100 s");
        }
    }

    /** A page that blocks lie in is written over, as a failing disk does: nothing that is read is wrong. */
    @Test
    void aPageOfBlocksThatIsWrittenOverIsNeverReadAsSamples() throws Exception {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        byte[] whole = Files.readAllBytes(file());
        List<Integer> pages = pagesOfBlocks(whole);
        assertThat(pages).hasSizeGreaterThan(5);
        int refused = 0;
        for (int trial = 0; trial < 60; trial++) {
            byte[] damaged = whole.clone();
            int page = pages.get(random.nextInt(pages.size()));
            byte[] noise = new byte[1 + random.nextInt(200)];
            random.nextBytes(noise);
            System.arraycopy(noise, 0, damaged, page * 4096 + random.nextInt(4096 - noise.length), noise.length);
            Files.write(file(), damaged);
            refused += readOrRefused();
        }
        System.out.println("60 damaged pages, " + refused + " of their samples' reads refused");
        assertThat(refused).isPositive();
    }

    /** Those that hold nothing else: their middle is a piece of a block. */
    private List<Integer> pagesOfBlocks(byte[] file) throws Exception {
        StringBuilder blocks = new StringBuilder();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT block FROM sample_block")) {
            while (row.next()) {
                blocks.append(new String(row.getBytes(1), StandardCharsets.ISO_8859_1));
            }
        }
        List<Integer> pages = new ArrayList<>();
        for (int page = 1; page < file.length / 4096; page++) {
            byte[] inner = Arrays.copyOfRange(file, page * 4096 + 4, page * 4096 + 4096);
            if (blocks.indexOf(new String(inner, StandardCharsets.ISO_8859_1)) >= 0) {
                pages.add(page);
            }
        }
        return pages;
    }

    private int readOrRefused() {
        int refused = 0;
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            for (int channel = 0; channel < CHANNELS; channel++) {
                for (int block = 0; block < BLOCKS; block++) {
                    Span span = span(block);
                    try {
                        SampleBlock read = store.samples(1, 0, channel, span.fromNanos(), span.toNanos());
                        assertThat(read.values())
                                .isEqualTo(samples(channel, block).values());
                    } catch (StoreException e) {
                        refused++;
                    }
                }
            }
        } catch (StoreException e) {
            refused++;
        }
        return refused;
    }
}
