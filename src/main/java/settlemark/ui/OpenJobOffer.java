package settlemark.ui;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.function.Consumer;
import settlemark.session.OpenJob;

/** How jobs that were left or cut off are offered on the first page: a line for each of the newest. */
record OpenJobOffer(List<OpenJob> jobs) {
    /** How many are looked for; one more than has a line, so that it is known whether there are others. */
    static final int MOST = 5;

    private static final int LINES = MOST - 1;

    OpenJobOffer {
        jobs = List.copyOf(jobs);
    }

    static OpenJobOffer of(List<OpenJob> jobs) {
        return new OpenJobOffer(jobs);
    }

    void on(ChoiceFace first, Consumer<OpenJob> goOn) {
        for (int i = 0; i < Math.min(LINES, jobs.size()); i++) {
            OpenJob job = jobs.get(i);
            boolean others = i == LINES - 1 && jobs.size() > LINES;
            first.offer(
                    title(job),
                    others ? Words.say("{0}. For older ones: settlemark job list", more(job)) : more(job),
                    () -> goOn.accept(job));
        }
    }

    private static String title(OpenJob job) {
        return job.simulated()
                ? Words.say("SIMULATED: go on with {0}", job.title())
                : Words.say("Go on with {0}", job.title());
    }

    private static String more(OpenJob job) {
        String when = job.startedAt().format(DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", Words.locale()));
        return Words.say(
                "{0} of {1} steps are done, next: {2}; begun {3}",
                job.done(), job.steps(), Words.told(job.step()), when);
    }
}
