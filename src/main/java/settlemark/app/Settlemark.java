package settlemark.app;

import java.awt.AWTError;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.record.StageTable;
import settlemark.rig.DemoRig;
import settlemark.session.LinkException;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;
import settlemark.ui.Desktop;
import settlemark.ui.DesktopOptions;

/** What the commands ask for, done with the real parts. */
final class Settlemark implements Program {
    static final String VERSION = "0.1.0";

    @Override
    public int demo(Demo request, PrintWriter out, PrintWriter err)
            throws StoreException, LinkException, IOException, InterruptedException {
        Instant now = Instant.now().truncatedTo(ChronoUnit.MILLIS);
        boolean window = !request.headless() && !GraphicsEnvironment.isHeadless();
        if (window) {
            Thread warm = new Thread(Desktop::warm, "warm");
            warm.setDaemon(true);
            warm.start();
        }
        SessionHeader header = DemoScene.header(now, ZoneId.systemDefault(), VERSION);
        try (SqliteStore store = Workspaces.demo(request.workspace())) {
            Path folder = Workspaces.records(store, request.folder());
            return window ? window(request, header, store, folder, err) : headless(request, header, store, folder, out);
        }
    }

    private static int window(Demo request, SessionHeader header, SqliteStore store, Path folder, PrintWriter err)
            throws StoreException, LinkException, InterruptedException {
        DesktopOptions options =
                new DesktopOptions(request.dark(), Optional.empty(), request.widthPx(), request.heightPx());
        try {
            return new DesktopDemo(header, store, folder, request.seed(), request.speed(), err).run(options);
        } catch (HeadlessException | AWTError e) {
            err.println("settlemark: the display cannot be used (" + e.getMessage() + "); try demo --headless");
            return FAULT;
        }
    }

    private static int headless(Demo request, SessionHeader header, SqliteStore store, Path folder, PrintWriter out)
            throws StoreException, LinkException, IOException {
        DemoRig rig = new DemoRig(new DemoRig.Settings(request.seed(), true));
        long session = new HeadlessDemo(header, store, rig).run();
        return hand(store, session, folder, out);
    }

    private static int hand(SessionStore store, long session, Path folder, PrintWriter out)
            throws StoreException, IOException {
        Optional<RecordMaking.Made> made = RecordMaking.make(store, session, folder);
        if (made.isEmpty()) {
            throw new IOException("session " + session + " is a log without a job: there is no record to make");
        }
        out.print(StageTable.text(made.get().record()));
        made.get().files().forEach(out::println);
        out.flush();
        return made.get().record().job().leftOutside() ? CHECK_FAILED : DONE;
    }

    @Override
    public int log(Log request, PrintWriter out, PrintWriter err)
            throws StoreException, LinkException, InterruptedException {
        try (SqliteStore store = Workspaces.person(request.workspace())) {
            return new LogRun(request, store, err).run(out, VERSION);
        }
    }

    @Override
    public int rig(Rig request, PrintWriter out, PrintWriter err) throws LinkException, InterruptedException {
        return new RigRun(request, err).run(out);
    }

    @Override
    public int record(Record request, PrintWriter out, PrintWriter err) throws StoreException, IOException {
        try (SqliteStore store = Workspaces.reading(request.workspace())) {
            Optional<SessionStore.Summary> found = request.session().equals("latest")
                    ? store.sessions().stream().findFirst()
                    : store.find(request.session());
            if (found.isEmpty()) {
                err.println("settlemark: " + store.file() + " has no session \"" + request.session()
                        + "\"; name its number or key, or \"latest\"");
                return USAGE;
            }
            return hand(store, found.get().number(), Workspaces.records(store, request.folder()), out);
        }
    }
}
