package settlemark.app;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import settlemark.seal.Review;
import settlemark.seal.ReviewText;
import settlemark.seal.Seal;
import settlemark.seal.SealException;
import settlemark.seal.SealText;
import settlemark.seal.SealedPart;
import settlemark.seal.SessionParts;
import settlemark.seal.Verification;
import settlemark.session.Attachment;
import settlemark.session.Note;
import settlemark.session.Papers;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/** The seals and reviews that are kept with a session as its papers, oldest first. */
final class KeptSeals {
    private final List<Seal> seals = new ArrayList<>();
    private final List<Review> reviews = new ArrayList<>();
    /** Parts that say something about the session and are none of it. */
    private final Set<String> beside = new HashSet<>();
    /** Parts by when they came, for those that came after a seal. */
    private final List<Dated> dated = new ArrayList<>();

    private record Dated(String part, Instant at) {}

    private KeptSeals() {}

    /** @throws IOException where one that is kept is not what was kept */
    static KeptSeals of(SessionStore store, long session) throws StoreException, IOException {
        KeptSeals kept = new KeptSeals();
        Papers papers = store.papers();
        int number = 0;
        for (Note note : papers.notes(session)) {
            number++;
            kept.dated.add(new Dated(SessionParts.nameOf(number, note), note.writtenAt()));
        }
        number = 0;
        for (Attachment attachment : papers.attachments(session)) {
            number++;
            kept.add(papers, attachment, SessionParts.nameOf(number, attachment));
        }
        return kept;
    }

    /**
     * The review that came last; seals are not read for it.
     *
     * @throws IOException where it is not what was kept
     */
    static Optional<Review> newestReview(SessionStore store, long session) throws StoreException, IOException {
        KeptSeals kept = new KeptSeals();
        Optional<Attachment> newest = store.papers().attachments(session).stream()
                .filter(a -> a.mediaType().equals(Papers.REVIEW_TYPE))
                .reduce((before, after) -> after);
        if (newest.isPresent()) {
            kept.add(store.papers(), newest.get(), "");
        }
        return kept.reviews.stream().findFirst();
    }

    private void add(Papers papers, Attachment attachment, String part) throws StoreException, IOException {
        dated.add(new Dated(part, attachment.addedAt()));
        boolean seal = attachment.mediaType().equals(Papers.SEAL_TYPE);
        if (!seal && !attachment.mediaType().equals(Papers.REVIEW_TYPE)) {
            return;
        }
        beside.add(part);
        String text = new String(papers.content(attachment), StandardCharsets.UTF_8);
        try {
            if (seal) {
                seals.add(SealText.read(text));
            } else {
                reviews.add(ReviewText.read(text));
            }
        } catch (SealException e) {
            throw new IOException("the kept " + attachment.name() + " cannot be read: " + e.getMessage(), e);
        }
    }

    List<Seal> seals() {
        return List.copyOf(seals);
    }

    List<Review> reviews() {
        return List.copyOf(reviews);
    }

    /** What is there now held against a seal; seals and reviews that came after it are no part of the session. */
    Verification held(Seal seal, List<SealedPart> now) {
        Verification all = Verification.of(seal, now);
        List<String> added =
                all.added().stream().filter(part -> !beside.contains(part)).toList();
        return new Verification(all.signatureHolds(), all.changed(), all.missing(), added);
    }

    /** Whether a paper says of itself that it came after a seal. */
    boolean cameAfter(String part, Seal seal) {
        return dated.stream().anyMatch(d -> d.part().equals(part) && d.at().isAfter(seal.madeAt()));
    }

    /** Keeps a seal with its session. */
    static void keep(SqliteStore store, long session, Seal seal, int number) throws StoreException {
        byte[] text = SealText.write(seal).getBytes(StandardCharsets.UTF_8);
        store.papers().attach(session, "seal-" + number + ".json", Papers.SEAL_TYPE, seal.madeAt(), text);
    }

    /** Keeps a review with its session. */
    static void keep(SqliteStore store, long session, Review review, int number) throws StoreException {
        byte[] text = ReviewText.write(review).getBytes(StandardCharsets.UTF_8);
        store.papers().attach(session, "review-" + number + ".json", Papers.REVIEW_TYPE, review.madeAt(), text);
    }
}
