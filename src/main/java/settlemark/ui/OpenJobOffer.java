package settlemark.ui;

import java.time.format.DateTimeFormatter;
import settlemark.session.OpenJob;

/** How a job that was left or cut off is offered on the first page. */
final class OpenJobOffer {
    private OpenJobOffer() {}

    static String title(OpenJob job) {
        return Words.say("Go on with {0}", job.title());
    }

    static String more(OpenJob job) {
        String when = job.startedAt().format(DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", Words.locale()));
        return Words.say(
                "{0} of {1} steps are done, next: {2}; begun {3}",
                job.done(), job.steps(), Words.told(job.step()), when);
    }
}
