package settlemark.app;

import java.awt.AWTError;
import java.awt.HeadlessException;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.rig.DemoRig;
import settlemark.session.LinkException;
import settlemark.session.ProbeKeys;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.settle.SettleChoices;
import settlemark.store.SqliteStore;
import settlemark.ui.Desktop;
import settlemark.ui.DesktopOptions;
import settlemark.ui.DesktopStart;

/** The demo as it was asked for: in its window, or headless. */
final class DemoRun {
    private final Program.Demo request;
    private final Radio radio;
    private final PrintWriter err;

    DemoRun(Program.Demo request, Radio radio, PrintWriter err) {
        this.request = request;
        this.radio = radio;
        this.err = err;
    }

    /** The window comes first; the profiles, the workspace and the rig are made ready behind it. */
    int inWindow() throws StoreException, LinkException, InterruptedException {
        Optional<DesktopStart> start = open(
                new DesktopOptions(request.dark(), Optional.empty(), request.widthPx(), request.heightPx()),
                "Preparing the demo rig",
                err);
        if (start.isEmpty()) {
            return Program.FAULT;
        }
        Path file = request.workspace().orElseGet(Workspaces::demoFile);
        ScreenKeeper.left(file).ifPresent(start.get()::restore);
        try (ScreenKeeper keeper = new ScreenKeeper(start.get()::state, file, err)) {
            keeper.keepNow();
            return in(start.get());
        } finally {
            start.get().close();
        }
    }

    /** In a window that is there. */
    int in(DesktopStart start) throws StoreException, LinkException, InterruptedException {
        try (SqliteStore store = Workspaces.demo(request.workspace())) {
            Path folder = Workspaces.records(store, request.folder());
            DemoScene scene = DemoScene.of(request);
            SessionHeader header = scene.header(DemoScene.within()).begunWith(DetectorSettings.of(store));
            DetectorSettings.require(header);
            return new DesktopDemo(header, store, folder, scene.rig(), request.speed(), err).run(start);
        }
    }

    /** Empty where there is no display to be used, which is said. */
    static Optional<DesktopStart> open(DesktopOptions options, String words, PrintWriter err) {
        DesktopStart start;
        try {
            start = DesktopStart.show(options, words);
        } catch (HeadlessException | AWTError | IllegalStateException e) {
            err.println("settlemark: the display cannot be used (" + e.getMessage() + "); try demo --headless");
            return Optional.empty();
        }
        Thread warm = new Thread(Desktop::warm, "warm");
        warm.setDaemon(true);
        warm.start();
        return Optional.of(start);
    }

    /** Faster than real time, to the record. */
    int headless(PrintWriter out) throws StoreException, LinkException, IOException {
        try (SqliteStore store = Workspaces.demo(request.workspace())) {
            return headless(store, Workspaces.records(store, request.folder()), out);
        }
    }

    private int headless(SqliteStore store, Path folder, PrintWriter out)
            throws StoreException, LinkException, IOException {
        DemoScene scene = DemoScene.of(request);
        DemoRig rig = new DemoRig(scene.rig());
        SettleChoices choices = DetectorSettings.of(store);
        if (request.air().isEmpty()) {
            SessionHeader own = scene.header(DemoScene.within()).begunWith(choices);
            if (!DetectorSettings.fit(own, err)) {
                return Program.USAGE;
            }
            try (DemoWiring wiring = new WireWiring(rig)) {
                long session = new HeadlessDemo(own, store, rig, wiring, nanos -> {}).run();
                return Handover.hand(
                        store,
                        session,
                        RecordMaking.make(store, session, ProbeKeys.NONE, Sealing.fingerprint(store, session), folder),
                        out,
                        err);
            }
        }
        TruthCheck truth = new TruthCheck();
        try (RadioWiring wiring = RadioWiring.start(request.air().get(), rig, radio)) {
            SessionHeader header = scene.header(wiring.probes()).begunWith(choices);
            if (!DetectorSettings.fit(header, err)) {
                return Program.USAGE;
            }
            long session = new HeadlessDemo(header, store, rig, wiring, t -> truth.note(t, rig.truth())).run();
            Optional<RecordMaking.Made> made =
                    RecordMaking.make(store, session, ProbeKeys.NONE, Sealing.fingerprint(store, session), folder);
            err.println(wiring.summary());
            int code = Handover.hand(store, session, made, out, err);
            TruthCheck.Result result = truth.of(made.orElseThrow().record().job());
            err.println(result.readings() + " readings against what was really so: "
                    + (result.misses().isEmpty()
                            ? "all within their uncertainty"
                            : String.join("; ", result.misses())));
            return result.misses().isEmpty() ? code : Program.CHECK_FAILED;
        }
    }
}
