package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import javax.swing.JTextField;
import org.junit.jupiter.api.Test;
import settlemark.job.Progress;
import settlemark.measure.Role;
import settlemark.session.Snapshot;
import settlemark.settle.SettleKind;

/** Where a person stood and what they had typed is there again in a window that is opened anew. */
class JobPlaceTest {
    private static <T> T on(Callable<T> work) {
        return DeskPaneTest.onEdt(work);
    }

    private static Controller controller(Snapshot snapshot) {
        Controller controller = new Controller(
                Painting.look(),
                new FakeDesk(snapshot),
                Optional.of(new FakeHands()),
                Optional.empty(),
                new FakeHost(),
                () -> {},
                () -> {});
        controller.pane().setSize(1280, 720);
        controller.show(snapshot, true);
        Painting.layOut(controller.pane());
        return controller;
    }

    private static Snapshot foundHigh() {
        return new Showroom().at("found-high", Progress.OPEN, 20).snapshot();
    }

    private static Controller again(Snapshot snapshot, JobPlace place) {
        Controller anew = controller(snapshot);
        anew.stand(place);
        Painting.layOut(anew.pane());
        return anew;
    }

    @Test
    void theOpenColumnTheHalfNoteAndTheirQuestionComeBack() {
        on(() -> {
            Controller before = controller(foundHigh());
            before.perform(Deed.LEFT);
            before.perform(Deed.NOTE);
            before.pane().inline().field().setText("screw was lo");
            JobPlace place = before.place();
            Controller anew = again(foundHigh(), place);
            assertThat(Objects.requireNonNull(anew.scene()).open().key()).isEqualTo("found-low");
            assertThat(anew.pane().inline().isVisible()).isTrue();
            assertThat(anew.pane().inline().field().getText()).isEqualTo("screw was lo");
            assertThat(anew.place()).isEqualTo(place);
            return 0;
        });
    }

    @Test
    void theFarViewAndWhatLayOverTheStripComeBack() {
        on(() -> {
            Controller before = controller(foundHigh());
            before.perform(Deed.FAR_VIEW);
            assertThat(again(foundHigh(), before.place()).pane().farShown()).isTrue();
            before.perform(Deed.KEYS);
            Controller anew = again(foundHigh(), before.place());
            assertThat(anew.pane().farShown()).isFalse();
            assertThat(anew.pane().over().keys().isVisible()).isTrue();
            return 0;
        });
    }

    @Test
    void halfTypedSettingsComeBackAtTheirKindOfChannel() {
        on(() -> {
            Controller before = controller(foundHigh());
            before.perform(Deed.SETTINGS);
            SettingsPane pane = before.pane().over().settings();
            pane.kind(SettleKind.AIR);
            pane.field(SettingsTyped.Setting.DWELL).setText("9");
            SettingsPane anew = again(foundHigh(), before.place()).pane().over().settings();
            assertThat(anew.isVisible()).isTrue();
            assertThat(anew.kind()).isEqualTo(SettleKind.AIR);
            assertThat(anew.field(SettingsTyped.Setting.DWELL).getText()).isEqualTo("9");
            return 0;
        });
    }

    @Test
    void halfTypedNumbersComeBack() {
        on(() -> {
            Controller before = controller(TypedAndRecordDisplayTest.atTheFlue());
            TypedFace face =
                    (TypedFace) Objects.requireNonNull(before.pane().open().face(OpenColumn.FaceKind.TYPED));
            JTextField oxygen = face.field(Role.OXYGEN).orElseThrow();
            oxygen.setText("6.");
            Controller anew = again(TypedAndRecordDisplayTest.atTheFlue(), before.place());
            TypedFace now =
                    (TypedFace) Objects.requireNonNull(anew.pane().open().face(OpenColumn.FaceKind.TYPED));
            assertThat(now.field(Role.OXYGEN).orElseThrow().getText()).isEqualTo("6.");
            return 0;
        });
    }

    @Test
    void thePlaceInAnotherJobMeansNothing() {
        on(() -> {
            JobPlace other = new JobPlace("another", "plate", true, "keys", "NOTE", Map.of(), 1);
            Controller anew = again(foundHigh(), other);
            assertThat(Objects.requireNonNull(anew.scene()).open().key()).isEqualTo("found-high");
            assertThat(anew.pane().farShown()).isFalse();
            assertThat(anew.pane().inline().isVisible()).isFalse();
            return 0;
        });
    }
}
