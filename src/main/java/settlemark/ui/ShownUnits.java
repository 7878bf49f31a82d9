package settlemark.ui;

import org.jspecify.annotations.Nullable;
import settlemark.job.RatingPlate;
import settlemark.session.SessionHeader;
import settlemark.session.Snapshot;
import settlemark.session.SnapshotUnits;

/** The units that the window shows, those of the session until a person chooses others, and the axes that go with them. */
final class ShownUnits {
    private @Nullable SnapshotUnits units;
    private @Nullable Axes axes;

    /** The snapshot in the units of the screen; what is stored stays as it is. */
    Snapshot of(Snapshot stored) {
        SnapshotUnits chosen = units;
        return chosen == null ? stored : chosen.of(stored);
    }

    /**
     * Axes that hold all that was shown since the units last changed.
     *
     * @param shown in the units of the screen
     */
    Axes axes(Snapshot shown, RatingPlate plate) {
        SessionHeader header = shown.header();
        Axes before = axes != null ? axes : Axes.of(plate, header.pressureUnit(), header.temperatureUnit());
        axes = before.with(shown);
        return axes;
    }

    void choose(SnapshotUnits chosen) {
        units = chosen;
        axes = null;
    }

    /** Those after the ones that are shown. */
    SnapshotUnits next(SessionHeader shown) {
        SnapshotUnits now = new SnapshotUnits(shown.pressureUnit(), shown.temperatureUnit());
        return Units.SHOWN.get((Units.SHOWN.indexOf(now) + 1) % Units.SHOWN.size());
    }

    /** Where they stand among those to choose from, -1 where none was chosen. */
    int chosen() {
        return units == null ? -1 : Units.SHOWN.indexOf(units);
    }
}
