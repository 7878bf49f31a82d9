package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.job.Act;
import settlemark.job.Progress;

class ControllerTest {
    private static DeskPaneTest.Bench bench(Showroom room) {
        return DeskPaneTest.onEdt(() -> new DeskPaneTest.Bench(room, 1280, 720, 1));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "plate | []",
                "probes | []",
                "zero | [call OFF, ports true]",
                "lock-up | [valve true, call OFF, ports false]",
                "found-low | [ports false, call LOW]",
                "found-high | [ports false, call HIGH]",
                "shut | [call OFF]",
                "close | [call OFF, ports true]"
            })
    void aPressReportsTheActAndTheDemoDoesIt(String step, String done) {
        DeskPaneTest.Bench bench = bench(new Showroom().at(step, Progress.OPEN, 20));
        List<String> said =
                step.startsWith("found") ? bench.scene().open().step().ticks() : List.of();
        bench.perform(Deed.PRIMARY);
        List<Act> acts = new ArrayList<>();
        said.forEach(t -> acts.add(new Act.Tick(step, t, true)));
        acts.add(new Act.Confirm(step));
        assertThat(bench.desk.acts()).isEqualTo(acts);
        assertThat(bench.hands.done()).hasToString(done);
    }

    @Test
    void aStageToBeAdjustedIsCalledForAndItsCapTakenOffOnce() {
        DeskPaneTest.Bench bench =
                bench(new Showroom().at("left-low", Progress.OPEN, 20).adjusting());
        assertThat(bench.hands.done()).containsExactly("ports false", "call LOW", "cap false");
        bench.perform(Deed.SCREW_UP);
        bench.perform(Deed.SCREW_DOWN_MORE);
        assertThat(bench.hands.done()).endsWith("turn low 0.05", "turn low -0.25");
        bench.perform(Deed.PRIMARY);
        assertThat(bench.hands.done()).endsWith("cap true");
        assertThat(bench.desk.acts()).containsExactly(new Act.CapOn("left-low"));
    }

    @Test
    void anArmedReadingTakesItselfAndAPressOnlyTellsWhatItWaitsFor() {
        DeskPaneTest.Bench bench = bench(Shots.room("08-left-high-armed"));
        bench.perform(Deed.PRIMARY);
        assertThat(bench.desk.acts()).isEmpty();
        assertThat(bench.pane().step().sentence()).contains("armed: 3 settled, supply moving");
        bench.perform(Deed.ADJUST);
        assertThat(bench.desk.acts()).containsExactly(new Act.Adjust("left-high"));
    }

    @Test
    void whatCannotBeDoneSaysWhy() {
        DeskPaneTest.Bench bench = bench(new Showroom().at("found-low", Progress.OPEN, 20));
        bench.perform(Deed.ADJUST);
        assertThat(bench.pane().step().sentence()).endsWith("As found: touch no screw");
        bench.perform(Deed.TAKE_NOW);
        assertThat(bench.pane().step().sentence()).endsWith("Nothing is armed that could be taken");
        bench.perform(Deed.SCREW_UP);
        assertThat(bench.pane().step().sentence()).endsWith("The demo screw turns while adjusting");
        assertThat(bench.desk.acts()).isEmpty();
        assertThat(bench.hands.done()).isEmpty();
    }

    @Test
    void reasonsAndNotesAreTypedInTheWindow() {
        DeskPaneTest.Bench bench = bench(Shots.room("08-left-high-armed"));
        type(bench, Deed.TAKE_NOW, "customer must leave");
        type(bench, Deed.SKIP, "no access");
        type(bench, Deed.NOTE, "screw was loose");
        type(bench, Deed.NOTE, "   ");
        assertThat(bench.desk.acts())
                .containsExactly(
                        new Act.TakeNow("left-high", "customer must leave"),
                        new Act.Skip("left-high", "no access"),
                        new Act.Note("left-high", "screw was loose"));
        assertThat(bench.pane().inline().isVisible()).isTrue();
        bench.perform(Deed.NOW);
        assertThat(bench.pane().inline().isVisible()).isFalse();
    }

    private static void type(DeskPaneTest.Bench bench, Deed deed, String text) {
        bench.perform(deed);
        DeskPaneTest.onEdt(() -> {
            bench.pane().inline().field().setText(text);
            bench.pane().inline().field().postActionEvent();
            return 0;
        });
    }

    @Test
    void arrowsWalkTheStripAndEscComesBackToNow() {
        DeskPaneTest.Bench bench = bench(new Showroom().at("found-high", Progress.OPEN, 20));
        bench.perform(Deed.LEFT);
        assertThat(bench.scene().open().key()).isEqualTo("found-low");
        assertThat(bench.scene().live()).isFalse();
        bench.perform(Deed.FIRST);
        bench.perform(Deed.LEFT);
        assertThat(bench.scene().open().key()).isEqualTo("plate");
        bench.perform(Deed.LAST);
        bench.perform(Deed.RIGHT);
        assertThat(bench.scene().open().key()).isEqualTo("record");
        bench.perform(Deed.NOW);
        assertThat(bench.scene().open().key()).isEqualTo("found-high");
    }

    @Test
    void whoLooksBackIsNotDraggedAlongWhenALiveActGoesOn() {
        DeskPaneTest.Bench bench = bench(new Showroom().at("found-high", Progress.ARMED, 100));
        bench.perform(Deed.LEFT);
        bench.show(new Showroom().at("left-low", Progress.OPEN, 1));
        assertThat(bench.scene().open().key()).isEqualTo("found-low");
        bench.perform(Deed.PRIMARY);
        assertThat(bench.scene().open().key()).isEqualTo("left-low");
        assertThat(bench.desk.acts()).isEmpty();
    }

    @Test
    void aFinishedReadingCanBeRepeated() {
        DeskPaneTest.Bench bench = bench(new Showroom().at("found-high", Progress.OPEN, 20));
        bench.perform(Deed.REPEAT);
        assertThat(bench.desk.acts()).isEmpty();
        bench.perform(Deed.LEFT);
        bench.perform(Deed.REPEAT);
        assertThat(bench.desk.acts()).containsExactly(new Act.Repeat("found-low"));
    }

    @Test
    void closingIsTickedByPressOrByNumber() {
        DeskPaneTest.Bench bench = bench(Shots.room("11-close-ticks"));
        bench.perform(Deed.PRIMARY);
        bench.perform(Deed.TICK_3);
        bench.perform(Deed.TICK_1);
        assertThat(bench.desk.acts())
                .containsExactly(
                        new Act.Tick("close", "Thermostat and staging put back to normal", true),
                        new Act.Tick("close", "All other appliances relit and working", true),
                        new Act.Tick("close", "Ports closed and caps on, leak-tested with the burner firing", false));
    }

    @Test
    void theRecordWaitsForANameAndThenTellsWhereItLies() {
        DeskPaneTest.Bench bench = bench(Shots.room("12-record"));
        bench.perform(Deed.PRIMARY);
        assertThat(bench.host.recordsAsked).isZero();
        RecordFace face =
                Objects.requireNonNull((RecordFace) bench.pane().open().face(OpenColumn.FaceKind.RECORD));
        DeskPaneTest.onEdt(() -> {
            face.name().setText(" R. Moss ");
            face.name().postActionEvent();
            return 0;
        });
        bench.show(Shots.room("12-record").person("R. Moss"));
        bench.perform(Deed.PRIMARY);
        assertThat(bench.desk.acts()).containsExactly(new Act.Person("R. Moss"), new Act.Confirm("record"));
        assertThat(bench.host.recordsAsked).isEqualTo(1);
        bench.show(Shots.room("12-record").person("R. Moss").at("record", Progress.TAKEN, 70));
        bench.host.failed("the folder cannot be written: /nowhere; choose another");
        bench.show(bench.room);
        assertThat(Choices.primary(bench.scene()).title()).isEqualTo("Make the record again");
        bench.perform(Deed.PRIMARY);
        bench.host.written(Path.of("/somewhere/record.pdf"));
        bench.show(bench.room);
        assertThat(Painting.visible(bench.pane(), Painted.class))
                .extracting(Painted::sentence)
                .anyMatch(s -> s.startsWith("The record is written: ") && s.contains("record.pdf"));
    }

    @Test
    void themeAndFarViewAndClosing() {
        DeskPaneTest.Bench bench = bench(Shots.room("08-left-high-armed"));
        bench.perform(Deed.THEME);
        assertThat(bench.restyled).isEqualTo(1);
        assertThat(bench.controller.look().dark()).isTrue();
        bench.perform(Deed.FAR_VIEW);
        assertThat(bench.pane().farShown()).isTrue();
        bench.perform(Deed.NOTE);
        assertThat(bench.pane().farShown()).isFalse();
        assertThat(bench.pane().inline().isVisible()).isTrue();
        bench.perform(Deed.NOW);
        bench.perform(Deed.CLOSE);
        assertThat(bench.closed).isEqualTo(1);
        assertThat(bench.host.closed).isEqualTo(1);
    }
}
