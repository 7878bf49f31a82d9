package settlemark.session;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import settlemark.job.JobPlan;
import settlemark.job.RatingPlate;
import settlemark.measure.Unit;

/**
 * What is known when a session begins; with the events it gives every reading again.
 *
 * @param key unique and readable, such as {@code 2026-03-14-0931-ash-lane}
 * @param title as shown
 * @param startedAt wall clock at session time 0
 * @param zone of the place
 * @param pressureUnit the job's unit of pressure
 * @param temperatureUnit the job's unit of temperature
 * @param probes in order; events name them by index
 * @param plan empty for a plain log
 * @param plate empty for a plain log
 * @param version of the program that made it
 */
public record SessionHeader(
        String key,
        String title,
        Instant startedAt,
        ZoneId zone,
        Unit pressureUnit,
        Unit temperatureUnit,
        List<ProbeSetup> probes,
        Optional<JobPlan> plan,
        Optional<RatingPlate> plate,
        String version) {
    public SessionHeader {
        Objects.requireNonNull(startedAt);
        Objects.requireNonNull(zone);
        probes = List.copyOf(probes);
        if (plan.isPresent() != plate.isPresent()) {
            throw new IllegalArgumentException("a plan needs a plate, and a plate a plan");
        }
    }

    /** True where any probe comes from the rig: then everything of the session says so. */
    public boolean simulated() {
        return probes.stream().anyMatch(p -> p.profile().simulated());
    }

    /** The same session with other probes. */
    SessionHeader withProbes(List<ProbeSetup> others) {
        return new SessionHeader(
                key, title, startedAt, zone, pressureUnit, temperatureUnit, others, plan, plate, version);
    }

    /** What a record made from a rereading is headed by: its key names the rereading, so it never passes for the day's. */
    public SessionHeader reread(Rereading rereading) {
        return new SessionHeader(
                key + "-rereading-" + rereading.number(),
                title,
                startedAt,
                zone,
                pressureUnit,
                temperatureUnit,
                rereading.probes(),
                plan,
                plate,
                rereading.version());
    }
}
