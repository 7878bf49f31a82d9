package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.job.JobPlan;
import settlemark.job.JobState;
import settlemark.job.Plans;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.rig.DemoRig;
import settlemark.rig.RigFault;
import settlemark.session.LiveSession;
import settlemark.session.Snapshot;
import settlemark.store.SqliteStore;
import settlemark.ui.Language;
import settlemark.ui.WalkedScenes;

/** The moments of whole jobs on the rig, each shown in the window: no word cut off, nothing without a name. */
class WholeJobWalkTest {
    @TempDir
    private Path folder = Path.of("");

    @Test
    void noWordOfATwoStageJobIsCutOffInGerman() throws Exception {
        walk("two-stage-natural-gas", Set.of(), Language.GERMAN, 1280, 720, 1);
    }

    @Tag("long")
    @ParameterizedTest
    @CsvSource({
        "two-stage-natural-gas, , ENGLISH, 1280, 720, 1.25",
        "two-stage-natural-gas, WRONG_ORIFICE, ENGLISH, 1920, 1080, 2",
        "two-stage-natural-gas, CAP_SHIFT, PSEUDO, 1920, 1080, 2",
        "supply-check, REGULATOR_CREEP, GERMAN, 1280, 720, 1.25",
        "tightness-and-let-by, LETTING_BY, ENGLISH, 1280, 720, 1",
        "conversion-to-propane, , GERMAN, 1920, 1080, 1.5",
        "modulating-natural-gas, SLOW_BLOWER, PSEUDO, 1280, 720, 1",
        "boiler-gas-side, , ENGLISH, 1280, 720, 1.25"
    })
    void noWordOfOtherJobsIsCutOff(
            String plan, RigFault fault, Language language, int width, int height, double textScale) throws Exception {
        walk(plan, fault == null ? Set.of() : EnumSet.of(fault), language, width, height, textScale);
    }

    private void walk(String plan, Set<RigFault> faults, Language language, int width, int height, double textScale)
            throws Exception {
        List<Snapshot> moments = moments(plan, faults);
        List<StepKind> kinds = moments.stream()
                .flatMap(m -> m.job().flatMap(JobState::currentStep).stream())
                .map(s -> s.step().kind())
                .distinct()
                .toList();
        assertThat(kinds)
                .containsAll(Plans.get(plan).steps().stream()
                        .map(s -> s.kind())
                        .distinct()
                        .toList());
        List<String> findings = new ArrayList<>();
        for (Snapshot moment : moments) {
            WalkedScenes.moment(language, moment, width, height, textScale, findings);
        }
        assertThat(findings).isEmpty();
    }

    /** One for each state that a step is in. */
    private List<Snapshot> moments(String key, Set<RigFault> faults) throws Exception {
        JobPlan plan = Plans.get(key);
        try (SqliteStore store = Workspaces.demo(Optional.of(folder.resolve("job.settlemark")))) {
            Instant when = Instant.parse("2026-03-14T09:30:00Z");
            var header =
                    DemoScene.header(when, ZoneOffset.UTC, "test", DemoScene.within(), plan, DemoScene.plate(plan));
            DemoRig rig = new DemoRig(new DemoRig.Settings(7, true, faults, DemoScene.appliance(plan)));
            long session = new HeadlessDemo(header, store, rig, new WireWiring(rig), t -> {}).run();
            LiveSession again = new LiveSession(store.header(session));
            List<Snapshot> moments = new ArrayList<>();
            List<String> seen = new ArrayList<>();
            store.events(session, event -> {
                again.take(event);
                String state = again.job().map(WholeJobWalkTest::state).orElse("");
                if (!seen.contains(state)) {
                    seen.add(state);
                    moments.add(again.snapshot(when.plusNanos(event.timeNanos())));
                }
            });
            return moments;
        }
    }

    private static String state(JobState job) {
        return job.currentStep().map(WholeJobWalkTest::state).orElse("complete")
                + job.alarm().map(n -> " " + n.key()).orElse("");
    }

    private static String state(StepState step) {
        return step.key() + " " + step.progress() + " " + step.adjusting() + " "
                + step.readings().size() + " " + step.clocking().runs().size();
    }
}
