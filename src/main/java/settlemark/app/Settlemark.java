package settlemark.app;

import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import settlemark.cli.InstrumentDesk;
import settlemark.cli.Program;
import settlemark.cli.SessionDesk;
import settlemark.cli.StoredDesk;
import settlemark.link.BleHost;
import settlemark.link.CaptureReader;
import settlemark.link.SerialHost;
import settlemark.rig.DemoInstrument;
import settlemark.session.CaptureReading;
import settlemark.session.CaptureSink;
import settlemark.session.DeviceList;
import settlemark.session.LinkException;
import settlemark.session.PairingPerson;
import settlemark.session.ProbeAddress;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.session.StoreTools;
import settlemark.store.SqliteStore;
import settlemark.ui.Desktop;
import settlemark.ui.DesktopOptions;
import settlemark.ui.DesktopStart;
import settlemark.ui.Language;
import settlemark.ui.ScreenState;

/** What the commands ask for, done with the real parts. */
final class Settlemark implements Program {
    /** Strong references: a logger's level is forgotten with the logger. */
    private static final List<Logger> LIBRARIES =
            List.of(Logger.getLogger("org.sqlite"), Logger.getLogger("org.apache"));

    private final Radio radio;

    Settlemark() {
        this(Radio.OF_SYSTEM);
    }

    Settlemark(Radio radio) {
        this.radio = radio;
    }

    @Override
    public void quiet(boolean quiet) {
        LIBRARIES.forEach(l -> l.setLevel(quiet ? Level.OFF : null));
    }

    @Override
    public boolean speaks(String code) {
        Optional<Language> language = Language.ofCode(code);
        language.ifPresent(Desktop::speak);
        return language.isPresent();
    }

    @Override
    public int demo(Demo request, PrintWriter out, PrintWriter err)
            throws StoreException, LinkException, IOException, InterruptedException {
        Optional<String> wrong = DemoScene.wrong(request);
        if (wrong.isPresent()) {
            err.println("settlemark: " + wrong.get());
            return USAGE;
        }
        DemoRun demo = new DemoRun(request, radio, err);
        return !request.headless() && request.air().isEmpty() && !GraphicsEnvironment.isHeadless()
                ? demo.inWindow()
                : demo.headless(out);
    }

    @Override
    public int desktop(Desk request, PrintWriter out, PrintWriter err)
            throws StoreException, LinkException, InterruptedException {
        if (GraphicsEnvironment.isHeadless()) {
            err.println("settlemark: there is no display; try demo --headless, or log for probes");
            return FAULT;
        }
        Optional<DesktopStart> start = DemoRun.open(
                new DesktopOptions(request.dark(), Optional.empty(), request.widthPx(), request.heightPx()),
                "Settlemark",
                err);
        if (start.isEmpty()) {
            return FAULT;
        }
        Demo demo = new Demo(
                false,
                1,
                Optional.empty(),
                request.folder(),
                request.dark(),
                request.widthPx(),
                request.heightPx(),
                1,
                Optional.empty(),
                Optional.empty(),
                List.of());
        restore(request.workspace(), start.get());
        try (ScreenKeeper keeper = new ScreenKeeper(start.get()::state, Workspaces.file(request.workspace()), err);
                Hosts hosts = hosts(request.adapter())) {
            keeper.keepNow();
            return new FirstStart(request, hosts, err)
                    .run(start.get(), shown -> new DemoRun(demo, radio, err).in(shown), out);
        } finally {
            keep(request.workspace(), start.get().state(), err);
            start.get().close();
        }
    }

    private static void restore(Optional<Path> workspace, DesktopStart start) {
        Optional<ScreenState> left = ScreenKeeper.left(Workspaces.file(workspace));
        if (left.isPresent()) {
            start.restore(left.get());
        } else if (Files.exists(Workspaces.file(workspace))) {
            try (SqliteStore store = Workspaces.reading(workspace)) {
                start.restore(KeptScreen.read(store.settings()));
            } catch (StoreException e) {
                // A workspace that cannot be read is told about when it is wanted; the window opens as at first.
                start.restore(ScreenState.NONE);
            }
        }
    }

