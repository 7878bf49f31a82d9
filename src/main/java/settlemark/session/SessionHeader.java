package settlemark.session;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import settlemark.job.JobPlan;
import settlemark.job.RatingPlate;
import settlemark.job.SettledBy;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.SettleChoices;

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
 * @param settle what was set of the detectors when it began, besides what the plan sets
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
        String version,
        SettleChoices settle) {
    public SessionHeader {
        Objects.requireNonNull(settle);
        Objects.requireNonNull(startedAt);
        Objects.requireNonNull(zone);
        probes = List.copyOf(probes);
        if (plan.isPresent() != plate.isPresent()) {
            throw new IllegalArgumentException("a plan needs a plate, and a plate a plan");
        }
    }

    /** With the detectors' defaults. */
    public SessionHeader(
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
        this(
                key,
                title,
                startedAt,
                zone,
                pressureUnit,
                temperatureUnit,
                probes,
                plan,
                plate,
                version,
                SettleChoices.NONE);
    }

    /** What is set of the detectors: the plan's word goes before that of the workspace. */
    public SettleChoices settings() {
        return plan.map(p -> p.settle().over(settle)).orElse(settle);
    }

    /** The same session as one that begins with the workspace's settings of the detectors. */
    public SessionHeader begunWith(SettleChoices workspace) {
        return with(probes, plan, workspace);
    }

    /** The same session with other settings of the detectors, whatever the plan sets. */
    public SessionHeader withSettings(SettleChoices others) {
        return with(probes, plan.map(p -> p.withSettle(SettleChoices.NONE)), others);
    }

    /** The same session whose steps are called settled by something else; as it is where it has no plan. */
    public SessionHeader withSettledBy(SettledBy by) {
        return with(probes, plan.map(p -> p.withSettledBy(by)), settle);
    }

    private SessionHeader with(List<ProbeSetup> otherProbes, Optional<JobPlan> otherPlan, SettleChoices choices) {
        return new SessionHeader(
                key,
                title,
                startedAt,
                zone,
                pressureUnit,
                temperatureUnit,
                otherProbes,
                otherPlan,
                plate,
                version,
                choices);
    }

    /** True where any probe comes from the rig: then everything of the session says so. */
    public boolean simulated() {
        return probes.stream().anyMatch(p -> p.profile().simulated());
    }

    /** The same session with other probes. */
    SessionHeader withProbes(List<ProbeSetup> others) {
        return with(others, plan, settle);
    }

    /** The unit that a role's channel is read in. */
    public Unit unit(Role role) {
        return role.gasAnalysis()
                ? SettleFit.analysisUnit(role)
                : role.dimension() == Dimension.PRESSURE ? pressureUnit : temperatureUnit;
    }

    /** The same session as one whose record is shown in other units. */
    public SessionHeader shownIn(Unit pressure, Unit temperature, JobUnits units) {
        return new SessionHeader(
                key,
                title,
                startedAt,
                zone,
                pressure,
                temperature,
                probes,
                plan,
                plate.map(units::plate),
                version,
                settle);
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
                rereading.version(),
                settle);
    }
}
