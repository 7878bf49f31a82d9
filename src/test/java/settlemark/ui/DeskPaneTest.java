package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.EventQueue;
import java.awt.Rectangle;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import javax.accessibility.AccessibleContext;
import javax.swing.AbstractButton;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.job.Progress;
import settlemark.job.StepState;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.session.Snapshot;
import settlemark.session.Span;

/** The whole window without a window: laid out and painted into images. */
class DeskPaneTest {
    static List<String> shots() {
        return List.copyOf(Shots.all().keySet());
    }

    static Bench bench(String shot) {
        return bench(Shots.room(shot), 1280, 720, 1);
    }

    private static Bench bench(Showroom room, int width, int height, double textScale) {
        return onEdt(() -> new Bench(room, width, height, textScale));
    }

    static <T> T onEdt(Callable<T> work) {
        FutureTask<T> task = new FutureTask<>(work);
        EventQueue.invokeLater(task);
        try {
            return task.get();
        } catch (Exception e) {
            throw new AssertionError(e);
        }
    }

    @ParameterizedTest
    @MethodSource("shots")
    void exactlyOneColumnIsOpen(String shot) {
        Bench bench = bench(shot);
        int all = bench.room.job().steps().size();
        assertThat(Painting.visible(bench.pane().strip(), OpenColumn.class)).hasSize(1);
        assertThat(Painting.visible(bench.pane().strip(), Fold.class)).hasSize(all - 1);
    }

