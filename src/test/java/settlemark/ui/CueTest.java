package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import settlemark.job.Progress;
import settlemark.measure.Role;

class CueTest {
    /** Frequency by counting rising zero crossings, independent of how the samples were made. */
    private static double hertz(short[] samples, int from, int to) {
        int crossings = 0;
        int first = -1;
        int last = -1;
        for (int i = from + 1; i < to; i++) {
            if (samples[i - 1] < 0 && samples[i] >= 0) {
                crossings++;
                first = first < 0 ? i : first;
                last = i;
            }
        }
        return (crossings - 1) * (double) Tones.RATE / (last - first);
    }

    @Test
    void thePitchIsAnOctaveForEachHalfWidthOfTheLimits() {
        assertThat(Cue.of(0, 0.35, 0.02).hertz()).isEqualTo(660);
        assertThat(Cue.of(0.35, 0.35, 0.02).hertz()).isCloseTo(1320, within(1e-9));
        assertThat(Cue.of(-0.35, 0.35, 0.02).hertz()).isCloseTo(330, within(1e-9));
        // Half an octave is the square root of two: 660 times 1.41421 is 933.38.
        assertThat(Cue.of(0.175, 0.35, 0.02).hertz()).isCloseTo(933.38, within(0.01));
        assertThat(Cue.of(9, 0.35, 0.02).hertz()).as("never above").isEqualTo(1320);
        assertThat(Cue.of(-9, 0.35, 0.02).hertz()).as("never below").isEqualTo(330);
    }

    @Test
    void theSideIsHeardInThePulsesAndTheDistanceInTheirNumber() {
        assertThat(Cue.of(-0.2, 0.35, 0.02).pulses()).isEqualTo(1);
        assertThat(Cue.of(0.2, 0.35, 0.02).pulses()).isEqualTo(2);
        assertThat(Cue.of(0.01, 0.35, 0.02).pulses()).as("nothing left to do").isZero();
        assertThat(Cue.of(0.35, 0.35, 0.02).perSecond()).isEqualTo(4);
        assertThat(Cue.of(0.05, 0.35, 0.02).perSecond()).isBetween(1.0, 1.5);
    }

    @Test
    void theSamplesHaveThatPitchAndBeginAndEndWithoutAClick() {
        short[] single = Cue.of(-0.175, 0.35, 0.02).beat();
        assertThat(single).hasSize((int) Math.round(0.08 * Tones.RATE));
        assertThat(hertz(single, 0, single.length)).isCloseTo(660 / Math.sqrt(2), within(3.0));
        assertThat(single[0]).isZero();
        assertThat(Math.abs(single[single.length - 1])).isLessThan((short) 200);
        short[] twice = Cue.of(0.175, 0.35, 0.02).beat();
        assertThat(twice.length).isGreaterThan(2 * single.length);
    }

    @Test
    void settledGoesDownAndSafetyAlternates() {
        short[] settled = Cue.settled();
        int half = settled.length / 2;
        assertThat(hertz(settled, 0, half)).isCloseTo(660, within(5.0));
        assertThat(hertz(settled, half, settled.length)).isCloseTo(495, within(5.0));
        short[] safety = Cue.safety();
        assertThat(hertz(safety, 0, safety.length / 2)).isCloseTo(880, within(6.0));
        assertThat(hertz(Cue.lost(), 0, Cue.lost().length)).isCloseTo(330, within(4.0));
    }

    @Test
    void nothingIsHeardUntilItIsSwitchedOn() {
        List<short[]> heard = new ArrayList<>();
        SoundBoard board = new SoundBoard(heard::add);
        Scene adjusting = scene(Shots.room("07-left-high-adjusting"));
        board.look(adjusting, 1);
        assertThat(heard).isEmpty();
        board.on(true);
        board.look(adjusting, 1_000_000_000L);
        board.look(adjusting, 1_010_000_000L);
        assertThat(heard).as("one beat, then its pause").hasSize(1);
        board.look(adjusting, 2_100_000_000L);
        assertThat(heard).hasSize(2);
    }

    @Test
    void allSettledIsHeardOnceAndLosingItToo() {
        List<short[]> heard = new ArrayList<>();
        SoundBoard board = new SoundBoard(heard::add);
        board.on(true);
        board.look(scene(new Showroom().at("found-high", Progress.ARMED, 60).moving(Role.SUPPLY, 2)), 1);
        assertThat(heard).isEmpty();
        board.look(scene(new Showroom().at("found-high", Progress.ARMED, 80)), 2);
        board.look(scene(new Showroom().at("found-high", Progress.ARMED, 81)), 3);
        assertThat(heard).singleElement().isEqualTo(Cue.settled());
        board.look(scene(new Showroom().at("found-high", Progress.ARMED, 90).moving(Role.MANIFOLD, 2)), 4);
        assertThat(heard).hasSize(2);
        assertThat(heard.get(1)).isEqualTo(Cue.lost());
        board.look(scene(new Showroom().at("left-low", Progress.ARMED, 90)), 5);
        assertThat(heard).as("another step begins quietly").hasSize(2);
    }

    private static Scene scene(Showroom room) {
        var snapshot = room.snapshot();
        var job = snapshot.job().orElseThrow();
        var header = snapshot.header();
        return new Scene(
                snapshot,
                job,
                job.currentStep().orElseThrow(),
                Optional.empty(),
                1,
                Axes.of(job.plate(), header.pressureUnit(), header.temperatureUnit()),
                RecordState.NONE);
    }
}
