package settlemark.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Warnings at the figure where they begin, and what a result says beside its value. */
final class SaidByFormulasTest {
    private static final String SITE = "|atmospheric=14.4 psi|gauge=0.25 psi|base-pressure=14.73 psi";

    @Test
    void everyGroupOfFormulasIsInTheList() {
        assertThat(Stream.of(
                                GasFormulas.all(),
                                InputFormulas.all(),
                                TestGasFormulas.all(),
                                CompositionFormulas.all(),
                                OrificeFormulas.all(),
                                AltitudeFormulas.all(),
                                AirFormulas.all(),
                                BlowerFormulas.all(),
                                PipeFormulas.all(),
                                TightnessFormulas.all(),
                                LetByFormulas.all(),
                                CombustionFormulas.all(),
                                WaterFormulas.all(),
                                DecisionFormulas.all())
                        .peek(group -> assertThat(group).isNotEmpty())
                        .flatMap(List::stream)
                        .map(Formula::name))
                .containsExactlyElementsOf(
                        Formulas.all().stream().map(Formula::name).toList());
        assertThat(Formulas.all().get(0)).hasToString("gas-flow");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "excess-air|oxygen=5 %",
                "carbon-dioxide|oxygen=5 %",
                "flue-oxygen|carbon-dioxide=9 %",
                "stoichiometric-air",
                "dry-flue-gas",
                "wet-flue-gas",
                "flue-dew-point|oxygen=5 %",
                "condensate|heat-input=80000 Btu/h|heating-value=1000 Btu/ft3"
            })
    void naturalGasIsReckonedAsMethaneAndThatIsSaid(String call) throws RefusedInputException {
        Result natural = Calls.call(call + "|fuel=natural-gas");
        Result methane = Calls.call(call + "|fuel=methane");
        assertThat(natural.warnings()).containsExactly("natural gas reckoned as methane");
        assertThat(methane.warnings()).isEmpty();
        assertThat(natural.quantity()).isEqualTo(methane.quantity());
        assertThat(Calls.call(call + "|fuel=propane").warnings()).isEmpty();
    }

    /** Each pair of calls lies closely around the figure where the warning begins. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "gas-flow|volume=1 ft3|time=30 s; gas-flow|volume=1 ft3|time=29.99 s; less than 30 s",
                "co-air-free|co=99.99 ppm|oxygen=0 %; co-air-free|co=100.01 ppm|oxygen=0 %; many field protocols act",
                "co-air-free|co=399.99 ppm|oxygen=0 %; co-air-free|co=400.01 ppm|oxygen=0 %; shut off, tag",
                "input-against-plate|input=101.99 kW|plate=100 kW|altitude=0 ft|rule=none"
                        + ";input-against-plate|input=102.01 kW|plate=100 kW|altitude=0 ft|rule=none; never exceed",
                "input-against-plate|input=98.01 kW|plate=100 kW|altitude=0 ft|rule=none"
                        + ";input-against-plate|input=97.99 kW|plate=100 kW|altitude=0 ft|rule=none; below the plate",
                "input-against-plate|input=100 kW|plate=100 kW|altitude=1999 ft|rule=none"
                        + ";input-against-plate|input=100 kW|plate=100 kW|altitude=2001 ft|rule=none; no derate",
                "input-agreement|first=100 ft3/h|second=98.1 ft3/h"
                        + ";input-agreement|first=100 ft3/h|second=97.9 ft3/h; clock a third",
                "component-drop|before=-20 Pa|after=-20 Pa; component-drop|before=-20 Pa|after=-19.9 Pa; ports are swapped",
                "blower-flow-ratio|rise=50 degF|wanted=50 degF; blower-flow-ratio|rise=50 degF|wanted=50.1 degF; less air",
                "rise-position|rise=70 degF|lower=40 degF|upper=70 degF"
                        + ";rise-position|rise=70.1 degF|lower=40 degF|upper=70 degF; above the plate's range",
                "rise-position|rise=40 degF|lower=40 degF|upper=70 degF"
                        + ";rise-position|rise=39.9 degF|lower=40 degF|upper=70 degF; below the plate's range",
                "leak-rate|volume=0.012 m3|drop=0 mbar|time=2 min|atmospheric=1000 mbar"
                        + ";leak-rate|volume=0.012 m3|drop=-0.01 mbar|time=2 min|atmospheric=1000 mbar; the pressure rose",
                "leak-rate|volume=0.012 m3|drop=0 mbar|time=2 min"
                        + ";leak-rate|volume=0.012 m3|drop=-0.01 mbar|time=2 min; the pressure rose",
                "conformance|value=3.5|standard-uncertainty=0.375|lower=3.25|upper=4"
                        + ";conformance|value=3.5|standard-uncertainty=0.376|lower=3.25|upper=4; cannot tell",
                "conformance|value=3.25|standard-uncertainty=0.1|lower=3.25|upper=4"
                        + ";conformance|value=3.24|standard-uncertainty=0.1|lower=3.25|upper=4; conditional fail"
            })
    void aWarningBeginsAtItsFigure(String within, String beyond, String said) throws RefusedInputException {
        assertThat(Calls.call(within).warnings()).noneMatch(warning -> warning.contains(said));
        assertThat(Calls.call(beyond).warnings()).anyMatch(warning -> warning.contains(said));
    }

    @Test
    void theInputPressureHasItsWindowToo() throws RefusedInputException {
        String call = "input-pressure|heating-value=1000 Btu/ft3|orifices=4|drill=47|relative-density=0.6"
                + "|coefficient=0.9|window-lower=3 inH2O|window-upper=4 inH2O|input=";
        assertThat(Calls.call(call + "68000 Btu/h").warnings()).isEmpty();
        assertThat(Calls.call(call + "55000 Btu/h").warnings())
                .singleElement()
                .asString()
                .startsWith("below the window: change the orifice to a smaller one");
        assertThat(Calls.call(call + "80000 Btu/h").warnings())
                .singleElement()
                .asString()
                .startsWith("above the window: change the orifice to a larger one");
    }

    @Test
    void aStandardFlowSaysWhichHeatingValueGoesWithIt() throws RefusedInputException {
        assertThat(Calls.call("standard-flow|flow=80 ft3/h|meter=plain|temperature=50 degF|base-temperature=60 degF"
                                + SITE)
                        .warnings())
                .containsExactly("for a heating value at the same standard conditions; not for one as delivered");
    }

    /**
     * Siegert with carbon dioxide, by hand: 130 K x (0.37 / 9 + 0.009) and 130 K x (0.42 / 9 + 0.008). A stage's pressure:
     * 3.5 x 0.7 x 0.7. Orifices for another gas: 1300/2500 x sqrt(3.5/10). 1.225 kg/m3 at sea level; at 5000 ft 0.8616
     * of it (US Standard Atmosphere 1976, table, 1.0555 kg/m3 at 1524 m). 240 V and 40 A are 32 756.6 Btu/h, over 1.08 x
     * 50 degF. A test's time: 0.012 m3 x 0.2 mbar / (1000 mbar x 0.0005 m3/h). The others are one sum or one quotient.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "flue-loss|stack=150 degC|air=20 degC|carbon-dioxide=9 %|fuel=natural-gas; 6.51444",
                "flue-loss|stack=150 degC|air=20 degC|carbon-dioxide=9 %|fuel=methane; 6.51444",
                "flue-loss|stack=150 degC|air=20 degC|carbon-dioxide=9 %|fuel=propane; 7.10667",
                "flue-loss|stack=150 degC|air=20 degC|oxygen=5 %|fuel=propane; 6.15875",
                "stage-pressure|pressure=3.5 inH2O|rate=0.7; 1.715",
                "conversion-area|wobbe=1300 Btu/ft3|new-wobbe=2500 Btu/ft3|pressure=3.5 inH2O|new-pressure=10 inH2O; 0.307636",
                "electric-airflow|voltage=240 V|current=40 A|rise=50 degF|altitude=0 ft; 606.603",
                "test-time|volume=0.012 m3|leak=0.0005 m3/h|readable=0.2 mbar|atmospheric=1000 mbar; 0.288",
                "external-static|supply=0.3 inH2O|return=-0.2 inH2O; 0.5",
                "component-drop|before=-0.1 inH2O|after=-0.3 inH2O; 0.2",
                "drop-share|drop=0.2 inH2O|external-static=0.5 inH2O; 40",
                "blower-rise|rise=60 degF|flow-ratio=1.2; 50",
                "blower-flow-ratio|rise=50 degF|wanted=60 degF; 0.833333",
                "rise-position|rise=46 degF|lower=40 degF|upper=70 degF; 0.2",
                "rise-target|lower=35 degF|upper=75 degF; 60",
                "rise-target|lower=40 degF|upper=60 degF; 55",
                "input-agreement|first=100 ft3/h|second=98 ft3/h; 2.0202",
                "input-agreement|first=98 ft3/h|second=100 ft3/h; 2.0202",
                "standard-air-density|altitude=0 m; 1.225",
                "standard-air-density|altitude=1524 m; 1.0555"
            })
    void figuresByHand(String call, double expected) throws RefusedInputException {
        assertThat(Calls.call(call).quantity().value()).isCloseTo(expected, within(2e-4 * expected));
    }

    /**
     * Methane with 5 % oxygen: 2 of water in 8.5238 dry flue gas, 2.6637 of air beyond and the water give 15 367 Pa of
     * vapour; by Buck's equation (1996, from memory) that is saturated at 54.47 Cel.
     */
    @Test
    void airBeyondTheNeedLowersTheDewPoint() throws RefusedInputException {
        assertThat(Calls.call("flue-dew-point|oxygen=5 %|fuel=methane")
                        .quantity()
                        .value())
                .isCloseTo(54.47, within(0.1));
    }

    @Test
    void drillsEndWhereNoneIsNear() {
        String call = "orifice-drill|pressure=3.5 inH2O|relative-density=0.6|coefficient=0.9|flow=";
        // The flow of drill 1, 0.228 in, is 147.2 ft3/h and of drill 80, 0.0135 in, 0.516 ft3/h; 3 % of the diameter
        // more.
        assertThatThrownBy(() -> Calls.call(call + "157 ft3/h")).hasMessageContaining("no number drill is near");
        assertThatThrownBy(() -> Calls.call(call + "0.48 ft3/h"))
                .hasMessageContaining("no number drill is near: the orifice would be 0.0130");
    }

    @Test
    void drillsAreTakenToThreePercentBeyondTheLast() throws RefusedInputException {
        String call = "orifice-drill|pressure=3.5 inH2O|relative-density=0.6|coefficient=0.9|flow=";
        assertThat(Calls.call(call + "155 ft3/h").quantity().value()).isEqualTo(1);
        assertThat(Calls.call(call + "0.49 ft3/h").quantity().value()).isEqualTo(80);
        assertThat(Calls.call(call + "17 ft3/h").quantity().value()).isEqualTo(47);
    }

    @Test
    void whatIsMissingIsNamedWithItsRangeOrItsWords() {
        assertThatThrownBy(() -> Calls.call("excess-air|fuel=methane"))
                .hasMessageContaining("oxygen is missing: in dry flue gas, 0 to 20.5 %");
        assertThatThrownBy(() -> Calls.call("excess-air|oxygen=5 %"))
                .hasMessageContaining("fuel is missing: the gas, one of natural-gas, methane, propane");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rise-target|lower=50 degF|upper=50 degF",
                "rise-position|rise=50 degF|lower=50 degF|upper=50 degF",
                "conformance|value=3|standard-uncertainty=0.1|lower=3|upper=3"
            })
    void aRangeWithoutWidthIsRefused(String call) {
        assertThatThrownBy(() -> Calls.call(call)).hasMessageContaining("upper must be above lower");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "ORIFICE; 1.06; +6.0 %; the orifices are smaller than thought",
                "ORIFICE; 0.94; -6.0 %; the orifices are larger than thought",
                "METER; 1.1; +10.0 %; another load or a pilot was on",
                "METER; 0.9; -10.0 %; turns were missed",
                "METER; 2.05; +105.0 %; another dial",
                "METER; 2.07; +107.0 %; another load",
                "METER; 0.49; -51.0 %; another dial",
                "METER; 3.9; +290.0 %; another dial",
                "METER; 0.255; -74.5 %; another dial",
                "HEATING_VALUE; 1.1; +10.0 %; gross and net are mixed up",
                "HEATING_VALUE; 0.9; -10.0 %; gross and net are mixed up",
                "HEATING_VALUE; 1.2; +20.0 %; its basis differs",
                "AIR; 1.2; +20.0 %; another blower tap"
            })
    void aLookThatDisagreesHasAMeaning(Reconciliation.Look look, double ratio, String by, String meaning) {
        assertThat(Meanings.of(look, ratio)).contains(by + " against the others: ", meaning);
    }

    @Test
    void whatEachInputAddsComesWithTheLargestFirst() throws RefusedInputException {
        Result result = Calls.call("heat-input|flow=80+-0.4 ft3/h|heating-value=1000+-20 Btu/ft3");
        assertThat(result.quantity().standardUncertainty()).isCloseTo(Math.hypot(1600, 400), within(0.1));
        assertThat(result.contributions())
                .extracting(Result.Contribution::key)
                .containsExactly("heating-value", "flow");
        assertThat(result.contributions().get(0).standardUncertainty()).isCloseTo(1600, within(0.1));
        assertThat(result.contributions().get(1).standardUncertainty()).isCloseTo(400, within(0.1));
        // Watts per joule in a cubic metre are cubic metres a second: 80 ft3/h.
        assertThat(result.contributions().get(0).sensitivity()).isCloseTo(80 * 0.028316846592 / 3600, within(1e-9));
        assertThat(result.linear()).isTrue();
        assertThat(Calls.call("heat-input|flow=80+-0.4 ft3/h|heating-value=1000 Btu/ft3")
                        .contributions())
                .extracting(Result.Contribution::key)
                .containsExactly("flow");
    }

    @Test
    void aSpreadThatIsTooWideIsSaid() throws RefusedInputException {
        Result wide = Calls.call("gas-flow|volume=2 ft3|time=100+-30 s");
        assertThat(wide.linear()).isFalse();
        assertThat(wide.warnings())
                .anyMatch(warning -> warning.startsWith("the result does not follow its inputs in a straight line"));
        assertThat(Calls.call("gas-flow|volume=2 ft3|time=100+-1 s").linear()).isTrue();
    }

    @Test
    void theResultIsMetricUnlessAnInputIsCustomary() throws RefusedInputException {
        assertThat(Calls.call("gas-flow|volume=0.05 m3|time=100 s")
                        .quantity()
                        .unit()
                        .code())
                .isEqualTo("m3/h");
        assertThat(Calls.call("gas-flow|volume=2 ft3|time=100 s")
                        .quantity()
                        .unit()
                        .code())
                .isEqualTo("[cft_i]/h");
        assertThat(Calls.call("component-drop|before=-20 Pa|after=-60 Pa")
                        .quantity()
                        .unit()
                        .code())
                .isEqualTo("Pa");
    }
}
