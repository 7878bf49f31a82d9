package settlemark.app;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import settlemark.cli.Program;
import settlemark.cli.SessionDesk;
import settlemark.record.NoPictureException;
import settlemark.record.Photograph;
import settlemark.seal.Seal;
import settlemark.seal.SessionParts;
import settlemark.session.Attachment;
import settlemark.session.CheckReport;
import settlemark.session.Note;
import settlemark.session.Papers;
import settlemark.session.ProbeKeys;
import settlemark.session.ProbeSetup;
import settlemark.session.Rejudging;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.session.WhatIf;
import settlemark.store.SessionFile;
import settlemark.store.SqliteStore;
import settlemark.store.WorkspacePlace;

/** Sealed sessions by command. */
final class SessionRun implements SessionDesk {
    private static final byte[] SQLITE = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private static final String ANY_TYPE = "application/octet-stream";

    @Override
    public int review(Review request, PrintWriter out, PrintWriter err) throws StoreException, IOException {
        Instant now = now();
        Optional<Path> seal = sealFile(request.subject());
        if (seal.isPresent() && !request.again().isNone()) {
            err.println(
                    "settlemark: a record's file holds no data to judge again; name its session in a workspace instead of "
                            + request.subject());
            return Program.USAGE;
        }
        if (seal.isPresent()) {
            return Reviewing.ofFile(
                    seal.get(), request, Sealing.keyFile(Workspaces.file(request.workspace())), now, out);
        }
        try (SqliteStore store = Workspaces.existing(request.workspace())) {
            Optional<SessionStore.Summary> found = StoredRun.find(store, request.subject(), err);
            if (found.isEmpty() || !workable(store, found.get().number(), request.again(), err)) {
                return Program.USAGE;
            }
            return Reviewing.ofSession(store, found.get(), request, now, out);
        } catch (IllegalArgumentException e) {
            err.println("settlemark: " + e.getMessage());
            return Program.USAGE;
        }
    }

    /** Whether the settings can work with the session's channels, and its frames can be read. */
    private static boolean workable(SqliteStore store, long session, Rejudging again, PrintWriter err)
            throws StoreException {
        if (again.isNone()) {
            return true;
        }
        SessionHeader header = store.header(session);
        for (ProbeSetup probe : header.probes()) {
            if (ProbeKeys.mayNeedOne(probe.profile())) {
                err.println("settlemark: the frames of probe " + probe.name()
                        + " may be protected, and a review takes no key for them: it cannot judge again. Use whatif.");
                return false;
            }
        }
        return DetectorSettings.fit(WhatIf.other(header, again.choices(), again.by()), err);
    }

    /** A seal's own file, or the one beside a record's file; empty where no such file is there. */
    static Optional<Path> sealFile(String named) {
        Path file = Path.of(named);
        String name = String.valueOf(file.getFileName());
        if (!Files.isRegularFile(file) || name.endsWith(Sealing.ENDING)) {
            return Optional.of(file).filter(Files::isRegularFile);
        }
        String key = name.replaceFirst("(-readings\\.csv|-samples\\.csv|\\.pdf|\\.json)$", "");
        Path beside = file.resolveSibling(key + Sealing.ENDING);
        return Optional.of(Files.isRegularFile(beside) ? beside : file);
    }

    private static Instant now() {
        return Instant.now().truncatedTo(ChronoUnit.MILLIS);
    }

    @Override
    public int key(Key request, PrintWriter out, PrintWriter err) throws IOException {
        return new KeyRun(request, out, err).run();
    }

    @Override
    public int export(Transfer request, PrintWriter out, PrintWriter err) throws StoreException, IOException {
        Seal seal;
        Path workspace;
        long session;
        try (SqliteStore store = Workspaces.existing(request.workspace())) {
            Optional<SessionStore.Summary> found = StoredRun.find(store, request.session(), err);
            if (found.isEmpty()) {
                return Program.USAGE;
            }
            workspace = store.file();
            session = found.get().number();
            // Without the record's files, which are made again from it; the new seal covers the former ones.
            seal = Sealing.made(
                    store,
                    session,
                    SessionParts.of(store, session),
                    List.of(),
                    now(),
                    Phrases.of(request.phraseFile()));
        }
        SessionFile.write(workspace, session, request.file(), Workspaces.PROFILES);
        out.println("session " + seal.session() + (seal.simulated() ? " (SIMULATED)" : ""));
        out.println("key " + seal.fingerprint());
        out.println(request.file());
        out.flush();
        return Program.DONE;
    }

