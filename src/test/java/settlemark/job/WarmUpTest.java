package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;

/** What the manifold does before the burner lights and while the valve warms; figures of the catalogue of faults. */
final class WarmUpTest {
    private static final String LOW = "found-low";
    private final Bench bench = new Bench();

    private List<String> remarks() {
        assertThat(bench.step(LOW).progress()).as(bench.step(LOW).waitingFor()).isEqualTo(Progress.TAKEN);
        return bench.step(LOW).remarks();
    }

    /** Low fire is armed and burns; the air still climbs. */
    private void burning(double manifold) {
        bench.untilLockUp();
        bench.act(new Act.Confirm(LOW));
        bench.settled(Role.INLET, 6.93);
        bench.settled(Role.RETURN, 70);
        bench.moving(Role.SUPPLY, 95);
        bench.moving(Role.MANIFOLD, manifold);
        bench.pass(2);
    }

    private void taken(double manifold) {
        bench.settled(Role.MANIFOLD, manifold);
        bench.pass(1);
        bench.settled(Role.SUPPLY, 118);
        bench.pass(20);
    }

    /** 0.2 inH2O towards its end with a time constant of 300 s, over ten minutes. */
    private void creeping(double by) {
        for (int second = 0; second < 600; second++) {
            bench.moving(Role.MANIFOLD, 1.5 + by * (1 - Math.exp(-second / 300.0)));
            bench.pass(1);
        }
    }

    @Test
    void aManifoldThatClimbsForMinutesHasCrept() {
        burning(1.5);
        creeping(0.2);
        taken(1.67);
        assertThat(remarks())
                .anyMatch(w -> w.startsWith("The manifold crept by +0.16 inH\u2082O, from 1.53 to 1.69, within ")
                        && w.endsWith("it is the gauge."));
    }

    /** A lowest fire of a modulating burner leaves its target by far more than a tenth. */
    @Test
    void aCreepThatIsLargeForItsStageIsOneAllTheSame() {
        burning(1.5);
        creeping(1.0);
        taken(2.4);
        assertThat(remarks()).anyMatch(w -> w.startsWith("The manifold crept by +0.8"));
    }

    @Test
    void lessThanIsCustomaryIsNotSaid() {
        burning(1.5);
        creeping(0.04);
        taken(1.54);
        assertThat(remarks()).noneMatch(w -> w.contains("crept"));
    }

    /** Another appliance, a hand at the screw: a step, and no creep. */
    @Test
    void aStepIsNoCreep() {
        burning(1.5);
        bench.settled(Role.MANIFOLD, 1.5);
        bench.pass(120);
        bench.settled(Role.MANIFOLD, 1.7);
        bench.pass(120);
        taken(1.7);
        assertThat(remarks()).noneMatch(w -> w.contains("crept"));
    }

    /** The box of a sealed unit is 0.05 to 0.6 inH2O below the room while its fan runs. */
    @Test
    void aBoxBelowTheRoomIsSeenInThePrePurgeAndSaidOnce() {
        bench.untilLockUp();
        bench.moving(Role.MANIFOLD, -0.27);
        bench.pass(20);
        bench.act(new Act.Confirm(LOW));
        bench.moving(Role.MANIFOLD, 0.4);
        bench.pass(1);
        bench.firing(1.71, 118);
        bench.pass(61);
        assertThat(remarks())
                .containsOnlyOnce(
                        "Before the burner lit, in pre-purge, the manifold stood at -0.25 inH\u2082O: the burner box is not at"
                                + " the room's pressure. Where it is sealed, read the manifold against the box, as the"
                                + " maker says.");
        bench.act(new Act.Confirm("found-high"));
        bench.firing(3.5, 130);
        bench.pass(61);
        assertThat(bench.step("found-high").remarks()).noneMatch(w -> w.contains("pre-purge"));
    }

    @Test
    void anOpenBoxAndAShortStrokeSayNothing() {
        bench.untilLockUp();
        bench.moving(Role.MANIFOLD, -0.04);
        bench.pass(20);
        bench.moving(Role.MANIFOLD, -0.4);
        bench.pass(3);
        bench.act(new Act.Confirm(LOW));
        bench.firing(1.71, 118);
        bench.pass(61);
        assertThat(remarks()).noneMatch(w -> w.contains("pre-purge"));
    }

    /** A zero that is off shows at rest as well: that is no box. */
    @Test
    void whatStandsAtRestToo() {
        bench.act(new Act.Confirm("plate"));
        bench.act(new Act.Confirm("probes"));
        bench.settled(Role.INLET, 0);
        bench.settled(Role.MANIFOLD, 0);
        bench.act(new Act.Confirm("zero"));
        bench.pass(21);
        bench.settled(Role.INLET, 7.8);
        bench.settled(Role.MANIFOLD, 0.09);
        bench.act(new Act.Confirm("lock-up"));
        bench.pass(30);
        bench.act(new Act.Confirm(LOW));
        bench.firing(1.71, 118);
        bench.pass(61);
        assertThat(remarks()).noneMatch(w -> w.contains("pre-purge"));
    }
}
