package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.job.Site.Derating;
import settlemark.measure.Role;
import settlemark.measure.Unit;

/** Altitude, derating and the gas control's own maximum, from a plate to its verdicts. */
final class SiteTest {
    private static final String PLATE = """
            language: 1
            appliance: two-stage furnace
            fuel: natural-gas
            inlet: { least: 4.5, most: 10.5, unit: "[in_i'H2O]" }
            rise: { least: 30, most: 60, unit: "[degF]" }
            stages:
              - { key: low, name: low fire, manifold: 1.7, unit: "[in_i'H2O]", input: 56000 }
              - { key: high, name: high fire, manifold: 3.5, unit: "[in_i'H2O]", input: 80000 }
            """;

    private static PlateReading read(String more) {
        return PlateReader.read("plate.yaml", (PLATE + more).getBytes(StandardCharsets.UTF_8));
    }

    private static RatingPlate plate(String more) {
        return read(more).plate().orElseThrow();
    }

    /** NFPA 54-2002 chapter 11 as UMC 2009 Appendix B prints it: 4 % per 1000 ft above sea level, only above 2000 ft. */
    @ParameterizedTest
    @CsvSource({"0, 1", "2000, 1", "2001, 0.91996", "3000, 0.88", "5000, 0.8", "7000, 0.72", "10000, 0.6"})
    void theCommonRuleIsAStepAtTwoThousandFeet(double feet, double share) {
        assertThat(new Site(feet, Derating.COMMON_PRACTICE, Double.NaN).share()).isCloseTo(share, within(1e-9));
        assertThat(new Site(feet, Derating.NONE, Double.NaN).share()).isEqualTo(1);
    }

