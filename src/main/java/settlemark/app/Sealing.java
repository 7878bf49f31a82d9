package settlemark.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.seal.Seal;
import settlemark.seal.SealException;
import settlemark.seal.SealFiles;
import settlemark.seal.SealKey;
import settlemark.seal.SealedPart;
import settlemark.seal.SessionParts;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/** Seals sessions and their records. */
final class Sealing {
    static final String ENDING = "-seal.json";
    private static final String KEY_ENDING = ".seal-key.pem";

    private Sealing() {}

    /** Seals a session together with its record's files; returns the seal's file, which lies beside them. */
    static Path seal(SqliteStore store, long session, List<Path> files, Instant now)
            throws StoreException, IOException {
        return seal(store, session, SessionParts.of(store, session), files, now, SealFiles.PassPhrase.NONE);
    }

    /**
     * Seals the parts of a session together with its record's files. Where a seal that is kept holds of all of it, it is that one
     * again.
     *
     * @return the seal's file, which lies beside them
     */
    static Path seal(
            SqliteStore store,
            long session,
            List<SealedPart> ofSession,
            List<Path> files,
            Instant now,
            SealFiles.PassPhrase phrase)
            throws StoreException, IOException {
        String pdf = files.get(0).getFileName().toString();
        Path file = files.get(0).resolveSibling(pdf.substring(0, pdf.lastIndexOf('.')) + ENDING);
        SealFiles.write(made(store, session, ofSession, files, now, phrase), file);
        return file;
    }

    /** The seal of a session, with no file or with those of its record; kept with it where the workspace can be written. */
    static Seal made(
            SqliteStore store,
            long session,
            List<SealedPart> ofSession,
            List<Path> files,
            Instant now,
            SealFiles.PassPhrase phrase)
            throws StoreException, IOException {
        SessionHeader header = store.header(session);
        List<SealedPart> parts = new ArrayList<>(ofSession);
        parts.addAll(SealFiles.parts(files));
        KeptSeals kept = KeptSeals.of(store, session);
        Optional<Seal> standing = kept.seals().stream()
                .filter(s -> kept.held(s, parts).untouched())
                .reduce((a, b) -> b);
        if (standing.isPresent()) {
            return standing.get();
        }
        try {
            SealKey key = SealFiles.key(keyFile(store.file()), phrase);
            Seal seal = Seal.sign(header.key(), header.simulated(), now, Program.VERSION, parts, key);
            if (store.writes()) {
                KeptSeals.keep(store, session, seal, kept.seals().size() + 1);
            }
            return seal;
        } catch (SealException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    /**
     * Of the key that a session was sealed with first or, before that, of the one that this workspace seals with, made
     * where there is none yet; empty where there can be none.
     */
    static String fingerprint(SqliteStore store, long session) throws StoreException {
        try {
            List<Seal> kept = KeptSeals.of(store, session).seals();
            if (!kept.isEmpty()) {
                return kept.get(0).fingerprint();
            }
            Path file = keyFile(store.file());
            return Files.exists(file)
                    ? SealKey.fingerprintIn(SealFiles.pem(file))
                    : SealFiles.key(file, SealFiles.PassPhrase.NONE).fingerprint();
        } catch (IOException | SealException e) {
            // The record is made all the same; that it is not sealed is said when it is not.
            return "";
        }
    }

    /** The key lies beside the workspace, so that a copy of the workspace alone cannot sign. */
    static Path keyFile(Path workspace) {
        return workspace.toAbsolutePath().resolveSibling(workspace.getFileName() + KEY_ENDING);
    }
}
