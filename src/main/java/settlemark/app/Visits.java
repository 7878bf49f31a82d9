package settlemark.app;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import settlemark.job.Act;
import settlemark.job.FormerReading;
import settlemark.job.JobPlan;
import settlemark.job.JobState;
import settlemark.job.Progress;
import settlemark.job.RatingPlate;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.session.ProbeKeys;
import settlemark.session.RawBytes;
import settlemark.session.RecordSource;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/** Former jobs at the same appliance, which goes by the title that the person gave it. */
final class Visits {
    /** Visits that are told, the newest of them. */
    private static final int MOST = 8;

    private Visits() {}

    /** The plate of the newest job of that title whose figures a plan can use; empty where there is none. */
    static Optional<RatingPlate> lastPlate(SessionStore store, String title, JobPlan plan) throws StoreException {
        for (SessionStore.Summary summary : store.sessions()) {
            if (same(summary.title(), title)) {
                SessionHeader header = store.header(summary.number());
                Optional<RatingPlate> plate =
                        header.plate().filter(p -> plan.misfits(p).isEmpty());
                if (plate.isPresent()) {
                    return plate;
                }
            }
        }
        return Optional.empty();
    }

    /**
     * What earlier jobs of that title left, oldest first: as left, else as found, and the lock-up. The newest job knows
     * those before it, so only that one is run through again.
     *
     * @return empty where there is none, or the newest was stored without its bytes
     */
    static List<Act.Former> left(SessionStore store, String title) throws StoreException {
        for (SessionStore.Summary summary : store.sessions()) {
            boolean job = same(summary.title(), title)
                    && store.header(summary.number()).plan().isPresent()
                    && store.rawBytes(summary.number()) == RawBytes.KEPT;
            if (job) {
                JobState state = RecordSource.replay(store, summary.number(), ProbeKeys.NONE)
                        .job()
                        .orElseThrow();
                List<FormerReading> left = left(state);
                if (!left.isEmpty()) {
                    SessionHeader header = store.header(summary.number());
                    List<Act.Former> visits = new ArrayList<>(state.visits());
                    visits.add(new Act.Former(
                            header.startedAt()
                                    .atZone(header.zone())
                                    .toLocalDate()
                                    .toString(),
                            left));
                    return visits.subList(Math.max(0, visits.size() - MOST), visits.size());
                }
            }
        }
        return List.of();
    }

    private static List<FormerReading> left(JobState job) {
        Map<String, StepState> steps = new LinkedHashMap<>();
        for (StepState step : job.steps()) {
            StepKind kind = step.step().kind();
            boolean taken = step.progress() == Progress.TAKEN && !step.superseded();
            if (taken && (kind == StepKind.LOCK_UP || kind == StepKind.FOUND || kind == StepKind.LEFT)) {
                // What was left comes after what was found, and takes its place.
                steps.put(step.step().stage(), step);
            }
        }
        List<FormerReading> left = new ArrayList<>();
        steps.forEach((stage, step) -> step.reading().stream()
                .flatMap(r -> r.channels().stream())
                .filter(c -> c.settled() && Double.isFinite(c.value()))
                .forEach(c ->
                        left.add(new FormerReading(stage, c.role(), c.value(), c.expandedUncertainty(), c.unit()))));
        return left;
    }

    private static boolean same(String one, String other) {
        return one.strip().toLowerCase(Locale.ROOT).equals(other.strip().toLowerCase(Locale.ROOT));
    }
}
