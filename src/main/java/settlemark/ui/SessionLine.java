package settlemark.ui;

import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import settlemark.chart.Mark;
import settlemark.job.JobState;
import settlemark.job.Outcome;
import settlemark.job.Progress;
import settlemark.job.StepKind;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;

/**
 * A line of the list of sessions.
 *
 * @param workspace that it lies in
 * @param summary from the workspace
 * @param startedAt at the place of the job
 * @param appliance from the plate, empty for a log
 * @param plan title of the plan, empty for a log
 * @param steps how it came out, empty until it was looked at
 * @param word a second person's on its sealed record, empty where there is none
 */
record SessionLine(
        Path workspace,
        SessionStore.Summary summary,
        ZonedDateTime startedAt,
        String appliance,
        String plan,
        Optional<Steps> steps,
        Optional<ReviewHost.Said> word) {

    /**
     * How a job came out.
     *
     * @param marks one a step
     * @param worst of all verdicts as left, empty where there is none
     * @param complete whether nothing is missing
     */
    record Steps(List<Mark> marks, Optional<Outcome> worst, boolean complete) {
        Steps {
            marks = List.copyOf(marks);
        }

        static Steps of(JobState job) {
            return new Steps(
                    job.steps().stream()
                            .filter(s -> !s.superseded())
                            .map(VerdictBox::of)
                            .toList(),
                    job.steps().stream()
                            .filter(s -> !s.superseded() && s.step().kind() != StepKind.FOUND)
                            .flatMap(s -> s.outcome().stream())
                            .reduce((a, b) -> a.compareTo(b) >= 0 ? a : b),
                    job.steps().stream().allMatch(s -> s.superseded() || s.progress() == Progress.TAKEN));
        }

        /** For {@link #read}. */
        String text() {
            return marks.stream().map(Mark::name).collect(Collectors.joining(",")) + ";"
                    + worst.map(Outcome::name).orElse("") + ";" + complete;
        }

        /** Empty where the text is none that was written here. */
        static Optional<Steps> read(String text) {
            String[] parts = text.split(";", -1);
            if (parts.length != 3) {
                return Optional.empty();
            }
            try {
                return Optional.of(new Steps(
                        parts[0].isEmpty()
                                ? List.of()
                                : Stream.of(parts[0].split(",", -1))
                                        .map(Mark::valueOf)
                                        .toList(),
                        parts[1].isEmpty() ? Optional.empty() : Optional.of(Outcome.valueOf(parts[1])),
                        Boolean.parseBoolean(parts[2])));
            } catch (IllegalArgumentException e) {
                return Optional.empty();
            }
        }
    }

    static SessionLine of(
            Path workspace, SessionStore.Summary summary, SessionHeader header, Optional<ReviewHost.Said> word) {
        return new SessionLine(
                workspace,
                summary,
                summary.startedAt().atZone(header.zone()),
                header.plate().map(p -> p.appliance()).orElse(""),
                header.plan().map(p -> p.title()).orElse(""),
                Optional.empty(),
                word);
    }

    SessionLine with(Steps found) {
        return new SessionLine(workspace, summary, startedAt, appliance, plan, Optional.of(found), word);
    }

    SessionLine with(ReviewHost.Said said) {
        return new SessionLine(workspace, summary, startedAt, appliance, plan, steps, Optional.of(said));
    }

    boolean isJob() {
        return !plan.isEmpty();
    }

    boolean sameAs(SessionLine other) {
        return other.workspace.equals(workspace) && other.summary.number() == summary.number();
    }

    boolean is(StoredSession session) {
        return session.workspace().equals(workspace) && session.summary().number() == summary.number();
    }

    /** The verdict in one word: inside, close or outside; unfinished where steps are missing; empty for a log. */
    String verdict() {
        return steps.flatMap(Steps::worst)
                .map(o -> switch (o) {
                    case INSIDE -> Words.key("inside");
                    case CLOSE_INSIDE, CLOSE_OUTSIDE -> Words.key("close");
                    case OUTSIDE -> Words.key("outside");
                })
                .orElse("");
    }

    /** Accepted or returned, by whom and why; empty where nobody has said. */
    String reviewed() {
        return word.map(w -> w.accepted()
                        ? Words.say("accepted by {0}", w.person())
                        : Words.say("returned by {0}: {1}", w.person(), w.reason()))
                .orElse("");
    }

    /** What other limits or settings made of it before the word was said; empty where none were tried. */
    String judgedAgain() {
        return word.filter(w -> !w.under().isEmpty())
                .map(w -> switch (w.changes().size()) {
                    case 0 -> Words.say("judged again: no verdict is another");
                    case 1 -> Words.say("judged again: 1 verdict became another");
                    default ->
                        Words.say(
                                "judged again: {0} verdicts became others",
                                w.changes().size());
                })
                .orElse("");
    }

    boolean unfinished() {
        return steps.map(s -> !s.complete()).orElse(false);
    }
}
