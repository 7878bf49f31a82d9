package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.document.Problem;
import settlemark.measure.Role;

final class PlanReaderTest {
    private static final String GOOD = """
            language: 1
            id: short-visit
            title: short visit
            stages:
              - { key: high, name: full fire }
            steps:
              - act: plate
              - act: zero
              - act: found
                stage: high
              - act: record
            """;

    private static PlanReading read(String text) {
        return PlanReader.read("draft.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    static List<String> shipped() {
        return Plans.keys();
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void everyShippedPlanIsGoodAndHasACautionAtEveryStep(String key) {
        JobPlan plan = Plans.get(key);
        assertThat(plan.key()).isEqualTo(key);
        assertThat(plan.steps()).allSatisfy(s -> {
            assertThat(s.caution()).isNotBlank();
            assertThat(s.instruction() + s.title() + s.name() + s.key()).doesNotContain("{");
        });
        assertThat(plan.steps().get(plan.steps().size() - 1).kind()).isEqualTo(StepKind.RECORD);
    }

    @Test
    void aStepIsTheCustomaryActWithWhatThePlanChanges() {
        JobPlan plan = read(GOOD.replace(
                        "stage: high", "stage: high\n    caution: Mind the dog.\n    required: [inlet]"))
                .orThrow();
        PlanStep step = plan.steps().get(2);
        assertThat(step.key()).isEqualTo("found-high");
        assertThat(step.title()).isEqualTo("As found, full fire");
        assertThat(step.caution()).startsWith("Hot flue").endsWith(" Mind the dog.");
        assertThat(step.required()).containsExactly(Role.INLET);
        assertThat(step.press()).isEqualTo("Burner is on full fire");
    }

    @Test
    void aPlansOwnLimitHasItsSource() {
        PlanStep step = read(GOOD.replace(
                        "stage: high",
                        "stage: high\n    limits: [{ of: rise, least: 20, most: 40, unit: \"[degF]\", source: heat"
                                + " pump coil }]"))
                .orThrow()
                .steps()
                .get(2);
        assertThat(step.limits()).singleElement().satisfies(l -> {
            assertThat(l.subject()).isEqualTo("rise");
            assertThat(l.limit().lower()).isEqualTo(20);
            assertThat(l.limit().source()).isEqualTo("heat pump coil");
        });
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "act: zero|act: zeroing|8:10|no act is called \"zeroing\"",
                "stage: high|stage: low|10:12|no stage is called \"low\"",
                "stage: high|key: f|9:5|step \"f\" needs its firing stage",
                "  - act: zero|  - act: lock-up|8:5|a pressure is read before any zero",
                "  - act: record|  - act: shut|11:5|the last act is \"record\"",
                "  - act: plate|  - act: probes|7:5|the first act is \"plate\"",
                "act: zero|{ act: zero, required: [] }|8:5|say which channels must settle",
                "stage: high|limits: [{ of: rise, most: 3, unit: Pa, source: x }]|9:5|write it in a unit of temperature",
                "title: short visit|titel: short visit|3:1|titel",
                "act: zero|act: zero\\n  - act: zero|9:5|a second step \"zero\"",
                "act: zero|act: let-by|8:5|a pressure is read before any zero",
            })
    void whatIsWrongIsSaidWithItsPlace(String good, String bad, String place, String words) {
        List<Problem> problems =
                read(GOOD.replace(good, bad.replace("\\n", "\n"))).problems();
        assertThat(problems)
                .anySatisfy(p -> assertThat(p.toString())
                        .startsWith("draft.yaml:" + place + ": ")
                        .contains(words));
    }

    @Test
    void aPlateForAnotherGasOrWithoutTheStageDoesNotFit() {
        assertThat(Plans.get("two-stage-natural-gas").misfits(Bench.PLATE)).isEmpty();
        assertThat(Plans.get("two-stage-propane").misfits(Bench.PLATE))
                .singleElement()
                .asString()
                .contains("not for natural gas");
        assertThat(Plans.get("modulating-natural-gas").misfits(Bench.PLATE))
                .singleElement()
                .asString()
                .contains("\"middle\"");
    }

    @Test
    void anUnknownKeyNamesThoseThatThereAre() {
        assertThatThrownBy(() -> Plans.get("steam"))
                .hasMessageContaining("\"steam\"")
                .hasMessageContaining("supply-check");
    }
}
