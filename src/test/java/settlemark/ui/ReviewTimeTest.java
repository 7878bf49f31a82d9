package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import settlemark.session.Span;

/** The line of a review and the stretch around it; times of these tests are in seconds. */
final class ReviewTimeTest {
    private static final long SECOND = 1_000_000_000L;
    private static final Span WHOLE = span(0, 1000);

    private final Stretch shown = new Stretch();
    private final ReviewTime time = new ReviewTime(shown);

    private static final class Stretch implements ReviewTime.Shown {
        private final List<Span> all = new ArrayList<>(List.of(WHOLE));

        @Override
        public Span view() {
            return all.get(all.size() - 1);
        }

        @Override
        public void view(Span wanted) {
            all.add(wanted);
        }
    }

    private static Span span(double from, double to) {
        return new Span(Math.round(from * SECOND), Math.round(to * SECOND));
    }

    @BeforeEach
    void aSessionIsOpen() {
        time.begin(WHOLE);
    }

    private double line() {
        return (double) time.lineNanos() / SECOND;
    }

    @Test
    void itPlaysAsManyTimesFasterAndStopsAtTheEnd() {
        time.pace(20);
        time.playOrStop();
        time.play(5 * SECOND);
        assertThat(line()).isEqualTo(100);
        assertThat(time.playing()).isTrue();
        time.play(60 * SECOND);
        assertThat(line()).isEqualTo(1000);
        assertThat(time.playing()).isFalse();
        time.playOrStop();
        assertThat(time.playing()).as("nothing is left to be played").isFalse();
        time.first();
        time.playOrStop();
        time.playOrStop();
        time.play(SECOND);
        assertThat(line()).as("it was stopped").isZero();
    }

    @Test
    void thePacesGoRound() {
        List<Integer> seen = new ArrayList<>();
        time.pace(1);
        for (int i = 0; i < ReviewTime.PACES.size(); i++) {
            seen.add(time.pace());
            time.nextPace();
        }
        assertThat(seen).containsExactly(1, 2, 5, 10, 20, 50, 100);
        assertThat(time.pace()).isEqualTo(1);
    }

    @Test
    void theStretchFollowsALineThatPlaysOutOfItWithATenthBehindTheLine() {
        shown.view(span(0, 100));
        time.pace(1);
        time.playing(true);
        time.play(99 * SECOND);
        assertThat(shown.view()).isEqualTo(span(0, 100));
        time.play(2 * SECOND);
        assertThat(shown.view()).isEqualTo(span(91, 191));
    }

    @Test
    void aLineThatIsPutOutsideTheStretchIsInItsMiddleThen() {
        shown.view(span(0, 100));
        time.line(500 * SECOND);
        assertThat(shown.view()).isEqualTo(span(450, 550));
        time.by(0.1);
        assertThat(line()).isEqualTo(510);
        time.by(-0.01);
        assertThat(line()).isEqualTo(509);
        assertThat(shown.view()).as("still in view").isEqualTo(span(450, 550));
    }

    @Test
    void nothingReachesOverTheEndsOfTheSession() {
        shown.view(span(0, 100));
        time.line(5000 * SECOND);
        assertThat(line()).isEqualTo(1000);
        assertThat(shown.view()).isEqualTo(span(900, 1000));
        time.line(-SECOND);
        assertThat(line()).isZero();
        assertThat(shown.view()).isEqualTo(span(0, 100));
        time.zoom(3, 50 * SECOND);
        assertThat(shown.view()).isEqualTo(span(0, 800));
        time.zoom(3, 50 * SECOND);
        assertThat(shown.view()).isEqualTo(WHOLE);
        time.last();
        assertThat(line()).isEqualTo(1000);
    }

    @Test
    void zoomingLeavesWhatIsPointedAtWhereItIs() {
        shown.view(span(200, 600));
        time.zoom(-1, 300 * SECOND);
        assertThat(shown.view()).isEqualTo(span(250, 450));
        time.zoom(1, 300 * SECOND);
        assertThat(shown.view()).isEqualTo(span(200, 600));
        time.zoom(-99, 300 * SECOND);
        assertThat(shown.view()).as("three halvings at once are the most").isEqualTo(span(287.5, 337.5));
    }

    @Test
    void itZoomsFromTheWholeToSingleSamplesAndNotFurther() {
        time.line(333 * SECOND);
        for (int i = 0; i < 40; i++) {
            time.zoom(-1);
        }
        assertThat(shown.view().toNanos() - shown.view().fromNanos()).isEqualTo(ReviewTime.LEAST_NANOS);
        assertThat(shown.view().fromNanos()).isLessThanOrEqualTo(time.lineNanos());
        assertThat(shown.view().toNanos()).isGreaterThanOrEqualTo(time.lineNanos());
        time.all();
        assertThat(shown.view()).isEqualTo(WHOLE);
    }

    @Test
    void aGapIsShownWithAsMuchAroundItAndAStepWithItsReading() {
        time.gap(span(400, 410));
        assertThat(shown.view()).isEqualTo(span(380, 430));
        assertThat(line()).isEqualTo(400);
        time.step(span(100, 200), 150 * SECOND);
        assertThat(shown.view()).isEqualTo(span(100, 200));
        assertThat(line()).isEqualTo(150);
    }
}
