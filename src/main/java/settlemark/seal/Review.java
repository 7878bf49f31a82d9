package settlemark.seal;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * A second person's signed word on a seal: that they accept what was sealed, or return it, and why. It stands beside the
 * seal and changes nothing of it.
 *
 * @param session the session's key
 * @param sealRoot root of the seal that was looked at, in hex
 * @param accepted false where it is returned
 * @param person who looked, as they say themselves
 * @param comment may be empty where it is accepted
 * @param madeAt wall clock of the reviewer's computer, to the second
 * @param again what other limits and settings made of the verdicts, empty where none were tried
 * @param signature over all of these
 */
public record Review(
        String session,
        String sealRoot,
        boolean accepted,
        String person,
        String comment,
        Instant madeAt,
        Optional<JudgedAgain> again,
        Signature signature) {
    public static final int MOST_CHARACTERS = 2000;
    private static final String PURPOSE = "settlemark review, form 1";
    /** Of a review that judges again. */
    private static final String PURPOSE_AGAIN = "settlemark review, form 2";

    public Review {
        Objects.requireNonNull(madeAt);
        Objects.requireNonNull(again);
        Objects.requireNonNull(signature);
        if (person.isBlank() || person.length() > MOST_CHARACTERS || comment.length() > MOST_CHARACTERS) {
            throw new IllegalArgumentException(
                    "a review has the name of who made it, and name and comment have at most " + MOST_CHARACTERS
                            + " characters each");
        }
        if (!accepted && comment.isBlank()) {
            throw new IllegalArgumentException("who returns a record says why; give a comment");
        }
    }

    /** Signs a judgement on a seal. */
    public static Review sign(
            Seal seal,
            boolean accepted,
            String person,
            String comment,
            Instant madeAt,
            Optional<JudgedAgain> again,
            SealKey key) {
        Instant second = Instant.ofEpochSecond(madeAt.getEpochSecond());
        String root = seal.rootHex();
        byte[] message = message(seal.session(), root, accepted, person, comment, second, again);
        return new Review(seal.session(), root, accepted, person, comment, second, again, Signature.of(message, key));
    }

    private static byte[] message(
            String session,
            String sealRoot,
            boolean accepted,
            String person,
            String comment,
            Instant madeAt,
            Optional<JudgedAgain> again) {
        Canon canon = new Canon()
                .add(again.isPresent() ? PURPOSE_AGAIN : PURPOSE)
                .add(session)
                .add(sealRoot)
                .add(accepted)
                .add(person)
                .add(comment)
                .add(madeAt.getEpochSecond());
        again.ifPresent(a -> a.into(canon));
        return canon.digest();
    }

    /** Whether the signature belongs to all that this says and to its key. */
    public boolean signatureHolds() {
        return signature.holds(message(session, sealRoot, accepted, person, comment, madeAt, again));
    }

    /** Whether it is about this seal. */
    public boolean isOf(Seal seal) {
        return session.equals(seal.session()) && sealRoot.equals(seal.rootHex());
    }

    /** The key as people compare it. */
    public String fingerprint() {
        return signature.fingerprint();
    }

    @Override
    public String toString() {
        return (accepted ? "accepted" : "returned") + " by " + person + " at " + madeAt;
    }
}
