package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.job.JobPicture;
import settlemark.job.JobPlan;
import settlemark.job.JobState;
import settlemark.job.Plans;
import settlemark.job.RatingPlate;
import settlemark.job.StepState;
import settlemark.rig.DemoRig;
import settlemark.rig.RigFault;
import settlemark.session.LiveSession;
import settlemark.store.SqliteStore;
import settlemark.ui.GermanWords;

/** Shipped plans, each a whole job on the rig: healthy, and with one thing wrong that the job must find. */
final class PlansOnTheRigTest {
    @TempDir
    private Path folder = Path.of("");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "two-stage-natural-gas",
                "one-stage-natural-gas",
                "boiler-gas-side",
                "supply-check",
                "tightness-and-let-by",
                "yearly-re-check",
                "modulating-natural-gas",
                "two-stage-propane",
                "conversion-to-propane"
            })
    void aHealthyFurnaceEndsInACompleteJobWithNothingLeftOutside(String plan) throws Exception {
        JobState job = run(plan, Set.of());
        assertThat(job.missing()).isEmpty();
        assertThat(job.leftOutside()).as(verdicts(job).toString()).isFalse();
        assertThat(job.notices()).isEmpty();
        assertThat(JobPicture.of(job)).noneMatch(w -> w.contains("do not hold together"));
        assertThat(job.steps())
                .allSatisfy(step -> assertThat(step.readings()).as(step.key()).noneMatch(r -> r.byHand()));
    }

    @Test
    void everyShippedPlanIsAmongThem() throws Exception {
        List<String> run = List.of(PlansOnTheRigTest.class
                .getDeclaredMethod("aHealthyFurnaceEndsInACompleteJobWithNothingLeftOutside", String.class)
                .getAnnotation(ValueSource.class)
                .strings());
        assertThat(run).containsExactlyInAnyOrderElementsOf(Plans.keys());
    }

    static Stream<Arguments> faults() {
        return Stream.of(
                Arguments.of("supply-check", RigFault.UNDERSIZED_PIPE, "all-appliances: inlet OUTSIDE"),
                Arguments.of("supply-check", RigFault.REGULATOR_CREEP, "does not lock up"),
                Arguments.of("supply-check", RigFault.REGULATOR_CREEP, "notice: The inlet climbed by"),
                Arguments.of("tightness-and-let-by", RigFault.LETTING_BY, "let-by: inlet change OUTSIDE"),
                Arguments.of("tightness-and-let-by", RigFault.LETTING_BY, "the valve lets gas by"),
                Arguments.of("two-stage-natural-gas", RigFault.WRONG_ORIFICE, "clock-high: input OUTSIDE"),
                Arguments.of("two-stage-natural-gas", RigFault.WRONG_ORIFICE, "above the plate: never exceed"),
                Arguments.of("one-stage-natural-gas", RigFault.WRONG_ORIFICE, "the orifices are larger than thought"),
                Arguments.of("supply-check", RigFault.ZERO_DRIFT, "carry up to that much to either side"),
                Arguments.of("yearly-re-check", RigFault.SLOW_BLOWER, "found-high: rise OUTSIDE"),
                Arguments.of("modulating-natural-gas", RigFault.SLOW_BLOWER, "left-high: rise OUTSIDE"),
                Arguments.of("two-stage-propane", RigFault.WRONG_ORIFICE, "clock-high: input OUTSIDE"),
                Arguments.of("two-stage-propane", RigFault.CAP_SHIFT, "The cap moved the manifold by +0.3"),
                Arguments.of("two-stage-natural-gas", RigFault.CAP_SHIFT, "The cap moved the manifold by +0.3"),
                Arguments.of("two-stage-natural-gas", RigFault.ZERO_DRIFT, "close: inlet zero drift OUTSIDE"),
                Arguments.of("yearly-re-check", RigFault.STAGE_MISSING, "high fire has not come"),
                Arguments.of("yearly-re-check", RigFault.SWAPPED_HOSES, "the hoses are on each other's taps"));
    }

    @ParameterizedTest
    @MethodSource("faults")
    void whatIsWrongIsFoundAndSaid(String plan, RigFault fault, String expected) throws Exception {
        JobState job = run(plan, Set.of(fault));
        List<String> said = verdicts(job);
        said.addAll(JobPicture.of(job));
        job.notices().forEach(n -> said.add("notice: " + n.words()));
        job.steps().forEach(s -> {
            said.addAll(s.remarks());
            said.add(s.skipReason());
        });
        assertThat(said).anySatisfy(words -> assertThat(words).contains(expected));
        System.out.println("| " + plan + " | " + fault.key() + " | "
                + said.stream().filter(w -> w.contains(expected)).findFirst().orElse("") + " |");
    }

    private JobState run(String key, Set<RigFault> faults) throws Exception {
        JobPlan plan = Plans.get(key);
        RatingPlate plate = DemoScene.plate(plan);
        assertThat(plan.misfits(plate)).isEmpty();
        try (SqliteStore store = Workspaces.demo(Optional.of(folder.resolve("job.settlemark")))) {
            Instant when = Instant.parse("2026-03-14T09:30:00Z");
            var header = DemoScene.header(when, ZoneOffset.UTC, "test", DemoScene.within(), plan, plate);
            DemoRig rig = new DemoRig(new DemoRig.Settings(7, true, faults, DemoScene.appliance(plan)));
            long session = new HeadlessDemo(header, store, rig, new WireWiring(rig), t -> {}).run();
            LiveSession again = new LiveSession(store.header(session));
            store.events(session, again::take);
            JobState job = again.job().orElseThrow();
            assertThat(GermanWords.unknown(GermanWords.said(job)))
                    .as("sentences of this job that the window has no German for")
                    .isEmpty();
            return job;
        }
    }

    private static List<String> verdicts(JobState job) {
        List<String> said = new ArrayList<>();
        for (StepState step : job.steps()) {
            step.verdicts().forEach(v -> said.add(step.key() + ": " + v.subject() + " " + v.outcome()));
        }
        return said;
    }
}
