package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.job.JobPlan;
import settlemark.job.JobState;
import settlemark.job.Progress;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.record.StageTable;
import settlemark.session.JobRecord;
import settlemark.session.ProbeKeys;
import settlemark.session.RecordSource;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/** Jobs of a workspace in words. */
final class JobLook {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

    private JobLook() {}

    static int list(SessionStore store, PrintWriter out) throws StoreException {
        int jobs = 0;
        for (SessionStore.Summary summary : store.sessions()) {
            SessionHeader header = store.header(summary.number());
            Optional<JobPlan> plan = header.plan();
            if (plan.isPresent()) {
                jobs++;
                String how = summary.ended() ? "" : ", not ended";
                String simulated = summary.simulated() ? ", SIMULATED" : "";
                out.printf(
                        Locale.ROOT,
                        "%4d  %s  %s (%s%s%s)%n",
                        summary.number(),
                        WHEN.format(summary.startedAt().atZone(header.zone())),
                        summary.title(),
                        plan.get().title(),
                        how,
                        simulated);
            }
        }
        if (jobs == 0) {
            out.println("no job yet");
        }
        out.flush();
        return Program.DONE;
    }

    static int show(SessionStore store, long session, ProbeKeys keys, PrintWriter out)
            throws StoreException, IOException {
        JobRecord record = RecordSource.of(store, session, keys)
                .orElseThrow(() -> new IOException("session " + session + " is a log without a job"));
        JobState job = record.job();
        out.println(record.header().title() + ", " + job.plan().title() + ", "
                + WHEN.format(record.header().startedAt().atZone(record.header().zone())));
        out.print(StageTable.text(record));
        job.notices().forEach(n -> out.println("SAFETY: " + n.words() + ". " + n.caution()));
        for (StepState step : job.steps()) {
            step.remarks().forEach(r -> out.println(step.step().title() + ": " + r));
            if (step.progress() == Progress.SKIPPED) {
                out.println(step.step().title() + ": skipped, " + step.skipReason());
            }
        }
        job.missing().stream()
                .filter(s -> s.step().kind() != StepKind.RECORD)
                .forEach(s -> out.println("missing: " + s.step().title()));
        out.flush();
        return job.leftOutside() ? Program.CHECK_FAILED : Program.DONE;
    }
}
