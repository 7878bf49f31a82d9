package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.SampleBlock;
import settlemark.session.StoreException;

final class ReadingWhileWritingTest {
    @TempDir
    Path folder;

    private final ExecutorService other = Executors.newSingleThreadExecutor();

    @AfterEach
    void stop() throws InterruptedException {
        other.shutdownNow();
        assertThat(other.awaitTermination(30, TimeUnit.SECONDS)).isTrue();
    }

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    @Test
    void readsDoNotWaitForATransactionThatIsOpen() throws Exception {
        try (SqliteStore store = Fixtures.open(file());
                Connection busy = DriverManager.getConnection("jdbc:sqlite:" + file())) {
            long session = store.begin(Fixtures.log("log"));
            store.append(session, Fixtures.second(0));
            Connections.run(busy, "BEGIN IMMEDIATE");
            Connections.run(busy, "UPDATE probe SET samples = -1");
            // Well below the five seconds for which a lock would be waited.
            Assertions.assertTimeoutPreemptively(Duration.ofSeconds(4), () -> {
                assertThat(store.sampleCount(session, 0)).isEqualTo(20);
                assertThat(store.samples(session, 0, 0, 0, Long.MAX_VALUE).size())
                        .isEqualTo(10);
                assertThat(store.sessions()).hasSize(1);
            });
            Connections.run(busy, "ROLLBACK");
        }
    }

    @Test
    void theWriterDoesNotWaitForASlowReaderNorDoesTheLogGrowForIt() throws Exception {
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.log("log"));
            for (long n = 0; n < 200; n++) {
                store.append(session, Fixtures.second(n));
            }
            CountDownLatch reading = new CountDownLatch(1);
            CountDownLatch goOn = new CountDownLatch(1);
            AtomicLong seen = new AtomicLong();
            Future<?> reader = other.submit(() -> {
                store.events(session, event -> {
                    if (seen.incrementAndGet() == 100) {
                        reading.countDown();
                        await(goOn);
                    }
                });
                return null;
            });
            await(reading);
            for (long n = 200; n < 1200; n++) {
                store.append(session, Fixtures.second(n));
            }
            assertThat(Files.size(Connections.log(file()))).isLessThan(3L * Connections.WAL_LIMIT_BYTES);
            goOn.countDown();
            reader.get(60, TimeUnit.SECONDS);
            assertThat(seen).hasValue(4000);
        }
    }

    @Test
    void aReaderSeesWholeBatchesOnly() throws Exception {
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.log("log"));
            Future<?> writer = other.submit(() -> {
                for (long n = 0; n < 150; n++) {
                    store.append(session, Fixtures.second(n));
                }
                return null;
            });
            List<Integer> sizes = new ArrayList<>();
            while (!writer.isDone()) {
                SampleBlock samples = store.samples(session, 1, 0, 0, Long.MAX_VALUE);
                sizes.add(samples.size());
                assertThat(samples.size() % 10).isZero();
                AtomicLong events = new AtomicLong();
                store.events(session, e -> events.incrementAndGet());
                assertThat(events.get() % 20).isZero();
                assertThat(store.sampleCount(session, 1)).isGreaterThanOrEqualTo(2L * samples.size());
            }
            writer.get(60, TimeUnit.SECONDS);
            assertThat(sizes).isSorted().isNotEmpty();
            assertThat(store.samples(session, 1, 0, 0, Long.MAX_VALUE).size()).isEqualTo(1500);
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            assertThat(latch.await(60, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void theFileStaysSmall() throws StoreException, java.io.IOException {
        int batches = 600;
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.log("log"));
            for (long n = 0; n < batches; n++) {
                store.append(session, Fixtures.second(n));
            }
        }
        double bytesPerSample = Files.size(file()) / (40.0 * batches);
        System.out.println("bytes a sample, raw bytes and all: " + bytesPerSample);
        // 7 for values of which every bit matters, and the rest for times, raw bytes and pages; measured 17.
        assertThat(bytesPerSample).isBetween(10.0, 20.0);
    }
}
