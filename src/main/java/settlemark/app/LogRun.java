package settlemark.app;

import java.io.PrintWriter;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import settlemark.cli.Program;
import settlemark.measure.Unit;
import settlemark.session.LinkException;
import settlemark.session.LiveSession;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeLink;
import settlemark.session.ProbeSetup;
import settlemark.session.RawBytes;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/** {@code log}: probes into a workspace, until the time is over or the person interrupts. */
final class LogRun {
    private final Program.Log request;
    private final SqliteStore store;
    private final Hosts hosts;
    private final PrintWriter err;
    private final CountDownLatch stop = new CountDownLatch(1);
    private volatile boolean faulty;

    LogRun(Program.Log request, SqliteStore store, Hosts hosts, PrintWriter err) {
        this.request = request;
        this.store = store;
        this.hosts = hosts;
        this.err = err;
    }

    int run(PrintWriter out, String version) throws StoreException, LinkException, InterruptedException {
        SystemTicker ticker = new SystemTicker();
        SessionHeader header = header(ticker.wall(), ZoneId.systemDefault(), version)
                .begunWith(request.settings().over(DetectorSettings.of(store)));
        if (!DetectorSettings.fit(header, err)) {
            return Program.USAGE;
        }
        // The links first: a port that cannot be opened must not leave an empty session behind.
        List<LateListener> listeners = new ArrayList<>();
        List<ProbeLink> links = new ArrayList<>();
        try {
            open(header, ticker, links, listeners);
            return stream(header, ticker, links, listeners, out);
        } finally {
            links.forEach(ProbeLink::close);
        }
    }

    private int stream(
            SessionHeader header,
            SystemTicker ticker,
            List<ProbeLink> links,
            List<LateListener> listeners,
            PrintWriter out)
            throws StoreException, InterruptedException {
        if (request.bytes() == RawBytes.DROPPED) {
            err.println("the probes' bytes are not kept: " + RawBytes.COST);
        }
        long session = store.begin(header, request.bytes());
        StoreWriter writer = new StoreWriter(store, session, header.probes().size(), this::report, this::warn, e -> {
            err.println("settlemark: " + e.getMessage());
            stop.countDown();
        });
        LiveSession live = new LiveSession(header, request.keys());
        Pipeline pipeline = new Pipeline(
                live,
                ticker,
                writer,
                request.shown().isPresent() ? Pipeline.FOR_A_SCREEN : Pipeline.FOR_NOBODY,
                ticker::events,
                this::broken);
        Optional<LogWindow> window = request.shown().flatMap(s -> LogWindow.open(s, header, err));
        window.ifPresent(w -> w.watch(live, pipeline, stop::countDown));
        pipeline.start();
        for (int i = 0; i < listeners.size(); i++) {
            listeners.get(i).connect(pipeline.listener(i));
        }
        CountDownLatch ended = new CountDownLatch(1);
        Thread hook = new Thread(() -> interrupted(ended), "shutdown");
        Runtime.getRuntime().addShutdownHook(hook);
        SleepGuard guard = SleepGuard.hold("streaming probes", err::println);
        try {
            if (request.seconds().isPresent()) {
                stop.await(Math.round(request.seconds().getAsDouble() * 1000), TimeUnit.MILLISECONDS);
            } else {
                stop.await();
            }
            links.forEach(ProbeLink::close);
            pipeline.end();
            store.close();
        } finally {
            guard.close();
            window.ifPresent(LogWindow::close);
            ended.countDown();
            forget(hook);
        }
        if (writer.failure() != null || faulty) {
            return Program.FAULT;
        }
        out.println("session " + session + " " + header.key());
        return Program.DONE;
    }

    private void broken(RuntimeException fault) {
        err.println("settlemark: a fault of the program stopped the log; what was said to be stored is: " + fault);
        fault.printStackTrace(err);
        faulty = true;
        stop.countDown();
    }

    private void interrupted(CountDownLatch ended) {
        stop.countDown();
        try {
            ended.await(5, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void forget(Thread hook) {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // The program is being shut down: the hook is running and about to end.
        }
    }

    private void warn(String warning) {
        err.println(warning.isEmpty() ? "the disk is as it should be again" : "warning: " + warning);
        err.flush();
    }

    private void report(List<Long> stored) {
        for (int i = 0; i < stored.size(); i++) {
            err.println("stored " + request.probes().get(i).name() + " " + stored.get(i));
        }
        err.flush();
    }

    private void open(SessionHeader header, SystemTicker ticker, List<ProbeLink> links, List<LateListener> listeners)
            throws LinkException {
        for (ProbeSetup probe : header.probes()) {
            LateListener listener = new LateListener(probe.name(), this::say);
            listeners.add(listener);
            if (probe.address().scheme().equals(ProbeAddress.BLE)) {
                err.println(probe.name() + ": looking for " + probe.address().words());
                err.flush();
            }
            links.add(hosts.of(probe.address()).open(probe.address(), probe.profile(), ticker, listener));
        }
    }

    private void say(String words) {
        err.println(words);
        err.flush();
    }

    private SessionHeader header(Instant now, ZoneId zone, String version) throws StoreException, LinkException {
        List<ProbeSetup> probes = ProbeBinding.setups(request, hosts, store, err::println);
        return new SessionHeader(
                DemoScene.key(now, zone, "log"),
                request.title(),
                now,
                zone,
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                probes,
                Optional.empty(),
                Optional.empty(),
                version);
    }
}
