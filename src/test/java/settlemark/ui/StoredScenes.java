package settlemark.ui;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import settlemark.chart.Mark;
import settlemark.job.JobState;
import settlemark.job.Outcome;
import settlemark.session.ChannelView;
import settlemark.session.Note;
import settlemark.session.SessionStore;
import settlemark.session.Snapshot;
import settlemark.session.Span;
import settlemark.session.Trace;
import settlemark.settle.StageReading;

/** A stored session as a review would show it, without a workspace. */
final class StoredScenes {
    private StoredScenes() {}

    private static SessionStore.Summary summary(long number, String title, long durationNanos) {
        return new SessionStore.Summary(
                number, "key-" + number, title, Instant.parse("2026-03-14T09:31:00Z"), true, true, durationNanos);
    }

    static StoredSession session(Snapshot replayed) {
        List<StageReading> readings = replayed.job().map(JobState::steps).orElseThrow().stream()
                .flatMap(s -> s.readings().stream())
                .toList();
        return new StoredSession(
                Path.of("w.settlemark"),
                summary(1, replayed.header().title(), replayed.timeNanos()),
                replayed.header(),
                readings,
                List.of(new Note(
                        OptionalLong.of(replayed.timeNanos() / 2),
                        Instant.parse("2026-03-14T10:00:00Z"),
                        "the hose was loose and was put on again")),
                List.of(),
                Optional.of(replayed));
    }

    static ReviewScene scene(Snapshot replayed, String step, boolean asked) {
        StoredSession session = session(replayed);
        Span view = step.isEmpty() ? session.whole() : session.span(step).orElseThrow();
        Axes axes = Axes.of(
                        replayed.job().orElseThrow().plate(),
                        replayed.header().pressureUnit(),
                        replayed.header().temperatureUnit())
                .with(replayed)
                .with(session.readings());
        return new ReviewScene(
                session,
                step,
                view,
                (view.fromNanos() + view.toNanos()) / 2,
                false,
                10,
                traces(replayed, view),
                traces(replayed, session.whole()),
                Optional.empty(),
                Optional.of(axes),
                asked,
                Optional.empty());
    }

    private static WindowTraces traces(Snapshot replayed, Span span) {
        List<WindowTraces.Line> lines = new ArrayList<>();
        for (ChannelView channel : replayed.channels()) {
            Trace.Part part = channel.trace().part(span.fromNanos(), span.toNanos());
            lines.add(new WindowTraces.Line(
                    channel.role(), channel.unit(), part.timesNanos(), part.values(), 2_000_000_000L, true));
        }
        return new WindowTraces(span, lines);
    }

    /** A log, a job that came out outside, and one that a second person returned. */
    static List<SessionLine> lines() {
        return List.of(
                line(3, "Bench of gauges in the shop", "", Optional.empty()),
                line(2, "Mill Row 3, furnace", "yearly check", Optional.empty()),
                line(
                        1,
                        "Ash Lane 12, two-stage furnace, natural gas",
                        "two-stage furnace",
                        Optional.of(new ReviewHost.Said(false, "A. Second", "rise read too early"))));
    }

    private static SessionLine line(long number, String title, String plan, Optional<ReviewHost.Said> word) {
        SessionStore.Summary summary = summary(number, title, 1);
        Optional<SessionLine.Steps> steps = plan.isEmpty()
                ? Optional.empty()
                : Optional.of(new SessionLine.Steps(
                        List.of(Mark.INSIDE, Mark.OUTSIDE, Mark.NOT_TAKEN), Optional.of(Outcome.OUTSIDE), false));
        return new SessionLine(
                Path.of("w.settlemark"),
                summary,
                summary.startedAt().atZone(ZoneOffset.UTC),
                plan.isEmpty() ? "" : "two stage furnace",
                plan,
                steps,
                word);
    }
}
