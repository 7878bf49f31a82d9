package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Role;
import settlemark.settle.StageReading;

/**
 * One step as it stands; immutable. A step that was repeated keeps its state and is superseded by a later one.
 *
 * @param key the plan step's key, with {@code #2} and so on where it was repeated
 * @param step what the plan says
 * @param progress how far it has come
 * @param adjusting true while a screw is being turned (only where a stage is left adjusted)
 * @param superseded true where it was done again later
 * @param openedNanos session time when it became the step at hand, -1 before
 * @param armedNanos session time when it was last armed, -1 before
 * @param doneNanos session time when it was taken or skipped, -1 before
 * @param readings taken in it, in order
 * @param verdicts of the last reading
 * @param ticked item to session time of the tick
 * @param marks what happened in it, for the chart
 * @param remarks findings in words, such as the shift on capping or why a zero was refused
 * @param waitingFor why an armed reading has not been taken yet, empty otherwise
 * @param skipReason empty unless skipped
 * @param clocking the meter's runs; none where nothing is clocked
 * @param typed values that the person has typed, by what they are of
 */
public record StepState(
        String key,
        PlanStep step,
        Progress progress,
        boolean adjusting,
        boolean superseded,
        long openedNanos,
        long armedNanos,
        long doneNanos,
        List<StageReading> readings,
        List<Verdict> verdicts,
        Map<String, Long> ticked,
        List<Mark> marks,
        List<String> remarks,
        String waitingFor,
        String skipReason,
        Clocking clocking,
        Map<Role, TypedValue> typed) {
    static final String PRESSURES_TAKEN = "pressures taken";
    static final String PRESSURES_DROPPED = "pressures dropped";

    public StepState {
        typed = Map.copyOf(typed);
        readings = List.copyOf(readings);
        verdicts = List.copyOf(verdicts);
        ticked = Map.copyOf(ticked);
        marks = List.copyOf(marks);
        remarks = List.copyOf(remarks);
    }

    /** A moment in a step, such as {@code cap on}. */
    public record Mark(long timeNanos, String words) {}

    /** The reading that stands for the step: the last one of its main purpose. */
    public Optional<StageReading> reading() {
        return readings.isEmpty() ? Optional.empty() : Optional.of(readings.get(readings.size() - 1));
    }

    /** The last reading of a purpose, such as {@code adjusted}. */
    public Optional<StageReading> reading(String purpose) {
        return readings.stream().filter(r -> r.purpose().equals(purpose)).reduce((a, b) -> b);
    }

    /** The worst of the verdicts, empty where there is none. */
    public Optional<Outcome> outcome() {
        return verdicts.stream().map(Verdict::outcome).reduce((a, b) -> a.compareTo(b) >= 0 ? a : b);
    }

    /** Whether it does another again. */
    public boolean again() {
        return !corrects().isEmpty();
    }

    /** Key of the step whose readings its own replace, {@code left-high#2} those of {@code left-high}; empty for none. */
    public String corrects() {
        int mark = key.lastIndexOf('#');
        if (mark < 0) {
            return "";
        }
        int number = Integer.parseInt(key.substring(mark + 1));
        return number == 2 ? key.substring(0, mark) : key.substring(0, mark + 1) + (number - 1);
    }

    /** When its pressures were taken before the rest; -1 where they were not, or were dropped since. */
    public long pressuresTakenNanos() {
        return marks.stream()
                .filter(m -> m.words().equals(PRESSURES_TAKEN) || m.words().equals(PRESSURES_DROPPED))
                .reduce((a, b) -> b)
                .filter(m -> m.words().equals(PRESSURES_TAKEN))
                .map(Mark::timeNanos)
                .orElse(-1L);
    }

    /** Whether its ticks are said by the press that begins its reading, instead of one by one. */
    public boolean ticksWithPress() {
        return step.kind().measuring() && step.kind() != StepKind.CLOSE;
    }

    /** What that press would still tick, in order; empty for a step that is ticked one by one. */
    public List<String> pressTicks() {
        return ticksWithPress()
                ? step.ticks().stream().filter(t -> !ticked.containsKey(t)).toList()
                : List.of();
    }

    /** A press as all that it says: the ticks that go with it, then the act itself. */
    public List<Act> saidWith(Act press) {
        List<Act> said = new ArrayList<>();
        pressTicks().forEach(item -> said.add(new Act.Tick(key, item, true)));
        said.add(press);
        return said;
    }

    public boolean done() {
        return progress == Progress.TAKEN || progress == Progress.SKIPPED;
    }
}
