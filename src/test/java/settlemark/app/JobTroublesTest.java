package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.job.Act;
import settlemark.job.JobPlan;
import settlemark.job.Plans;
import settlemark.rig.DemoRig;
import settlemark.session.LiveSession;
import settlemark.session.OpenJob;
import settlemark.session.ProbeKeys;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.TakenUp;
import settlemark.store.SqliteStore;

/** A clock that was set back while a job stood still, and plans that do not fit what is there. */
final class JobTroublesTest {
    private static final Instant BEGUN = Instant.parse("2026-03-14T09:30:00Z");

    @TempDir
    private Path folder = Path.of("");

    private SessionHeader header(String plan) {
        JobPlan chosen = Plans.get(plan);
        return DemoScene.header(BEGUN, ZoneOffset.UTC, "test", DemoScene.within(), chosen, DemoScene.plate(chosen));
    }

    /** A job that stands at its lock-up; returns the session time of its last entry. */
    private long untilLockUp(SqliteStore store) throws Exception {
        SessionHeader header = header("supply-check");
        long number = store.begin(header);
        DemoRig rig = new DemoRig(new DemoRig.Settings(7, true));
        RigFloor floor = new RigFloor(new LiveSession(header), store, number, rig, new WireWiring(rig), 0, t -> {});
        floor.handsAtWork(true);
        while (!floor.snapshot()
                .job()
                .orElseThrow()
                .currentStep()
                .orElseThrow()
                .key()
                .equals("lock-up")) {
            floor.pass();
        }
        floor.leave();
        return store.find(Long.toString(number)).orElseThrow().durationNanos();
    }

    @Test
    void aClockThatWasSetBackMovesNoSessionTimeBackAndIsSaid() throws Exception {
        try (SqliteStore store = Workspaces.demo(Optional.of(folder.resolve("w.settlemark")))) {
            long last = untilLockUp(store);
            TakenUp taken = TakenUp.of(store, 1, ProbeKeys.NONE, BEGUN.minusSeconds(3600));
            assertThat(taken.fromNanos()).isEqualTo(last + 1_000_000_000L);
            assertThat(taken.session().snapshot(BEGUN).events())
                    .anySatisfy(e -> assertThat(e.words())
                            .contains("for how long is not known")
                            .contains("the clock stands before the session's last entry"));
            taken.session().take(new SessionEvent.Done(taken.fromNanos(), new Act.Note("lock-up", "on we go")));
            store.append(1, taken.session().drain());
            assertThat(store.find("1").orElseThrow().durationNanos()).isGreaterThan(last);
        }
    }

    @Test
    void theTimeBetweenIsTheWallClocksWhereItCanBe() throws Exception {
        try (SqliteStore store = Workspaces.demo(Optional.of(folder.resolve("w.settlemark")))) {
            untilLockUp(store);
            TakenUp taken = TakenUp.of(store, 1, ProbeKeys.NONE, BEGUN.plusSeconds(7200));
            assertThat(taken.fromNanos()).isEqualTo(7200 * 1_000_000_000L);
            assertThat(taken.session()
                            .job()
                            .orElseThrow()
                            .currentStep()
                            .orElseThrow()
                            .key())
                    .isEqualTo("lock-up");
            assertThat(taken.session().job().orElseThrow().zeroOffsets()).isNotEmpty();
        }
    }

    @Test
    void everyJobThatWasLeftIsFoundNewestFirstAndOneThatEndedIsNot() throws Exception {
        try (SqliteStore store = Workspaces.demo(Optional.of(folder.resolve("w.settlemark")))) {
            for (int i = 0; i < 5; i++) {
                store.begin(DemoScene.header(
                        BEGUN.plusSeconds(3600L * i),
                        ZoneOffset.UTC,
                        "test",
                        DemoScene.within(),
                        Plans.get("supply-check"),
                        DemoScene.plate(Plans.get("supply-check"))));
            }
            store.end(4, 1_000_000_000L);
            assertThat(OpenJobs.of(store, 10)).extracting(OpenJob::number).containsExactly(5L, 3L, 2L, 1L);
            assertThat(OpenJobs.of(store, 10)).allMatch(OpenJob::simulated);
            assertThat(OpenJobs.of(store, 2)).extracting(OpenJob::number).containsExactly(5L, 3L);
        }
    }

    @Test
    void aPlanThatReadsAChannelWithoutAProbeIsToldEachOnce() {
        SessionHeader all = header("two-stage-natural-gas");
        SessionHeader gaugeOnly = DemoScene.header(
                BEGUN,
                ZoneOffset.UTC,
                "test",
                List.of(DemoScene.within().get(0)),
                all.plan().orElseThrow(),
                all.plate().orElseThrow());
        assertThat(MissingProbes.of(all)).as("what may be typed needs no probe").isEmpty();
        assertThat(MissingProbes.of(gaugeOnly))
                .satisfiesExactly(
                        m -> assertThat(m).contains("reads the supply").contains("--role PROBE.CHANNEL=supply"),
                        m -> assertThat(m).contains("reads the return"));
    }

    @Test
    void ownPlansAreOfferedAndABadOneIsToldWithItsPlace() throws Exception {
        Path plans = OwnPlans.folder(folder.resolve("w.settlemark"));
        Files.createDirectories(plans);
        Files.write(plans.resolve("mine.yaml"), Plans.document("supply-check").orElseThrow());
        Files.writeString(plans.resolve("bad.yaml"), "language: 1\nid: bad\ntitle: bad\nsteps:\n  - act: nonsense\n");
        StringWriter err = new StringWriter();
        List<JobPlan> offered = OwnPlans.withShipped(plans, new PrintWriter(err));
        assertThat(offered).hasSize(Plans.keys().size() + 1);
        assertThat(err.toString()).contains("bad.yaml:5:").contains("no act is called \"nonsense\"");
        assertThat(OwnPlans.withShipped(folder.resolve("none"), new PrintWriter(err)))
                .hasSize(Plans.keys().size());
    }
}
