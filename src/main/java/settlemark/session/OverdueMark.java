package settlemark.session;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import settlemark.job.InstrumentCard;
import settlemark.job.InstrumentUse;
import settlemark.measure.Role;
import settlemark.session.ProbeView.Health;
import settlemark.session.ProbeView.HealthClass;

/** Marks a probe whose calibration is overdue on the day of a session. It refuses nothing. */
final class OverdueMark {
    private OverdueMark() {}

    static Optional<Health> of(ProbeSetup probe, List<InstrumentUse> uses, LocalDate day) {
        for (int i = uses.size() - 1; i >= 0; i--) {
            InstrumentCard card = uses.get(i).card();
            if (isOf(probe, uses.get(i))) {
                return card.overdue(day)
                        ? Optional.of(new Health(
                                HealthClass.MAINTENANCE_REQUIRED,
                                probe.name() + ": the calibration of " + card.serial() + " was due on "
                                        + card.due().orElseThrow()))
                        : Optional.empty();
            }
        }
        return Optional.empty();
    }

    private static boolean isOf(ProbeSetup probe, InstrumentUse use) {
        for (Role role : use.places().keySet()) {
            if (probe.roles().containsValue(role)) {
                return true;
            }
        }
        return false;
    }
}
