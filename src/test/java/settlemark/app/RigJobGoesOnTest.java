package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.GraphicsEnvironment;
import java.awt.event.KeyEvent;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Program;
import settlemark.job.JobPlan;
import settlemark.job.JobState;
import settlemark.job.Plans;
import settlemark.job.StepState;
import settlemark.link.RadioBench;
import settlemark.rig.DemoRig;
import settlemark.session.LiveSession;
import settlemark.session.ProbeKeys;
import settlemark.session.RecordSource;
import settlemark.store.SqliteStore;
import settlemark.ui.WindowHands;

/** A job on the rig that was left by typing goes on in the window, in the same session. */
@Tag("display")
@Timeout(300)
class RigJobGoesOnTest {
    @TempDir
    private Path folder = Path.of("");

    private final StringWriter err = new StringWriter();

    @BeforeEach
    void needsADisplay() {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
    }

    private Path workspace() {
        return RadioDesk.workspace(folder);
    }

    /** Left when the zero was taken. */
    private void left() throws Exception {
        JobPlan plan = Plans.get("supply-check");
        try (SqliteStore store = Workspaces.person(Optional.of(workspace()))) {
            var header = DemoScene.header(
                    Instant.now().minus(Duration.ofHours(1)),
                    ZoneOffset.UTC,
                    "test",
                    DemoScene.within(),
                    plan,
                    DemoScene.plate(plan));
            DemoRig rig = new DemoRig(new DemoRig.Settings(7, true));
            RigFloor floor = new RigFloor(
                    new LiveSession(header), store, store.begin(header), rig, new WireWiring(rig), 0, t -> {});
            floor.handsAtWork(true);
            while (!done(floor.snapshot().job().orElseThrow()).contains("zero")) {
                floor.pass();
            }
            floor.leave();
        }
    }

    private static List<String> done(JobState job) {
        return job.steps().stream().filter(StepState::done).map(StepState::key).toList();
    }

    @Test
    void itStandsAtItsStepWithTheGapAndStaysOpenWhenTheWindowIsClosed() throws Exception {
        left();
        try (RadioBench bench = new RadioBench()) {
            WindowHands hands = new WindowHands();
            CompletableFuture<Integer> program = RadioDesk.open(bench, folder, err);
            hands.click("4, SIMULATED: go on with ");
            hands.awaitSeen("strip of the job");
            hands.awaitSeen("Gas is on, nothing fires");
            hands.key(KeyEvent.VK_SPACE);
            hands.awaitSeen("Takes itself at 1 of 1");
            WindowHands.closeAll();
            assertThat(program.get(60, TimeUnit.SECONDS)).as(err.toString()).isEqualTo(Program.DONE);
        }
        try (SqliteStore store = Workspaces.reading(Optional.of(workspace()))) {
            assertThat(store.sessions()).hasSize(1);
            assertThat(store.sessions().get(0).ended()).isFalse();
            LiveSession again = RecordSource.replay(store, 1, ProbeKeys.NONE);
            assertThat(done(again.job().orElseThrow())).containsExactly("plate", "probes", "zero");
            assertThat(again.job().orElseThrow().step("lock-up").orElseThrow().armedNanos())
                    .as("an hour later")
                    .isGreaterThan(3_500_000_000_000L);
            assertThat(again.job().orElseThrow().step("lock-up").orElseThrow().marks())
                    .anyMatch(m -> m.words().startsWith("the program had ended for "));
        }
    }
}
