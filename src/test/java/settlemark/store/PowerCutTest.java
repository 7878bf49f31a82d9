package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.session.CheckReport;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.session.StoreException;

/**
 * What a power cut can leave of a log is stood in for by copies of a workspace whose log is cut off or garbled: each opens
 * as an exact beginning of what was written. The log's frames are {@value #FRAME} bytes behind a head of {@value #HEAD},
 * and a commit ends with a frame that says so (sqlite.org/fileformat2.html, section 4).
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
final class PowerCutTest {
    private static final int HEAD = 32;
    private static final int FRAME = 24 + 4096;
    private static final int BATCHES = 260;

    private byte[] database = {};
    private byte[] log = {};

    /** Batches that are whole when so many frames are, by frame; -1 before the session has begun. */
    private final List<Integer> batches = new ArrayList<>();

    private Path folder = Path.of("");

    /**
     * The workspace as it lies on the disk while its last commits are in the log alone, past a sealing whose blocks were
     * packed while commits went on.
     */
    @BeforeAll
    void write(@TempDir Path given) throws Exception {
        folder = given;
        Path file = folder.resolve("source.settlemark");
        Deque<Runnable> packing = new ArrayDeque<>();
        try (SqliteStore store = Fixtures.open(file, packing::add);
                Connection reader = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            // A reader that has looked keeps all later commits in the log.
            Connections.run(reader, "BEGIN");
            Schema.number(reader, "SELECT count(*) FROM session");
            long session = store.begin(Fixtures.log("log"));
            complete(-1, file);
            int sealed = 0;
            for (int n = 0; n < BATCHES; n++) {
                store.append(session, Fixtures.second(n));
                complete(n, file);
                if (n % 7 == 0 && !packing.isEmpty()) {
                    packing.remove().run();
                    sealed++;
                }
            }
            assertThat(sealed).isPositive();
            database = Files.readAllBytes(file);
            log = Files.readAllBytes(Connections.log(file));
            Connections.run(reader, "ROLLBACK");
        }
        batches.add(BATCHES);
        log = Arrays.copyOf(log, HEAD + (batches.size() - 1) * FRAME);
        assertThat(batches).hasSizeGreaterThan(BATCHES);
    }

    /** With fewer frames than there are now, only so many batches are whole. */
    private void complete(int whole, Path file) throws Exception {
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(Connections.log(file)));
        while (HEAD + (batches.size() + 1) * FRAME <= bytes.capacity()
                && bytes.getLong(HEAD + batches.size() * FRAME + 8) == bytes.getLong(16)) {
            // of this log: the salts are the same as in its head
            batches.add(whole);
        }
    }

    /** Returns how many batches are there, all of them whole and right and nothing else. */
    private long batchesOf(byte[] damagedLog) throws Exception {
        Path file = folder.resolve("copy.settlemark");
        Files.write(file, database);
        Files.write(Connections.log(file), damagedLog);
        Files.deleteIfExists(file.resolveSibling("copy.settlemark-shm"));
        try (SqliteStore store = Fixtures.open(file)) {
            if (store.sessions().isEmpty()) {
                return -1;
            }
            List<SessionEvent> events = new ArrayList<>();
            store.events(1, events::add);
            long count = events.size() / 20;
            List<SessionEvent> expected = new ArrayList<>();
            for (long n = 0; n < count; n++) {
                expected.addAll(Fixtures.second(n).events());
            }
            assertThat(events).isEqualTo(expected);
            SampleBlock samples = store.samples(1, 1, 1, 0, Long.MAX_VALUE);
            assertThat(samples.size()).isEqualTo((int) count * 10);
            if (count > 0) {
                assertThat(Arrays.copyOfRange(samples.values(), samples.size() - 10, samples.size()))
                        .isEqualTo(Fixtures.block(1, 1, count - 1).values());
            }
            assertThat(store.sampleCount(1, 1)).isEqualTo(count * 20);
            assertThat(store.readings(1)).hasSize((int) count / 5);
            return count;
        }
    }

    /** Of the copy that was looked at last. */
    private CheckReport check() throws StoreException {
        return new WorkspaceTools(Fixtures::profile).check(folder.resolve("copy.settlemark"));
    }

    /** Whole frames survive up to the first that is not, and of these the commits that are complete. */
    private long expected(int wholeFrames) {
        return batches.get(Math.min(wholeFrames, batches.size() - 1));
    }

    /** What a cut or a garbled byte leaves, kind by kind; frames are counted from the end of the log. */
    @ParameterizedTest
    @CsvSource({
        "nothing, 0, 0, 0",
        "cut, 0, 0, 1",
        "cut, 0, 1, 1",
        "cut, 0, 4119, 1",
        "cut, 20, 12, 21",
        "garbled, 0, 0, 1",
        "garbled, 0, 8, 1",
        "garbled, 0, 16, 1",
        "garbled, 0, 24, 1",
        "garbled, 0, 4119, 1",
        "garbled, 35, 2000, 36",
        "zeroed, 3, 0, 4",
        "swapped, 5, 0, 6",
        "longer, 0, 0, 0"
    })
    void eachKindOfDamageLeavesExactlyWhatWasWholeBeforeIt(String kind, int frameFromEnd, int at, int lostFrames)
            throws Exception {
        int frames = batches.size() - 1;
        int from = HEAD + (frames - 1 - frameFromEnd) * FRAME;
        byte[] damaged = log.clone();
        switch (kind) {
            case "cut" -> damaged = Arrays.copyOf(log, from + at);
            case "garbled" -> damaged[from + at] ^= 0x10;
            case "zeroed" -> Arrays.fill(damaged, from, from + FRAME, (byte) 0);
            case "swapped" -> System.arraycopy(log, from - FRAME, damaged, from, FRAME);
            case "longer" -> damaged = Arrays.copyOf(log, log.length + 3000);
            default -> assertThat(kind).isEqualTo("nothing");
        }
        assertThat(batchesOf(damaged)).isEqualTo(expected(frames - lostFrames));
        assertThat(check().damage()).isEmpty();
    }

    @Test
    void fiveHundredRandomCutsLeaveAnExactBeginning() throws Exception {
        cuts(500);
    }

    @Test
    @Tag("long")
    void tenThousandRandomCutsLeaveAnExactBeginning() throws Exception {
        cuts(10_000);
    }

    private void cuts(int times) throws Exception {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        long least = BATCHES;
        int refused = 0;
        for (int i = 0; i < times; i++) {
            int at = random.nextInt(log.length);
            byte[] damaged = random.nextBoolean() ? Arrays.copyOf(log, at) : garbled(random, at);
            int whole = Math.max(0, (at - HEAD) / FRAME);
            try {
                long stored = batchesOf(damaged);
                if (at >= HEAD) {
                    assertThat(stored).as("damage at byte " + at).isEqualTo(expected(whole));
                }
                least = Math.min(least, stored);
                if (i % 20 == 0) {
                    assertThat(check().damage()).as("damage at byte " + at).isEmpty();
                }
            } catch (StoreException e) {
                assertThat(e).hasMessageContaining("damaged");
                refused++;
            }
        }
        System.out.println(times + " cuts, the shortest beginning " + least + " batches, " + refused + " refused");
        assertThat(least).isLessThan(BATCHES / 2);
    }

    private byte[] garbled(Random random, int at) {
        byte[] damaged = log.clone();
        int length = Math.min(1 + random.nextInt(5000), log.length - at);
        byte[] noise = new byte[length];
        random.nextBytes(noise);
        noise[0] = (byte) (log[at] ^ (1 + random.nextInt(255)));
        System.arraycopy(noise, 0, damaged, at, length);
        return damaged;
    }
}
