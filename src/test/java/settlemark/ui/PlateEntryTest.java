package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.job.Fuel;
import settlemark.job.Plans;
import settlemark.job.RatingPlate;
import settlemark.measure.Unit;

class PlateEntryTest {
    private static PlateEntry whole() {
        PlateEntry entry = new PlateEntry();
        entry.plan(Plans.get("one-stage-natural-gas"));
        entry.type(PlateEntry.PLACE, "Quarry Rise 3");
        entry.type(PlateEntry.APPLIANCE, "furnace");
        entry.type("manifold.high", "3.5");
        entry.type("tolerance.high", "0.3");
        entry.type("inlet.least", "4.5");
        entry.type("inlet.most", "10.5");
        entry.type("rise.least", "30");
        entry.type("rise.most", "60");
        return entry;
    }

    @Test
    void nothingStandsInItBeforehandAndEachMissingNumberIsNamed() {
        PlateEntry entry = new PlateEntry();
        entry.plan(Plans.get("one-stage-natural-gas"));
        assertThat(entry.plate()).isEmpty();
        assertThat(entry.problem()).isEqualTo("Place and job: type it");
        entry.type(PlateEntry.PLACE, "here");
        entry.type(PlateEntry.APPLIANCE, "furnace");
        assertThat(entry.problem()).startsWith("Manifold, full fire: copy it from the plate, in inH");
        assertThat(entry.firstMissing()).contains("manifold.high");
    }

    @Test
    void aWholePlateIsTheOneThatWasTypedInItsUnits() {
        PlateEntry entry = whole();
        entry.units(Units.ALL.get(1));
        RatingPlate plate = entry.plate().orElseThrow();
        assertThat(plate.fuel()).isEqualTo(Fuel.NATURAL_GAS);
        assertThat(plate.stage("high").manifoldTarget()).isEqualTo(3.5);
        assertThat(plate.stage("high").unit()).isEqualTo(Unit.ucum("mbar"));
        assertThat(plate.inlet().upper()).isEqualTo(10.5);
        assertThat(plate.inlet().source()).isEqualTo("plate");
        assertThat(plate.rise().unit()).isEqualTo(Unit.CELSIUS.difference());
        assertThat(plate.stage("high").inputBtuPerHour()).isNaN();
        assertThat(entry.plan().misfits(plate)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "manifold.high | 3,5 | Manifold, full fire must be a number, got \"3,5\" (use a point)",
                "manifold.high | abc | Manifold, full fire must be a number, got \"abc\"",
                "manifold.high | 1e9 | Manifold, full fire must be a number, got \"1e9\"",
                "tolerance.high | 0 | Allowed to either side, full fire must be above 0, got 0",
                "input.high | -5 | Input, full fire, if given must be above 0, got -5",
                "inlet.least | 11 | Inlet: the least, 11, is above the most, 10.5",
                "rise.most | 20 | Air temperature rise: the least, 30, is above the most, 20"
            })
    void whatIsWrongIsSaidWhileItIsTyped(String key, String text, String problem) {
        PlateEntry entry = whole();
        entry.type(key, text);
        assertThat(entry.problem()).isEqualTo(problem);
        assertThat(entry.plate()).isEmpty();
    }

    @Test
    void aPlanForAnotherGasTakesTheGasWithIt() {
        PlateEntry entry = whole();
        entry.plan(Plans.get("two-stage-propane"));
        assertThat(entry.fuel()).isEqualTo(Fuel.PROPANE);
        assertThat(entry.text("inlet.least")).as("what was typed stays").isEqualTo("4.5");
    }
}
