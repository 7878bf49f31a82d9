package settlemark.seal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What came of holding a seal against what is there now.
 *
 * @param signatureHolds whether the seal itself is as it was signed
 * @param changed names of parts that are there but are not what was sealed
 * @param missing names of parts that are sealed and not there
 * @param added names of parts that are there and were not sealed
 */
public record Verification(boolean signatureHolds, List<String> changed, List<String> missing, List<String> added) {
    public Verification {
        changed = List.copyOf(changed);
        missing = List.copyOf(missing);
        added = List.copyOf(added);
    }

    /** Holds a seal against parts. */
    public static Verification of(Seal seal, List<SealedPart> now) {
        Map<String, SealedPart> found = new HashMap<>();
        now.forEach(part -> found.put(part.name(), part));
        List<String> changed = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        for (SealedPart sealed : seal.parts()) {
            SealedPart part = found.remove(sealed.name());
            if (part == null) {
                missing.add(sealed.name());
            } else if (!part.equals(sealed)) {
                changed.add(sealed.name());
            }
        }
        List<String> added =
                now.stream().map(SealedPart::name).filter(found::containsKey).toList();
        return new Verification(seal.signatureHolds(), changed, missing, added);
    }

    public boolean untouched() {
        return signatureHolds && changed.isEmpty() && missing.isEmpty() && added.isEmpty();
    }
}
