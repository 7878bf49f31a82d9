package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.Rereading;
import settlemark.session.SessionEvent;

/**
 * A process that stores a rereading is killed at random moments: the day loses nothing, a half-made rereading is never
 * listed, and one that was said to be complete is there in full.
 */
final class RereadKillTest {
    private static final int BATCHES = 25;
    private static final int KILLS = 6;

    @TempDir
    Path folder;

    @Test
    void aKilledRereadingTakesNothingWithItAndIsNotListed() throws Exception {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        Path file = folder.resolve("w.settlemark");
        try (SqliteStore store = Fixtures.open(file)) {
            long session = store.begin(Fixtures.log("day"));
            store.append(session, Fixtures.second(0));
            store.append(session, Fixtures.second(1));
            store.end(session, 2 * Fixtures.SECOND);
        }
        int complete = 0;
        for (int i = 0; i < KILLS; i++) {
            String word = i == 0 ? "complete" : "stored " + (1 + random.nextInt(BATCHES));
            boolean said = ChildRereader.killAfter(file, BATCHES, word, random.nextInt(3_000_000));
            try (SqliteStore store = Fixtures.open(file)) {
                List<Rereading> listed = store.rereadings().of(1);
                // The last commit may have come through without being said.
                assertThat(listed.size()).isBetween(complete + (said ? 1 : 0), complete + 1);
                complete = listed.size();
                dayIsWhole(store);
                for (Rereading whole : listed) {
                    isWhole(store, whole);
                }
            }
        }
        assertThat(complete).isBetween(1, KILLS);
        ChildRereader.killAfter(file, BATCHES, "stored 3", 0);
        assertThat(ids(file)).hasSizeGreaterThanOrEqualTo(complete);
        try (SqliteStore store = Fixtures.open(file)) {
            int listed = store.rereadings().of(1).size();
            Rereading next = store.rereadings().begin(1, Fixtures.probes(), Instant.EPOCH, "after the kills");
            store.rereadings().complete(next);
            assertThat(store.rereadings().of(1)).hasSize(listed + 1);
            assertThat(ids(file)).as("the half-made ones are gone").hasSize(listed + 1);
        }
    }

    private static List<Long> ids(Path file) throws Exception {
        List<Long> ids = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT id FROM rereading")) {
            while (row.next()) {
                ids.add(row.getLong(1));
            }
        }
        return ids;
    }

    private static void dayIsWhole(SqliteStore store) throws Exception {
        List<SessionEvent> expected = new ArrayList<>(Fixtures.second(0).events());
        expected.addAll(Fixtures.second(1).events());
        List<SessionEvent> events = new ArrayList<>();
        store.events(1, events::add);
        assertThat(events).isEqualTo(expected);
        assertThat(store.header(1)).isEqualTo(Fixtures.log("day"));
        for (int probe = 0; probe < 2; probe++) {
            assertThat(store.sampleCount(1, probe)).isEqualTo(40);
            assertThat(store.samples(1, probe, 1, 0, Long.MAX_VALUE).values())
                    .startsWith(Fixtures.block(probe, 1, 0).values())
                    .endsWith(Fixtures.block(probe, 1, 1).values());
        }
    }

    private static void isWhole(SqliteStore store, Rereading rereading) throws Exception {
        for (int probe = 0; probe < 2; probe++) {
            assertThat(store.rereadings().sampleCount(rereading, probe)).isEqualTo(20L * BATCHES);
            assertThat(store.rereadings()
                            .samples(rereading, probe, 0, 0, Long.MAX_VALUE)
                            .size())
                    .isEqualTo(10 * BATCHES);
        }
        assertThat(store.rereadings().readings(rereading)).hasSize(BATCHES / 5);
    }
}
