package settlemark.ui;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.session.Note;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.Snapshot;
import settlemark.session.SnapshotUnits;
import settlemark.session.Span;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/**
 * A stored session that is open for review; immutable.
 *
 * @param workspace that it lies in
 * @param summary its line in the list
 * @param header what was known when it began
 * @param readings stored on the day
 * @param notes put beside it, then or later
 * @param gaps in which a probe was not heard
 * @param replayed as it ended, empty until it was run through again
 */
record StoredSession(
        Path workspace,
        SessionStore.Summary summary,
        SessionHeader header,
        List<StageReading> readings,
        List<Note> notes,
        List<Span> gaps,
        Optional<Snapshot> replayed) {
    StoredSession {
        readings = List.copyOf(readings);
        notes = List.copyOf(notes);
        gaps = List.copyOf(gaps);
    }

    /** A moment with words. */
    record Moment(long timeNanos, String words) {}

    /** The same in other units. */
    StoredSession in(SnapshotUnits units) {
        return new StoredSession(
                workspace,
                summary,
                units.header(header),
                readings.stream().map(units::reading).toList(),
                notes,
                gaps,
                replayed.map(units::of));
    }

    Optional<JobState> job() {
        return replayed.flatMap(Snapshot::job);
    }

    /** The axes of its rows, empty for a log and before it was run through again. */
    Optional<Axes> axes() {
        return replayed.flatMap(r -> r.job()
                .map(j -> Axes.of(
                                j.plate(), r.header().pressureUnit(), r.header().temperatureUnit())
                        .with(r)
                        .with(readings)));
    }

    /** From its beginning to its end, never empty. */
    Span whole() {
        return new Span(0, Math.max(1_000_000_000L, summary.durationNanos()));
    }

    /** What is taken off a channel, in the job's unit. */
    double zeroOffset(Role role) {
        return readings.stream()
                .flatMap(r -> r.channel(role).stream())
                .mapToDouble(ChannelReading::zeroOffset)
                .filter(z -> z != 0)
                .findFirst()
                .orElse(0);
    }

    /** Notes of the person, those of the day and later ones, in order of their times. */
    List<Moment> moments() {
        List<Moment> moments = new ArrayList<>();
        job().ifPresent(j -> j.notes().forEach(n -> moments.add(new Moment(n.timeNanos(), n.text()))));
        notes.forEach(n -> n.timeNanos().ifPresent(t -> moments.add(new Moment(t, n.text()))));
        moments.sort(Comparator.comparingLong(Moment::timeNanos));
        return moments;
    }

    /** The reading that stands for a step. */
    Optional<StageReading> reading(String step) {
        return readings.stream().filter(r -> r.step().equals(step)).reduce((a, b) -> b);
    }

    /** The time that a step took, with a little before it. */
    Optional<Span> span(String step) {
        return job().flatMap(j -> j.step(step))
                .filter(s -> s.openedNanos() >= 0)
                .map(StoredSession::span);
    }

    private static Span span(StepState step) {
        long end = step.doneNanos() >= 0 ? step.doneNanos() : step.openedNanos() + 60_000_000_000L;
        long from = Math.max(0, Math.min(step.openedNanos(), end - 1_000_000_000L));
        return new Span(from, end + (end - from) / 20);
    }
}
