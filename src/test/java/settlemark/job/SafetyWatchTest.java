package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;

/** What can hurt people is noticed whatever step is at hand, and stays until it was seen. */
final class SafetyWatchTest {
    private final Bench bench = new Bench();

    private List<SafetyNotice> notices() {
        return bench.run.state().notices();
    }

    private SafetyNotice only() {
        assertThat(notices()).hasSize(1);
        return notices().get(0);
    }

    /** Bench's plate allows 4.5 to 10.5 inches of water at the inlet. */
    @Test
    void anInletOverThePlatesMostIsNoticedAfterFiveSecondsAndSaysWhatToDo() {
        bench.moving(Role.INLET, 10.6);
        bench.pass(5);
        assertThat(notices()).isEmpty();
        bench.pass(1);
        assertThat(only().words()).startsWith("Inlet 10.60 inH\u2082O: over the most that the plate allows, 10.50");
        assertThat(only().caution()).contains("Shut the gas off").contains("licensed person");
        assertThat(only().cured()).isFalse();
        assertThat(bench.run.state().alarm()).contains(only());
    }

    @Test
    void aStrokeOfTheValveAndAnInletAtTheLimitAreNone() {
        bench.moving(Role.INLET, 12);
        bench.pass(4);
        bench.moving(Role.INLET, 10.5);
        bench.pass(60);
        assertThat(notices()).isEmpty();
    }

    @Test
    void itStaysUntilItWasSeenAndOverAndComesAgainAsAnother() {
        bench.moving(Role.INLET, 11);
        bench.pass(10);
        bench.moving(Role.INLET, 7);
        bench.pass(10);
        assertThat(only().cured()).isTrue();
        assertThat(bench.run.state().alarm()).as("over, but nobody has seen it").isPresent();
        bench.act(new Act.Seen("inlet-over#2"));
        assertThat(bench.run.state().alarm()).isPresent();
        bench.act(new Act.Seen(only().key()));
        assertThat(bench.run.state().alarm()).isEmpty();
        assertThat(only().seenNanos()).isEqualTo(Bench.nanos(bench.seconds));
        bench.moving(Role.INLET, 11);
        bench.pass(10);
        assertThat(notices()).hasSize(2);
        assertThat(bench.run.state().alarm()).map(SafetyNotice::key).contains("inlet-over#2");
    }

    private void warm(double rise) {
        bench.settled(Role.RETURN, 68);
        bench.moving(Role.SUPPLY, 68 + rise);
    }

    @Test
    void aManifoldAtNothingWhileTheHeatGoesOnIsAHoseOffItsTap() {
        bench.moving(Role.MANIFOLD, 3.5);
        warm(50);
        bench.pass(5);
        bench.moving(Role.MANIFOLD, 0.01);
        bench.pass(120);
        assertThat(notices()).isEmpty();
        bench.pass(2);
        assertThat(only().words()).contains("hose may be off the tap");
        assertThat(only().caution()).startsWith("Gas may be escaping");
        bench.moving(Role.MANIFOLD, 3.5);
        bench.pass(1);
        assertThat(only().cured()).isTrue();
    }

    @Test
    void aBurnerThatHasGoneOutCoolsAndIsNoHose() {
        bench.moving(Role.MANIFOLD, 3.5);
        warm(50);
        bench.pass(5);
        bench.moving(Role.MANIFOLD, 0.01);
        bench.pass(30);
        warm(44);
        bench.pass(300);
        assertThat(notices()).isEmpty();
    }

    @Test
    void aColdApplianceAndOneThatNeverBurnedAreNoHose() {
        warm(50);
        bench.moving(Role.MANIFOLD, 0.0);
        bench.pass(300);
        assertThat(notices()).isEmpty();
        bench.moving(Role.MANIFOLD, 3.5);
        warm(4);
        bench.pass(5);
        bench.moving(Role.MANIFOLD, 0.0);
        bench.pass(300);
        assertThat(notices()).isEmpty();
    }

    @Test
    void withoutAirProbesAHoseCannotBeToldAndNothingIsSaid() {
        bench.moving(Role.MANIFOLD, 3.5);
        bench.pass(5);
        bench.moving(Role.MANIFOLD, 0.0);
        bench.pass(300);
        assertThat(notices()).isEmpty();
    }

    @Test
    void aClimbingLockUpIsANoticeUntilTheInletFalls() {
        bench.settled(Role.MANIFOLD, 0);
        bench.act(new Act.Confirm("lock-up"));
        double inlet = 7.8;
        for (int i = 0; i < 90; i++) {
            inlet += 0.006;
            bench.moving(Role.INLET, inlet);
            bench.pass(1);
        }
        assertThat(only().key()).isEqualTo("inlet-climbing#1");
        assertThat(only().words()).contains("does not lock up");
        assertThat(only().cured()).isFalse();
        bench.moving(Role.INLET, 7);
        bench.pass(1);
        assertThat(only().cured()).isTrue();
    }
}