    /** Not where there is no workspace yet and nothing was typed: looking around makes none. */
    private static void keep(Optional<Path> workspace, ScreenState state, PrintWriter err) {
        if (Files.exists(Workspaces.file(workspace)) || !state.plate().isEmpty()) {
            try (SqliteStore store = Workspaces.person(workspace)) {
                KeptScreen.keep(store.settings(), state);
            } catch (StoreException e) {
                err.println("settlemark: how the window looked was not kept: " + e.getMessage());
            }
        }
    }

    @Override
    public int log(Log request, PrintWriter out, PrintWriter err)
            throws StoreException, LinkException, InterruptedException {
        try (SqliteStore store = Workspaces.person(request.workspace());
                Hosts hosts = hosts(Optional.empty())) {
            return new LogRun(request, store, hosts, err).run(out, VERSION);
        }
    }

    private Hosts hosts(Optional<String> adapter) {
        return new Hosts(new SerialHost(Radio.THREADS), radio.host(adapter));
    }

    @Override
    public DeviceList devices(Look request) {
        try (Hosts hosts = hosts(request.adapter())) {
            return new DeviceSearch(hosts, request.workspace(), request.profiles()).look();
        }
    }

    @Override
    public void pair(ProbeAddress address, PairingPerson person) throws LinkException {
        try (BleHost host = radio.host(address.adapter())) {
            host.pair(address.device(), person);
        }
    }

    @Override
    public void forget(ProbeAddress address) throws LinkException {
        try (BleHost host = radio.host(address.adapter())) {
            host.forget(address.device());
        }
    }

    @Override
    public int capture(Capture request, PrintWriter out, PrintWriter err)
            throws LinkException, IOException, InterruptedException {
        try (Hosts hosts = hosts(Optional.empty())) {
            return new CaptureRun(request, hosts, err).run(out);
        }
    }

    @Override
    public CaptureReading readCapture(Path file, CaptureSink sink) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return CaptureReader.read(in, sink);
        }
    }

    @Override
    public int rig(Rig request, PrintWriter out, PrintWriter err) throws LinkException, InterruptedException {
        for (Tty tty : request.ttys()) {
            if (tty.profile().isEmpty()
                    && DemoInstrument.ofKey(tty.instrument()).isEmpty()) {
                err.println("settlemark: the rig has a gauge and an air instrument, not \"" + tty.instrument()
                        + "\"; say --tty gauge=DEVICE or --tty air=DEVICE");
                return USAGE;
            }
        }
        return new RigRun(request, radio, err).run(out);
    }

    @Override
    public int newJob(NewJob request, JobPerson person, PrintWriter out, PrintWriter err)
            throws StoreException, LinkException, IOException, InterruptedException {
        try (SqliteStore store = jobs(request.bench(), request.log().workspace());
                Hosts hosts = hosts(Optional.empty())) {
            return new TypedJob(store, request.folder(), person, out, err).begin(request, hosts);
        }
    }

    @Override
    public int resumeJob(ResumeJob request, JobPerson person, PrintWriter out, PrintWriter err)
            throws StoreException, LinkException, IOException, InterruptedException {
        try (SqliteStore store = jobs(request.bench(), request.workspace());
                Hosts hosts = hosts(Optional.empty())) {
            Optional<SessionStore.Summary> found = StoredRun.find(store, request.session(), err);
            if (found.isEmpty() || !StoredRun.knows(store.header(found.get().number()), request.keys(), err)) {
                return USAGE;
            }
            return new TypedJob(store, request.folder(), person, out, err)
                    .resume(found.get().number(), request, hosts);
        }
    }

    @Override
    public void beside(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
    }

    /** What comes from the rig never goes into the person's own workspace unless they name it. */
    private static SqliteStore jobs(Optional<Bench> bench, Optional<Path> workspace) throws StoreException {
        return bench.isPresent() ? Workspaces.demo(workspace) : Workspaces.person(workspace);
    }

    @Override
    public StoredDesk stored() {
        return new StoredRun();
    }

    @Override
    public SessionDesk sessions() {
        return new SessionRun();
    }

    @Override
    public InstrumentDesk instruments() {
        return new InstrumentRun();
    }

    @Override
    public StoreTools tools() {
        return Workspaces.tools();
    }

    @Override
    public Path ownWorkspace() {
        return Workspaces.file(Optional.empty());
    }

    @Override
    public Instant now() {
        return Instant.now().truncatedTo(ChronoUnit.MILLIS);
    }
}