    /** Whether a file is a workspace or a session in a file of its own. */
    static boolean isSessionFile(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return Arrays.equals(in.readNBytes(SQLITE.length), SQLITE);
        }
    }

    @Override
    public int takeIn(Transfer request, PrintWriter out, PrintWriter err) throws StoreException, IOException {
        int code = check(request.file(), request.key(), out, err);
        if (code != Program.DONE) {
            err.println("settlemark: " + request.file() + " was not taken in");
            return code;
        }
        long inFile;
        SessionStore.Summary summary;
        try (SqliteStore store = Workspaces.reading(Optional.of(request.file()))) {
            summary = store.sessions().get(0);
            inFile = summary.number();
        }
        try (SqliteStore store = Workspaces.person(request.workspace())) {
            Optional<SessionStore.Summary> same = store.find(summary.key());
            if (same.isPresent()) {
                err.println("settlemark: " + store.file() + " already has session " + summary.key() + ", as number "
                        + same.get().number() + "; it was not taken in a second time");
                return Program.USAGE;
            }
        }
        long number = SessionFile.takeIn(
                request.file(),
                inFile,
                WorkspacePlace.chosen(Workspaces.file(request.workspace())),
                Workspaces.PROFILES);
        out.println("taken in as session " + number);
        out.flush();
        return Program.DONE;
    }

    /** Whether a file holds one session, whole and as it was sealed. */
    static int check(Path file, Optional<Path> key, PrintWriter out, PrintWriter err)
            throws StoreException, IOException {
        if (!isSessionFile(file)) {
            err.println(
                    "settlemark: " + file + " is damaged at its beginning, or no session's file: byte 0 does not begin"
                            + " an SQLite database");
            return Program.DAMAGED;
        }
        CheckReport report;
        try {
            report = Workspaces.tools().check(file);
        } catch (StoreException e) {
            // The check cannot even ask: tables or columns are not what they must be.
            err.println("settlemark: it is damaged: " + e.getMessage());
            return Program.DAMAGED;
        }
        if (!report.whole()) {
            report.damage().forEach(d -> err.println("settlemark: " + file + " is damaged: " + d));
            return Program.DAMAGED;
        }
        try (SqliteStore store = Workspaces.reading(Optional.of(file))) {
            List<SessionStore.Summary> sessions = store.sessions();
            if (sessions.size() != 1) {
                err.println("settlemark: " + file + " holds " + sessions.size()
                        + " sessions, a session's file holds one; make it with \"settlemark session export\"");
                return Program.DAMAGED;
            }
            return SealCheck.verify(store, sessions.get(0), key, out);
        }
    }

    @Override
    public int add(Paper request, PrintWriter out, PrintWriter err) throws StoreException, IOException {
        try (SqliteStore store = Workspaces.existing(request.workspace())) {
            Optional<SessionStore.Summary> found = StoredRun.find(store, request.session(), err);
            if (found.isEmpty()) {
                return Program.USAGE;
            }
            long session = found.get().number();
            boolean sealed = !KeptSeals.of(store, session).seals().isEmpty();
            if (!request.note().isBlank()) {
                store.papers().note(session, new Note(OptionalLong.empty(), now(), request.note()));
                out.println("noted");
            }
            for (Path file : request.files()) {
                Attachment kept = attach(store, session, file, request.keepLocation());
                out.println("attached " + kept.name() + ", " + kept.bytes() + " bytes, SHA-256 " + kept.digest());
            }
            if (sealed) {
                err.println("settlemark: the session is sealed already; what was added now is said to have come later,"
                        + " until \"settlemark record\" or \"session export\" seals it again");
            }
            out.flush();
            return Program.DONE;
        } catch (NoPictureException e) {
            err.println("settlemark: " + e.getMessage());
            return Program.DAMAGED;
        } catch (IllegalArgumentException e) {
            err.println("settlemark: " + e.getMessage());
            return Program.USAGE;
        }
    }

    private static Attachment attach(SqliteStore store, long session, Path file, boolean keepLocation)
            throws StoreException, IOException {
        String name = String.valueOf(file.getFileName());
        Attachment.checkName(name);
        Attachment.checkSize(name, Files.size(file));
        byte[] content = Files.readAllBytes(file);
        if (!Photograph.named(name)) {
            return store.papers().attach(session, name, ANY_TYPE, now(), content);
        }
        byte[] clean = Photograph.clean(content, name);
        if (!keepLocation) {
            String plain = name.replaceFirst("\\.[^.]*$", "") + ".jpg";
            return store.papers().attach(session, plain, Photograph.MEDIA_TYPE, now(), clean);
        }
        return store.papers().attach(session, name, "image/" + ending(name), now(), content);
    }

    private static String ending(String name) {
        String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        return ending.equals("jpg") ? "jpeg" : ending.equals("tif") ? "tiff" : ending;
    }

    @Override
    public int papers(String session, Optional<Path> workspace, PrintWriter out, PrintWriter err)
            throws StoreException, IOException {
        try (SqliteStore store = Workspaces.reading(workspace)) {
            Optional<SessionStore.Summary> found = StoredRun.find(store, session, err);
            if (found.isEmpty()) {
                return Program.USAGE;
            }
            Papers papers = store.papers();
            long number = found.get().number();
            for (Note note : papers.notes(number)) {
                out.println(note.writtenAt() + "  note  " + note.text().replaceAll("\\p{Cntrl}", " "));
            }
            for (Attachment one : papers.attachments(number)) {
                out.println(one.addedAt() + "  " + one.mediaType() + "  " + one.name() + "  " + one.bytes() + " bytes  "
                        + one.digest());
            }
            out.flush();
            return Program.DONE;
        }
    }
}
