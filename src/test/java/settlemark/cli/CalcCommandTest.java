package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** {@code settlemark calc} as a person and as a program call it. */
final class CalcCommandTest {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private static Ran calc(String... words) {
        List<String> all = new ArrayList<>(List.of("calc"));
        all.addAll(List.of(words));
        return Ran.of(new FakeProgram(), all.toArray());
    }

    /** Words between bars. */
    private static Ran line(String words) {
        return calc(words.split("\\|", -1));
    }

    private static JsonNode json(Ran ran) {
        assertThat(ran.err()).isEmpty();
        assertThat(ran.code()).isZero();
        return MAPPER.readTree(ran.out());
    }

    @Test
    void aResultForProgramsHasItsSixKeys() {
        JsonNode node = json(line("gas-flow|volume=2 +- 0.012 ft3|time=58 +- 0.2 s|--json"));
        assertThat(node.get("value").asDouble()).isCloseTo(3600 * 2 / 58.0, within(1e-9));
        assertThat(node.get("unit").asString()).isEqualTo("[cft_i]/h");
        double relative = Math.hypot(0.012 / 2, 0.2 / 58);
        assertThat(node.get("uncertainty").asDouble()).isCloseTo(3600 * 2 / 58.0 * relative, within(1e-6));
        assertThat(node.get("formula").asString()).isEqualTo("gas-flow");
        assertThat(node.get("source").asString()).isNotBlank();
        assertThat(node.get("warnings").isArray()).isTrue();
        assertThat(node.get("linear").asBoolean()).isTrue();
        assertThat(node.get("contributions").size()).isEqualTo(2);
    }

    @Test
    void aResultForPeopleSaysValueSourceAndValidity() {
        Ran ran = line("orifice-flow|drill=47|pressure=3.5 +- 0.03 inH2O|relative-density=0.60|coefficient=0.9");
        assertThat(ran.code()).isZero();
        assertThat(ran.out())
                .startsWith("17.4")
                .contains("(k = 2) ft\u00b3/h")
                .contains("from pressure: ")
                .contains("source: ")
                .contains("valid: ");
    }

    @Test
    void theListForProgramsNamesInputsWithUnitsResultUnitAndSource() {
        JsonNode list = json(line("list|--json"));
        assertThat(list.isArray()).isTrue();
        List<String> names = new ArrayList<>();
        for (JsonNode formula : list) {
            names.add(formula.get("name").asString());
            assertThat(formula.get("unit").asString()).isNotBlank();
            assertThat(formula.get("source").asString()).isNotBlank();
            for (JsonNode input : formula.get("inputs")) {
                assertThat(input.get("key").asString()).isNotBlank();
                assertThat(input.has("unit") || input.has("choices")).isTrue();
            }
        }
        assertThat(names)
                .doesNotHaveDuplicates()
                .contains(
                        "gas-flow",
                        "heat-input",
                        "pressure-factor",
                        "temperature-factor",
                        "orifice-flow",
                        "wobbe",
                        "standard-atmosphere",
                        "derate",
                        "airflow",
                        "pipe-capacity",
                        "pipe-drop",
                        "leak-rate",
                        "excess-air",
                        "co-air-free",
                        "flue-loss",
                        "fan-law",
                        "conformance",
                        "convert");
    }

