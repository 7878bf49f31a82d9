package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.measure.Unit;

/** Plates as people write them: all mistakes at once with their place, and what only looks wrong as a warning. */
final class PlateReaderTest {
    private static final String GOOD = """
            language: 1
            appliance: two-stage furnace
            fuel: natural-gas
            inlet: { least: 4.5, most: 10.5, unit: "[in_i'H2O]" }
            rise: { least: 30, most: 60, unit: "[degF]" }
            statics: { most: 0.5, unit: "[in_i'H2O]" }
            stages:
              - { key: low, name: low fire, manifold: 1.7, unit: "[in_i'H2O]", input: 56000 }
              - { key: high, name: high fire, manifold: 3.5, unit: "[in_i'H2O]", input: 23.446, input-unit: kW }
            """;

    private static PlateReading read(String text) {
        return PlateReader.read("plate.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void aPlateIsReadWithItsUnitsAndTheCustomaryTolerance() {
        PlateReading reading = read(GOOD);
        assertThat(reading.problems()).isEmpty();
        RatingPlate plate = reading.plate().orElseThrow();
        assertThat(plate.stage("low").manifoldTolerance()).isEqualTo(0.2);
        assertThat(plate.stage("high").manifoldTolerance()).isCloseTo(0.35, org.assertj.core.data.Offset.offset(1e-12));
        // 1 kW is 3412.142 Btu (IT) an hour (NIST SP 811, appendix B.8).
        assertThat(plate.stage("high").inputBtuPerHour())
                .isCloseTo(23.446 * 3412.142, org.assertj.core.data.Offset.offset(1.0));
        assertThat(plate.statics().upper()).isEqualTo(0.5);
        assertThat(plate.rise().unit()).isEqualTo(Unit.FAHRENHEIT_DIFFERENCE);
    }

    @Test
    void allMistakesAreToldAtOnceWithLineAndColumn() {
        PlateReading reading = read(GOOD.replace("fuel: natural-gas", "fuel: town-gas")
                .replace("manifold: 1.7", "manifold: -1.7")
                .replace("appliance: two-stage furnace", "appliance:"));
        assertThat(reading.plate()).isEmpty();
        assertThat(reading.problems()).extracting(p -> p.line() + "").containsExactly("2", "3", "8");
        assertThat(reading.problems()).allMatch(p -> p.column() > 1).allMatch(p -> p.isError());
    }

    @Test
    void whatTheCodeChecksIsToldBesideWhatTheSchemaFinds() {
        String high = "altitude: { value: 9000, unit: m, derating: maker, factor: 1.2 }\nfuel: town-gas";
        PlateReading reading = read(GOOD.replace("fuel: natural-gas", high)
                .replace("most: 10.5, unit: \"[in_i'H2O]\"", "most: 10.5, unit: inches")
                .replace("key: high", "key: low")
                .replace("manifold: 1.7", "manifold: -1.7"));
        assertThat(reading.plate()).isEmpty();
        assertThat(reading.problems())
                .extracting(Object::toString)
                .satisfiesExactly(
                        // 9000 m are 29,527.6 international feet (0.3048 m, NIST SP 811, appendix B.8).
                        p -> assertThat(p)
                                .contains("plate.yaml:3:")
                                .contains("between -2000 and 20000 ft, got 29528 ft"),
                        p -> assertThat(p).contains("plate.yaml:3:").contains("0.1 to 1, got 1.2"),
                        p -> assertThat(p).contains("plate.yaml:4:").contains("natural-gas or propane"),
                        p -> assertThat(p).contains("plate.yaml:5:").contains("\"inches\" is no unit of pressure"),
                        p -> assertThat(p).contains("plate.yaml:9:").contains("manifold must be more than 0"),
                        p -> assertThat(p).contains("plate.yaml:10:").contains("stage \"low\" stands twice"));
    }

    @Test
    void whatCannotBeReadIsToldOnceByTheSchemaAlone() {
        for (String altitude : List.of(
                "altitude: { value: 9000, unit: 3 }",
                "altitude: { value: nine, unit: m }",
                "altitude: { value: 90, unit: m, derating: maybe, factor: 0.9 }",
                "altitude: [ 90, m ]",
                "altitude: 90")) {
            PlateReading reading = read(GOOD.replace("fuel: natural-gas", altitude + "\nfuel: natural-gas"));
            assertThat(reading.plate()).as(altitude).isEmpty();
            assertThat(reading.problems()).as(altitude).hasSize(1);
        }
    }

    @Test
    void aFactorThatIsMissingIsToldWhereTheAltitudeStands() {
        PlateReading reading = read(GOOD.replace(
                "fuel: natural-gas", "altitude: { value: -9000, unit: m, derating: maker }\nfuel: natural-gas"));
        assertThat(reading.problems())
                .extracting(Object::toString)
                .satisfiesExactlyInAnyOrder(
                        p -> assertThat(p).contains("needs its factor"),
                        p -> assertThat(p).contains("got -29528 ft"));
    }

    @Test
    void aReversedRangeAndAWrongUnitAreMistakes() {
        PlateReading reading = read(GOOD.replace("least: 30, most: 60", "least: 60, most: 30")
                .replace("most: 10.5, unit: \"[in_i'H2O]\"", "most: 10.5, unit: \"[degF]\""));
        assertThat(reading.problems())
                .extracting(Object::toString)
                .satisfiesExactly(
                        p -> assertThat(p).contains("plate.yaml:4:").contains("no unit of pressure"),
                        p -> assertThat(p).contains("plate.yaml:5:").contains("it is reversed"));
    }

    @Test
    void aTemplateAsksForWhatThePlanReadsAndNothingElse() {
        assertThat(PlateText.of(Plans.get("supply-check")))
                .doesNotContain("rise")
                .doesNotContain("manifold");
        assertThat(PlateText.of(Plans.get("boiler-gas-side")))
                .contains("manifold")
                .contains("input")
                .doesNotContain("rise");
        assertThat(PlateText.of(Plans.get("two-stage-natural-gas"))).contains("rise", "key: low", "key: high");
        PlateReading empty = read(PlateText.of(Plans.get("two-stage-natural-gas")));
        assertThat(empty.plate()).isEmpty();
        assertThat(empty.problems()).hasSizeGreaterThan(5);
    }

    @Test
    void aPlateWithoutManifoldDoesForAPlanThatReadsNone() {
        RatingPlate plate = read("""
                        language: 1
                        appliance: boiler
                        fuel: natural-gas
                        inlet: { least: 5, most: 10, unit: "[in_i'H2O]" }
                        stages:
                          - { key: high, name: full fire }
                        """).plate().orElseThrow();
        assertThat(Plans.get("supply-check").misfits(plate)).isEmpty();
        assertThat(Plans.get("boiler-gas-side").misfits(plate))
                .singleElement()
                .asString()
                .contains("manifold pressure");
        assertThat(plate.stage("high").manifoldLimit().isOpen()).isTrue();
    }

    static List<List<String>> doubts() {
        return List.of(
                List.of("manifold: 1.7", "manifold: 4.7", "the lower stage stands above the higher"),
                List.of("input: 56000", "input: 96000", "more input than"),
                List.of("input: 56000", "input: 30000", "the roots of their manifold pressures"),
                List.of("manifold: 3.5", "manifold: 10", "is one of propane"),
                List.of("fuel: natural-gas", "fuel: propane", "is one of natural gas"),
                List.of("least: 4.5", "least: 3", "is not above the manifold of high fire"),
                List.of("least: 4.5, most: 10.5", "least: 11, most: 13", "is one of propane"),
                List.of("least: 30, most: 60", "least: 60, most: 60", "has no width"));
    }

    @ParameterizedTest
    @MethodSource("doubts")
    void whatLooksWrongIsAWarningInWords(List<String> change) {
        PlateReading reading = read(GOOD.replace(change.get(0), change.get(1)));
        assertThat(reading.plate()).isPresent();
        assertThat(reading.problems())
                .noneMatch(p -> p.isError())
                .anySatisfy(p -> assertThat(p.message()).contains(change.get(2)));
    }
}
