package settlemark.ui;

import java.util.List;
import java.util.function.Consumer;
import settlemark.job.JobPlan;
import settlemark.job.RatingPlate;
import settlemark.profile.Profile;
import settlemark.session.DeviceFinder;
import settlemark.session.JobStart;
import settlemark.session.OpenJob;
import settlemark.session.PairingPerson;
import settlemark.session.ProbeAddress;

/**
 * What the window asks of the program around it before there is a session. Called on the event thread and never waits;
 * every answer may come from any thread.
 */
public interface StartHost {
    DeviceFinder finder();

    /** Profiles that a person may choose for a device that none recognises. */
    List<Profile> profiles();

    List<JobPlan> plans();

    /** The person chose the demo. */
    void demo();

    /**
     * Connects the chosen probes and begins the job, which then takes the window over.
     *
     * @param failed gets what went wrong and the remedy; then nothing is connected and nothing has begun
     */
    void begin(JobStart start, Consumer<String> failed);

    /** Looks for jobs that were left or cut off, newest first; {@code found} hears of them where there are any. */
    void openJobs(int most, Consumer<List<OpenJob>> found);

    /**
     * Connects the probes of a job that was left and goes on with it, which then takes the window over.
     *
     * @param failed gets what went wrong and the remedy; then nothing is connected
     */
    void goOn(OpenJob job, Consumer<String> failed);

    /** Looks for the plate of the last job of a title that a plan can use; {@code found} hears of it where there is one. */
    void lastPlate(String title, JobPlan plan, Consumer<RatingPlate> found);

    /**
     * Pairs with a Bluetooth device, asking the person.
     *
     * @param done gets what came of it, in words
     */
    void pair(ProbeAddress address, PairingPerson person, Consumer<String> done);

    /** The person wants to look at stored sessions. */
    ReviewHost review();

    /** The person wants to make a profile. */
    WorkshopHost workshop();

    /** The person closed the window: end the program. */
    void close();
}
