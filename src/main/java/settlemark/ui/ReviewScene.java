package settlemark.ui;

import java.util.Optional;
import settlemark.job.StepState;
import settlemark.session.SnapshotUnits;
import settlemark.session.Span;
import settlemark.session.WhatIfReport;
import settlemark.settle.StageReading;

/**
 * All that one look at a stored session shows; immutable.
 *
 * @param session that is open
 * @param step key of the open column, empty where all are folded
 * @param view the stretch of time that the chart shows
 * @param lineNanos where the line stands
 * @param playing whether it moves by itself
 * @param pace how many times faster than it was
 * @param traces of the stretch, or of the one before while they are still read
 * @param whole traces of the whole session
 * @param laid what lies under the traces
 * @param axes of the rows of the strip, empty for a log
 * @param asked whether the settled rule of another kind is asked for
 * @param rule what it makes of the session, empty until that is known
 */
record ReviewScene(
        StoredSession session,
        String step,
        Span view,
        long lineNanos,
        boolean playing,
        int pace,
        WindowTraces traces,
        WindowTraces whole,
        Optional<Laid> laid,
        Optional<Axes> axes,
        boolean asked,
        Optional<WhatIfReport> rule) {

    /**
     * Another reading or session, moved so that both begin together.
     *
     * @param name in words, said by {@link Words#told}
     * @param traces moved to the time of the open session
     * @param reading that stands for it, where it is one
     */
    record Laid(String name, WindowTraces traces, Optional<StageReading> reading) {
        /** The same in other units. */
        Laid in(SnapshotUnits units) {
            return new Laid(name, traces.in(units), reading.map(units::reading));
        }
    }

    Optional<StepState> open() {
        return session.job().flatMap(j -> j.step(step));
    }

    boolean simulated() {
        return session.summary().simulated();
    }
}
