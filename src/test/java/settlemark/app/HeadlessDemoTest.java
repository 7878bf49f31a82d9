package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.job.JobState;
import settlemark.job.StepKind;
import settlemark.measure.Chunk;
import settlemark.rig.DemoRig;
import settlemark.session.LiveSession;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.settle.StageReading;
import settlemark.store.SqliteStore;

/** The whole job, from the rig's bytes to the record's files. */
final class HeadlessDemoTest {
    @TempDir
    private Path folder = Path.of("");

    private final TruthCheck truth = new TruthCheck();

    @Test
    void theWholeJobAgreesWithTheTruthReplaysTheSameAndMakesTheSameRecordTwice() throws Exception {
        try (SqliteStore store = Workspaces.demo(Optional.of(folder.resolve("demo.settlemark")))) {
            SessionHeader header = DemoScene.header(Instant.parse("2026-03-14T09:30:00Z"), ZoneOffset.UTC, "test");
            DemoRig rig = new DemoRig(new DemoRig.Settings(7, true));
            long session = new HeadlessDemo(header, store, rig, t -> truth.note(t, rig.truth())).run();

            RecordMaking.Made made =
                    RecordMaking.make(store, session, folder.resolve("a")).orElseThrow();
            JobState job = made.record().job();
            assertThat(job.complete()).isTrue();
            assertThat(job.leftOutside()).isFalse();
            assertThat(job.steps())
                    .allSatisfy(s ->
                            assertThat(s.reading().filter(StageReading::byHand)).isEmpty());
            TruthCheck.Result result = truth.of(job);
            assertThat(result.misses()).isEmpty();
            assertThat(result.readings()).isGreaterThanOrEqualTo(8);

            assertThat(replayed(store, session, new Random(11))).isEqualTo(job);
            assertThat(store.readings(session)).isEqualTo(readings(job));
            sameFiles(
                    made.files(),
                    RecordMaking.make(store, session, folder.resolve("b"))
                            .orElseThrow()
                            .files());
        }
    }

    private static List<StageReading> readings(JobState job) {
        return job.steps().stream()
                .filter(s -> s.step().kind() != StepKind.RECORD)
                .flatMap(s -> s.readings().stream())
                .toList();
    }

    /** The stored events again, every chunk of bytes cut at random places. */
    private static JobState replayed(SqliteStore store, long session, Random random) throws Exception {
        LiveSession again = new LiveSession(store.header(session));
        store.events(session, event -> cut(event, random).forEach(again::take));
        return again.job().orElseThrow();
    }

    private static List<SessionEvent> cut(SessionEvent event, Random random) {
        if (!(event instanceof SessionEvent.Bytes bytes)) {
            return List.of(event);
        }
        List<SessionEvent> pieces = new ArrayList<>();
        byte[] all = bytes.chunk().bytes();
        for (int from = 0; from < all.length; ) {
            int to = Math.min(all.length, from + 1 + random.nextInt(all.length));
            pieces.add(new SessionEvent.Bytes(
                    bytes.probe(), new Chunk(bytes.timeNanos(), Arrays.copyOfRange(all, from, to))));
            from = to;
        }
        return pieces;
    }

    private static void sameFiles(List<Path> first, List<Path> second) throws IOException {
        assertThat(first).hasSameSizeAs(second).hasSizeGreaterThanOrEqualTo(3);
        for (int i = 0; i < first.size(); i++) {
            assertThat(Files.mismatch(first.get(i), second.get(i)))
                    .as(first.get(i).toString())
                    .isEqualTo(-1);
        }
    }
}
