package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import settlemark.job.Progress;
import settlemark.measure.Unit;
import settlemark.session.SessionHeader;
import settlemark.session.Snapshot;
import settlemark.session.SnapshotUnits;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import settlemark.ui.SettingsTyped.Place;
import settlemark.ui.SettingsTyped.Read;
import settlemark.ui.SettingsTyped.Setting;

final class SettingsTypedTest {
    private static final double NONE = Double.NaN;
    private static final Place DRIFT = new Place(SettleKind.GAS, Setting.DRIFT);
    private static final Place WINDOWS = new Place(SettleKind.GAS, Setting.WINDOWS);
    private static final Place HUNTING = new Place(SettleKind.GAS, Setting.HUNTING);
    private static final Place AIR_BAND = new Place(SettleKind.AIR, Setting.BAND);
    private static final Snapshot SNAPSHOT =
            new Showroom().at("found-low", Progress.OPEN, 20).snapshot();
    private static final SessionHeader INCHES = SNAPSHOT.header();
    private static final SessionHeader METRIC =
            new SnapshotUnits(Unit.ucum("mbar"), Unit.CELSIUS).of(SNAPSHOT).header();

    private static SettleChoices gas(double drift, List<Double> windows, double hunting) {
        return new SettleChoices(
                Map.of(SettleKind.GAS, new SettleAdjustment(drift, NONE, NONE, windows, NONE, hunting)));
    }

    @Test
    void untouchedTextsChangeNothingInAnyUnit() {
        for (SessionHeader header : List.of(INCHES, METRIC)) {
            for (SettleChoices before : List.of(SettleChoices.NONE, gas(0.01234567, List.of(21.0, 43.0), 7))) {
                SettingsTyped typed = new SettingsTyped(header, before);
                Read read = typed.read(Map.of());
                assertThat(read.choices()).isEqualTo(before);
                assertThat(read.problems()).isEmpty();
            }
        }
    }

    @Test
    void textsAreInTheUnitsThatTheJobIsShownIn() {
        SettingsTyped typed = new SettingsTyped(METRIC, SettleChoices.NONE);
        assertThat(typed.unit(DRIFT)).isEqualTo("mbar");
        assertThat(typed.now(DRIFT)).isEqualTo("0.0498");
        assertThat(typed.now(AIR_BAND)).isEqualTo("0.5556");
        Read read = typed.read(Map.of(DRIFT, "0.1", AIR_BAND, "0.5"));
        assertThat(read.problems()).isEmpty();
        // 1 inH2O is 2.4909 mbar, 1 K is 1.8 degF.
        assertThat(read.choices().of(SettleKind.GAS).driftLimit()).isCloseTo(0.04015, within(1e-5));
        assertThat(read.choices().of(SettleKind.AIR).band()).isCloseTo(0.9, within(1e-12));
    }

    @Test
    void whatTheJobBeganWithComesBackToTheLastDigit() {
        SettingsTyped typed = new SettingsTyped(METRIC, gas(0.011, List.of(20.0, 40.0), 7));
        Read read = typed.read(Map.of(DRIFT, typed.planned(DRIFT), WINDOWS, typed.planned(WINDOWS), HUNTING, ""));
        assertThat(read.choices()).isEqualTo(SettleChoices.NONE);
        assertThat(typed.read(Map.of(DRIFT, "")).choices().of(SettleKind.GAS).driftLimit())
                .as("empty is as the job began")
                .isNaN();
    }

    @Test
    void windowsAreReadHoweverTheyAreParted() {
        SettingsTyped typed = new SettingsTyped(INCHES, SettleChoices.NONE);
        for (String text : List.of("20,40", "20, 40", "20; 40", "20 40")) {
            assertThat(typed.read(Map.of(WINDOWS, text))
                            .choices()
                            .of(SettleKind.GAS)
                            .windowSeconds())
                    .containsExactly(20.0, 40.0);
        }
    }

    @Test
    void whatIsWrongStandsAtItsField() {
        SettingsTyped typed = new SettingsTyped(INCHES, SettleChoices.NONE);
        Read read = typed.read(Map.of(DRIFT, "0.0001", HUNTING, "90", AIR_BAND, "0.0001"));
        assertThat(read.problems()).containsOnlyKeys(DRIFT, WINDOWS, AIR_BAND);
        assertThat(read.problems().get(DRIFT)).contains("under the gauge's step", "take a larger limit");
        assertThat(read.problems().get(WINDOWS)).contains("under three periods of hunting");
        assertThat(typed.read(Map.of(WINDOWS, "40,20")).problems().get(WINDOWS)).contains("the shortest first");
        assertThat(typed.read(Map.of(WINDOWS, "2,4")).problems()).containsOnlyKeys(WINDOWS);
        assertThat(typed.read(Map.of(DRIFT, "-1")).problems().get(DRIFT)).contains("must be above 0");
        assertThat(typed.read(Map.of(DRIFT, "NaN")).problems().get(DRIFT)).contains("type a number");
        assertThat(typed.read(Map.of(DRIFT, "1e999")).problems()).containsOnlyKeys(DRIFT);
    }
}
