package settlemark.ui;

import java.util.ArrayList;
import java.util.List;
import settlemark.job.Act;
import settlemark.session.Desk;
import settlemark.session.Snapshot;

/** A desk that shows what it is told to show and remembers what was done at it. */
final class FakeDesk implements Desk {
    private volatile Snapshot snapshot;
    private final List<Act> acts = new ArrayList<>();

    FakeDesk(Snapshot snapshot) {
        this.snapshot = snapshot;
    }

    void show(Snapshot newSnapshot) {
        snapshot = newSnapshot;
    }

    @Override
    public Snapshot snapshot() {
        return snapshot;
    }

    @Override
    public synchronized void act(Act act) {
        acts.add(act);
    }

    synchronized List<Act> acts() {
        return List.copyOf(acts);
    }
}
