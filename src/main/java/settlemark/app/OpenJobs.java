package settlemark.app;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.rig.RigHost;
import settlemark.session.OpenJob;
import settlemark.session.ProbeKeys;
import settlemark.session.RawBytes;
import settlemark.session.RecordSource;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/** The job of a workspace that a person may want to go on with. */
final class OpenJobs {
    /** One that was left longer ago is no longer that visit. */
    private static final Duration LATELY = Duration.ofDays(14);

    private OpenJobs() {}

    /**
     * The newest job that was left or cut off.
     *
     * @return empty where the newest job has ended, is complete, is of long ago, stands on the rig or was kept without its
     *     bytes
     */
    static Optional<OpenJob> newest(SessionStore store, Instant now) throws StoreException {
        for (SessionStore.Summary summary : store.sessions()) {
            SessionHeader header = store.header(summary.number());
            if (header.plan().isPresent()) {
                boolean open = !summary.ended()
                        && summary.startedAt()
                                .plusNanos(summary.durationNanos())
                                .isAfter(now.minus(LATELY))
                        && header.probes().stream()
                                .noneMatch(p -> p.address().scheme().equals(RigHost.SCHEME))
                        && store.rawBytes(summary.number()) == RawBytes.KEPT;
                return open ? of(store, summary.number(), header) : Optional.empty();
            }
        }
        return Optional.empty();
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
                        job.steps().size()));
    }
}
