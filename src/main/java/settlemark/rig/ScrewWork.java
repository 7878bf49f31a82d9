package settlemark.rig;

import settlemark.rig.DemoTechnician.Look;
import settlemark.rig.DemoTechnician.Report;
import settlemark.session.DemoHands;

/**
 * Sets one stage: takes the cap off and sees how far the manifold falls by that, turns the screw in small moves with a
 * wait after each, learning what a turn does, until the manifold with its cap on will stand at the target; then puts the
 * cap back.
 */
final class ScrewWork {
    /** Wait after touching anything, before the gauge is believed; it must have settled besides. */
    private static final double WAIT_SECONDS = 25;

    /** A cap is not on the moment that the hand reaches for it. */
    private static final double CAP_SECONDS = 5;

    private static final double GOOD_ENOUGH_IN_H2O = 0.012;
    private static final double LARGEST_MOVE_TURNS = 0.25;
    private static final double FIRST_GUESS_IN_H2O_PER_TURN = 0.5;
    private static final double LEAST_IN_H2O_PER_TURN = 0.15;
    private static final double MOST_IN_H2O_PER_TURN = 2;
    /** A move smaller than this teaches nothing. */
    private static final double TEACHING_MOVE_TURNS = 0.05;
    /** A screw is dead where this many turns move the manifold by less than the answer. */
    private static final double DEAD_TURNS = 0.5;

    private static final double ANSWER_IN_H2O = 0.03;
    private static final double LARGEST_CAP_SHIFT_IN_H2O = 0.2;

    private final Eye eye;
    private Phase phase = Phase.CAPPED;
    private long touchedNanos = Long.MIN_VALUE;
    private double cappedInH2o;
    private double capShiftInH2o;
    private double beforeInH2o;
    private double movedTurns;
    private double turnedSinceStart;
    private double startInH2o;
    private double inH2oPerTurn = FIRST_GUESS_IN_H2O_PER_TURN;

    private enum Phase {
        CAPPED,
        UNCAPPED,
        TURNING,
        SET,
        DEAD
    }

    ScrewWork(Eye eye) {
        this.eye = eye;
    }

    Report next(Look look, DemoHands hands) {
        if (phase == Phase.SET || phase == Phase.DEAD) {
            return finished(look);
        }
        if (touchedNanos == Long.MIN_VALUE) {
            touchedNanos = look.timeNanos();
        }
        if (!look.manifoldSettled() || look.timeNanos() - touchedNanos < WAIT_SECONDS * 1e9) {
            return Report.NOTHING;
        }
        touchedNanos = look.timeNanos();
        switch (phase) {
            case CAPPED -> uncap(hands);
            case UNCAPPED -> {
                capShiftInH2o = Math.max(0, Math.min(LARGEST_CAP_SHIFT_IN_H2O, cappedInH2o - eye.mean()));
                startInH2o = eye.mean();
                turnOrStop(look, hands);
            }
            case TURNING -> {
                learn();
                turnOrStop(look, hands);
            }
            case SET, DEAD -> throw new IllegalStateException("done already");
        }
        return Report.NOTHING;
    }

    private Report finished(Look look) {
        if (look.timeNanos() - touchedNanos < CAP_SECONDS * 1e9) {
            return Report.NOTHING;
        }
        return phase == Phase.SET ? Report.DONE : Report.SCREW_DEAD;
    }

    private void uncap(DemoHands hands) {
        cappedInH2o = eye.mean();
        hands.cap(false);
        phase = Phase.UNCAPPED;
    }

    private void learn() {
        if (Math.abs(movedTurns) >= TEACHING_MOVE_TURNS) {
            double seen = (eye.mean() - beforeInH2o) / movedTurns;
            inH2oPerTurn = Math.max(LEAST_IN_H2O_PER_TURN, Math.min(MOST_IN_H2O_PER_TURN, seen));
        }
    }

    private void turnOrStop(Look look, DemoHands hands) {
        double wantInH2o = look.targetInH2o() - capShiftInH2o - eye.mean();
        if (Math.abs(wantInH2o) <= GOOD_ENOUGH_IN_H2O) {
            hands.cap(true);
            phase = Phase.SET;
        } else if (Math.abs(turnedSinceStart) >= DEAD_TURNS && Math.abs(eye.mean() - startInH2o) < ANSWER_IN_H2O) {
            hands.cap(true);
            phase = Phase.DEAD;
        } else {
            turn(look.stage(), wantInH2o, hands);
        }
    }

    private void turn(String stage, double wantInH2o, DemoHands hands) {
        movedTurns = Math.max(-LARGEST_MOVE_TURNS, Math.min(LARGEST_MOVE_TURNS, wantInH2o / inH2oPerTurn));
        beforeInH2o = eye.mean();
        turnedSinceStart += movedTurns;
        hands.turnScrew(stage, movedTurns);
        phase = Phase.TURNING;
    }
}
