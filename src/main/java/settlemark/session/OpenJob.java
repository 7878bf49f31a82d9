package settlemark.session;

import java.time.ZonedDateTime;
import java.util.Objects;

/**
 * A job that was left or cut off before its end, as a person is asked whether to go on with it.
 *
 * @param number of its session in the workspace
 * @param title of the place and the appliance
 * @param startedAt where it is
 * @param step title of the step at which it stands
 * @param done steps that are done
 * @param steps of the whole job
 * @param simulated whether it stands on the simulated furnace
 */
public record OpenJob(
        long number, String title, ZonedDateTime startedAt, String step, int done, int steps, boolean simulated) {
    public OpenJob {
        Objects.requireNonNull(startedAt);
    }
}
