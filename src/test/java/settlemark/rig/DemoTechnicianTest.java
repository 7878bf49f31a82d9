package settlemark.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.measure.Role;
import settlemark.measure.Sample;
import settlemark.rig.DemoTechnician.Look;
import settlemark.rig.DemoTechnician.Report;
import settlemark.rig.DemoTechnician.Task;
import settlemark.session.DemoHands;
import settlemark.session.DemoHands.Call;

class DemoTechnicianTest {
    private static final long SEED = 12;
    private static final double ZERO_IN_H2O = -0.02;

    /** Looks at the decoded gauge ten times a second until something is reported; fails after half an hour. */
    private static Report until(Expected seen, DemoTechnician technician, Task task, String stage, double target) {
        double start = seen.rig.truth().timeNanos() / 1e9;
        for (double t = start; t < start + 1800; t += 0.1) {
            seen.runTo(t);
            Report report = technician.look(look(seen, task, stage, target));
            if (report != Report.NOTHING) {
                return report;
            }
        }
        throw new AssertionError("no report on " + task + " " + stage + " at " + seen.rig.truth());
    }

    private static Look look(Expected seen, Task task, String stage, double target) {
        List<Sample> of = seen.samples.getOrDefault(Role.MANIFOLD, List.of());
        double last = of.isEmpty() ? Double.NaN : of.get(of.size() - 1).value() - ZERO_IN_H2O;
        return new Look(seen.rig.truth().timeNanos(), task, stage, target, last, settled(of));
    }

    /** Good enough for a test: the means of the last two stretches of ten seconds agree. */
    private static boolean settled(List<Sample> of) {
        if (of.size() < 200) {
            return false;
        }
        return Math.abs(mean(of, of.size() - 200) - mean(of, of.size() - 100)) < 0.005;
    }

    private static double mean(List<Sample> of, int from) {
        return of.subList(from, from + 100).stream()
                .mapToDouble(Sample::value)
                .average()
                .orElseThrow();
    }

    @Test
    void doesTheWholeJobByWhatTheGaugeShows() {
        System.out.println("rig seed " + SEED);
        Expected seen = new Expected(new DemoRig(new DemoRig.Settings(SEED, true)));
        DemoTechnician technician = new DemoTechnician(seen.rig);
        assertThat(until(seen, technician, Task.OPEN_PORTS, "", Double.NaN)).isEqualTo(Report.DONE);
        assertThat(seen.rig.truth().portsOpen()).isTrue();
        assertThat(until(seen, technician, Task.LOCK_UP, "", Double.NaN)).isEqualTo(Report.DONE);
        assertThat(seen.rig.truth().portsOpen()).isFalse();
        assertThat(until(seen, technician, Task.FIRE, "low", 1.7)).isEqualTo(Report.DONE);
        assertThat(seen.rig.truth().stage()).isEqualTo(RigTruth.Stage.LOW);
        assertThat(until(seen, technician, Task.FIRE, "high", 3.5)).isEqualTo(Report.DONE);
        assertThat(seen.rig.truth().stage()).isEqualTo(RigTruth.Stage.HIGH);
        adjust(seen, technician, "low", 1.7);
        adjust(seen, technician, "high", 3.5);
        assertThat(until(seen, technician, Task.SHUT, "", Double.NaN)).isEqualTo(Report.DONE);
        assertThat(seen.rig.truth().manifoldInH2o()).isZero();
        assertThat(until(seen, technician, Task.OPEN_PORTS, "", Double.NaN)).isEqualTo(Report.DONE);
        assertThat(seen.rig.truth().portsOpen()).isTrue();
    }

    private static void adjust(Expected seen, DemoTechnician technician, String stage, double target) {
        double before = seen.rig.truth().timeNanos() / 1e9;
        assertThat(until(seen, technician, Task.ADJUST, stage, target)).isEqualTo(Report.DONE);
        seen.runTo(seen.rig.truth().timeNanos() / 1e9 + 60);
        RigTruth left = seen.rig.truth();
        System.out.println(
                stage + " left at " + left.manifoldInH2o() + " after " + (left.timeNanos() / 1e9 - 60 - before) + " s");
        assertThat(left.capOn()).isTrue();
        // The gauge's accuracy, what the technician calls good enough, and the valve that still warms.
        double allowed = Expected.accuracy(Role.MANIFOLD, target) + 0.012 + 0.015;
        assertThat(left.manifoldInH2o()).isCloseTo(target, within(allowed));
        seen.runTo(left.timeNanos() / 1e9 + 900);
        assertThat(seen.rig.truth().riseDegF()).isBetween(30.0, 60.0);
    }

    @Test
    void restsWhileAReadingSettlesAndRepeatsAReportThatHadNoEffect() {
        Expected seen = new Expected(new DemoRig(new DemoRig.Settings(SEED, true)));
        DemoTechnician technician = new DemoTechnician(seen.rig);
        assertThat(until(seen, technician, Task.SHUT, "", Double.NaN)).isEqualTo(Report.DONE);
        double first = seen.rig.truth().timeNanos() / 1e9;
        assertThat(until(seen, technician, Task.SHUT, "", Double.NaN)).isEqualTo(Report.DONE);
        assertThat(seen.rig.truth().timeNanos() / 1e9 - first).isBetween(14.0, 16.0);
        DemoHands.State before = seen.rig.state();
        assertThat(technician.look(look(seen, Task.REST, "", Double.NaN))).isEqualTo(Report.NOTHING);
        assertThat(seen.rig.state()).isEqualTo(before);
    }

    /** Hands on a valve whose screw does nothing. */
    private static final class DeadScrew implements DemoHands {
        private double turned;
        private boolean capOn = true;

        @Override
        public void call(Call call) {}

        @Override
        public void turnScrew(String stage, double turns) {
            turned += turns;
        }

        @Override
        public void cap(boolean on) {
            capOn = on;
        }

        @Override
        public void portsOpen(boolean open) {}

        @Override
        public void manualValve(boolean open) {}

        @Override
        public void otherAppliance(boolean burning) {}

        @Override
        public double meterCubicFeet() {
            return 0;
        }

        @Override
        public State state() {
            return new State(Call.LOW, capOn, false, turned, 0, 0);
        }
    }

    @Test
    void stopsTurningAScrewThatDoesNotAnswer() {
        DeadScrew hands = new DeadScrew();
        DemoTechnician technician = new DemoTechnician(hands);
        Report report = Report.NOTHING;
        for (long t = 0; report == Report.NOTHING && t < 1800; t++) {
            report = technician.look(new Look(t * 1_000_000_000L, Task.ADJUST, "low", 1.7, 1.5, true));
        }
        assertThat(report).isEqualTo(Report.SCREW_DEAD);
        assertThat(hands.turned).isBetween(0.5, 0.76);
        assertThat(hands.capOn).isTrue();
    }
}
