package settlemark.app;

import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import settlemark.cli.Program;
import settlemark.cli.SessionDesk;
import settlemark.cli.StoredDesk;
import settlemark.seal.JudgedAgain;
import settlemark.seal.Review;
import settlemark.session.Note;
import settlemark.session.Rejudging;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;
import settlemark.ui.DesktopOptions;
import settlemark.ui.DesktopStart;
import settlemark.ui.ReviewHost;
import settlemark.ui.SeenView;

/** Reads stored sessions for the window, on two threads: one for what is wanted soon, one for what takes long. */
final class ReviewRun implements ReviewHost, AutoCloseable {
    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("HHmmss", Locale.ROOT);

    private final List<Path> workspaces;
    private final Optional<Path> folder;
    private final PrintWriter err;
    private final ExecutorService soon = work();
    private final ExecutorService slow = work();
    private final Map<Path, SqliteStore> stores = new HashMap<>();
    private final Map<Path, FoundBefore> found = new ConcurrentHashMap<>();
    private final String program;

    /** @param folder for what is kept, empty for the records' folder beside the workspace */
    ReviewRun(List<Path> workspaces, Optional<Path> folder, PrintWriter err) {
        this(workspaces, folder, err, FoundBefore.program());
    }

    /** @param program says which program found how jobs came out; empty where that is not to be kept */
    ReviewRun(List<Path> workspaces, Optional<Path> folder, PrintWriter err, String program) {
        this.program = program;
        this.workspaces = List.copyOf(workspaces);
        this.folder = folder;
        this.err = err;
    }

    /** The chosen workspace, else the person's own and the demo's, as far as they are there. */
    static List<Path> places(Optional<Path> chosen) {
        if (chosen.isPresent()) {
            return List.of(chosen.get());
        }
        List<Path> places = new ArrayList<>();
        for (Path place : List.of(Workspaces.file(Optional.empty()), Workspaces.demoFile())) {
            if (Files.exists(place)) {
                places.add(place);
            }
        }
        return places;
    }

    /** Plays a stored session in the window and returns when it was closed. */
    static int inWindow(StoredDesk.Replay request, long session, PrintWriter err) throws InterruptedException {
        Optional<DesktopStart> start = GraphicsEnvironment.isHeadless()
                ? Optional.empty()
                : DemoRun.open(
                        new DesktopOptions(request.dark(), Optional.empty(), request.widthPx(), request.heightPx()),
                        "Opening session " + session,
                        err);
        if (start.isEmpty()) {
            err.println("settlemark: there is no display; leave out --window");
            return Program.FAULT;
        }
        Path workspace = Workspaces.file(request.workspace());
        CountDownLatch closed = new CountDownLatch(1);
        try (ReviewRun review = new ReviewRun(List.of(workspace), Optional.empty(), err)) {
            start.get().review(review, workspace, session, request.speed(), closed::countDown);
            closed.await();
        } finally {
            start.get().close();
        }
        return Program.DONE;
    }

    private static ExecutorService work() {
        return Executors.newSingleThreadExecutor(task -> {
            Thread thread = new Thread(task, "work");
            thread.setDaemon(true);
            return thread;
        });
    }

    @Override
    public List<Path> workspaces() {
        return workspaces;
    }

    @Override
    public <T> void read(Path workspace, Reading<T> reading, Consumer<T> done, Consumer<String> failed) {
        soon.execute(() -> run(workspace, reading, done, failed));
    }

    @Override
    public <T> void study(Path workspace, Reading<T> reading, Consumer<T> done, Consumer<String> failed) {
        slow.execute(() -> run(workspace, reading, done, failed));
    }

    private <T> void run(Path workspace, Reading<T> reading, Consumer<T> done, Consumer<String> failed) {
        T result;
        try {
            result = reading.of(store(workspace));
        } catch (StoreException | IllegalArgumentException e) {
            failed.accept(String.valueOf(e.getMessage()));
            return;
        } catch (RuntimeException e) {
            e.printStackTrace(err);
            failed.accept("a fault of the program: " + e);
            return;
        }
        done.accept(result);
    }

    private synchronized SqliteStore store(Path workspace) throws StoreException {
        SqliteStore store = stores.get(workspace);
        if (store == null) {
            store = Workspaces.reading(Optional.of(workspace));
            stores.put(workspace, store);
        }
        return store;
    }

