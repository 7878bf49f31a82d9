package settlemark.store;

import java.util.ArrayList;
import java.util.List;
import settlemark.session.Damage;

/** Gathers damage; a file that is torn to pieces is not listed to its last byte. */
final class Findings {
    private static final int MOST = 1000;

    private final List<Damage> listed = new ArrayList<>();
    private long more;

    void add(Damage damage) {
        if (listed.size() < MOST) {
            listed.add(damage);
        } else {
            more++;
        }
    }

    List<Damage> listed() {
        return List.copyOf(listed);
    }

    long more() {
        return more;
    }
}
