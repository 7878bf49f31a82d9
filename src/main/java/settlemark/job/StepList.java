package settlemark.job;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The steps of a running job, repeated ones beside what they repeat, and which of them is at hand. */
final class StepList {
    private final List<StepRun> steps = new ArrayList<>();
    private final List<StepRun> seen = Collections.unmodifiableList(steps);
    private int current;

    StepList(JobPlan plan) {
        plan.steps().forEach(s -> steps.add(new StepRun(s.key(), s)));
        openCurrent(0);
    }

    /** In the plan's order. */
    List<StepRun> all() {
        return seen;
    }

    /** Index of the step at hand; how many there are where all are done. */
    int current() {
        return current;
    }

    Optional<StepRun> atHand() {
        return current < steps.size() ? Optional.of(steps.get(current)) : Optional.empty();
    }

    @Nullable
    StepRun find(String key) {
        return steps.stream().filter(s -> s.key.equals(key)).findFirst().orElse(null);
    }

    void handsAt(StepRun run) {
        current = steps.indexOf(run);
    }

    /** The hands are at another step now: an armed one must not take what belongs to it. */
    void disarmOthers(StepRun run) {
        steps.stream().filter(s -> s != run && s.progress == Progress.ARMED).forEach(StepRun::disarm);
    }

    /** The same step once more, right after what it takes the place of. */
    void again(long timeNanos, StepRun old) {
        String plain = old.step.key();
        long count = steps.stream().filter(s -> s.step.key().equals(plain)).count();
        current = steps.indexOf(old) + 1;
        steps.add(current, new StepRun(plain + "#" + (count + 1), old.step));
        openCurrent(timeNanos);
    }

    /** The next step that is not done becomes the one at hand. */
    void next(long timeNanos) {
        int start = current;
        current = steps.size();
        for (int i = 0; i < steps.size(); i++) {
            int index = (start + i) % steps.size();
            if (!steps.get(index).done()) {
                current = index;
                break;
            }
        }
        openCurrent(timeNanos);
    }

    private void openCurrent(long timeNanos) {
        atHand().ifPresent(run -> run.open(timeNanos));
    }
}
