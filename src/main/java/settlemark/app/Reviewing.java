package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.cli.SessionDesk;
import settlemark.seal.JudgedAgain;
import settlemark.seal.Review;
import settlemark.seal.ReviewText;
import settlemark.seal.Seal;
import settlemark.seal.SealException;
import settlemark.seal.SealFiles;
import settlemark.session.ProbeKeys;
import settlemark.session.Rejudging;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/** A second person accepts or returns what was sealed. */
final class Reviewing {
    static final String MIDDLE = "-review-";
    private static final int MOST_REVIEWS = 999;

    private Reviewing() {}

    /**
     * Reviews the session of a workspace, by the newest seal that is kept with it; what was changed since is refused.
     *
     * @return the exit code
     */
    static int ofSession(
            SqliteStore store, SessionStore.Summary session, SessionDesk.Review request, Instant now, PrintWriter out)
            throws StoreException, IOException {
        int code = SealCheck.verify(store, session, Optional.empty(), out);
        if (code != Program.DONE) {
            return code;
        }
        KeptSeals kept = KeptSeals.of(store, session.number());
        Seal seal = kept.seals().get(kept.seals().size() - 1);
        Optional<JudgedAgain> again = again(store, session.number(), request.again());
        Review review = signed(seal, request, again, keyFile(request, Sealing.keyFile(store.file())), now);
        KeptSeals.keep(store, session.number(), review, kept.reviews().size() + 1);
        out.println(words(review));
        out.flush();
        return Program.DONE;
    }

    /** Reviews a record by its seal's file; the review lies beside it. */
    static int ofFile(Path sealFile, SessionDesk.Review request, Path ownKey, Instant now, PrintWriter out)
            throws StoreException, IOException {
        int code = SealCheck.verify(sealFile, Optional.empty(), out);
        if (code != Program.DONE) {
            return code;
        }
        try {
            Review review = signed(SealFiles.read(sealFile), request, Optional.empty(), keyFile(request, ownKey), now);
            out.println(words(review));
            out.println(written(review, sealFile));
            out.flush();
            return Program.DONE;
        } catch (SealException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private static Path keyFile(SessionDesk.Review request, Path own) {
        return request.key().orElse(own);
    }

    /** @throws IllegalArgumentException where the session has no such figure */
    private static Optional<JudgedAgain> again(SqliteStore store, long session, Rejudging asked) throws StoreException {
        return asked.isNone()
                ? Optional.empty()
                : Optional.of(new JudgedAgain(
                        asked.under(),
                        asked.changes(store, session, ProbeKeys.NONE).stream()
                                .map(c -> new JudgedAgain.Change(c.step(), c.figure(), c.from(), c.to()))
                                .toList()));
    }

    private static Review signed(
            Seal seal, SessionDesk.Review request, Optional<JudgedAgain> again, Path key, Instant now)
            throws IOException {
        try {
            return Review.sign(
                    seal,
                    request.accepted(),
                    request.person(),
                    request.comment(),
                    now,
                    again,
                    SealFiles.key(key, Phrases.of(request.phraseFile())));
        } catch (SealException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private static Path written(Review review, Path sealFile) throws IOException {
        String name = sealFile.getFileName().toString();
        String start =
                name.endsWith(Sealing.ENDING) ? name.substring(0, name.length() - Sealing.ENDING.length()) : name;
        for (int number = 1; number <= MOST_REVIEWS; number++) {
            Path file = sealFile.resolveSibling(start + MIDDLE + number + ".json");
            try {
                Files.writeString(
                        file, ReviewText.write(review), StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW);
                return file;
            } catch (FileAlreadyExistsException e) {
                // An earlier review; none is ever replaced.
            }
        }
        throw new IOException("there are " + MOST_REVIEWS + " reviews beside " + sealFile + " already");
    }

    /** One line a review, for people. */
    static String words(Review review) {
        return "review: " + (review.accepted() ? "accepted" : "RETURNED") + " by " + review.person() + ", "
                + review.madeAt() + ", key " + review.fingerprint()
                + (review.comment().isBlank() ? "" : ": " + review.comment())
                + review.again().map(a -> "; " + a.words()).orElse("");
    }
}