    @Override
    public void keep(SeenView view, SeenView.Form form, Consumer<Path> done, Consumer<String> failed) {
        soon.execute(() -> {
            try {
                done.accept(write(view, form));
            } catch (IOException | StoreException e) {
                failed.accept("what is seen was not kept: " + e.getMessage());
            }
        });
    }

    private Path write(SeenView view, SeenView.Form form) throws IOException, StoreException {
        Path into = folder.orElseGet(() -> workspaces.get(0).toAbsolutePath().resolveSibling("records"));
        Files.createDirectories(into);
        String ending = form.name().toLowerCase(Locale.ROOT);
        String stamp = STAMP.format(Instant.now().atOffset(ZoneOffset.UTC));
        Path file = into.resolve(view.name() + "-" + stamp + "." + ending);
        for (int i = 2; Files.exists(file); i++) {
            file = into.resolve(view.name() + "-" + stamp + "-" + i + "." + ending);
        }
        SeenFiles.write(view, form, file);
        return file;
    }

    @Override
    public void note(Path workspace, long session, Note note, Runnable done, Consumer<String> failed) {
        soon.execute(() -> {
            try (SqliteStore store = Workspaces.existing(Optional.of(workspace))) {
                store.papers().note(session, note);
            } catch (StoreException | IllegalArgumentException e) {
                failed.accept("the note was not stored: " + e.getMessage());
                return;
            }
            done.run();
        });
    }

    @Override
    public void judge(Path workspace, long session, Word word, Consumer<Said> done, Consumer<String> failed) {
        slow.execute(() -> {
            StringWriter said = new StringWriter();
            Review signed;
            try (SqliteStore store = Workspaces.existing(Optional.of(workspace))) {
                SessionDesk.Review review = new SessionDesk.Review(
                        Long.toString(session),
                        word.accepted(),
                        word.person(),
                        word.reason(),
                        word.tried(),
                        Optional.of(workspace),
                        Optional.empty(),
                        Optional.empty());
                SessionStore.Summary summary =
                        store.find(Long.toString(session)).orElseThrow();
                int code = Reviewing.ofSession(store, summary, review, Instant.now(), new PrintWriter(said, true));
                if (code != Program.DONE) {
                    failed.accept("nothing was signed: " + said.toString().strip());
                    return;
                }
                signed = KeptSeals.newestReview(store, session).orElseThrow();
            } catch (StoreException | IOException | IllegalArgumentException e) {
                failed.accept("nothing was signed: " + e.getMessage());
                return;
            }
            done.accept(said(signed));
        });
    }

    @Override
    public Optional<Said> word(SessionStore store, long session) throws StoreException {
        try {
            return KeptSeals.newestReview(store, session).map(ReviewRun::said);
        } catch (IOException e) {
            throw new StoreException(StoreException.Cause.DAMAGED, "session " + session + ": " + e.getMessage(), e);
        }
    }

    @Override
    public Optional<String> remembered(Path workspace, SessionStore store, SessionStore.Summary session)
            throws StoreException {
        return found(workspace).of(session.key(), store.mark(session.number()));
    }

    @Override
    public void remember(Path workspace, SessionStore store, SessionStore.Summary session, String cameOut)
            throws StoreException {
        found(workspace).keep(session.key(), store.mark(session.number()), cameOut);
    }

    private FoundBefore found(Path workspace) {
        return found.computeIfAbsent(workspace, w -> new FoundBefore(w, program));
    }

    private static Said said(Review review) {
        return new Said(
                review.accepted(),
                review.person(),
                review.comment(),
                review.again().map(JudgedAgain::under).orElse(List.of()),
                review.again().stream()
                        .flatMap(a -> a.changes().stream())
                        .map(c -> new Rejudging.Change(c.step(), c.figure(), c.from(), c.to()))
                        .toList());
    }

    @Override
    public synchronized void close() {
        soon.shutdownNow();
        slow.shutdownNow();
        for (SqliteStore store : stores.values()) {
            try {
                store.close();
            } catch (StoreException e) {
                err.println("settlemark: " + e.getMessage());
            }
        }
        stores.clear();
    }
}
