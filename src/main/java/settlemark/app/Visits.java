package settlemark.app;

import java.util.Locale;
import java.util.Optional;
import settlemark.job.JobPlan;
import settlemark.job.RatingPlate;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/** Former jobs at the same appliance, which goes by the title that the person gave it. */
final class Visits {
    private Visits() {}

    /** The plate of the newest job of that title whose figures a plan can use; empty where there is none. */
    static Optional<RatingPlate> lastPlate(SessionStore store, String title, JobPlan plan) throws StoreException {
        for (SessionStore.Summary summary : store.sessions()) {
            if (same(summary.title(), title)) {
                SessionHeader header = store.header(summary.number());
                Optional<RatingPlate> plate = header.plate().filter(p -> plan.misfits(p).isEmpty());
                if (plate.isPresent()) {
                    return plate;
                }
            }
        }
        return Optional.empty();
    }

    private static boolean same(String one, String other) {
        return one.strip().toLowerCase(Locale.ROOT).equals(other.strip().toLowerCase(Locale.ROOT));
    }
}
