package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.job.Act;
import settlemark.job.CorrectionPoint;
import settlemark.job.InstrumentCard;
import settlemark.job.JobPlan;
import settlemark.job.Plans;
import settlemark.job.Progress;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.rig.DemoRig;
import settlemark.session.ChannelView;
import settlemark.session.LiveSession;
import settlemark.session.OpenJob;
import settlemark.session.ProbeKeys;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.SnapshotUnits;
import settlemark.session.TakenUp;
import settlemark.settle.ChannelReading;
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
    void whatTheScreenShowsHasTheInstrumentsCorrectionOnceItsZeroIsKnown() throws Exception {
        CorrectionPoint low = new CorrectionPoint("", 0, 0, 0.01, Unit.INCH_OF_WATER);
        CorrectionPoint high = new CorrectionPoint("", 10, 9.8, 0.03, Unit.INCH_OF_WATER);
        InstrumentCard card =
                new InstrumentCard("0042", "blue gauge", "", Optional.empty(), Optional.empty(), List.of(low, high));
        LiveSession session = new LiveSession(header("supply-check"));
        DemoRig rig = new DemoRig(new DemoRig.Settings(7, false));
        try (SqliteStore store = Workspaces.demo(Optional.of(folder.resolve("w.settlemark")))) {
            RigFloor floor =
                    new RigFloor(session, store, store.begin(session.header()), rig, new WireWiring(rig), 0, t -> {});
            floor.act(new Act.Instrument(card, Map.of(Role.INLET, "p1"), false));
            floor.handsAtWork(true);
            floor.pass();
            ChannelView before = floor.snapshot().channel(Role.INLET).orElseThrow();
            assertThat(before.instrument().corrects()).as("no zero yet").isFalse();
            while (floor.snapshot()
                            .job()
                            .orElseThrow()
                            .step("lock-up")
                            .orElseThrow()
                            .progress()
                    != Progress.TAKEN) {
                floor.pass();
            }
            ChannelView now = floor.snapshot().channel(Role.INLET).orElseThrow();
            // From (0, 0) to (9.8, +0.2) in a straight line: 0.2/9.8 of what is indicated.
            assertThat(now.indicated()).isBetween(7.5, 8.1);
            assertThat(now.correction()).isCloseTo(now.indicated() * 0.2 / 9.8, within(1e-9));
            assertThat(now.value()).isCloseTo(now.indicated() * 10 / 9.8, within(1e-9));
            ChannelReading read = floor.snapshot()
                    .job()
                    .orElseThrow()
                    .step("lock-up")
                    .orElseThrow()
                    .reading()
                    .orElseThrow()
                    .channel(Role.INLET)
                    .orElseThrow();
            assertThat(now.value()).as("as the reading").isCloseTo(read.value(), within(0.05));
            ChannelView pascals = new SnapshotUnits(Unit.PASCAL, Unit.CELSIUS)
                    .of(floor.snapshot())
                    .channel(Role.INLET)
                    .orElseThrow();
            assertThat(pascals.correction()).isCloseTo(now.correction() * 249.08891, within(1e-6));
            floor.leave();
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
