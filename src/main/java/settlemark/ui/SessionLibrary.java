package settlemark.ui;

import java.awt.EventQueue;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/**
 * The sessions of all workspaces. Their dates and titles are there at once; how each job came out is remembered or, where it
 * is not, found by running it through again, the newest first, one after the other, while nothing else is to be done. Lives
 * on the event thread.
 */
final class SessionLibrary {
    private final ReviewHost host;
    private final Runnable changed;
    private final List<SessionLine> lines = new ArrayList<>();
    private final List<String> problems = new ArrayList<>();
    private int reading;
    private boolean studying;
    private volatile boolean resting;
    private SessionQuery query = new SessionQuery(List.of(), "");

    /** @param changed runs when there is something new to be shown */
    SessionLibrary(ReviewHost host, Runnable changed) {
        this.host = host;
        this.changed = changed;
    }

    void load() {
        lines.clear();
        problems.clear();
        for (Path workspace : host.workspaces()) {
            reading++;
            host.read(
                    workspace,
                    store -> all(store, workspace),
                    found -> EventQueue.invokeLater(() -> {
                        reading--;
                        lines.addAll(found.lines());
                        problems.addAll(found.problems());
                        lines.sort(Comparator.comparing(SessionLine::startedAt).reversed());
                        changed.run();
                        studyNext();
                    }),
                    why -> EventQueue.invokeLater(() -> {
                        reading--;
                        problems.add(why);
                        changed.run();
                    }));
        }
    }

    /** @param problems what could not be read of some of them */
    private record Found(List<SessionLine> lines, List<String> problems) {}

    private Found all(SessionStore store, Path workspace) throws StoreException {
        Found found = new Found(new ArrayList<>(), new ArrayList<>());
        for (SessionStore.Summary summary : store.sessions()) {
            Optional<ReviewHost.Said> word = Optional.empty();
            try {
                word = host.word(store, summary.number());
            } catch (StoreException e) {
                found.problems().add(String.valueOf(e.getMessage()));
            }
            SessionLine line = SessionLine.of(workspace, summary, store.header(summary.number()), word);
            Optional<SessionLine.Steps> before = line.isJob()
                    ? host.remembered(workspace, store, summary).flatMap(SessionLine.Steps::read)
                    : Optional.empty();
            found.lines().add(before.map(line::with).orElse(line));
        }
        return found;
    }

    /** While a session is being opened, nothing else is looked at. */
    void rest(boolean newResting) {
        resting = newResting;
        studyNext();
    }

    private void studyNext() {
        if (studying || resting) {
            return;
        }
        Optional<SessionLine> next =
                lines.stream().filter(l -> l.isJob() && l.steps().isEmpty()).findFirst();
        if (next.isEmpty()) {
            return;
        }
        studying = true;
        SessionLine line = next.get();
        host.study(
                line.workspace(),
                store -> steps(store, line),
                steps -> EventQueue.invokeLater(() -> {
                    studying = false;
                    steps.ifPresent(s -> knows(line, s));
                    studyNext();
                }),
                why -> EventQueue.invokeLater(() -> {
                    studying = false;
                    // Told once it is opened; here the list goes on.
                    knows(line, new SessionLine.Steps(List.of(), Optional.empty(), false));
                    studyNext();
                }));
    }

    private Optional<SessionLine.Steps> steps(SessionStore store, SessionLine line) throws StoreException {
        try {
            StoredSession bare = ReviewReader.quick(store, line.workspace(), line.summary());
            SessionLine.Steps steps = ReviewReader.replayed(store, bare, part -> !resting)
                    .job()
                    .map(SessionLine.Steps::of)
                    .orElse(new SessionLine.Steps(List.of(), Optional.empty(), false));
            host.remember(line.workspace(), store, line.summary(), steps.text());
            return Optional.of(steps);
        } catch (CancellationException e) {
            return Optional.empty();
        }
    }

    /** How a session came out is known. */
    void knows(SessionLine of, SessionLine.Steps steps) {
        change(l -> l.sameAs(of), l -> l.with(steps));
    }

    /** A second person has said a word on one. */
    void said(StoredSession on, ReviewHost.Said word) {
        change(l -> l.is(on), l -> l.with(word));
    }

    private void change(Predicate<SessionLine> of, UnaryOperator<SessionLine> other) {
        lines.replaceAll(l -> of.test(l) ? other.apply(l) : l);
        changed.run();
    }

    void find(String text, LocalDate today) {
        query = SessionQuery.of(text, today);
        changed.run();
    }

    List<SessionLine> fitting() {
        return lines.stream().filter(query::fits).toList();
    }

    List<SessionLine> all() {
        return List.copyOf(lines);
    }

    /** How many are shown, what was not understood, what could not be read. */
    String words() {
        if (!problems.isEmpty()) {
            return problems.stream().map(Words::told).collect(Collectors.joining("; "));
        }
        if (!query.problem().isEmpty()) {
            return query.problem();
        }
        if (reading > 0) {
            return Words.say("reading");
        }
        if (lines.isEmpty()) {
            return Words.say("no session is stored yet");
        }
        long unknown =
                lines.stream().filter(l -> l.isJob() && l.steps().isEmpty()).count();
        String found = Words.say("{0} of {1} sessions", fitting().size(), lines.size());
        return unknown == 0 ? found : Words.say("{0}, {1} to be looked at", found, unknown);
    }
}