    @ParameterizedTest
    @MethodSource("shots")
    void everythingThatIsSeenCanBeHeard(String shot) {
        Bench bench = bench(shot);
        List<String> silent = new ArrayList<>();
        for (Component component : Painting.visible(bench.pane())) {
            boolean must = component instanceof Painted
                    || component instanceof AbstractButton
                    || component instanceof JTextComponent
                    || component instanceof Face;
            AccessibleContext context = component.getAccessibleContext();
            if (must
                    && (context.getAccessibleName() == null
                            || context.getAccessibleName().isBlank())) {
                silent.add(component.getClass().getSimpleName());
            }
        }
        assertThat(silent).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("shots")
    void everyFaceSaysStepCautionAndSimulated(String shot) {
        Bench bench = bench(shot);
        assertThat(bench.pane().step().sentence())
                .contains(bench.room
                        .snapshot()
                        .job()
                        .orElseThrow()
                        .currentStep()
                        .orElseThrow()
                        .step()
                        .caution());
        assertThat(Painting.visible(bench.pane(), RibbonBar.class))
                .anyMatch(r -> r.getHeight() >= 16 && r.getWidth() > 300);
        assertThat(Painting.visible(bench.pane(), StepBar.class)).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource({"1280, 720, 1", "1280, 720, 1.25", "1920, 1080, 1", "1366, 768, 1"})
    void fourNumbersAreTwentyMillimetresHighAtOnce(int width, int height, double textScale) {
        Bench bench = bench(Shots.room("08-left-high-armed"), width, height, textScale);
        List<Readout> rows = Painting.visible(bench.pane(), Readout.class);
        assertThat(rows).hasSize(4);
        for (Readout row : rows) {
            DigitField digits = row.digits();
            assertThat(digits.digitPx()).isGreaterThanOrEqualTo(75.5);
            Rectangle inside = new Rectangle(0, 0, row.getWidth(), row.getHeight());
            assertThat(digits.getY() + (digits.getHeight() - digits.digitPx()) / 2)
                    .isGreaterThanOrEqualTo(0);
            for (Component part : row.getComponents()) {
                assertThat(part.getY() + part.getHeight())
                        .as("%s in %s", part.getBounds(), inside)
                        .isLessThanOrEqualTo(row.getHeight() + 3);
            }
        }
    }

    @Test
    void digitsKeepTheirHeightWhileAReasonIsTyped() {
        for (double textScale : new double[] {1, 1.25}) {
            Bench bench = bench(Shots.room("08-left-high-armed"), 1280, 720, textScale);
            bench.perform(Deed.SKIP);
            for (Readout row : Painting.visible(bench.pane(), Readout.class)) {
                assertThat(row.digits().digitPx()).isGreaterThanOrEqualTo(75.5);
                assertThat(row.getHeight()).isGreaterThanOrEqualTo(95);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("shots")
    void buttonsAreTwentyMillimetresAndApart(String shot) {
        for (double textScale : new double[] {1, 1.25}) {
            Bench bench = bench(Shots.room(shot), 1280, 720, textScale);
            List<ActButton> buttons = Painting.visible(bench.pane().buttons(), ActButton.class);
            int ring = (int) (Look.FOCUS_RING + 2);
            Rectangle before = null;
            for (ActButton button : buttons) {
                Rectangle face = button.getBounds();
                face.grow(-ring, -ring);
                assertThat(face.width).as(button.choice().title()).isGreaterThanOrEqualTo(75);
                assertThat(face.height).as(button.choice().title()).isGreaterThanOrEqualTo(75);
                if (before != null) {
                    assertThat(face.x - before.x - before.width).isGreaterThanOrEqualTo(8);
                }
                before = face;
            }
            assertThat(buttons.stream().filter(b -> b.choice().deed() == Deed.PRIMARY))
                    .hasSizeLessThanOrEqualTo(1);
        }
    }

    @Test
    void aTakenValueStandsInItsFoldedCellAtTheNextLook() {
        Bench bench = bench(new Showroom().at("found-low", Progress.ARMED, 100), 1280, 720, 1);
        bench.show(new Showroom().at("found-high", Progress.OPEN, 1));
        assertThat(Painting.visible(bench.pane().strip(), Fold.class))
                .extracting(Painted::sentence)
                .anyMatch(s -> s.startsWith("As found, low fire, ") && s.contains("manifold 1.51"));
        assertThat(bench.pane().open().getAccessibleContext().getAccessibleName())
                .isEqualTo("open column: As found, high fire");
    }

    @Test
    void aNewSampleIsOnTheChartAtTheNextLookThoughTheDigitsWait() {
        Bench bench = bench(new Showroom().at("found-low", Progress.ARMED, 100), 1280, 720, 1);
        ChartPane chart = Painting.visible(bench.pane(), ChartPane.class).get(0);
        DigitField digits = Painting.visible(bench.pane(), DigitField.class).get(0);
        BufferedImage chartBefore = onEdt(() -> Painting.paint(chart));
        BufferedImage digitsBefore = onEdt(() -> Painting.paint(digits));
        Snapshot later = new Showroom().at("found-low", Progress.ARMED, 103).snapshot();
        Scene scene = bench.scene();
        assertThat(onEdt(() -> chart.outdated(scene)))
                .as("not drawn again for nothing")
                .isFalse();
        onEdt(() -> {
            bench.controller.show(later, false);
            return 0;
        });
        assertThat(pixels(onEdt(() -> Painting.paint(chart)))).isNotEqualTo(pixels(chartBefore));
        assertThat(pixels(onEdt(() -> Painting.paint(digits)))).isEqualTo(pixels(digitsBefore));
    }

    private static int[] pixels(BufferedImage image) {
        return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    }

    @Test
    void aFoldedCellShadesOnlyWhatWasSettledTogetherInItsOwnStep() {
        StepState step = new Showroom()
                .at("left-low", Progress.OPEN, 5)
                .job()
                .step("found-high")
                .orElseThrow();
        long taken = step.doneNanos();
        assertThat(Fold.together(step, Dimension.PRESSURE, taken - 30_000_000_000L))
                .containsExactly(new Span(taken - 30_000_000_000L, taken));
        assertThat(Fold.together(step, Dimension.PRESSURE, 0))
                .containsExactly(new Span(taken - 60_000_000_000L, taken));
        assertThat(Fold.together(step, Dimension.VOLTAGE, 0)).isEmpty();
    }

    @Test
    void theStoredAgeIsRealTimeHoweverFastTheDemoRuns() {
        Snapshot snapshot = new Showroom().at("zero", Progress.OPEN, 20).snapshot();
        Snapshot behind = new Snapshot(
                snapshot.revision(),
                snapshot.timeNanos(),
                snapshot.wall(),
                snapshot.header(),
                snapshot.probes(),
                snapshot.channels(),
                snapshot.job(),
                new Snapshot.Stored(snapshot.timeNanos() - 15_000_000_000L, 1, ""),
                snapshot.events());
        assertThat(Head.stored(behind, 1)).isEqualTo("stored 15 s ago");
        assertThat(Head.stored(behind, 30)).isEqualTo("stored");
    }

    @Test
    void foldingChangesNoAxis() {
        Bench bench = bench(new Showroom().at("found-low", Progress.ARMED, 190), 1280, 720, 1);
        Axes before = bench.scene().axes();
        bench.show(new Showroom().at("found-high", Progress.OPEN, 1));
        assertThat(bench.scene().axes()).isEqualTo(before);
    }

    @Test
    void anOldValueIsGreyWithItsAge() {
        Bench bench = bench("09-stale");
        List<Readout> rows = Painting.visible(bench.pane(), Readout.class);
        assertThat(rows.get(0).sentence()).contains("no data 12 s");
        assertThat(rows.get(2).sentence()).contains("settled");
    }

    @Test
    void aFailingStoreIsToldAsLongAsItFails() {
        Bench bench = bench("09-stale");
        assertThat(bench.pane().step().sentence()).contains("the disk is full: /home/moss/settlemark.db");
        bench.show(new Showroom().at("left-high", Progress.ARMED, 150));
        assertThat(bench.pane().step().sentence()).doesNotContain("disk");
    }

    @Test
    void aFindingOfTheJobIsSaidAtTheFoot() {
        Bench bench = bench("08-left-high-armed");
        assertThat(Painting.visible(bench.pane(), Remark.class))
                .extracting(Painted::sentence)
                .containsExactly("the cap moved it by \u22120.04 inH\u2082O");
    }

    @Test
    void theRecordsTableIsTheFoldedStrip() {
        Bench bench = bench("12-record");
        Scene scene = bench.scene();
        List<String> folded = Painting.visible(bench.pane().strip(), Fold.class).stream()
                .map(Painted::sentence)
                .toList();
        assertThat(RecordPage.columns(scene)).hasSize(6);
        RecordPage.columns(scene)
                .forEach(step -> CellValues.of(step, scene.snapshot())
                        .values()
                        .values()
                        .forEach(v -> assertThat(folded)
                                .anyMatch(s -> s.startsWith(step.step().title() + ",") && s.contains(" " + v))));
    }

    @Test
    void theReadoutIsOneSentence() {
        Bench bench = bench("08-left-high-armed");
        Readout manifold = Painting.visible(bench.pane(), Readout.class).get(1);
        String value = Numbers.fixed(
                bench.scene().snapshot().channel(Role.MANIFOLD).orElseThrow().value(), 2);
        assertThat(manifold.sentence())
                .isEqualTo("Manifold " + value
                        + " inches of water, settled, \u00b10.02; could still move 0.013, limit 0.02");
    }

    @Test
    void farViewHasTheFewWordsItNeedsLargeEnough() {
        Bench bench = bench("08-left-high-armed");
        bench.perform(Deed.FAR_VIEW);
        List<FarView.FarRow> rows = Painting.visible(bench.pane(), FarView.FarRow.class);
        assertThat(rows).hasSize(2);
        assertThat(rows.get(0).sentence()).contains("Manifold", "target 3.5", "settled");
        assertThat(rows.get(1).sentence()).contains("Rise", "30 to 60", "moving");
        assertThat(rows.get(0).digits().digitPx()).isGreaterThan(180);
    }

    @Test
    void theFocusRingIsSeenInBothThemes() {
        for (boolean dark : new boolean[] {false, true}) {
            Look look = new Look(dark, 1, Look.USUAL_PIXELS_PER_MM);
            ActButton button = onEdt(() -> {
                ActButton made = new ActButton(look, Choice.of(Deed.NOTE, "Note"), false, d -> {});
                made.setSize(110, 86);
                return made;
            });
            var without = Painting.paint(button);
            for (FocusListener listener : button.getFocusListeners()) {
                listener.focusGained(new FocusEvent(button, FocusEvent.FOCUS_GAINED));
            }
            var with = Painting.paint(button);
            int changed = 0;
            for (int x = 10; x < 100; x++) {
                changed += with.getRGB(x, 1) != without.getRGB(x, 1) ? 1 : 0;
            }
            assertThat(changed).isEqualTo(90);
        }
    }

    @Test
    void everyDeedHasItsKeyInTheWindow() {
        Bench bench = bench("08-left-high-armed");
        var keys = bench.pane().getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW);
        for (Deed deed : Deed.of(Deed.Place.JOB)) {
            assertThat(keys.get(deed.stroke())).isEqualTo(deed);
        }
        bench.perform(Deed.KEYS);
        KeyList list = Painting.visible(bench.pane(), KeyList.class).get(0);
        for (Deed deed : Deed.of(Deed.Place.JOB)) {
            assertThat(list.sentence()).contains(deed.label() + ": " + deed.words());
        }
        assertThat(SwingUtilities.getWindowAncestor(bench.pane())).isNull();
    }

    /** The pane with its controller, a fake desk and fake hands. */
    static final class Bench {
        final FakeDesk desk;
        final FakeHands hands = new FakeHands();
        final FakeHost host = new FakeHost();
        final Controller controller;
        Showroom room;
        int restyled;
        int closed;

        Bench(Showroom room, int width, int height, double textScale) {
            this(room, width, height, Painting.look(textScale));
        }

        Bench(Showroom room, int width, int height, Look look) {
            this.room = room;
            desk = new FakeDesk(room.snapshot());
            controller = new Controller(
                    look, desk, Optional.of(hands), Optional.empty(), host, () -> closed++, () -> restyled++);
            controller.pane().setSize(width, height);
            look();
        }

        DeskPane pane() {
            return controller.pane();
        }

        Scene scene() {
            return onEdt(() -> Objects.requireNonNull(controller.scene()));
        }

        void show(Showroom newRoom) {
            room = newRoom;
            desk.show(newRoom.snapshot());
            onEdt(() -> {
                look();
                return 0;
            });
        }

        void perform(Deed deed) {
            onEdt(() -> {
                controller.perform(deed);
                look();
                return 0;
            });
        }

        private void look() {
            controller.show(desk.snapshot(), true);
            Painting.layOut(pane());
            controller.show(desk.snapshot(), true);
            Painting.layOut(pane());
            Painting.paint(pane());
        }
    }
}
