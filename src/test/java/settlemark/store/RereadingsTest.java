package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.decode.Rejected;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.session.ProbeSetup;
import settlemark.session.Rereading;
import settlemark.session.Rereadings;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;

final class RereadingsTest {
    private static final long ALWAYS = Long.MAX_VALUE;
    private static final Instant MADE = Instant.parse("2026-04-01T12:00:00.000000001Z");
    private static final String CORRECTED = "gauge|Corrected gauge|true|port-2,port-1|Pa";

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    private static List<ProbeSetup> corrected() {
        ProbeSetup gauge = Fixtures.probes().get(0);
        return List.of(
                new ProbeSetup(
                        gauge.name(), gauge.address(), Fixtures.profile(CORRECTED), Map.of("port-1", Role.INLET)),
                Fixtures.probes().get(1));
    }

    private static WriteBatch batch(long n) {
        List<WriteBatch.ProbeRejected> rejected = List.of(
                new WriteBatch.ProbeRejected(0, new Rejected(n, 40, "checksum " + n)),
                new WriteBatch.ProbeRejected(1, new Rejected(n, 41, "of the other")));
        return new WriteBatch(
                n,
                List.of(),
                List.of(Fixtures.block(0, 1, n + 7)),
                rejected,
                List.of(Fixtures.reading(n)),
                (n + 1) * Fixtures.SECOND);
    }

    /** Of session 1, with two batches. */
    private static Rereading make(SqliteStore store) throws StoreException {
        Rereading again = store.rereadings().begin(1, corrected(), MADE, "0.2.0-test");
        store.rereadings().append(again, batch(0));
        store.rereadings().append(again, batch(1));
        return again;
    }

    private static List<Rejected> rejected(Rereadings rereadings, Rereading of, int probe) throws StoreException {
        List<Rejected> found = new ArrayList<>();
        rereadings.rejected(of, probe, found::add);
        return found;
    }

    private void beginASession() throws StoreException {
        try (SqliteStore store = Fixtures.open(file())) {
            store.append(store.begin(Fixtures.log("log")), Fixtures.second(0));
        }
    }

