package settlemark.ui;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import settlemark.session.Span;
import settlemark.settle.StageReading;

/** Takes the line of a review to the next reading, gap or note, and the open column to the one beside it. */
final class ReviewJumps {
    private final ReviewTime time;
    private final Consumer<String> open;
    private final Consumer<String> tell;

    /**
     * @param open opens the column of a step, by its key
     * @param tell hears where there is nothing to go to
     */
    ReviewJumps(ReviewTime time, Consumer<String> open, Consumer<String> tell) {
        this.time = time;
        this.open = open;
        this.tell = tell;
    }

    /** @param step that is open, empty where all are folded */
    void neighbour(StoredSession session, String step, int by) {
        List<String> keys = session.job()
                .map(j -> j.steps().stream().map(s -> s.key()).toList())
                .orElse(List.of());
        if (keys.isEmpty()) {
            time.by(by / 10.0);
            return;
        }
        int at = step.isEmpty() ? (by > 0 ? -1 : keys.size()) : keys.indexOf(step);
        int next = at + by;
        if (next >= 0 && next < keys.size()) {
            open.accept(keys.get(next));
        }
    }

    void reading(StoredSession session, boolean on) {
        long now = time.lineNanos();
        Optional<StageReading> found = session.readings().stream()
                .filter(r -> on ? r.timeNanos() > now : r.timeNanos() < now)
                .reduce((a, b) -> on ? a : b);
        if (found.isEmpty()) {
            tell.accept(
                    on ? Words.say("No reading comes after the line") : Words.say("No reading comes before the line"));
            return;
        }
        if (session.span(found.get().step()).isPresent()) {
            open.accept(found.get().step());
        }
        time.line(found.get().timeNanos());
    }

    void gap(StoredSession session) {
        Optional<Span> next = session.gaps().stream()
                .filter(g -> g.fromNanos() > time.lineNanos())
                .findFirst();
        if (next.isEmpty()) {
            tell.accept(
                    session.gaps().isEmpty() ? Words.say("There is no gap") : Words.say("No gap comes after the line"));
            return;
        }
        time.gap(next.get());
        tell.accept(Words.say(
                "gap of {0}",
                ReviewTimes.length(next.get().toNanos() - next.get().fromNanos())));
    }

    void note(StoredSession session) {
        Optional<StoredSession.Moment> next = session.moments().stream()
                .filter(m -> m.timeNanos() > time.lineNanos())
                .findFirst();
        if (next.isEmpty()) {
            tell.accept(Words.say("No note comes after the line"));
            return;
        }
        time.line(next.get().timeNanos());
        tell.accept(next.get().words());
    }
}
