package settlemark.calc;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Results that only rise or only fall with an input, as physics says. */
class MonotoneTest {
    private static final int STEPS = 200;

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "gas-flow|time=58 s; volume; 0.5; 10; ft3; 1",
                "gas-flow|volume=2 ft3; time; 20; 200; s; -1",
                "heat-input|heating-value=1030 Btu/ft3; flow; 10; 500; ft3/h; 1",
                "orifice-flow|drill=47|relative-density=0.6|coefficient=0.9; pressure; 0.1; 14; inH2O; 1",
                "orifice-flow|drill=47|pressure=3.5 inH2O|coefficient=0.9; relative-density; 0.5; 2;; -1",
                "orifice-flow|pressure=3.5 inH2O|relative-density=0.6|coefficient=0.9; diameter; 0.01; 0.5; in; 1",
                "orifice-pressure|drill=47|relative-density=0.6|coefficient=0.9; flow; 1; 40; ft3/h; 1",
                "orifice-diameter|pressure=3.5 inH2O|relative-density=0.6|coefficient=0.9; flow; 1; 40; ft3/h; 1",
                "wobbe|heating-value=1030 Btu/ft3; relative-density; 0.5; 2;; -1",
                "standard-atmosphere; altitude; -1000; 20000; ft; -1",
                "density-ratio; altitude; -1000; 20000; ft; -1",
                "moist-air-density|temperature=70 degF|humidity=50 %; pressure; 10; 15; psi; 1",
                "moist-air-density|pressure=14.6 psi|humidity=50 %; temperature; -20; 200; degF; -1",
                "moist-air-density|pressure=14.6 psi|temperature=90 degF; humidity; 0; 100; %; -1",
                "airflow|heat=64000 Btu/h|altitude=0 ft; rise; 10; 100; degF; -1",
                "airflow|heat=64000 Btu/h|rise=50 degF; altitude; 0; 10000; ft; 1",
                "temperature-rise|heat=64000 Btu/h|altitude=0 ft; airflow; 300; 3000; ft3/min; -1",
                "fan-law|pressure=0.5 inH2O; flow-ratio; 0.3; 3;; 1",
                "pipe-capacity|diameter=0.824 in|drop=0.5 inH2O|fuel=natural-gas; length; 5; 500; ft; -1",
                "pipe-capacity|length=60 ft|drop=0.5 inH2O|fuel=natural-gas; diameter; 0.3; 4; in; 1",
                "pipe-drop|length=60 ft|diameter=0.824 in|fuel=propane; flow; 10; 1000; ft3/h; 1",
                "leak-rate|volume=0.012 m3|time=2 min|atmospheric=1013 mbar; drop; -5; 5; mbar; 1",
                "leak-rate|volume=0.012 m3|drop=2 mbar|atmospheric=1013 mbar; time; 1; 60; min; -1",
                "excess-air|fuel=methane; oxygen; 0; 18; %; 1",
                "carbon-dioxide|fuel=methane; oxygen; 0; 20; %; -1",
                "flue-oxygen|fuel=propane; carbon-dioxide; 0; 13; %; -1",
                "co-air-free|co=50 ppm; oxygen; 0; 18; %; 1",
                "flue-loss|air=20 degC|oxygen=5 %|fuel=methane; stack; 40; 400; degC; 1",
                "flue-dew-point|fuel=methane; oxygen; 0; 18; %; -1",
                "settling-time; share; 1; 90; %; -1"
            })
    void theResultOnlyRisesOrOnlyFalls(String call, String key, double from, double to, String unit, int sign)
            throws RefusedInputException {
        double last = 0;
        for (int i = 0; i <= STEPS; i++) {
            String argument = String.format(
                    Locale.ROOT, "%s=%.9g%s", key, from + (to - from) * i / STEPS, unit == null ? "" : " " + unit);
            double value = Calls.call(call + "|" + argument).quantity().value();
            if (i > 0) {
                assertThat((value - last) * sign).as(argument).isPositive();
            }
            last = value;
        }
    }

    @ParameterizedTest
    @CsvSource({"nfpa-54", "4-percent-per-1000-ft"})
    void theDerateNeverRisesAndIsAStepAbove2000Feet(String rule) throws RefusedInputException {
        double last = 1;
        for (int feet = 0; feet <= 10_000; feet += 100) {
            double value = Calls.call("derate|altitude=" + feet + " ft|rule=" + rule)
                    .quantity()
                    .value();
            assertThat(value).isLessThanOrEqualTo(last);
            assertThat(value == 1).isEqualTo(feet <= 2000);
            last = value;
        }
    }
}
