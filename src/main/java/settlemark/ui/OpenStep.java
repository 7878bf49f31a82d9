package settlemark.ui;

import org.jspecify.annotations.Nullable;
import settlemark.job.JobState;
import settlemark.job.StepState;

/** Which column is open: the present one as the job goes on, until a person opens another, and then theirs. */
final class OpenStep {
    private @Nullable String open;
    private @Nullable String now;

    /** Returns the step that is open as the job stands. */
    StepState of(JobState job) {
        String present = job.currentStep().orElse(last(job)).key();
        if (open == null || open.equals(now)) {
            open = present;
        }
        now = present;
        return job.step(open).orElse(last(job));
    }

    private static StepState last(JobState job) {
        return job.steps().get(job.steps().size() - 1);
    }

    void open(String key) {
        open = key;
    }

    /** Opens the column of a number from the left, the first or the last where there is none of it. */
    void open(JobState job, int index) {
        open = job.steps()
                .get(Math.max(0, Math.min(job.steps().size() - 1, index)))
                .key();
    }

    void present() {
        open = now;
    }

    /** Key of the column that a person opened, empty where the present one is. */
    String elsewhere() {
        return open == null || open.equals(now) ? "" : open;
    }
}
