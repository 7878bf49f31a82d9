package settlemark.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.measure.Quantity;
import settlemark.measure.Unit;

/** Where people go wrong with these numbers: a warning, a refusal, or another figure. */
class TrapsTest {
    private static double value(String call) throws RefusedInputException {
        return Calls.call(call).quantity().value();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "gas-flow|volume=0.5 ft3|time=20 s; less than 30 s",
                "heat-input|flow=80 ft3/h|heating-value=900 Btu/ft3; do not correct the flow or derate on top",
                "pressure-factor|atmospheric=14.4 psi|gauge=7 inH2O|base=14.73 psi; corrects its pressure itself",
                "temperature-factor|temperature=40 degF|base=60 degF; temperature-compensated",
                "input-agreement|first=80 ft3/h|second=77 ft3/h; clock a third",
                "input-against-plate|input=103000 Btu/h|plate=100000 Btu/h|altitude=0 ft|rule=none; never exceed",
                "input-against-plate|input=97000 Btu/h|plate=100000 Btu/h|altitude=0 ft|rule=none; 3.0 % below the plate",
                "input-against-plate|input=80000 Btu/h|plate=80000 Btu/h|altitude=5000 ft|rule=none; no derate",
                "derate|altitude=5000 ft|rule=nfpa-54; the rating plate and the maker's instructions win",
                "orifice-pressure|drill=47|flow=14 ft3/h|relative-density=0.6|coefficient=0.9|window-lower=3 inH2O"
                        + "|window-upper=4 inH2O; to a smaller one, not the pressure",
                "orifice-pressure|drill=47|flow=20 ft3/h|relative-density=0.6|coefficient=0.9|window-upper=4 inH2O"
                        + "; to a larger one, not the pressure",
                "orifice-pressure|drill=47|flow=17.4 ft3/h|relative-density=0.6|coefficient=0.9|window-lower=3 inH2O"
                        + "; stay within the window",
                "orifice-drill|flow=17 ft3/h|pressure=3.5 inH2O|relative-density=0.6|coefficient=0.9; never drill out",
                "component-drop|before=-0.3 inH2O|after=-0.1 inH2O; the ports are swapped",
                "blower-rise|rise=60 degF|flow-ratio=1.2; the square of the airflow",
                "blower-flow-ratio|rise=50 degF|wanted=60 degF; watch the limit",
                "blower-flow-ratio|rise=60 degF|wanted=50 degF; check it against the plate",
                "rise-position|rise=75 degF|lower=40 degF|upper=70 degF; above the plate's range",
                "rise-position|rise=35 degF|lower=40 degF|upper=70 degF; below the plate's range",
                "airflow|heat=64000 Btu/h|rise=50 degF|altitude=0 ft; unless combustion was measured",
                "leak-rate|volume=0.012 m3|drop=2 mbar|time=2 min; atmospheric pressure taken as 1013.25 mbar",
                "leak-rate|volume=0.012 m3|drop=-2 mbar|time=2 min; the pressure rose",
                "leak-rate|volume=0.012 m3|drop=-2 mbar|time=2 min|atmospheric=1000 mbar; the pressure rose",
                "let-by|volume=0.02 ft3|drop=-1 inH2O|time=60 s|atmospheric=14.6 psi; the cock lets gas by",
                "let-by|volume=0.02 ft3|drop=1 inH2O|time=60 s|atmospheric=14.6 psi; no warming given",
                "let-by-manifold|let-by=7 ft3/h|flow=78 ft3/h|pressure=3.5 inH2O; does not prove a tight valve",
                "co-air-free|co=500 ppm|oxygen=6 %; shut off, tag",
                "co-air-free|co=100 ppm|oxygen=6 %; many field protocols act",
                "flue-loss|stack=180 degC|air=20 degC|oxygen=5 %|fuel=propane; not an efficiency of a condensing appliance",
                "flue-loss|stack=180 degC|air=20 degC|carbon-dioxide=9 %|fuel=natural-gas; not an efficiency",
                "excess-air|oxygen=5 %|fuel=natural-gas; reckoned as methane"
            })
    void theWarningIsSaid(String call, String said) throws RefusedInputException {
        assertThat(Calls.call(call).warnings()).anyMatch(warning -> warning.contains(said));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "gas-flow|volume=2 ft3|time=60 s",
                "input-agreement|first=80 ft3/h|second=79 ft3/h",
                "input-against-plate|input=80500 Btu/h|plate=100000 Btu/h|altitude=5000 ft|rule=nfpa-54",
                "orifice-pressure|drill=47|flow=17.4 ft3/h|relative-density=0.6|coefficient=0.9|window-lower=3 inH2O"
                        + "|window-upper=4 inH2O",
                "component-drop|before=-0.1 inH2O|after=-0.3 inH2O",
                "rise-position|rise=55 degF|lower=40 degF|upper=70 degF",
                "leak-rate|volume=0.012 m3|drop=2 mbar|time=2 min|atmospheric=1000 mbar",
                "co-air-free|co=20 ppm|oxygen=6 %",
                "excess-air|oxygen=5 %|fuel=methane"
            })
    void soundInputsRaiseNoWarning(String call) throws RefusedInputException {
        assertThat(Calls.call(call).warnings()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "3.5, 0.1, 3.2, 3.8, pass",
        "3.25, 0.1, 3.2, 3.8, conditional pass",
        "3.1, 0.1, 3.2, 3.8, conditional fail",
        "2.9, 0.1, 3.2, 3.8, fail",
        "4.1, 0.1, 3.2, 3.8, fail",
        "3.5, 0.4, 3.2, 3.8, cannot tell",
        "3.5, 0.125, 3.25, 4, pass",
        "3.0, 0.125, 3.25, 4, conditional fail"
    })
    void theVerdictHasFiveOutcomes(double value, double u, double lower, double upper, String verdict)
            throws RefusedInputException {
        String call =
                "conformance|value=" + value + "|standard-uncertainty=" + u + "|lower=" + lower + "|upper=" + upper;
        assertThat(Calls.call(call).warnings().get(0)).startsWith("verdict: " + verdict);
    }

    @Test
    void oneLimitIsEnough() throws RefusedInputException {
        assertThat(value("conformance|value=3|standard-uncertainty=0.1|lower=2.8"))
                .isCloseTo(0.97725, within(1e-5));
        assertThat(Calls.call("conformance|value=3|standard-uncertainty=0.1|upper=2.5")
                        .warnings())
                .containsExactly("verdict: fail");
    }

    @Test
    void theDerateIsAStepAndNotARamp() throws RefusedInputException {
        assertThat(value("derate|altitude=2000 ft|rule=nfpa-54")).isEqualTo(1);
        assertThat(value("derate|altitude=2001 ft|rule=nfpa-54")).isCloseTo(0.91996, within(1e-9));
        assertThat(value("derate|altitude=5000 ft|rule=none")).isEqualTo(1);
        assertThat(value("derate|altitude=5000 ft|rule=maker|factor=0.9")).isEqualTo(0.9);
    }

    @Test
    void aHeatingValueAsDeliveredWithACorrectedFlowIsFarOff() throws RefusedInputException {
        double once =
                value("clocked-input|volume=2 ft3|time=60 s|heating-value=1000 Btu/ft3|basis=standard|factor=0.84");
        double delivered = value("clocked-input|volume=2 ft3|time=60 s|heating-value=840 Btu/ft3|basis=as-delivered");
        assertThat(once).isCloseTo(delivered, within(1e-9 * once));
        // The same with both: a sixth too low, which the formula refuses.
        assertThatThrownBy(
                        () -> value(
                                "clocked-input|volume=2 ft3|time=60 s|heating-value=840 Btu/ft3|basis=as-delivered|factor=0.84"))
                .isInstanceOf(RefusedInputException.class);
    }

    @Test
    void aMeterThatCorrectsItselfIsNotCorrectedAgain() throws RefusedInputException {
        String site = "|atmospheric=12.23 psi|gauge=0.25 psi|base-pressure=14.73 psi|base-temperature=60 degF";
        double pressure = 12.48 / 14.73;
        double temperature = 519.67 / 499.67;
        assertThat(value("standard-flow|flow=100 ft3/h|meter=plain|temperature=40 degF" + site))
                .isCloseTo(100 * pressure * temperature, within(1e-6));
        assertThat(value("standard-flow|flow=100 ft3/h|meter=temperature-compensated" + site))
                .isCloseTo(100 * pressure, within(1e-6));
        assertThat(value("standard-flow|flow=100 ft3/h|meter=fixed-factor|temperature=40 degF" + site))
                .isCloseTo(100 * temperature, within(1e-6));
    }

    @Test
    void theSimpleExcessAirReadsHigher() throws RefusedInputException {
        double simple = 4.0 / (21 - 4.0) * 100;
        assertThat(simple / value("excess-air|oxygen=4 %|fuel=methane")).isCloseTo(1 / 0.895, within(1e-3));
        assertThat(simple / value("excess-air|oxygen=4 %|fuel=propane")).isCloseTo(1 / 0.916, within(1e-3));
    }

    @Test
    void theDialTableDoesNotInterpolate() throws RefusedInputException {
        double between = (value("gas-flow|volume=1 ft3|time=40 s") + value("gas-flow|volume=1 ft3|time=50 s")) / 2;
        assertThat(between).isGreaterThan(value("gas-flow|volume=1 ft3|time=45 s"));
    }

    @Test
    void aTenthOfPressureIsATwentiethOfInput() throws RefusedInputException {
        assertThat(value("input-ratio|pressure=3.15 inH2O|from=3.5 inH2O")).isCloseTo(0.949, within(5e-4));
        assertThat(value("input-ratio|pressure=3.85 inH2O|from=3.5 inH2O")).isCloseTo(1.049, within(5e-4));
    }

    @Test
    void aWordForANumberAndANumberForAWordAreNamed() {
        Formula formula = Formulas.find("excess-air").orElseThrow();
        Inputs swapped = Inputs.none().with("oxygen", "much").with("fuel", new Quantity(1, 0, Unit.ucum("1")));
        assertThatThrownBy(() -> formula.of(swapped))
                .hasMessageContaining("oxygen must be a number with a unit such as %")
                .hasMessageContaining("fuel must be one of natural-gas, methane, propane, got a number");
    }

    @Test
    void valueAndLimitMustBeOfOneKind() {
        assertThatThrownBy(() -> value("acceptance-limit|limit=3.2 inH2O|standard-uncertainty=0.02 degF|side=lower"))
                .isInstanceOf(RefusedInputException.class)
                .hasMessageContaining("standard-uncertainty must be in a unit of the same kind as limit, [in_i'H2O]");
    }

    @Test
    void aKindWithoutANameIsComparedByItsUnit() throws RefusedInputException {
        String limit = "acceptance-limit|limit=1000 cd|side=lower|standard-uncertainty=";
        assertThat(value(limit + "5 cd")).isEqualTo(1010);
        assertThatThrownBy(() -> value(limit + "5 mol")).hasMessageContaining("must be in a unit of the same kind");
    }

    @Test
    void aFormulaTellsOfItself() {
        Formula formula = Formulas.find("wobbe").orElseThrow();
        assertThat(formula.words()).isEqualTo("Wobbe index");
        assertThat(formula.validity()).isNotBlank();
        assertThat(formula.source()).contains("ISO 6976");
        assertThat(formula.customaryUnit()).isEqualTo(Unit.ucum("[Btu_IT]/[cft_i]"));
        assertThat(formula.metricUnit()).isEqualTo(Unit.ucum("MJ/m3"));
        assertThat(Formulas.find("wobble")).isEmpty();
    }

    @Test
    void anEmptyRangeAndALoadWithoutFlowAreRefused() {
        Unit one = Unit.ucum("1");
        assertThatThrownBy(() -> new Parameter.Number("x", "x", false, one, one, 2, 1))
                .hasMessageContaining("the range of x is empty");
        Quantity pascal = new Quantity(1000, 1, Unit.PASCAL);
        assertThatThrownBy(() -> new SupplyReadings.Others(pascal, new Quantity(0, 0, Unit.ucum("m3/h"))))
                .hasMessageContaining("must be above 0");
    }

    @Test
    void aResultThatIsNoNumberIsRefusedWithTheValidity() {
        Formula formula = FormulaBuilder.formula("root", "root of a number")
                .number("x", "the number", "1", "1", -1, 1)
                .source("none")
                .validity("x not negative")
                .givesNumber(v -> Math.sqrt(v.of("x")));
        Inputs inputs = Inputs.none().with("x", new Quantity(-0.5, 0, Unit.ucum("1")));
        assertThatThrownBy(() -> formula.of(inputs))
                .isInstanceOf(RefusedInputException.class)
                .hasMessage("root has no result for these inputs; x not negative");
    }

    @Test
    void aKeyThatTheFormulaDidNotDeclareIsAFault() {
        Values none = new Values(Map.of(), new double[0], Map.of());
        assertThatThrownBy(() -> none.of("x")).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> none.choice("x")).isInstanceOf(IllegalStateException.class);
        assertThat(none.of("x", 3)).isEqualTo(3);
        assertThat(none.choice("x", "y")).isEqualTo("y");
    }

    @ParameterizedTest
    @CsvSource({"1234567, 1234570", "0.1, 0.1", "0, 0", "86400, 86400", "1e300, 1E+300", "Infinity, Infinity"})
    void figuresInMessagesAreShort(double number, String said) {
        assertThat(Significant.digits(number)).isEqualTo(said);
    }
}
