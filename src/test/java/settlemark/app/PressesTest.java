package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.job.Clocking;
import settlemark.job.JobPlan;
import settlemark.job.Plans;
import settlemark.rig.DemoRig;
import settlemark.session.LiveSession;
import settlemark.session.SessionHeader;
import settlemark.store.SqliteStore;
import settlemark.ui.PressedJob;

/** How often a person must press for a whole two-stage job on the demo rig, where nothing goes wrong. */
@Tag("long")
class PressesTest {
    /** Of the whole job, by keys or by the pointer: each act has both. */
    private static final int MOST = 40;

    /** Of the job without the values of analyser and static gauge, and without what is ticked after closing, tick by tick. */
    private static final int MOST_UNTIL_CLOSED = 34;

    private static final Set<String> AFTER_CLOSING = Set.of("leak-test", "staging");

    @TempDir
    private Path folder = Path.of("");

    @Test
    void aTwoStageJobTakesFewPresses() throws Exception {
        JobPlan plan = Plans.get("two-stage-natural-gas");
        try (SqliteStore store = Workspaces.demo(Optional.of(folder.resolve("job.settlemark")))) {
            SessionHeader header = DemoScene.header(
                    Instant.parse("2026-03-14T09:30:00Z"),
                    ZoneOffset.UTC,
                    "test",
                    DemoScene.within(),
                    plan,
                    DemoScene.plate(plan));
            DemoRig rig = new DemoRig(new DemoRig.Settings(7, true));
            RigFloor floor = new RigFloor(
                    new LiveSession(header), store, store.begin(header), rig, new WireWiring(rig), 0, t -> {});
            Set<String> refused = new TreeSet<>();
            Map<String, Integer> presses = PressedJob.run(floor, rig, floor::pass, refused);
            floor.end();
            int all = presses.values().stream().mapToInt(n -> n).sum();
            System.out.println("presses of a two-stage job: " + all + " " + presses);
            assertThat(refused).as("said before a run is begun").anyMatch(w -> w.endsWith("a run would not count yet"));
            assertThat(floor.snapshot().job().orElseThrow().steps())
                    .flatExtracting(s -> s.clocking().runs())
                    .as("no run is lost")
                    .hasSizeGreaterThanOrEqualTo(4)
                    .extracting(Clocking.Run::progress)
                    .containsOnly(Clocking.Progress.ENDED);
            assertThat(presses.keySet())
                    .containsAll(plan.steps().stream().map(s -> s.key()).toList());
            int besides = plan.steps().stream()
                    .filter(s -> s.kind().typed() || AFTER_CLOSING.contains(s.key()))
                    .mapToInt(s -> presses.getOrDefault(s.key(), 0))
                    .sum();
            assertThat(all).as(presses.toString()).isLessThanOrEqualTo(MOST);
            assertThat(all - besides).as(presses.toString()).isLessThanOrEqualTo(MOST_UNTIL_CLOSED);
        }
    }
}
