package settlemark.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.session.OpenJob;
import settlemark.session.ProbeKeys;
import settlemark.session.RawBytes;
import settlemark.session.RecordSource;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/** The jobs of a workspace that a person may want to go on with. */
final class OpenJobs {
    private OpenJobs() {}

    /**
     * Those that were left or cut off, newest first. What has ended, is complete or was kept without its bytes is none of
     * them.
     *
     * @param most how many at most
     */
    static List<OpenJob> of(SessionStore store, int most) throws StoreException {
        List<OpenJob> open = new ArrayList<>();
        for (SessionStore.Summary summary : store.sessions()) {
            if (open.size() == most) {
                break;
            }
            SessionHeader header = store.header(summary.number());
            if (header.plan().isPresent() && !summary.ended() && store.rawBytes(summary.number()) == RawBytes.KEPT) {
                of(store, summary.number(), header).ifPresent(open::add);
            }
        }
        return open;
    }

    private static Optional<OpenJob> of(SessionStore store, long number, SessionHeader header) throws StoreException {
        JobState job = RecordSource.replay(store, number, ProbeKeys.NONE).job().orElseThrow();
        return job.currentStep()
                .map(step -> new OpenJob(
                        number,
                        header.title(),
                        header.startedAt().atZone(header.zone()),
                        step.step().title(),
                        (int) job.steps().stream().filter(StepState::done).count(),
                        job.steps().size(),
                        header.simulated()));
    }
}
