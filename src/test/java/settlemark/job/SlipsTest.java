package settlemark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;

/** Slips of the work, each as the data show it. Figures: common practice; an inch of water is 2.4908891 mbar (NIST SP 811). */
final class SlipsTest {
    private Bench bench = new Bench();

    private void lockUp(double inlet, double manifold) {
        bench.act(new Act.Confirm("plate"));
        bench.act(new Act.Confirm("probes"));
        bench.settled(Role.INLET, 0);
        bench.settled(Role.MANIFOLD, 0);
        bench.act(new Act.Confirm("zero"));
        bench.pass(21);
        bench.settled(Role.INLET, inlet);
        bench.settled(Role.MANIFOLD, manifold);
        bench.act(new Act.Confirm("lock-up"));
        bench.pass(25);
    }

    private List<String> said(String step) {
        return bench.step(step).remarks();
    }

    @Test
    void millibarsTakenForInchesShowByTheirFactor() {
        lockUp(7.8 * 2.4908891, 0);
        assertThat(said("lock-up"))
                .anySatisfy(w -> assertThat(w).contains("reads 19.43 inH\u2082O", "would be 7.80 inH\u2082O"));
    }

    @Test
    void inchesTakenForMillibarsShowTheOtherWay() {
        lockUp(7.8 / 2.4908891, 0);
        assertThat(said("lock-up"))
                .anySatisfy(w -> assertThat(w).contains("reads 3.13 inH\u2082O", "would be 7.80 inH\u2082O"));
    }

    @Test
    void propaneOnANaturalGasPlateStopsTheWork() {
        lockUp(12.2, 0);
        assertThat(said("lock-up")).anySatisfy(w -> assertThat(w).contains("one of propane", "stop until"));
    }

    @Test
    void anInletWithinThePlateSaysNothing() {
        lockUp(7.8, 0);
        assertThat(said("lock-up")).isEmpty();
    }

    @Test
    void twoHosesOnTheInletsSideAreNotReadAsALockUp() {
        lockUp(7.8, 7.79);
        assertThat(bench.step("lock-up").progress()).isEqualTo(Progress.ARMED);
        assertThat(bench.step("lock-up").waitingFor())
                .contains("the manifold shows 7.79 inH\u2082O with nothing firing: its hose is on the inlet's side");
    }

    @Test
    void airProbesOnEachOthersPlacesAreNotReadAsARise() {
        bench.untilLockUp();
        bench.settled(Role.SUPPLY, 70);
        bench.settled(Role.RETURN, 105);
        bench.settled(Role.INLET, 6.98);
        bench.settled(Role.MANIFOLD, 1.68);
        bench.act(new Act.Confirm("found-low"));
        bench.pass(400);
        assertThat(bench.step("found-low").progress()).isEqualTo(Progress.ARMED);
        assertThat(bench.step("found-low").waitingFor()).contains("the air probes are on each other's places");
    }

    @Test
    void aHoseOnTheOtherPortReadsBelowNothing() {
        bench.untilLockUp();
        bench.act(new Act.Confirm("found-low"));
        bench.firing(-1.72, 104);
        bench.pass(400);
        assertThat(bench.step("found-low").waitingFor()).contains("-1.70 inH\u2082O, below nothing");
    }

    @Test
    void aValveThatIsWideOpenIsSaid() {
        bench.untilLockUp();
        bench.act(new Act.Confirm("found-high"));
        bench.firing(2.98, 110);
        bench.settled(Role.INLET, 3.63);
        bench.pass(400);
        assertThat(said("found-high")).anySatisfy(w -> assertThat(w).contains("wide open: the inlet of 3.60"));
    }

    @Test
    void anInletThatDoesNotFallAsksWhetherAnythingFires() {
        bench = new Bench(Plans.get("supply-check"));
        lockUp(7.8, 0);
        bench.act(new Act.Confirm("this-appliance"));
        bench.pass(25);
        assertThat(said("this-appliance")).anySatisfy(w -> assertThat(w).contains("is this appliance firing?"));
        bench.settled(Role.INLET, 6.6);
        bench.act(new Act.Repeat("this-appliance"));
        bench.act(new Act.Confirm("this-appliance#2"));
        bench.pass(25);
        assertThat(said("this-appliance#2")).isEmpty();
        bench.act(new Act.Confirm("all-appliances"));
        bench.pass(25);
        assertThat(said("all-appliances")).anySatisfy(w -> assertThat(w).contains("are the others firing?"));
    }
}
