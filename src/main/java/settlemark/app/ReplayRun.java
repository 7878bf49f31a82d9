package settlemark.app;

import java.io.PrintWriter;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import settlemark.job.JobState;
import settlemark.job.Progress;
import settlemark.job.StepState;
import settlemark.session.JobRecord;
import settlemark.session.LiveSession;
import settlemark.session.ProbeKeys;
import settlemark.session.RawBytes;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.Snapshot;
import settlemark.session.StoreException;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** Runs a stored session through the pipeline again at a pace, and prints a line for each thing that happens in it. */
final class ReplayRun {
    /** Waits until that much of session time has passed at the pace. */
    interface Pace {
        void until(long sessionNanos) throws InterruptedException;
    }

    private final SessionStore store;
    private final long session;
    private final Pace pace;
    private final PrintWriter out;
    private final Map<String, Progress> progress = new HashMap<>();
    private int notes;
    private long events;

    ReplayRun(SessionStore store, long session, Pace pace, PrintWriter out) {
        this.store = store;
        this.session = session;
        this.pace = pace;
        this.out = out;
    }

    /** A pace of real time, so many times as fast; 0 never waits. */
    static Pace times(int speed) {
        long start = System.nanoTime();
        return sessionNanos -> {
            if (speed > 0) {
                long left = start + sessionNanos / speed - System.nanoTime();
                if (left > 0) {
                    Thread.sleep(Duration.ofNanos(left).toMillis());
                }
            }
        };
    }

    void run(ProbeKeys keys) throws StoreException, InterruptedException {
        RawBytes.require(store, session);
        SessionHeader header = store.header(session);
        LiveSession replayed = new LiveSession(header, keys);
        line(0, header.title() + (header.simulated() ? ", SIMULATED" : ""));
        InterruptedException[] stopped = new InterruptedException[1];
        store.events(session, event -> {
            if (stopped[0] == null) {
                try {
                    pace.until(event.timeNanos());
                    take(replayed, event);
                } catch (InterruptedException e) {
                    stopped[0] = e;
                }
            }
        });
        if (stopped[0] != null) {
            throw stopped[0];
        }
    }

    private void take(LiveSession replayed, SessionEvent event) {
        replayed.take(event);
        List<StageReading> readings = replayed.drain().readings();
        boolean quiet = event instanceof SessionEvent.Bytes && readings.isEmpty();
        if (quiet) {
            return;
        }
        happened(replayed.snapshot(Instant.EPOCH));
        readings.forEach(r -> line(r.timeNanos(), r.step() + " " + r.purpose() + ": " + values(r)));
        replayed.job().ifPresent(j -> steps(event.timeNanos(), j));
    }

    private void happened(Snapshot snapshot) {
        List<JobRecord.Happened> all = snapshot.events();
        // The snapshot keeps the last hundred; between two looks there are never that many.
        for (JobRecord.Happened one : all) {
            if (one.timeNanos() >= events) {
                line(one.timeNanos(), one.words());
                events = one.timeNanos() + 1;
            }
        }
    }

    private void steps(long timeNanos, JobState job) {
        for (StepState step : job.steps()) {
            Progress before = progress.put(step.key(), step.progress());
            if (before != step.progress() && step.progress() != Progress.WAITING) {
                String verdict =
                        step.done() ? step.outcome().map(o -> ": " + o.word()).orElse("") : "";
                line(timeNanos, step.step().title() + " " + word(step) + verdict);
            }
        }
        for (JobState.NoteTaken note : job.notes().subList(notes, job.notes().size())) {
            line(note.timeNanos(), "note: " + note.text());
        }
        notes = job.notes().size();
    }

    private static String word(StepState step) {
        return switch (step.progress()) {
            case WAITING -> "waits";
            case OPEN -> "begins";
            case ARMED -> "is armed";
            case TAKEN -> "is done";
            case SKIPPED -> "is skipped, " + step.skipReason();
        };
    }

    private static String values(StageReading reading) {
        String words = reading.channels().stream()
                .map((ChannelReading c) -> String.format(
                        Locale.ROOT,
                        "%s %.3f \u00b1%.3f %s%s",
                        c.role().word(),
                        c.value(),
                        c.expandedUncertainty(),
                        c.unit().symbol(),
                        c.settled() ? "" : " not settled"))
                .collect(Collectors.joining(", "));
        return words + (reading.byHand() ? " (by hand: " + reading.handReason() + ")" : "");
    }

    private void line(long timeNanos, String words) {
        long millis = timeNanos / 1_000_000;
        out.printf(
                Locale.ROOT,
                "%02d:%02d:%02d.%03d %s%n",
                millis / 3_600_000,
                millis / 60_000 % 60,
                millis / 1000 % 60,
                millis % 1000,
                words);
        out.flush();
    }
}
