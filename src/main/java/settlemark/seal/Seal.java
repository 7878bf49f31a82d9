package settlemark.seal;

import java.time.Instant;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * A signed statement that a session's parts were these. It proves that whoever holds the key has sealed exactly these
 * parts under this name; not who that is, nor that the wall clock was right, nor that a gauge was.
 *
 * @param session the session's key
 * @param simulated whether any of it came from the rig; signed like the rest
 * @param madeAt wall clock of the computer that sealed
 * @param program version that sealed
 * @param parts all that is sealed, in order, names unique
 * @param signature over all of these
 */
public record Seal(
        String session,
        boolean simulated,
        Instant madeAt,
        String program,
        List<SealedPart> parts,
        Signature signature) {
    /** Signed with everything, so that no signature made for something else passes for a seal. */
    private static final String PURPOSE = "settlemark seal, form 1";

    public Seal {
        Objects.requireNonNull(madeAt);
        Objects.requireNonNull(signature);
        parts = List.copyOf(parts);
        if (session.chars().anyMatch(Character::isISOControl)) {
            throw new IllegalArgumentException("the key of a sealed session has control characters");
        }
        Set<String> names = new HashSet<>();
        for (SealedPart part : parts) {
            if (!names.add(part.name())) {
                throw new IllegalArgumentException("two sealed parts are called \"" + part.name() + "\"");
            }
        }
    }

    /**
     * Seals parts with a key.
     *
     * @param madeAt wall clock, kept to the second
     */
    public static Seal sign(
            String session, boolean simulated, Instant madeAt, String program, List<SealedPart> parts, SealKey key) {
        Instant second = Instant.ofEpochSecond(madeAt.getEpochSecond());
        byte[] message = message(session, simulated, second, program, parts);
        return new Seal(session, simulated, second, program, parts, Signature.of(message, key));
    }

    /** Whether the signature belongs to all that this says and to its key. */
    public boolean signatureHolds() {
        return signature.holds(message(session, simulated, madeAt, program, parts));
    }

    private static byte[] message(
            String session, boolean simulated, Instant madeAt, String program, List<SealedPart> parts) {
        return new Canon()
                .add(PURPOSE)
                .add(session)
                .add(simulated)
                .add(madeAt.getEpochSecond())
                .add(program)
                .add((long) parts.size())
                .add(root(parts))
                .digest();
    }

    private static byte[] root(List<SealedPart> parts) {
        return HashTree.root(parts.stream().map(SealedPart::leaf).toList());
    }

    /** Root of the tree over all parts, in hex. */
    public String rootHex() {
        return HexFormat.of().formatHex(root(parts));
    }

    /** The key as people compare it. */
    public String fingerprint() {
        return signature.fingerprint();
    }

    @Override
    public String toString() {
        return "seal of " + session + ", " + parts.size() + " parts, key " + fingerprint();
    }
}
