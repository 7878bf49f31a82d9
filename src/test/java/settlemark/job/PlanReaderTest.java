package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.document.Problem;
import settlemark.measure.Role;
import settlemark.settle.PublishedRule;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

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

    @Test
    void aStepCanDemandARuleBesideTheProofOrAlone() {
        String both = "stage: high\n    settled: { rule: three-readings-5-degf }";
        PlanStep step =
                read(GOOD.replace("stage: high", both)).orThrow().steps().get(2);
        assertThat(step.settledBy()).isEqualTo(new SettledBy(Optional.of(PublishedRule.THREE_READINGS_5_DEGF), false));
        assertThat(step.settledBy().rule(Role.SUPPLY)).contains(PublishedRule.THREE_READINGS_5_DEGF);
        assertThat(step.settledBy().rule(Role.MANIFOLD)).isEmpty();
        assertThat(step.settledBy().needsProof(Role.SUPPLY)).isTrue();
        String alone = "stage: high\n    settled: { rule: rates-2-percent, alone: true }";
        SettledBy by = read(GOOD.replace("stage: high", alone))
                .orThrow()
                .steps()
                .get(2)
                .settledBy();
        assertThat(by.needsProof(Role.MANIFOLD)).isFalse();
        assertThat(by.needsProof(Role.SUPPLY)).isTrue();
        assertThat(read(GOOD).orThrow().steps().get(2).settledBy()).isEqualTo(SettledBy.PROOF);
        assertThatThrownBy(() -> new SettledBy(Optional.empty(), true)).hasMessageContaining("name the rule");
    }

    @Test
    void aRuleThatCannotBeAskedIsRefusedWithItsRemedy() {
        assertThat(read(GOOD.replace("stage: high", "stage: high\n    settled: { rule: four-readings }"))
                        .problems())
                .singleElement()
                .satisfies(p -> assertThat(p.toString())
                        .contains("draft.yaml:9")
                        .contains("no rule is called \"four-readings\"; there are three-readings-3-degf"));
        String pressures = "stage: high\n    required: [inlet]\n    settled: { rule: three-readings-3-degf }";
        assertThat(read(GOOD.replace("stage: high", pressures)).problems())
                .singleElement()
                .satisfies(p -> assertThat(p.toString()).contains("needs no channel that its rule is about"));
        String words = "stage: high\n    settled: three-readings-3-degf";
        assertThat(read(GOOD.replace("stage: high", words)).problems())
                .singleElement()
                .satisfies(p -> assertThat(p.toString()).contains("settled must be a mapping of keys to values"));
    }

    @Test
    void aTrappedPressureIsCalledSettledByNoRule() {
        String hold = GOOD.replace(
                "  - act: found\n    stage: high\n",
                "  - act: tightness\n    hold: 60\n    settled: { rule: rates-2-percent }\n");
        assertThat(read(hold).problems())
                .anySatisfy(p -> assertThat(p.toString()).contains("watches a trapped pressure"));
    }

    @Test
    void aPlanSetsTheDetectorsInAnyUnit() {
        SettleChoices set = read(GOOD.replace("steps:", """
                        settled:
                          gas: { drift: 2.49, band: 10, unit: Pa, windows: [20, 30], hunting: 10 }
                          air: { horizon: 120, dwell: 0 }
                        steps:""")).orThrow().settle();
        assertThat(set.settings(SettleKind.GAS).driftLimit()).isCloseTo(0.009996, within(1e-6));
        assertThat(set.settings(SettleKind.GAS).windowSeconds()).containsExactly(20.0, 30.0);
        assertThat(set.of(SettleKind.GAS).huntingSeconds()).isEqualTo(10);
        assertThat(set.settings(SettleKind.AIR).horizonSeconds()).isEqualTo(120);
        assertThat(set.settings(SettleKind.AIR).dwellSeconds()).isZero();
        assertThat(set.settings(SettleKind.STACK)).isEqualTo(SettleSettings.defaults(SettleKind.STACK));
        assertThat(read(GOOD).orThrow().settle().isNone()).isTrue();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "gas: { drift: 1, unit: Cel } | unit \"Cel\" is no unit of pressure; write its UCUM code, such as [in_i'H2O]",
                "air: { drift: 1, unit: furlong } | unit \"furlong\" is no unit of temperature",
                "gas: { windows: [40, 20] } | gas windows must be seconds, the shortest first, got [40.0, 20.0]",
                "gas: { drift: 0 } | drift must be more than 0, got 0",
                "gas: { dwell: -1 } | dwell must be at least 0, got -1",
                "water: { drift: 1 } | water",
                "gas: { horizon: 5 } | gas horizon 5 s is shorter than the shortest window of 20 s; expected at least 20 s",
                "gas: { windows: [20, 40], hunting: 15 } | under three periods of hunting of 15 s; expected at least 45 s",
                "gas: { windows: [4] } | gas windows must grow, from over 8",
            })
    void settingsThatCannotWorkAreRefused(String set, String words) {
        PlanReading reading = read(GOOD.replace("steps:", "settled: { " + set + " }\nsteps:"));
        assertThat(reading.plan()).isEmpty();
        assertThat(reading.problems())
                .anySatisfy(
                        p -> assertThat(p.toString()).contains("draft.yaml:").contains(words));
    }

    @Test
    void aRecordIsHeadedByWhatItsPlanReads() {
        assertThat(Plans.keys())
                .extracting(key -> key + ": " + Plans.get(key).recordTitle())
                .containsExactlyInAnyOrder(
                        "two-stage-natural-gas: Gas and air readings, as found and as left",
                        "one-stage-natural-gas: Gas and air readings, as found and as left",
                        "modulating-natural-gas: Gas and air readings, as found and as left",
                        "two-stage-propane: Gas and air readings, as found and as left",
                        "conversion-to-propane: Gas and air readings, as found and as left",
                        "boiler-gas-side: Gas readings, as found and as left",
                        "yearly-re-check: Gas and air readings, as found",
                        "supply-check: Gas supply readings",
                        "tightness-and-let-by: Tightness and let-by");
    }
}
