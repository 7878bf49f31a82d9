package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.job.JobPicture;
import settlemark.job.JobPlan;
import settlemark.job.JobState;
import settlemark.job.PlanStep;
import settlemark.job.Plans;
import settlemark.job.RatingPlate;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.measure.Role;
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
                Arguments.of("two-stage-natural-gas", RigFault.LETTING_BY, "let-by: inlet change OUTSIDE"),
                Arguments.of("boiler-gas-side", RigFault.LETTING_BY, "let-by: inlet change OUTSIDE"),
                Arguments.of("two-stage-natural-gas", RigFault.WRONG_ORIFICE, "clock-high: input OUTSIDE"),
                Arguments.of("two-stage-natural-gas", RigFault.WRONG_ORIFICE, "above the plate: never exceed"),
                Arguments.of("one-stage-natural-gas", RigFault.WRONG_ORIFICE, "full fire: what the orifice gives is"),
                Arguments.of("one-stage-natural-gas", RigFault.WRONG_ORIFICE, "the orifices are larger than thought"),
                Arguments.of("one-stage-natural-gas", RigFault.CAP_SHIFT, "more than a cap customarily does"),
                Arguments.of("one-stage-natural-gas", RigFault.VALVE_CREEP, "The manifold crept by +0."),
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
        List<String> said = everything(job);
        assertThat(said).anySatisfy(words -> assertThat(words).contains(expected));
        System.out.println("| " + plan + " | " + fault.key() + " | "
                + said.stream().filter(w -> w.contains(expected)).findFirst().orElse("") + " |");
    }

    /** What a plan must say of a fault that its steps can see; empty where none of them can. */
    private static Optional<String> seen(JobPlan plan, RigFault fault) {
        Set<StepKind> kinds = plan.steps().stream().map(PlanStep::kind).collect(Collectors.toSet());
        boolean manifoldAtRest = plan.steps().stream()
                .anyMatch(s -> s.kind() == StepKind.LOCK_UP && s.required().contains(Role.MANIFOLD));
        boolean letBy = plan.steps().stream().anyMatch(s -> s.key().equals("let-by"));
        return switch (fault) {
            case UNDERSIZED_PIPE ->
                Optional.of("all-appliances: inlet OUTSIDE").filter(w -> kinds.contains(StepKind.ALL_APPLIANCES));
            case REGULATOR_CREEP -> Optional.of("does not lock up").filter(w -> kinds.contains(StepKind.LOCK_UP));
            case LETTING_BY -> Optional.of("the valve lets gas by").filter(w -> letBy);
            case WRONG_ORIFICE -> Optional.of("input OUTSIDE").filter(w -> kinds.contains(StepKind.CLOCK));
            case CAP_SHIFT ->
                Optional.of("The cap moved the manifold by +0.3").filter(w -> kinds.contains(StepKind.LEFT));
            // At the lowest of three fires the creep is so large that the scripted hands take it for another stage.
            // Where no air
            // is waited for, the pressures are read before the valve has warmed.
            case VALVE_CREEP ->
                Optional.of("The manifold crept by +0.")
                        .filter(w ->
                                kinds.contains(StepKind.FOUND) && plan.stages().size() < 3 && plan.readsRise());
            case SLOW_BLOWER -> Optional.of("rise OUTSIDE").filter(w -> plan.readsRise());
            case ZERO_DRIFT -> Optional.of("zero drift was").filter(w -> kinds.contains(StepKind.CLOSE));
            case STAGE_MISSING ->
                // Of three stages the low one is too low to be taken for another; nothing is found where all is set
                // anew.
                Optional.of(
                                plan.stages().size() == 2 && kinds.contains(StepKind.FOUND)
                                        ? "has not come"
                                        : "the burner did not come to this stage")
                        .filter(w -> plan.stages().size() > 1 && plan.readsManifold());
            case SWAPPED_HOSES -> Optional.of("on each other's taps").filter(w -> manifoldAtRest);
        };
    }

    static Stream<Arguments> everyPlanWithEveryFault() {
        return Plans.keys().stream()
                .flatMap(plan -> Stream.of(RigFault.values()).map(fault -> Arguments.of(plan, fault)));
    }

    @ParameterizedTest
    @MethodSource
    @Tag("long")
    void everyPlanWithEveryFault(String plan, RigFault fault) throws Exception {
        JobState job = run(plan, Set.of(fault));
        List<String> said = everything(job);
        Optional<String> expected = seen(Plans.get(plan), fault);
        String shown = expected.flatMap(
                        words -> said.stream().filter(s -> s.contains(words)).findFirst())
                .orElse(
                        job.leftOutside()
                                ? "outside, of something else"
                                : "nothing outside: no step of it can see that");
        System.out.println("| " + plan + " | " + fault.key() + " | " + (job.leftOutside() ? "outside" : "inside")
                + " | " + shown + " |");
        expected.ifPresent(words ->
                assertThat(said).anySatisfy(sentence -> assertThat(sentence).contains(words)));
        if (expected.isEmpty() && fault != RigFault.SWAPPED_HOSES && fault != RigFault.UNDERSIZED_PIPE) {
            assertThat(job.leftOutside()).as(said.toString()).isFalse();
        }
    }

    private static List<String> everything(JobState job) {
        List<String> said = verdicts(job);
        said.addAll(JobPicture.of(job));
        job.notices().forEach(n -> said.add("notice: " + n.words()));
        job.steps().forEach(s -> {
            said.addAll(s.remarks());
            said.add(s.skipReason());
        });
        return said;
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
