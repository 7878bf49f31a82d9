package settlemark.job;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Role;
import settlemark.settle.SettledTogether;
import settlemark.settle.StageReading;

/** One step while it runs: the mutable side of a {@link StepState}. */
final class StepRun {
    final String key;
    final PlanStep step;
    final List<StageReading> readings = new ArrayList<>();
    final List<Verdict> verdicts = new ArrayList<>();
    final Map<String, Long> ticked = new LinkedHashMap<>();
    final List<StepState.Mark> marks = new ArrayList<>();
    final List<String> remarks = new ArrayList<>();
    final ManifoldFall fall = new ManifoldFall();
    final LockUpClimb climb = new LockUpClimb();
    final BeforeTheCap beforeTheCap = new BeforeTheCap();
    final SettledTogether together = new SettledTogether();
    final StepRules rules;
    final ManifoldCreep creep = new ManifoldCreep();
    final TakenFirst takenFirst = new TakenFirst();

    /** What the person has typed, by what it is of. */
    final Map<Role, TypedValue> typed = new EnumMap<>(Role.class);

    final Clocking.Course clock = new Clocking.Course();

    Progress progress = Progress.WAITING;
    double dialCubicFeet = 1;
    /** Whether the burner stood elsewhere than at its stage, or moved, since the run that goes on began. */
    String unsteady = "";

    boolean adjusting;
    boolean superseded;
    long openedNanos = -1;
    long armedNanos = -1;
    /** When the watching of a trapped pressure began, -1 before. */
    long watchedFromNanos = -1;
    /** A trapped pressure as it stood at the press, before it came to rest. */
    @Nullable
    StageReading whenTrapped;

    long doneNanos = -1;
    Wait waitingFor = Wait.NOTHING;
    String skipReason = "";

    StepRun(String key, PlanStep step) {
        this.key = key;
        this.step = step;
        this.rules = new StepRules(step.settledBy());
    }

    void open(long timeNanos) {
        if (progress == Progress.WAITING) {
            progress = Progress.OPEN;
            adjusting = step.kind() == StepKind.LEFT;
        }
        if (openedNanos < 0) {
            openedNanos = timeNanos;
        }
    }

    void arm(long timeNanos) {
        open(timeNanos);
        progress = Progress.ARMED;
        armedNanos = timeNanos;
        watchedFromNanos = -1;
        adjusting = false;
        together.restart();
        rules.restart();
        creep.restart();
        takenFirst.restart(step.pressuresFirst());
    }

    void disarm() {
        takenFirst.drop().ifPresent(remarks::add);
        progress = Progress.OPEN;
        waitingFor = Wait.NOTHING;
    }

    void finish(long timeNanos, Progress how) {
        progress = how;
        doneNanos = timeNanos;
        adjusting = false;
        waitingFor = Wait.NOTHING;
    }

    boolean done() {
        return progress == Progress.TAKEN || progress == Progress.SKIPPED;
    }

    boolean allTicked() {
        return ticked.keySet().containsAll(step.ticks());
    }

    /** The pointer is at the mark; a new run begins steady. */
    void markClock(long timeNanos) {
        if (!clock.running()) {
            unsteady = "";
        }
        clock.mark(timeNanos);
    }

    /** A run counts when the burner stood still at its stage. Returns whether two runs agree now. */
    boolean endClocked(GasHeat heat) {
        if (!unsteady.isEmpty() && clock.ready()) {
            clock.drop(unsteady);
            unsteady = "";
            return false;
        }
        return clock.end() && clocking(heat).agreed();
    }

    Clocking clocking(GasHeat heat) {
        return new Clocking(dialCubicFeet, heat, clock.runs());
    }

    StepState state(GasHeat heat) {
        return new StepState(
                key,
                step,
                progress,
                adjusting,
                superseded,
                openedNanos,
                armedNanos,
                doneNanos,
                readings,
                verdicts,
                ticked,
                marks,
                remarks,
                clock.running() && !unsteady.isEmpty() ? "this run will not count: " + unsteady : waitingFor.words(),
                skipReason,
                clocking(heat),
                typed);
    }
}