    @Test
    void anAltitudeInMetresAndTheMakersFactorAreRead() {
        RatingPlate plate = plate("altitude: { value: 1524, unit: m, derating: maker, factor: 0.84 }\n");
        assertThat(plate.site().altitudeFeet()).isCloseTo(5000, within(1e-6));
        assertThat(plate.aimBtuPerHour("high")).isCloseTo(67_200, within(1e-6));
        assertThat(plate.site().words()).isEqualTo("5000 ft, 0.840 of the rating left by its maker");
        assertThat(plate("").site()).isEqualTo(Site.UNKNOWN);
        assertThat(plate("").aimBtuPerHour("high")).isEqualTo(80_000);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "altitude: { value: 5000, unit: \"[ft_i]\", derating: maker } | needs its factor, the share that is left",
                "altitude: { value: 5000, unit: \"[ft_i]\", factor: 0.84 } | a factor is the maker's own",
                "altitude: { value: 50000, unit: \"[ft_i]\" } | between -2000 and 20000 ft, got 50000 ft",
                "altitude: { value: 5000, unit: \"[degF]\" } | is no unit of length; write a UCUM code such as [ft_i] or m",
                "altitude: { value: 5000, unit: m, derating: 4 } | none, common-practice or maker",
                "control: { most: 14, unit: kW } | is no unit of pressure",
                "control: { most: 0, unit: mbar } | most must be more than 0"
            })
    void mistakesAreToldWithTheirPlace(String line, String words) {
        PlateReading wrong = read(line + "\n");
        assertThat(wrong.plate()).isEmpty();
        assertThat(wrong.problems())
                .singleElement()
                .asString()
                .startsWith("plate.yaml:9:")
                .contains(words);
    }

    @Test
    void aReversedRangeIsToldBesideWhatTheSchemaFinds() {
        PlateReading wrong = PlateReader.read(
                "plate.yaml",
                PLATE.replace("least: 30, most: 60", "least: 60, most: 30")
                        .replace("fuel: natural-gas", "fuel: town-gas")
                        .getBytes(StandardCharsets.UTF_8));
        assertThat(wrong.problems())
                .extracting(Object::toString)
                .satisfiesExactly(
                        first -> assertThat(first).startsWith("plate.yaml:3:").contains("natural-gas or propane"),
                        second -> assertThat(second).startsWith("plate.yaml:5:").contains("it is reversed"));
    }

    @Test
    void whatLooksWrongIsADoubt() {
        assertThat(plate("altitude: { value: 5000, unit: \"[ft_i]\" }\n").doubts())
                .containsExactly("5000 ft above sea level and no derating: only where the plate or the maker says so.");
        assertThat(plate("altitude: { value: 2000, unit: \"[ft_i]\" }\n").doubts())
                .isEmpty();
        assertThat(plate("control: { most: 20, unit: mbar }\n").doubts())
                .containsExactly(
                        "The gas control takes 8.03 inH2O at most, the plate allows 10.50: the lower one counts.");
        assertThat(plate("control: { most: 14, unit: \"[in_i'H2O]\" }\n").doubts())
                .isEmpty();
    }

    /** 64,000 Btu/h is what is left of 80,000 at 5000 ft; the plate's full input would be 25 % over it. */
    @Test
    void theClockedInputIsHeldAgainstWhatIsLeft() {
        RatingPlate plate = plate("altitude: { value: 5000, unit: \"[ft_i]\", derating: common-practice }\n");
        StepState low = clocked(plate, 36);
        Verdict input = low.verdicts().get(0);
        assertThat(input.limit().lower()).isCloseTo(0.98 * 44_800, within(1e-6));
        assertThat(input.limit().source())
                .isEqualTo(
                        "plate \u00B12 %, 10 CFR 430 App. O 2.4.1, 5000 ft, 0.800 of the rating left by common practice"
                                + " (4 % per 1000 ft from 2000 ft, NFPA 54)");
        assertThat(low.remarks())
                .anyMatch(w -> w.startsWith("Input aimed at: 44800 Btu/h of the plate's 56000 Btu/h (5000 ft, 0.800"))
                .anyMatch(w -> w.contains("above the plate: never exceed"));
        assertThat(input.outcome()).isEqualTo(Outcome.OUTSIDE);
        assertThat(clocked(plate(""), 66).verdicts().get(0).limit().source())
                .isEqualTo("plate \u00B12 %, 10 CFR 430 App. O 2.4.1");
    }

    /** Two runs of two turns of a dial of 1 cubic foot, in whole seconds a turn. */
    private static StepState clocked(RatingPlate plate, int secondsATurn) {
        Bench bench = new Bench(Plans.get("two-stage-natural-gas"));
        bench.act(new Act.Plate(plate));
        bench.untilLockUp();
        bench.firing(1.69, 104);
        for (int run = 0; run < 2; run++) {
            for (int turn = 0; turn < 3; turn++) {
                bench.act(new Act.PointerAtMark("clock-low"));
                if (turn < 2) {
                    bench.pass(secondsATurn);
                }
            }
            bench.act(new Act.EndRun("clock-low"));
            bench.pass(1);
        }
        StepState step = bench.step("clock-low");
        assertThat(step.progress()).as(step.waitingFor()).isEqualTo(Progress.TAKEN);
        return step;
    }

    @Test
    void theInletIsWatchedByTheLowerOfPlateAndControlWhichIsNamed() {
        assertThat(notices(plate("control: { most: 20, unit: mbar }\n"), 8.4))
                .singleElement()
                .asString()
                .isEqualTo("Inlet 8.40 inH\u2082O: over the most that the gas control allows, 8.03 inH\u2082O");
        assertThat(notices(plate("control: { most: 20, unit: mbar }\n"), 7.9)).isEmpty();
        assertThat(notices(plate("control: { most: 14, unit: \"[in_i'H2O]\" }\n"), 10.8))
                .singleElement()
                .asString()
                .contains("over the most that the plate allows, 10.50");
    }

    private static List<String> notices(RatingPlate plate, double inlet) {
        Bench bench = new Bench();
        bench.act(new Act.Plate(plate));
        bench.settled(Role.INLET, inlet);
        bench.pass(10);
        return bench.run.state().notices().stream().map(SafetyNotice::words).toList();
    }

    @Test
    void aSiteThatCannotBeIsRefused() {
        assertThatThrownBy(() -> new Site(Double.NaN, Derating.COMMON_PRACTICE, Double.NaN))
                .hasMessageContaining("say how high");
        assertThatThrownBy(() -> new Site(5000, Derating.MAKER, 1.2)).hasMessageContaining("0.1 to 1, got 1.2");
        assertThat(Site.FOOT).isEqualTo(Unit.ucum("[ft_i]"));
    }
}
