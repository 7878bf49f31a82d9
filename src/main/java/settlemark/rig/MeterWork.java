package settlemark.rig;

import settlemark.rig.DemoTechnician.Look;
import settlemark.rig.DemoTechnician.Report;
import settlemark.session.DemoHands;

/** Watches the pointer of the meter's dial of one cubic foot, two turns a run, once the manifold has settled. */
final class MeterWork {
    private static final int TURNS = 2;

    private long turn = Long.MIN_VALUE;
    private int marks;

    Report next(Look look, DemoHands hands) {
        long now = (long) Math.floor(hands.meterCubicFeet());
        boolean passed = turn != Long.MIN_VALUE && now > turn;
        turn = now;
        if (marks == 0 && !look.manifoldSettled()) {
            return Report.NOTHING;
        }
        if (marks > TURNS) {
            marks = 0;
            return Report.END_RUN;
        }
        if (!passed) {
            return Report.NOTHING;
        }
        marks++;
        return Report.MARK;
    }
}
