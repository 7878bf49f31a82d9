package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.measure.Chunk;
import settlemark.session.LinkChange;
import settlemark.session.ProbeKeys;
import settlemark.session.RawBytes;
import settlemark.session.RecordSource;
import settlemark.session.SessionEvent;
import settlemark.session.Span;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;

/** The bytes beside the samples that they gave, and sessions without them. */
final class RawBytesTest {
    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    @Test
    void theBytesThatGaveASampleAreFoundByItsTime() throws StoreException {
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.log("log"));
            for (long n = 0; n < 300; n++) {
                store.append(session, Fixtures.second(n));
            }
            for (boolean sealed : new boolean[] {false, true}) {
                for (long second : new long[] {0, 100, 299}) {
                    long time = Fixtures.time(second, 3);
                    List<Chunk> chunks = new ArrayList<>();
                    store.bytes(session, 1, new Span(time, time), chunks::add);
                    assertThat(chunks).as("sealed " + sealed).hasSize(1);
                    assertThat(new String(chunks.get(0).bytes(), StandardCharsets.US_ASCII))
                            .startsWith("P" + (second * 10 + 3) + " ");
                }
                store.end(session, 300 * Fixtures.SECOND);
            }
            List<Chunk> minute = new ArrayList<>();
            store.bytes(session, 0, new Span(10 * Fixtures.SECOND, 20 * Fixtures.SECOND - 1), minute::add);
            assertThat(minute).hasSize(100);
        }
    }

    @Test
    void aSessionWithoutBytesKeepsAllElseAndIsSmaller() throws Exception {
        long with = size(RawBytes.KEPT);
        long without = size(RawBytes.DROPPED);
        assertThat(without).isLessThan(with * 9 / 10);
        try (SqliteStore store = Fixtures.open(folder.resolve("DROPPED"))) {
            assertThat(store.rawBytes(1)).isEqualTo(RawBytes.DROPPED);
            List<SessionEvent> events = new ArrayList<>();
            store.events(1, events::add);
            assertThat(events).hasSize(1).allMatch(e -> e instanceof SessionEvent.Link);
            assertThat(store.samples(1, 1, 1, 0, Long.MAX_VALUE).size()).isEqualTo(3000);
            assertThat(store.readings(1)).hasSize(60);
            List<Chunk> chunks = new ArrayList<>();
            store.bytes(1, 0, new Span(0, Long.MAX_VALUE), chunks::add);
            assertThat(chunks).isEmpty();
        }
    }

    private long size(RawBytes bytes) throws Exception {
        Path file = folder.resolve(bytes.name());
        try (SqliteStore store = Fixtures.open(file)) {
            long session = store.begin(Fixtures.log("log"), bytes);
            for (long n = 0; n < 300; n++) {
                store.append(session, Fixtures.second(n));
            }
            SessionEvent lost = new SessionEvent.Link(0, 300 * Fixtures.SECOND, LinkChange.LOST, "gone");
            store.append(session, new WriteBatch(6000, List.of(lost), List.of(), List.of(), List.of(), 5));
            store.end(session, 301 * Fixtures.SECOND);
        }
        return Files.size(file);
    }

    @Test
    void whatNeedsTheBytesIsRefusedWithTheReason() throws StoreException {
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.job("job"), RawBytes.DROPPED);
            store.end(session, 1);
            assertThatThrownBy(() -> RecordSource.of(store, session, ProbeKeys.NONE))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("session 1 was stored without its probes' bytes")
                    .hasMessageContaining("wrong profile");
            assertThat(store.rereadings()
                            .begin(1, Fixtures.probes(), Instant.EPOCH, "test")
                            .number())
                    .isEqualTo(1);
        }
    }
}
