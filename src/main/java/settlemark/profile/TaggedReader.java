package settlemark.profile;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** How a frame is cut into tagged values. */
final class TaggedReader {
    private TaggedReader() {}

    static Optional<Tagged> read(Section tagged) {
        if (tagged.has("length") == tagged.has("lengths")) {
            String got = tagged.has("length") ? "both" : "none";
            tagged.error("tagged must have exactly one of length, lengths, got " + got);
            return Optional.empty();
        }
        Wire tag = Words.unsigned(tagged, "tag");
        Optional<Wire> length = tagged.has("length") ? Optional.of(Words.unsigned(tagged, "length")) : Optional.empty();
        return lengths(tagged, tag).map(lengths -> new Tagged(tagged.integer("at", 0), tag, length, lengths));
    }

    private static Optional<Map<Long, Integer>> lengths(Section tagged, Wire tag) {
        Map<Long, Integer> lengths = new LinkedHashMap<>();
        Optional<Section> section = tagged.child("lengths");
        if (section.isEmpty()) {
            return Optional.of(lengths);
        }
        boolean good = true;
        for (String key : section.get().keys()) {
            Optional<Long> number = number(key, tag);
            if (number.isEmpty()) {
                section.get()
                        .errorAtKey(
                                key,
                                "a tag must be a whole number of " + 8 * tag.bytes() + " bits, such as 0x02, got \""
                                        + Words.shown(key) + "\"");
                good = false;
            } else if (lengths.put(number.get(), length(section.get(), key)) != null) {
                section.get().errorAtKey(key, "tag " + key + " stands twice; keep one");
                good = false;
            }
        }
        return good ? Optional.of(lengths) : Optional.empty();
    }

    private static int length(Section lengths, String key) {
        return lengths.node(key).isString() ? Tagged.SAID : lengths.integer(key, 0);
    }

    private static Optional<Long> number(String key, Wire tag) {
        Optional<BigInteger> number = Optional.empty();
        if (key.matches("0x[0-9A-Fa-f]{1,16}")) {
            number = Optional.of(new BigInteger(key.substring(2), 16));
        } else if (key.matches("[0-9]{1,16}")) {
            number = Optional.of(new BigInteger(key));
        }
        return number.filter(n -> n.bitLength() <= 8 * tag.bytes()).map(BigInteger::longValue);
    }
}
