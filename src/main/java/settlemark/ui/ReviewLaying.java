package settlemark.ui;

import java.awt.EventQueue;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.session.Span;
import settlemark.settle.StageReading;

/** Lays something under the open stretch: as found under as left, or another session, moved so that both begin together. */
final class ReviewLaying {
    private final ReviewHost host;
    private final ReviewData data;
    private final SessionLibrary stored;
    private final Supplier<ReviewPane> pane;
    private final Consumer<String> tell;

    ReviewLaying(
            ReviewHost host, ReviewData data, SessionLibrary stored, Supplier<ReviewPane> pane, Consumer<String> tell) {
        this.host = host;
        this.data = data;
        this.stored = stored;
        this.pane = pane;
        this.tell = tell;
    }

    /** A stage as left is laid over the same as found at once. */
    void opened(StoredSession session, String step) {
        data.unlay();
        found(session, step).ifPresent(f -> under(session, step, f));
    }

    /** The step in which the same stage was found. */
    private static Optional<StepState> found(StoredSession session, String step) {
        Optional<StepState> open = session.job().flatMap(j -> j.step(step));
        return open.filter(s -> s.step().kind() == StepKind.LEFT)
                .flatMap(left -> session.job().orElseThrow().steps().stream()
                        .filter(s -> s.step().kind() == StepKind.FOUND && !s.superseded() && s.done())
                        .filter(s -> s.step().stage().equals(left.step().stage()))
                        .findFirst());
    }

    private void under(StoredSession session, String step, StepState found) {
        Optional<Span> left = session.span(step);
        Optional<Span> other = session.span(found.key());
        if (left.isPresent() && other.isPresent()) {
            long later = begins(session, step, left.get()) - other.get().fromNanos();
            data.lay(Words.key("as found"), session, later, session.reading(found.key()));
        }
    }

    /** Where a screw was turned in between, both end together instead. */
    private static long begins(StoredSession session, String step, Span span) {
        Optional<Long> armed = session.job()
                .flatMap(j -> j.step(step))
                .filter(s -> s.armedNanos() >= 0)
                .map(StepState::armedNanos);
        return armed.orElse(span.fromNanos());
    }

    /** Asks what is to be laid under, or takes away what lies there. */
    void ask(StoredSession session, String step, Runnable shown) {
        if (data.isLaid()) {
            data.unlay();
            return;
        }
        List<PickList.Option> options = new ArrayList<>();
        Optional<StepState> found = found(session, step);
        found.ifPresent(f -> options.add(
                new PickList.Option(Words.say("As found"), Words.told(f.step().title()))));
        List<SessionLine> others = others(session);
        for (SessionLine line : others) {
            String when = line.startedAt().format(DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", Words.locale()));
            options.add(new PickList.Option(line.summary().title(), when));
        }
        if (options.isEmpty()) {
            tell.accept(Words.say("There is no other session to lay under this one"));
            return;
        }
        pane.get().ask(Words.say("Lay what under it?"), options, i -> {
            if (found.isPresent() && i == 0) {
                under(session, step, found.get());
            } else {
                other(session, step, others.get(found.isPresent() ? i - 1 : i));
            }
            shown.run();
        });
    }

    /** Those that the list shows, so that a search leaves few to choose from; all where it shows no other. */
    private List<SessionLine> others(StoredSession session) {
        List<SessionLine> shown =
                stored.fitting().stream().filter(l -> !l.is(session)).toList();
        return shown.isEmpty()
                ? stored.all().stream().filter(l -> !l.is(session)).toList()
                : shown;
    }

    private void other(StoredSession session, String step, SessionLine line) {
        host.read(
                line.workspace(),
                store -> ReviewReader.quick(store, line.workspace(), line.summary()),
                read -> EventQueue.invokeLater(() -> lay(session, step, read)),
                why -> EventQueue.invokeLater(() -> tell.accept(Words.told(why))));
    }

    /** By the time of the same step's reading, or by the beginning. */
    private void lay(StoredSession session, String step, StoredSession other) {
        Optional<StageReading> here = session.reading(step);
        Optional<StageReading> there = other.reading(step);
        long later = here.isPresent() && there.isPresent()
                ? here.get().timeNanos() - there.get().timeNanos()
                : 0;
        data.lay(other.header().title(), other, later, there);
    }
}