    @Test
    void theBytesInputComesBack() throws Exception {
        List<SessionEvent> events = new ArrayList<>();
        for (int input : new int[] {0, 1, Chunk.STRAY, 300}) {
            events.add(new SessionEvent.Bytes(0, new Chunk(5, input, new byte[] {1, 2})));
        }
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.log("log"));
            store.append(session, new WriteBatch(0, events, List.of(), List.of(), List.of(), 5));
            List<SessionEvent> back = new ArrayList<>();
            store.events(session, back::add);
            assertThat(back).isEqualTo(events);
        }
    }

    @Test
    void refusedFramesAreReadBackInOrderAndByProbeAlsoOverManyPages() throws Exception {
        int many = 5000;
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(Fixtures.log("log"));
            for (int batch = 0; batch < 2; batch++) {
                List<WriteBatch.ProbeRejected> rejected = new ArrayList<>();
                for (int i = 0; i < many; i++) {
                    rejected.add(new WriteBatch.ProbeRejected(i % 2, new Rejected(batch, i, "no " + i)));
                }
                store.append(session, new WriteBatch(0, List.of(), List.of(), rejected, List.of(), 5));
            }
            List<Rejected> back = new ArrayList<>();
            store.rejected(session, 1, back::add);
            assertThat(back).hasSize(many);
            for (int i = 0; i < many; i++) {
                int frame = 2 * (i % (many / 2)) + 1;
                assertThat(back.get(i)).isEqualTo(new Rejected(2L * i / many, frame, "no " + frame));
            }
            List<Rejected> other = new ArrayList<>();
            store.rejected(session, 7, other::add);
            assertThat(other).isEmpty();
        }
    }

    @Test
    void itComesBackEqualAndWhatWasStoredOnTheDayStays() throws Exception {
        beginASession();
        Rereading again;
        try (SqliteStore store = Fixtures.open(file())) {
            again = make(store);
            assertThat(again.number()).isEqualTo(1);
            store.rereadings().complete(again);
        }
        try (SqliteStore store = SqliteStore.openForReading(file(), Fixtures::profile)) {
            Rereadings rereadings = store.rereadings();
            assertThat(rereadings.of(1)).containsExactly(again);
            assertThat(rereadings.readings(again)).containsExactly(Fixtures.reading(0), Fixtures.reading(1));
            assertThat(rereadings.samples(again, 0, 1, 0, ALWAYS).values())
                    .startsWith(Fixtures.block(0, 1, 7).values())
                    .endsWith(Fixtures.block(0, 1, 8).values())
                    .hasSize(20);
            assertThat(rereadings.samples(again, 0, 0, 0, ALWAYS).size()).isZero();
            assertThat(rereadings
                            .samples(again, 0, 1, Fixtures.time(8, 0), ALWAYS)
                            .size())
                    .isEqualTo(10);
            assertThat(rereadings.sampleCount(again, 0)).isEqualTo(20);
            assertThat(rereadings.sampleCount(again, 1)).isZero();
            assertThat(rejected(rereadings, again, 0))
                    .containsExactly(new Rejected(0, 40, "checksum 0"), new Rejected(1, 40, "checksum 1"));
            assertThat(store.sampleCount(1, 0)).isEqualTo(20);
            assertThat(store.samples(1, 0, 1, 0, ALWAYS).values())
                    .isEqualTo(Fixtures.block(0, 1, 0).values());
            assertThat(store.header(1)).isEqualTo(Fixtures.log("log"));
            assertThat(store.readings(1)).isEmpty();
        }
    }

    @Test
    void itsProbesAreTheDevicesOfTheSession() throws Exception {
        SessionHeader day = Fixtures.logOf("log", "usb:1209:0001:A1");
        try (SqliteStore store = Fixtures.open(file())) {
            long session = store.begin(day);
            Rereading again = store.rereadings().begin(session, day.probes(), MADE, "0.2.0-test");
            store.rereadings().complete(again);
            assertThat(store.rereadings().of(session).get(0).probes()).isEqualTo(day.probes());
        }
    }

    @Test
    void aHalfMadeOneIsNotListedAndTheNextRemovesIt() throws Exception {
        beginASession();
        try (SqliteStore store = Fixtures.open(file())) {
            make(store);
            assertThat(store.rereadings().of(1)).isEmpty();
        }
        try (SqliteStore store = Fixtures.open(file())) {
            assertThat(store.rereadings().of(1)).isEmpty();
            Rereading next = store.rereadings().begin(1, corrected(), MADE, "test");
            store.rereadings().complete(next);
            assertThat(next.number()).isEqualTo(1);
            assertThat(store.rereadings().of(1)).containsExactly(next);
            assertThat(store.rereadings().readings(next)).isEmpty();
        }
        assertThat(rows()).isZero();
    }

    @Test
    void aDiscardedOneLeavesNothing() throws Exception {
        beginASession();
        try (SqliteStore store = Fixtures.open(file())) {
            Rereading again = make(store);
            store.rereadings().discard(again);
            assertThatThrownBy(() -> store.rereadings().append(again, batch(2)))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessageContaining("was removed");
            assertThat(store.rereadings().of(1)).isEmpty();
        }
        assertThat(rows()).isZero();
    }

    private int rows() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file())) {
            return Schema.number(
                    connection,
                    "SELECT (SELECT count(*) FROM reread_frame) + (SELECT count(*) FROM reread_sample_block)"
                            + " + (SELECT count(*) FROM reread_summary)"
                            + " + (SELECT count(*) FROM reread_rejected) + (SELECT count(*) FROM reread_reading)"
                            + " + (SELECT count(*) FROM reread_channel_reading)");
        }
    }

    @Test
    void aCompleteOneTakesNothingMoreAndIsNotDiscarded() throws Exception {
        beginASession();
        try (SqliteStore store = Fixtures.open(file())) {
            Rereading again = make(store);
            store.rereadings().complete(again);
            assertThatThrownBy(() -> store.rereadings().append(again, batch(2)))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessageContaining("is complete");
            assertThatThrownBy(() -> store.rereadings().discard(again)).isInstanceOf(IllegalStateException.class);
            assertThat(store.rereadings().begin(1, corrected(), MADE, "test").number())
                    .isEqualTo(2);
            assertThat(store.rereadings().of(1)).containsExactly(again);
        }
    }

    @Test
    void whatDoesNotBelongToItIsRefused() throws Exception {
        beginASession();
        try (SqliteStore store = Fixtures.open(file())) {
            Rereadings rereadings = store.rereadings();
            assertThatThrownBy(() -> rereadings.begin(1, corrected().subList(0, 1), MADE, "test"))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("has 2 probes");
            assertThatThrownBy(() -> rereadings.begin(99, corrected(), MADE, "test"))
                    .isInstanceOf(IllegalArgumentException.class);
            Rereading again = rereadings.begin(1, corrected(), MADE, "test");
            assertThatThrownBy(() -> rereadings.append(again, Fixtures.second(0)))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("no events");
            WriteBatch foreign = new WriteBatch(
                    0, List.of(), List.of(Fixtures.block(2, 0, 0)), List.of(), List.of(), Fixtures.SECOND);
            assertThatThrownBy(() -> rereadings.append(again, foreign))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("none with index 2");
        }
    }

    @Test
    void damageIsReportedWithItsPlace() throws Exception {
        beginASession();
        Rereading again;
        try (SqliteStore store = Fixtures.open(file())) {
            again = make(store);
            store.rereadings().complete(again);
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("UPDATE reread_sample_block SET block = substr(block, 1, 40)");
        }
        try (SqliteStore store = Fixtures.open(file())) {
            assertThatThrownBy(() -> store.rereadings().samples(again, 0, 1, 0, ALWAYS))
                    .isInstanceOfSatisfying(
                            StoreException.class, e -> assertThat(e.kind()).isEqualTo(StoreException.Cause.DAMAGED))
                    .hasMessageContaining("samples of rereading 1 of session 1, probe 0, channel 1, from ");
            assertThat(store.samples(1, 0, 1, 0, ALWAYS).size()).isEqualTo(10);
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement()) {
            statement.executeUpdate(
                    "UPDATE profile SET text = replace(text, 'port-2', 'port-9') WHERE text LIKE '%Pa'");
        }
        try (SqliteStore store = Fixtures.open(file())) {
            assertThatThrownBy(() -> store.rereadings().of(1))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("profile gauge of rereading 1 of session 1");
            assertThat(store.header(1)).isEqualTo(Fixtures.log("log"));
        }
    }
}
