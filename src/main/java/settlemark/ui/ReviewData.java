package settlemark.ui;

import java.awt.EventQueue;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import java.util.function.IntSupplier;
import org.jspecify.annotations.Nullable;
import settlemark.session.Span;
import settlemark.settle.StageReading;

/**
 * The open session, and as much of it as is shown. What is asked for while something is still read is asked for once,
 * when that has come. Lives on the event thread.
 */
final class ReviewData implements ReviewTime.Shown {
    private static final int WHOLE_COLUMNS = 1200;

    private final ReviewHost host;
    private final Runnable changed;
    private final Consumer<String> failed;
    private final IntSupplier columns;
    private @Nullable StoredSession session;
    private Span view = new Span(0, 1);
    private WindowTraces traces = WindowTraces.NONE;
    private WindowTraces whole = WindowTraces.NONE;
    private @Nullable Under under;
    private @Nullable WindowTraces laid;
    private boolean fetching;
    private boolean stale;
    private volatile int opening;
    private volatile double part = 1;

    /** @param laterNanos what is added to its times so that both begin together */
    private record Under(String name, StoredSession session, long laterNanos, Optional<StageReading> reading) {}

    /**
     * @param columns pixel columns of the chart
     * @param changed runs when there is something new to be shown
     */
    ReviewData(ReviewHost host, IntSupplier columns, Runnable changed, Consumer<String> failed) {
        this.host = host;
        this.columns = columns;
        this.changed = changed;
        this.failed = failed;
    }

    Optional<StoredSession> session() {
        return Optional.ofNullable(session);
    }

    @Override
    public Span view() {
        return view;
    }

    WindowTraces traces() {
        return traces;
    }

    WindowTraces whole() {
        return whole;
    }

    Optional<ReviewScene.Laid> laid() {
        Under now = under;
        WindowTraces shown = laid;
        return now == null || shown == null
                ? Optional.empty()
                : Optional.of(new ReviewScene.Laid(now.name(), shown, now.reading()));
    }

    boolean isLaid() {
        return under != null;
    }

    /** How much of the session was run through again, 0 to 1; 1 where nothing is going on. */
    double part() {
        return part;
    }

    /** Stops running the session through; what is known of it stays. */
    void stop() {
        opening++;
        part = 1;
    }

    /**
     * Opens a session; until it was run through again its traces and readings can be seen.
     *
     * @param first hears it before
     * @param again hears it after
     */
    void open(SessionLine line, Runnable first, Consumer<StoredSession> again) {
        int mine = ++opening;
        part = 0;
        host.read(
                line.workspace(),
                store -> ReviewReader.quick(store, line.workspace(), line.summary()),
                found -> EventQueue.invokeLater(() -> {
                    if (mine == opening) {
                        shown(found);
                        first.run();
                        again(mine, found, again);
                    }
                }),
                this::fail);
    }

    private void shown(StoredSession found) {
        session = found;
        view = found.whole();
        traces = WindowTraces.NONE;
        whole = WindowTraces.NONE;
        under = null;
        laid = null;
        host.read(
                found.workspace(),
                store -> ReviewReader.window(store, found, found.whole(), WHOLE_COLUMNS),
                all -> EventQueue.invokeLater(() -> {
                    whole = session == found ? all : whole;
                    changed.run();
                }),
                this::fail);
        fetch();
    }

    private void again(int mine, StoredSession found, Consumer<StoredSession> again) {
        if (found.header().plan().isEmpty()) {
            part = 1;
            changed.run();
            return;
        }
        host.study(
                found.workspace(),
                store -> {
                    try {
                        return Optional.of(ReviewReader.replayed(store, found, p -> {
                            part = p;
                            return mine == opening;
                        }));
                    } catch (CancellationException e) {
                        return Optional.<StoredSession>empty();
                    }
                },
                run -> EventQueue.invokeLater(() -> {
                    if (mine == opening) {
                        part = 1;
                        run.ifPresent(s -> {
                            session = s;
                            again.accept(s);
                        });
                        changed.run();
                    }
                }),
                this::fail);
    }

    private void fail(String why) {
        EventQueue.invokeLater(() -> {
            part = 1;
            failed.accept(why);
        });
    }

    /** Notes have changed. */
    void reload() {
        StoredSession now = session;
        if (now != null) {
            host.read(
                    now.workspace(),
                    store -> store.papers().notes(now.summary().number()),
                    notes -> EventQueue.invokeLater(() -> {
                        StoredSession newest = session;
                        if (newest != null && newest.summary().equals(now.summary())) {
                            session = new StoredSession(
                                    newest.workspace(),
                                    newest.summary(),
                                    newest.header(),
                                    newest.readings(),
                                    notes,
                                    newest.gaps(),
                                    newest.replayed());
                            changed.run();
                        }
                    }),
                    this::fail);
        }
    }

    /** Shows another stretch of time; it is read behind. */
    @Override
    public void view(Span wanted) {
        if (!wanted.equals(view)) {
            view = wanted;
            fetch();
        }
    }

    void lay(String name, StoredSession other, long laterNanos, Optional<StageReading> reading) {
        under = new Under(name, other, laterNanos, reading);
        laid = null;
        fetch();
    }

    void unlay() {
        under = null;
        laid = null;
    }

    private void fetch() {
        StoredSession now = session;
        if (now == null) {
            return;
        }
        if (fetching) {
            stale = true;
            return;
        }
        fetching = true;
        stale = false;
        Span wanted = view;
        int pixels = columns.getAsInt();
        Under below = under;
        host.read(
                now.workspace(),
                store -> ReviewReader.window(store, now, wanted, pixels),
                read -> EventQueue.invokeLater(() -> {
                    if (session != null && session.summary().equals(now.summary())) {
                        traces = read;
                    }
                    below(below, wanted, pixels);
                }),
                why -> {
                    fail(why);
                    EventQueue.invokeLater(this::fetched);
                });
    }

    private void below(@Nullable Under below, Span wanted, int pixels) {
        if (below == null) {
            fetched();
            return;
        }
        Span moved = new Span(wanted.fromNanos() - below.laterNanos(), wanted.toNanos() - below.laterNanos());
        host.read(
                below.session().workspace(),
                store -> ReviewReader.window(store, below.session(), moved, pixels),
                read -> EventQueue.invokeLater(() -> {
                    if (below == under) {
                        laid = new WindowTraces(
                                wanted,
                                read.lines().stream()
                                        .map(l -> l.later(below.laterNanos()))
                                        .toList());
                    }
                    fetched();
                }),
                why -> {
                    fail(why);
                    EventQueue.invokeLater(this::fetched);
                });
    }

    private void fetched() {
        fetching = false;
        if (stale) {
            fetch();
        }
        changed.run();
    }
}
