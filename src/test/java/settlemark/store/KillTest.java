package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.CheckReport;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.settle.StageReading;

/**
 * A process that writes as fast as it can is killed at random moments, again and again in one workspace: whatever it
 * had acknowledged must be there, bit for bit, and at most the one batch that was on its way besides.
 */
final class KillTest {
    @TempDir
    Path folder;

    @Test
    void nothingAcknowledgedIsLostByFiftyKills() throws Exception {
        kill(50);
    }

    @Test
    @Tag("long")
    void nothingAcknowledgedIsLostByAThousandKills() throws Exception {
        kill(1000);
    }

    private void kill(int times) throws Exception {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        Path file = folder.resolve("w.settlemark");
        long acknowledged = 0;
        Process child = start(file, 1);
        try {
            for (int round = 1; round <= times; round++) {
                long stored = killOnce(child, round, random);
                acknowledged += stored;
                // The next one warms up while this one's work is looked at; it waits before it opens the file.
                child = start(file, round + 1);
                try (SqliteStore store = Fixtures.open(file)) {
                    assertThat(store.sessions()).hasSize(round);
                    verify(store, round, stored);
                }
            }
        } finally {
            child.destroyForcibly();
        }
        assertThat(acknowledged).isPositive();
        try (SqliteStore store = Fixtures.open(file)) {
            assertThat(store.sessions()).hasSize(times).noneMatch(s -> s.ended());
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("PRAGMA integrity_check")) {
            assertThat(row.getString(1)).isEqualTo("ok");
        }
        CheckReport check = new WorkspaceTools(Fixtures::profile).check(file);
        assertThat(check.damage()).isEmpty();
        assertThat(check.contents().sessions()).isEqualTo(times);
        assertThat(check.contents().samples()).isGreaterThanOrEqualTo(40 * acknowledged);
        System.out.println(times + " kills, " + acknowledged + " batches acknowledged, none lost");
    }

    private static Process start(Path file, int round) throws IOException {
        return ChildWriter.start(List.of(), file, "round-" + round, Long.MAX_VALUE);
    }

    /** Returns how many batches were acknowledged before it died. */
    private static long killOnce(Process child, int round, Random random) throws Exception {
        // now and then beyond the first sealing, which comes with the 206th batch
        long wanted = random.nextInt(10) == 0 ? 190 + random.nextInt(40) : random.nextInt(60);
        long nanosAfterwards = random.nextInt(6_000_000);
        long stored = -1;
        try (BufferedReader output = ChildWriter.output(child)) {
            ChildWriter.begin(child);
            boolean killed = false;
            for (String line = output.readLine(); line != null; line = output.readLine()) {
                assertThat(line).matches("ready|session " + round + "|stored \\d+");
                if (line.equals("ready")) {
                    continue;
                }
                stored = line.startsWith("session") ? 0 : Long.parseLong(line.substring("stored ".length()));
                if (stored >= wanted && !killed) {
                    spin(nanosAfterwards);
                    // By its handle: the process object would close the pipe with what was said last.
                    child.toHandle().destroyForcibly();
                    killed = true;
                }
            }
            assertThat(killed)
                    .as("the child was killed, it did not end by itself")
                    .isTrue();
        } finally {
            child.destroyForcibly();
            assertThat(child.waitFor(60, TimeUnit.SECONDS)).isTrue();
        }
        return stored;
    }

    /** The moment of the kill must not hang together with the end of a commit. */
    private static void spin(long nanos) {
        long until = System.nanoTime() + nanos;
        while (System.nanoTime() < until) {
            Thread.onSpinWait();
        }
    }

    private static void verify(SqliteStore store, long session, long acknowledged) throws Exception {
        List<SessionEvent> events = new ArrayList<>();
        store.events(session, events::add);
        long batches = events.size() / 20;
        assertThat(batches).isBetween(acknowledged, acknowledged + 1);
        List<SessionEvent> expected = new ArrayList<>();
        List<StageReading> readings = new ArrayList<>();
        for (long n = 0; n < batches; n++) {
            expected.addAll(Fixtures.second(n).events());
            readings.addAll(Fixtures.second(n).readings());
        }
        assertThat(events).isEqualTo(expected);
        assertThat(store.readings(session)).isEqualTo(readings);
        assertThat(store.header(session)).isEqualTo(Fixtures.log("round-" + session));
        for (int probe = 0; probe < 2; probe++) {
            assertThat(store.sampleCount(session, probe)).isEqualTo(20 * batches);
            for (int channel = 0; channel < 2; channel++) {
                verify(store.samples(session, probe, channel, 0, Long.MAX_VALUE), batches);
            }
        }
    }

    private static void verify(SampleBlock samples, long batches) {
        assertThat(samples.size()).isEqualTo((int) (10 * batches));
        for (int n = 0; n < batches; n++) {
            SampleBlock expected = Fixtures.block(samples.probe(), samples.channel(), n);
            assertThat(Arrays.copyOfRange(samples.timesNanos(), 10 * n, 10 * n + 10))
                    .isEqualTo(expected.timesNanos());
            assertThat(Arrays.copyOfRange(samples.values(), 10 * n, 10 * n + 10))
                    .isEqualTo(expected.values());
        }
    }
}