    @Test
    void theListForPeopleHasEveryFormula() {
        Ran ran = line("list");
        assertThat(ran.code()).isZero();
        assertThat(ran.out()).contains("leak-rate volume drop time").contains("orifice-flow [diameter] [drill]");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "heat-input|flow=120 ft3/h|heating-value=1000 Btu/ft3; 120000; [Btu_IT]/h",
                "pressure-factor|atmospheric=14.73 psi|gauge=2 psi|base=14.73 psi; 1.13578; 1",
                "temperature-factor|temperature=20 degF|base=60 degF; 1.08340; 1",
                "orifice-flow|diameter=0.0785 in|pressure=3.5 inH2O|relative-density=0.6|coefficient=0.9; 17.4479; [cft_i]/h",
                "wobbe|heating-value=1000 Btu/ft3|relative-density=0.60; 1290.99; [Btu_IT]/[cft_i]",
                "standard-atmosphere|altitude=5000 ft; 12.2278; [psi]",
                "derate|altitude=5000 ft|rule=4-percent-per-1000-ft; 0.8; 1",
                "airflow|heat=80000 Btu/h|rise=55 degF|altitude=0 ft; 1346.80; [cft_i]/min",
                "pipe-drop|length=60 ft|diameter=0.824 in|flow=100 ft3/h|fuel=natural-gas; 0.27790; [in_i'H2O]",
                "leak-rate|volume=0.012 m3|drop=2.5 mbar|time=120 s; 0.00088823; m3/h",
                "excess-air|oxygen=4 %|fuel=methane; 21.059; %",
                "co-air-free|co=87 ppm|oxygen=5 %; 114.36; [ppm]",
                "fan-law|flow-ratio=1.2|pressure=0.50 inH2O; 0.72; [in_i'H2O]",
                "conformance|value=13.6|standard-uncertainty=1.8|lower=12.5|upper=16.3; 0.66263; 1",
                "convert|value=68 degF|to=Cel; 20; Cel"
            })
    void theNamesAndKeysThatOthersRelyOn(String call, double value, String unit) {
        JsonNode node = json(line(call + "|--json"));
        assertThat(node.get("value").asDouble()).isCloseTo(value, within(Math.abs(value) * 2e-4));
        assertThat(node.get("unit").asString()).isEqualTo(unit);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "gas-flow|volume=2 ft3; time is missing: time that it took, 1 to 86400 s",
                "gas-flow|volume=2 ft3|time=0.5 s; time must be 1 to 86400 s, got 0.5 s",
                "gas-flow|volume=2 psi|time=58 s; volume must be in a unit such as [cft_i], got [psi]",
                "gas-flow|volume=2 furlongs|time=58 s; volume has an unknown unit \"furlongs\"",
                "gas-flow|volume=2,5 ft3|time=58 s; (use a point)",
                "gas-flow|volume=two ft3|time=58 s; volume must be a number and its unit",
                "gas-flow|volume=2 ft3|time=58 s|sped=3 s; has no input \"sped\"; it has time, volume",
                "gas-flow|2 ft3; \"2 ft3\" must be key=value",
                "gas-flo; no formula is called \"gas-flo\"; settlemark calc list names them all",
                "excess-air|oxygen=4 %|fuel=coal; fuel must be one of natural-gas, methane, propane",
                "orifice-flow|pressure=3.5 inH2O|relative-density=0.6|coefficient=0.9; exactly one of diameter, drill",
                "convert|value=3.5 inH2O; to is missing",
                "convert|value=3.5 inH2O|to=degF; cannot convert",
                "convert|value=3.5 inH2O|to=furlongs; to has an unknown unit \"furlongs\"",
                "gas-flow|volume=2 ft3|time=58 s|--in|furlongs; --in has an unknown unit \"furlongs\"",
                "gas-flow|volume=2 ft3|time=58 s|--in|psi; --in psi: cannot convert"
            })
    void whatIsWrongIsSaidOnStderrWithExitCode2(String call, String said) {
        Ran ran = line(call);
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).startsWith("settlemark: ").contains(said);
    }

    @Test
    void everythingThatIsWrongIsSaidAtOnce() {
        Ran ran = line("heat-input|flow=-3 ft3/h|--json");
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.err().lines()).hasSize(2);
    }

    @Test
    void aFormulaAloneSaysWhatItAsksFor() {
        Ran ran = line("derate");
        assertThat(ran.code()).isZero();
        assertThat(ran.out())
                .contains("altitude: ")
                .contains("factor (may be left out): ")
                .contains("source: ");
    }

    @ParameterizedTest
    @ValueSource(strings = {"Gas-Flow", "GAS-FLOW"})
    void aNameMayBeCapitalised(String name) {
        assertThat(line(name + "|volume=2 ft3|time=58 s").code()).isZero();
    }

    @Test
    void theResultIsShownInTheUnitAskedFor() {
        JsonNode node = json(line("gas-flow|volume=2 ft3|time=58 s|--in|m3/h|--json"));
        assertThat(node.get("value").asDouble()).isCloseTo(3600 * 2 / 58.0 * 0.028316846592, within(1e-9));
        JsonNode rise = json(line("temperature-rise|heat=64000 Btu/h|airflow=1185 cfm|altitude=0 ft|--in|K|--json"));
        assertThat(rise.get("value").asDouble()).isCloseTo(64000 / (1.08 * 1185) / 1.8, within(1e-6));
    }

    @Test
    void limitsAreNamedWithTheirSources() {
        Ran ran = line("limits");
        assertThat(ran.code()).isZero();
        assertThat(ran.out())
                .contains("inlet-test-natural from 7 to 10 inH\u2082O")
                .contains("(from memory)")
                .contains("The rating plate and the local code override");
        JsonNode limits = json(line("limits|--json"));
        assertThat(limits.get(0).get("name").asString()).isEqualTo("inlet-test-natural");
        assertThat(limits.get(0).get("upper").asDouble()).isEqualTo(10);
        assertThat(limits.get(0).has("nominal")).isFalse();
    }

    @Test
    void aPressureBeyondTheWindowSaysToChangeTheOrifice() {
        JsonNode node = json(line("orifice-pressure|drill=47|flow=20 ft3/h|relative-density=0.6|coefficient=0.9"
                + "|window-lower=3.2 inH2O|window-upper=3.8 inH2O|--json"));
        assertThat(node.get("warnings").get(0).asString())
                .contains("change the orifice")
                .contains("not the pressure");
    }
}
