package settlemark.app;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import settlemark.job.PlanStep;
import settlemark.measure.Role;
import settlemark.session.SessionHeader;

/** Channels that a plan reads and that no probe of the session is. */
final class MissingProbes {
    private MissingProbes() {}

    /** In words, one for each; empty where nothing is missing. */
    static List<String> of(SessionHeader header) {
        Set<Role> there = EnumSet.noneOf(Role.class);
        header.probes().forEach(p -> there.addAll(p.roles().values()));
        Set<Role> told = EnumSet.noneOf(Role.class);
        List<String> missing = new ArrayList<>();
        for (PlanStep step : header.plan().orElseThrow().steps()) {
            for (Role role : step.probed()) {
                if (!there.contains(role) && told.add(role)) {
                    missing.add("the plan's step \"" + step.key() + "\" reads the " + role.word()
                            + ", and no probe is connected there: say --role PROBE.CHANNEL=" + role.word()
                            + ", or use a plan without it");
                }
            }
        }
        return missing;
    }
}
