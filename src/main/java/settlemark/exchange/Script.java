package settlemark.exchange;

import java.util.List;
import settlemark.profile.Step;

/** Steps under way: a start-up or an action. */
final class Script {
    final String name;
    final boolean startUp;
    private final List<Step> steps;
    private int at;

    Script(String name, boolean startUp, List<Step> steps) {
        this.name = name;
        this.startUp = startUp;
        this.steps = steps;
    }

    boolean ended() {
        return at == steps.size();
    }

    Step step() {
        return steps.get(at);
    }

    /** Counted from 1, for people. */
    int number() {
        return at + 1;
    }

    void next() {
        at++;
    }
}
