package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.seal.Review;
import settlemark.seal.Seal;
import settlemark.seal.SealException;
import settlemark.seal.SealFiles;
import settlemark.seal.SealKey;
import settlemark.seal.SealedPart;
import settlemark.seal.SessionParts;
import settlemark.seal.Verification;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/** Holds a seal against what is there, and says what it holds and what not. */
final class SealCheck {
    private final Seal seal;
    private final Optional<SqliteStore> store;
    private final PrintWriter out;
    private final List<Review> reviews = new ArrayList<>();
    private boolean good = true;

    private SealCheck(Seal seal, Optional<SqliteStore> store, PrintWriter out) {
        this.seal = seal;
        this.store = store;
        this.out = out;
    }

    static int verify(Path file, Optional<SqliteStore> store, PrintWriter out) throws IOException, StoreException {
        return verify(file, store, Optional.empty(), out);
    }

    /**
     * The exit code says whether all is untouched.
     *
     * @param key public key that the seal must be made with
     */
    static int verify(Path file, Optional<SqliteStore> store, Optional<Path> key, PrintWriter out)
            throws IOException, StoreException {
        Seal seal;
        try {
            seal = SealFiles.read(file);
        } catch (SealException e) {
            out.println("changed: " + file + ": " + e.getMessage());
            return Program.CHECK_FAILED;
        }
        SealCheck check = new SealCheck(seal, store, out);
        check.head();
        check.key(key);
        check.reviewsBeside(file);
        Optional<SessionStore.Summary> session =
                store.isPresent() ? store.get().find(seal.session()) : Optional.empty();
        check.held(new ArrayList<>(SealFiles.beside(seal, file)), session);
        check.reviewed();
        return check.end(
                session.isPresent()
                        ? "the session's data, its readings and the record's files"
                        : "the record's files (the session itself is not in the workspace and was not checked)");
    }

    /** The newest seal that is kept with a session, held against it; files of a record are not looked at. */
    static int verify(SqliteStore store, SessionStore.Summary session, Optional<Path> key, PrintWriter out)
            throws IOException, StoreException {
        List<Seal> seals = KeptSeals.of(store, session.number()).seals();
        if (seals.isEmpty()) {
            out.println("not sealed: session " + session.key() + " has no seal with it");
            return Program.CHECK_FAILED;
        }
        SealCheck check = new SealCheck(seals.get(seals.size() - 1), Optional.of(store), out);
        check.head();
        check.key(key);
        if (!check.seal.session().equals(session.key())) {
            check.bad("changed: the seal is of session " + check.seal.session() + ", not of " + session.key());
        }
        check.held(null, Optional.of(session));
        check.reviewed();
        return check.end("the session's data and its readings");
    }

    private void bad(String words) {
        good = false;
        out.println(words);
    }

    private void head() {
        out.println("session " + seal.session() + (seal.simulated() ? " (SIMULATED)" : ""));
        out.println("sealed " + seal.madeAt() + " by the computer's clock, "
                + seal.parts().size() + " parts");
        out.println("key " + seal.fingerprint() + " (compare it with the one that the person gave you)");
    }

    private void key(Optional<Path> expected) throws IOException {
        if (expected.isEmpty()) {
            return;
        }
        try {
            String other = SealKey.fingerprintIn(SealFiles.pem(expected.get()));
            if (!other.equals(seal.fingerprint())) {
                bad("changed: sealed with another key than " + expected.get() + " (" + other + ")");
            }
        } catch (SealException e) {
            throw new IOException(expected.get() + ": " + e.getMessage(), e);
        }
    }

    private void held(@org.jspecify.annotations.Nullable List<SealedPart> files, Optional<SessionStore.Summary> session)
            throws IOException, StoreException {
        List<SealedPart> now = files == null ? new ArrayList<>() : files;
        Verification found;
        Optional<KeptSeals> kept = Optional.empty();
        if (session.isPresent() && store.isPresent()) {
            now.addAll(SessionParts.of(store.get(), session.get().number()));
            kept = Optional.of(KeptSeals.of(store.get(), session.get().number()));
            found = kept.get().held(seal, now);
            reviews.addAll(kept.get().reviews());
        } else {
            found = Verification.of(seal, now);
        }
        if (!found.signatureHolds()) {
            bad("changed: the seal itself; its signature does not belong to what it says");
        }
        found.changed().forEach(name -> bad("changed: " + name));
        found.missing().stream()
                .filter(name -> SealFiles.isFile(name) ? files != null : session.isPresent())
                .forEach(name -> bad("missing: " + name));
        for (String name : found.added()) {
            if (kept.isPresent() && kept.get().cameAfter(name, seal)) {
                out.println("later: " + name + " (it came after the seal, which does not cover it)");
            } else {
                bad("not sealed: " + name);
            }
        }
        kept.ifPresent(this::former);
    }

    /** Seals are never replaced: what was sealed before can still be told. */
    private void former(KeptSeals kept) {
        for (Seal other : kept.seals()) {
            if (!other.equals(seal)) {
                out.println((other.madeAt().isAfter(seal.madeAt()) ? "sealed again " : "sealed before ")
                        + other.madeAt() + ", key " + other.fingerprint());
                if (!other.signatureHolds()) {
                    bad("changed: that seal; its signature does not belong to what it says");
                }
            }
        }
    }

    private void reviewsBeside(Path file) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        String name = file.getFileName().toString();
        if (folder == null || !name.endsWith(Sealing.ENDING)) {
            return;
        }
        String start = name.substring(0, name.length() - Sealing.ENDING.length()) + Reviewing.MIDDLE;
        try (DirectoryStream<Path> files =
                Files.newDirectoryStream(folder, f -> f.getFileName().toString().startsWith(start))) {
            for (Path one : files) {
                try {
                    reviews.add(SealFiles.review(one));
                } catch (SealException e) {
                    bad("changed: " + one.getFileName() + ": " + e.getMessage());
                }
            }
        }
    }

    private void reviewed() {
        reviews.stream().distinct().sorted(Comparator.comparing(Review::madeAt)).forEach(this::reviewed);
    }

    private void reviewed(Review review) {
        if (!review.signatureHolds()) {
            bad("changed: the review of " + review.person() + "; its signature does not belong to what it says");
            return;
        }
        if (!review.session().equals(seal.session())) {
            bad("changed: a review of another session, " + review.session() + ", lies here");
            return;
        }
        out.println(Reviewing.words(review)
                + (review.isOf(seal)
                        ? ""
                        : " (of another seal of this session, root " + shown(review.sealRoot()) + ")"));
    }

    private static String shown(String root) {
        return root.substring(0, Math.min(16, root.length()));
    }

    private int end(String what) {
        out.println(good ? "untouched: " + what : "NOT as it was sealed: see above");
        out.flush();
        return good ? Program.DONE : Program.CHECK_FAILED;
    }
}
