package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import settlemark.cli.Program;
import settlemark.cli.StoredDesk;
import settlemark.job.SettleForm;
import settlemark.session.Correction;
import settlemark.session.ProbeKeys;
import settlemark.session.ProbeSetup;
import settlemark.session.RereadReport;
import settlemark.session.Rereader;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.session.WhatIfReport;
import settlemark.settle.SettleChoices;
import settlemark.store.ParquetFile;
import settlemark.store.SqliteStore;

/** What the commands ask about stored sessions, done with the real parts: finds the session that is named, then does it. */
final class StoredRun implements StoredDesk {
    /** Stands for the newest session of a workspace. */
    private static final String LATEST = "latest";

    @Override
    public int record(Record request, PrintWriter out, PrintWriter err) throws StoreException, IOException {
        return RecordRun.run(request, out, err);
    }

    @Override
    public int replay(Replay request, PrintWriter out, PrintWriter err) throws StoreException, InterruptedException {
        long session;
        try (SqliteStore store = Workspaces.reading(request.workspace())) {
            Optional<SessionStore.Summary> found = find(store, request.session(), err);
            if (found.isEmpty() || !knows(store.header(found.get().number()), request.keys(), err)) {
                return Program.USAGE;
            }
            session = found.get().number();
            if (!request.window()) {
                new ReplayRun(store, session, ReplayRun.times(request.speed()), out).run(request.keys());
                return Program.DONE;
            }
        }
        return ReviewRun.inWindow(request, session, err);
    }

    @Override
    public int jobs(Optional<Path> workspace, PrintWriter out) throws StoreException {
        try (SqliteStore store = Workspaces.reading(workspace)) {
            return JobLook.list(store, out);
        }
    }

    @Override
    public int job(Job request, PrintWriter out, PrintWriter err) throws StoreException, IOException {
        try (SqliteStore store = Workspaces.reading(request.workspace())) {
            Optional<SessionStore.Summary> found = find(store, request.session(), err);
            if (found.isEmpty() || !knows(store.header(found.get().number()), request.keys(), err)) {
                return Program.USAGE;
            }
            return JobLook.show(store, found.get().number(), request.keys(), out);
        }
    }

    @Override
    public int verify(Verify request, PrintWriter out, PrintWriter err) throws StoreException, IOException {
        if (SessionRun.isSessionFile(request.file())) {
            return SessionRun.check(request.file(), request.key(), out, err);
        }
        Path seal = SessionRun.sealFile(request.file().toString()).orElse(request.file());
        if (request.workspace().isEmpty() && !Workspaces.hasOwn()) {
            return SealCheck.verify(seal, Optional.empty(), request.key(), out);
        }
        try (SqliteStore store = Workspaces.reading(request.workspace())) {
            return SealCheck.verify(seal, Optional.of(store), request.key(), out);
        }
    }

    @Override
    public int export(Export request, PrintWriter out, PrintWriter err) throws StoreException, IOException {
        if (request.parquet().isPresent()) {
            ParquetFile.requireDriver();
        }
        try (SqliteStore store = Workspaces.reading(request.workspace())) {
            Optional<SessionStore.Summary> found = find(store, request.session(), err);
            return found.isEmpty() ? Program.USAGE : new ExportRun(store, found.get(), request).run(out, err);
        }
    }

    @Override
    public int importSamples(Import request, PrintWriter out, PrintWriter err) throws StoreException, IOException {
        return new ImportRun(request, Program.VERSION).run(out, err);
    }

    static Optional<SessionStore.Summary> find(SqliteStore store, String session, PrintWriter err)
            throws StoreException {
        Optional<SessionStore.Summary> found =
                session.equals(LATEST) ? store.sessions().stream().findFirst() : store.find(session);
        if (found.isEmpty()) {
            String missing = session.equals(LATEST)
                    ? " has no session yet"
                    : " has no session \"" + session + "\"; name its number or key, or \"" + LATEST + "\"";
            err.println("settlemark: " + store.file() + missing);
        }
        return found;
    }

    static boolean knows(SessionHeader header, ProbeKeys keys, PrintWriter err) {
        List<String> names = header.probes().stream().map(ProbeSetup::name).toList();
        for (String name : keys.names()) {
            if (!names.contains(name)) {
                err.println("settlemark: --key names \"" + name + "\", but the session's probes are " + names);
                return false;
            }
        }
        return true;
    }

    @Override
    public int reread(Reread request, Consumer<RereadReport> report, PrintWriter err) throws StoreException {
        try (SqliteStore store = Workspaces.existing(request.workspace())) {
            Optional<SessionStore.Summary> found = find(store, request.session(), err);
            if (found.isEmpty()) {
                return Program.USAGE;
            }
            SessionHeader header = store.header(found.get().number());
            List<String> problems = Correction.problems(header, request.profiles());
            problems.forEach(p -> err.println("settlemark: " + p));
            if (!problems.isEmpty() || !knows(header, request.keys(), err)) {
                return Program.USAGE;
            }
            Instant now = Instant.now().truncatedTo(ChronoUnit.MILLIS);
            RereadReport made = Rereader.run(
                    store,
                    found.get().number(),
                    Correction.of(header, request.profiles()),
                    request.keys(),
                    now,
                    Program.VERSION);
            report.accept(made);
            return made.kept().isPresent() ? Program.DONE : Program.CHECK_FAILED;
        }
    }

    @Override
    public int whatIf(WhatIf request, Consumer<WhatIfReport> report, PrintWriter err) throws StoreException {
        try (SqliteStore store = Workspaces.reading(request.workspace())) {
            Optional<SessionStore.Summary> found = find(store, request.session(), err);
            if (found.isEmpty()) {
                return Program.USAGE;
            }
            long session = found.get().number();
            SessionHeader header = store.header(session);
            SessionHeader other = settlemark.session.WhatIf.other(header, request.choices(), request.by());
            if (!knows(header, request.keys(), err) || !DetectorSettings.fit(other, err)) {
                return Program.USAGE;
            }
            if (request.by().isPresent() && other.plan().equals(header.plan())) {
                err.println("settlemark: session " + session + " has no step that the rule "
                        + request.by().get().rule().orElseThrow().key() + " could be asked of");
                return Program.USAGE;
            }
            report.accept(
                    settlemark.session.WhatIf.run(store, session, request.choices(), request.by(), request.keys()));
            return Program.DONE;
        }
    }

    @Override
    public int settings(SettleSettings request, Consumer<SettleChoices> shown, PrintWriter err) throws StoreException {
        if (request.choices().isNone() && !request.reset()) {
            if (request.workspace().isEmpty() && !Workspaces.hasOwn()) {
                shown.accept(SettleChoices.NONE);
                return Program.DONE;
            }
            try (SqliteStore store = Workspaces.reading(request.workspace())) {
                shown.accept(DetectorSettings.of(store));
                return Program.DONE;
            }
        }
        try (SqliteStore store = Workspaces.person(request.workspace())) {
            SettleChoices before = request.reset() ? SettleChoices.NONE : DetectorSettings.of(store);
            SettleChoices now = request.choices().over(before);
            List<String> problems = SettleForm.problems(now);
            problems.forEach(p -> err.println("settlemark: " + p));
            if (!problems.isEmpty()) {
                return Program.USAGE;
            }
            DetectorSettings.keep(store, now);
            shown.accept(now);
            return Program.DONE;
        }
    }
}
