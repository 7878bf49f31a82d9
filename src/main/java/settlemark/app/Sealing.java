package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.seal.Seal;
import settlemark.seal.SealException;
import settlemark.seal.SealFiles;
import settlemark.seal.SealedPart;
import settlemark.seal.SessionParts;
import settlemark.seal.Verification;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/** Seals records and checks seals. */
final class Sealing {
    private static final String ENDING = "-seal.json";
    private static final String KEY_ENDING = ".seal-key.pem";

    private Sealing() {}

    /** Seals a session together with its record's files; returns the seal's file, which lies beside them. */
    static Path seal(SqliteStore store, long session, List<Path> files, Instant now)
            throws StoreException, IOException {
        SessionHeader header = store.header(session);
        List<SealedPart> parts = new ArrayList<>(SessionParts.of(store, session));
        parts.addAll(SealFiles.parts(files));
        try {
            Seal seal = Seal.sign(
                    header.key(),
                    header.simulated(),
                    now,
                    Program.VERSION,
                    parts,
                    SealFiles.key(keyFile(store.file())));
            String pdf = files.get(0).getFileName().toString();
            Path file = files.get(0).resolveSibling(pdf.substring(0, pdf.lastIndexOf('.')) + ENDING);
            SealFiles.write(seal, file);
            return file;
        } catch (SealException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    /** Of the key that this workspace seals with, made where there is none yet; empty where there can be none. */
    static String fingerprint(SqliteStore store) {
        try {
            return SealFiles.key(keyFile(store.file())).fingerprint();
        } catch (IOException | SealException e) {
            // The record is made all the same; that it is not sealed is said when it is not.
            return "";
        }
    }

    /** The key lies beside the workspace, so that a copy of the workspace alone cannot sign. */
    static Path keyFile(Path workspace) {
        return workspace.toAbsolutePath().resolveSibling(workspace.getFileName() + KEY_ENDING);
    }

    /** Says what a seal holds and what not; the exit code says whether all is untouched. */
    static int verify(Path file, Optional<SqliteStore> store, PrintWriter out) throws IOException, StoreException {
        Seal seal;
        try {
            seal = SealFiles.read(file);
        } catch (SealException e) {
            out.println("changed: " + file + ": " + e.getMessage());
            return Program.CHECK_FAILED;
        }
        List<SealedPart> now = new ArrayList<>(SealFiles.beside(seal, file));
        Optional<SessionStore.Summary> session =
                store.isPresent() ? store.get().find(seal.session()) : Optional.empty();
        if (session.isPresent()) {
            now.addAll(SessionParts.of(store.get(), session.get().number()));
        }
        Verification found = Verification.of(seal, now);
        List<String> missing = found.missing().stream()
                .filter(name -> session.isPresent() || SealFiles.isFile(name))
                .toList();
        head(seal, out);
        if (!found.signatureHolds()) {
            out.println("changed: the seal itself; its signature does not belong to what it says");
        }
        found.changed().forEach(name -> out.println("changed: " + name));
        missing.forEach(name -> out.println("missing: " + name));
        found.added().forEach(name -> out.println("not sealed: " + name));
        boolean good = found.signatureHolds()
                && found.changed().isEmpty()
                && missing.isEmpty()
                && found.added().isEmpty();
        out.println(verdict(good, session.isPresent()));
        out.flush();
        return good ? Program.DONE : Program.CHECK_FAILED;
    }

    private static void head(Seal seal, PrintWriter out) {
        out.println("session " + seal.session() + (seal.simulated() ? " (SIMULATED)" : ""));
        out.println("sealed " + seal.madeAt() + " by the computer's clock, "
                + seal.parts().size() + " parts");
        out.println("key " + seal.fingerprint() + " (compare it with the one that the person gave you)");
    }

    private static String verdict(boolean good, boolean session) {
        String what = session
                ? "the session's data, its readings and the record's files"
                : "the record's files (the session itself is not in the workspace and was not checked)";
        return good ? "untouched: " + what : "NOT as it was sealed: see above";
    }
}
