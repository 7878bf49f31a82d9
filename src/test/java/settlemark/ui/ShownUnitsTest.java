package settlemark.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import settlemark.job.JobState;
import settlemark.job.Verdict;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.ChannelView;
import settlemark.session.Snapshot;
import settlemark.session.SnapshotUnits;

/** Pascals in a conventional inch of water: 249.08891 (UCUM's own figure); a degree Fahrenheit is 5/9 kelvin. */
class ShownUnitsTest {
    private static final double PASCALS = 249.08891;
    private static final SnapshotUnits SI = new SnapshotUnits(Unit.PASCAL, Unit.CELSIUS);

    private final Snapshot stored = Shots.room("08-left-high-armed").snapshot();
    private final Snapshot shown = SI.of(stored);

    private ChannelView stored(Role role) {
        return stored.channel(role).orElseThrow();
    }

    private ChannelView shown(Role role) {
        return shown.channel(role).orElseThrow();
    }

    @Test
    void valuesAreOnTheirScaleAndEverythingBesideThemIsADifference() {
        assertThat(shown(Role.MANIFOLD).value()).isCloseTo(stored(Role.MANIFOLD).value() * PASCALS, within(0.01));
        assertThat(shown(Role.MANIFOLD).zeroOffset())
                .isCloseTo(stored(Role.MANIFOLD).zeroOffset() * PASCALS, within(1e-6));
        assertThat(shown(Role.SUPPLY).value()).isCloseTo((stored(Role.SUPPLY).value() - 32) * 5 / 9, within(1e-9));
        assertThat(shown(Role.SUPPLY).settle().couldMove())
                .isCloseTo(stored(Role.SUPPLY).settle().couldMove() * 5 / 9, within(1e-9));
        assertThat(shown(Role.SUPPLY).settings().driftLimit()).isCloseTo(0.5 * 5 / 9, within(1e-9));
    }

    @Test
    void theTraceFollowsWithoutBeingCopied() {
        int last = shown(Role.SUPPLY).trace().size() - 1;
        assertThat(shown(Role.SUPPLY).trace().value(last))
                .isCloseTo((stored(Role.SUPPLY).trace().value(last) - 32) * 5 / 9, within(1e-9));
        assertThat(shown(Role.SUPPLY).trace().timeNanos(last))
                .isEqualTo(stored(Role.SUPPLY).trace().timeNanos(last));
    }

    @Test
    void limitsReadingsAndVerdictsAreConvertedAndDecideTheSame() {
        JobState before = stored.job().orElseThrow();
        JobState after = shown.job().orElseThrow();
        assertThat(after.plate().inlet().upper()).isCloseTo(10.5 * PASCALS, within(0.001));
        assertThat(after.plate().rise().lower()).isCloseTo(30 * 5 / 9.0, within(1e-9));
        assertThat(after.plate().stage("high").manifoldTarget()).isCloseTo(3.5 * PASCALS, within(0.001));
        int verdicts = 0;
        for (int i = 0; i < before.steps().size(); i++) {
            for (int v = 0; v < before.steps().get(i).verdicts().size(); v++) {
                Verdict other = after.steps().get(i).verdicts().get(v);
                assertThat(other.outcome())
                        .isEqualTo(before.steps().get(i).verdicts().get(v).outcome());
                assertThat(other.limit().contains(other.value()))
                        .isEqualTo(other.outcome().accepted());
                verdicts++;
            }
        }
        assertThat(verdicts).isGreaterThan(2);
    }

    @Test
    void theKeyGoesThroughTheUnitsAndTheStoredSnapshotStaysAsItWas() {
        DeskPaneTest.Bench bench = DeskPaneTest.bench("08-left-high-armed");
        assertThat(words(bench)).contains("inches of water");
        bench.perform(Deed.UNITS);
        assertThat(words(bench)).contains("mbar").doesNotContain("inches of water");
        bench.perform(Deed.UNITS);
        assertThat(words(bench)).contains("pascals").contains("degrees Celsius");
        assertThat(bench.desk.snapshot().header().pressureUnit()).isEqualTo(Unit.INCH_OF_WATER);
        bench.perform(Deed.UNITS);
        assertThat(words(bench)).contains("inches of water");
        assertThat(bench.desk.acts()).as("nothing is stored of it").isEmpty();
    }

    private static String words(DeskPaneTest.Bench bench) {
        StringBuilder words = new StringBuilder();
        Painting.visible(bench.pane(), Readout.class)
                .forEach(r -> words.append(r.sentence()).append('\n'));
        return words.toString();
    }
}
