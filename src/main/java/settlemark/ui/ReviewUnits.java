package settlemark.ui;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Unit;
import settlemark.session.SnapshotUnits;

/**
 * The units that a review shows a session in. What was read of the store stays as it is; what is converted of it is kept
 * until something else is shown, as the line runs over the same traces ten times a second.
 */
final class ReviewUnits {
    private @Nullable SnapshotUnits shown;
    private final Kept<StoredSession> session = new Kept<>();
    private final Kept<WindowTraces> traces = new Kept<>();
    private final Kept<WindowTraces> whole = new Kept<>();
    private final Kept<ReviewScene.Laid> laid = new Kept<>();

    /** The newest of a kind, beside what it was made of. */
    private static final class Kept<T> {
        private @Nullable T before;
        private @Nullable T after;

        void forget() {
            before = null;
            after = null;
        }
    }

    private interface Change<T> {
        T of(T before, SnapshotUnits units);
    }

    private <T> T shown(Kept<T> kept, T before, Change<T> change) {
        SnapshotUnits units = shown;
        if (units == null) {
            return before;
        }
        T after = kept.before == before ? kept.after : null;
        if (after == null) {
            after = change.of(before, units);
            kept.before = before;
            kept.after = after;
        }
        return after;
    }

    /** The next units that are not those of now. */
    SnapshotUnits next(StoredSession stored) {
        SnapshotUnits now = shown == null
                ? new SnapshotUnits(
                        stored.header().pressureUnit(), stored.header().temperatureUnit())
                : shown;
        SnapshotUnits next = Units.SHOWN.get((Units.SHOWN.indexOf(now) + 1) % Units.SHOWN.size());
        shown = next;
        session.forget();
        traces.forget();
        whole.forget();
        laid.forget();
        return next;
    }

    StoredSession session(StoredSession stored) {
        return shown(session, stored, StoredSession::in);
    }

    WindowTraces traces(WindowTraces stored) {
        return shown(traces, stored, WindowTraces::in);
    }

    WindowTraces whole(WindowTraces stored) {
        return shown(whole, stored, WindowTraces::in);
    }

    Optional<ReviewScene.Laid> laid(Optional<ReviewScene.Laid> stored) {
        return stored.map(l -> shown(laid, l, ReviewScene.Laid::in));
    }

    /** The unit that a value of a unit is shown in. */
    Unit of(Unit unit) {
        return shown == null ? unit : shown.shown(unit);
    }
}
