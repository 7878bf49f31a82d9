package settlemark.app;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.job.Act;
import settlemark.session.JobStart;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.LinkListener;
import settlemark.session.ProbeKeys;
import settlemark.session.ProbeLink;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.session.TakenUp;
import settlemark.store.SqliteStore;
import settlemark.ui.DesktopStart;

/** A job on real probes in its window: the links of {@code log}, in the pipeline and store of every session. */
final class DesktopJob implements AutoCloseable {
    private final List<ProbeLink> links = new ArrayList<>();
    private final List<LateListener> listeners = new ArrayList<>();
    private final LaterTicker ticker = new LaterTicker();
    private final SqliteStore store;
    private final SessionHeader header;
    private final PrintWriter err;
    /** Empty for a new job. */
    private final Optional<TakenUp> taken;

    private final long number;

    private DesktopJob(SqliteStore store, SessionHeader header, PrintWriter err) {
        this(store, header, Optional.empty(), -1, err);
    }

    private DesktopJob(SqliteStore store, SessionHeader header, Optional<TakenUp> taken, long number, PrintWriter err) {
        this.store = store;
        this.header = header;
        this.taken = taken;
        this.number = number;
        this.err = err;
    }

    /**
     * Goes on with a job that was left: opens the links of all its probes, or none. Closes the store where that fails.
     *
     * @throws LinkException with the remedy, also where another device is now where one of the job was
     */
    static DesktopJob resume(long number, Hosts hosts, SqliteStore store, PrintWriter err)
            throws LinkException, StoreException {
        DesktopJob made = null;
        try {
            TakenUp taken = TakenUp.of(store, number, ProbeKeys.NONE, Instant.now());
            SessionHeader header = taken.session().header();
            ProbeBinding.requireSame(header.probes(), hosts);
            made = new DesktopJob(store, header, Optional.of(taken), number, err);
            made.ticker.from(taken.fromNanos());
            made.connect(hosts);
            return made;
        } catch (LinkException | StoreException | RuntimeException e) {
            if (made == null) {
                store.close();
            } else {
                made.close();
            }
            throw e;
        }
    }

    /**
     * Opens the links of all chosen probes, or none. Closes the store where that fails.
     *
     * @throws LinkException with the remedy, for the first that cannot be opened, and where another device is now where
     *     the chosen one was
     */
    static DesktopJob open(JobStart start, Hosts hosts, SqliteStore store, PrintWriter err)
            throws LinkException, StoreException {
        DesktopJob made = null;
        try {
            SessionHeader header =
                    header(start, probes(start.probes(), hosts, store)).begunWith(DetectorSettings.of(store));
            DetectorSettings.require(header);
            made = new DesktopJob(store, header, err);
            made.connect(hosts);
            return made;
        } catch (LinkException | StoreException | RuntimeException e) {
            if (made == null) {
                store.close();
            } else {
                made.close();
            }
            throw e;
        }
    }

    private static SessionHeader header(JobStart start, List<ProbeSetup> probes) {
        Instant now = Instant.now().truncatedTo(ChronoUnit.MILLIS);
        ZoneId zone = ZoneId.systemDefault();
        return new SessionHeader(
                DemoScene.key(now, zone, "job"),
                start.title(),
                now,
                zone,
                start.pressureUnit(),
                start.temperatureUnit(),
                probes,
                Optional.of(start.plan()),
                Optional.of(start.plate()),
                Program.VERSION);
    }

    /** A name that was another device's the last time gets a number behind it, so that none passes for the other. */
    private static List<ProbeSetup> probes(List<ProbeSetup> chosen, Hosts hosts, SessionStore store)
            throws LinkException, StoreException {
        List<ProbeSetup> probes = new ArrayList<>();
        for (ProbeSetup probe : chosen) {
            String now = hosts.of(probe.address()).identity(probe.address());
            if (ProbeBinding.isAnother(probe.identity(), now)) {
                throw new LinkException(probe.name() + ": at " + probe.address().words() + " is now " + now + ", and "
                        + probe.identity() + " was chosen: look again, and choose anew");
            }
            String name = probe.name();
            for (int i = 2; ProbeBinding.isAnother(store.lastIdentity(name), now) || isTaken(name, probes); i++) {
                name = probe.name() + " " + i;
            }
            probes.add(new ProbeSetup(name, probe.address(), probe.profile(), probe.roles(), now));
        }
        return probes;
    }

    private static boolean isTaken(String name, List<ProbeSetup> probes) {
        return probes.stream().anyMatch(p -> p.name().equals(name));
    }

    private void connect(Hosts hosts) throws LinkException {
        for (ProbeSetup probe : header.probes()) {
            LateListener listener = new LateListener(probe.name(), words -> {
                err.println(words);
                err.flush();
            });
            listeners.add(listener);
            links.add(hosts.of(probe.address()).open(probe.address(), probe.profile(), ticker, listener));
        }
    }

    /** Runs the session in the window and returns when it was closed and everything is stored. */
    int run(DesktopStart start, Optional<Path> folder, PrintWriter out) throws StoreException, InterruptedException {
        List<Act.Former> former = taken.isPresent() ? List.of() : Visits.left(store, header.title());
        DesktopSession session = session(Workspaces.records(store, folder));
        session.pipeline().start();
        former.forEach(session.pipeline()::act);
        for (int i = 0; i < listeners.size(); i++) {
            LinkListener listener = session.pipeline().listener(i);
            if (taken.isPresent()) {
                listener.changed(ticker.nanos(), LinkChange.UP, "connected again");
            }
            listeners.get(i).connect(listener);
        }
        SleepGuard guard = SleepGuard.hold("doing a job", err::println);
        try {
            start.open(session.pipeline(), Optional.empty(), Optional.empty(), session);
            session.awaitClosed();
        } finally {
            guard.close();
            links.forEach(ProbeLink::close);
        }
        int code = session.end();
        out.println("session " + session.number() + " " + header.key());
        out.flush();
        return code;
    }

    private DesktopSession session(Path folder) throws StoreException {
        if (taken.isEmpty()) {
            return new DesktopSession(header, store, folder, ticker, ticker::events, err);
        }
        store.reopen(number);
        return new DesktopSession(taken.get().session(), number, store, folder, ticker, ticker::events, err);
    }

    @Override
    public void close() throws StoreException {
        links.forEach(ProbeLink::close);
        store.close();
    }
}
