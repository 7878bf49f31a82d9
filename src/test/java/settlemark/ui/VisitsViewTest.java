package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import settlemark.job.Progress;
import settlemark.session.Snapshot;

/** The visits to an appliance in the window: of a job, and of a stored session. */
class VisitsViewTest {
    @AfterEach
    void english() {
        Words.speak(Language.ENGLISH);
    }

    private static DeskPaneTest.Bench bench(Showroom room) {
        DeskPaneTest.Bench bench = DeskPaneTest.onEdt(() -> new DeskPaneTest.Bench(room, 1280, 720, 1));
        DeskPaneTest.onEdt(() -> {
            Painting.layOut(bench.pane());
            return 0;
        });
        return bench;
    }

    private static void press(DeskPaneTest.Bench bench, Deed deed) {
        DeskPaneTest.onEdt(() -> {
            bench.controller.perform(deed);
            Painting.layOut(bench.pane());
            return 0;
        });
    }

    @Test
    void whatWasLeftStandsBesideWhatIsFoundAndLeftNow() {
        DeskPaneTest.Bench bench = bench(Shots.room("30-visits"));
        press(bench, Deed.VISITS);
        VisitsView visits = bench.pane().over().visits();
        assertThat(visits.isVisible()).isTrue();
        assertThat(bench.pane().strip().isVisible()).isFalse();
        assertThat(visits.getAccessibleContext().getAccessibleName())
                .startsWith("Visits: ")
                // Found 1.51, left 1.70, as the showroom's burner does; the first visit left 1.70.
                .contains("left 1.70 on 2023-09-21, left 1.66 on 2024-10-03, left 1.61 on 2025-09-30, "
                        + "found 1.51, left 1.70, no change beyond")
                .contains("Inlet, lock-up");
        List<String> texts = DeskPaneTest.onEdt(() ->
                WindowWalk.texts(visits).stream().map(TextRecorder.Text::words).toList());
        assertThat(texts).contains("2023-09-21", "2025-09-30", "found now", "left now", "1.61", "1.51");
        press(bench, Deed.NOW);
        assertThat(visits.isVisible()).isFalse();
        assertThat(bench.pane().strip().isVisible()).isTrue();
    }

    @Test
    void theKeyListAndTheVisitsTakeEachOthersPlace() {
        DeskPaneTest.Bench bench = bench(Shots.room("30-visits"));
        press(bench, Deed.VISITS);
        press(bench, Deed.KEYS);
        assertThat(bench.pane().over().keys().isVisible()).isTrue();
        assertThat(bench.pane().over().visits().isVisible()).isFalse();
        press(bench, Deed.VISITS);
        assertThat(bench.pane().over().keys().isVisible()).isFalse();
        assertThat(bench.pane().over().visits().isVisible()).isTrue();
        press(bench, Deed.VISITS);
        assertThat(bench.pane().strip().isVisible()).isTrue();
    }

    @Test
    void aFirstVisitSaysThatItIsOne() {
        DeskPaneTest.Bench bench = bench(new Showroom().at("close", Progress.OPEN, 20));
        press(bench, Deed.VISITS);
        assertThat(bench.pane().over().visits().isVisible()).isFalse();
        assertThat(bench.pane().step().sentence()).contains("No earlier visit to this appliance is stored here");
    }

    @Test
    void theReviewShowsTheVisitsOfTheSessionThatIsOpen() {
        Snapshot snapshot = Shots.room("30-visits").snapshot();
        VisitsView visits = DeskPaneTest.onEdt(() -> {
            ReviewPane pane = new ReviewPane(Painting.look(), new NothingHeard());
            pane.setSize(1280, 720);
            pane.show(StoredScenes.scene(snapshot, "", false));
            pane.visits(true);
            pane.show(StoredScenes.scene(snapshot, "", false));
            Painting.layOut(pane);
            return pane.visits();
        });
        assertThat(visits.sentence()).contains("found 1.51, left 1.70");
        assertThat(VisitsView.why(Optional.empty())).isEqualTo("Not known before the session was run through again");
    }
}
