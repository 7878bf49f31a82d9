package settlemark.session;

import java.util.List;
import java.util.Objects;
import settlemark.job.JobPlan;
import settlemark.job.RatingPlate;
import settlemark.measure.Unit;

/**
 * What a person has chosen before a job begins.
 *
 * @param title of the place and the appliance
 * @param plan the job's acts
 * @param plate as copied from the appliance
 * @param pressureUnit that the job is done in
 * @param temperatureUnit that the job is done in
 * @param probes to be connected, one at least
 */
public record JobStart(
        String title,
        JobPlan plan,
        RatingPlate plate,
        Unit pressureUnit,
        Unit temperatureUnit,
        List<ProbeSetup> probes) {
    public JobStart {
        Objects.requireNonNull(plan);
        Objects.requireNonNull(plate);
        probes = List.copyOf(probes);
        if (probes.isEmpty()) {
            throw new IllegalArgumentException("a job needs a probe; choose one");
        }
    }
}
