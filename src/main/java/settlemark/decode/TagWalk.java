package settlemark.decode;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import settlemark.profile.Tagged;
import settlemark.profile.Wire;

/** Cuts a frame into tagged values. */
final class TagWalk {
    /** Takes the values in their order. */
    interface Visitor {
        /** A value without its tag and its length. */
        void value(long tag, int from, int to);
    }

    final Tagged tagged;
    private final long[] known;
    private final int[] lengths;

    TagWalk(Tagged tagged) {
        this.tagged = tagged;
        Map<Long, Integer> sorted = new TreeMap<>(tagged.lengths());
        known = sorted.keySet().stream().mapToLong(Long::longValue).toArray();
        lengths = sorted.values().stream().mapToInt(Integer::intValue).toArray();
    }

    /**
     * Visits all values up to the end, or up to a tag whose length nothing says.
     *
     * @return null where the frame is cut well, else why not
     */
    @Nullable
    String cut(byte[] bytes, int from, int end, Visitor visitor) {
        int first = from + tagged.at();
        int at = first;
        while (at < end) {
            int afterTag = at + tagged.tag().bytes();
            if (afterTag > end) {
                return "the frame ends within a tag at offset " + (at - from);
            }
            long tag = RawBits.bits(tagged.tag(), bytes, at);
            int afterLength = afterTag + lengthBytes(tag);
            if (afterLength > end) {
                return "the frame ends before the length of " + named(tag, at - from);
            }
            long length = length(tag, bytes, afterTag);
            if (length < 0) {
                return at == first ? "unknown " + named(tag, 0) + ", whose length nothing says" : null;
            }
            if (length > end - afterLength) {
                return named(tag, at - from) + " has " + length + " bytes where the frame has " + (end - afterLength);
            }
            int to = afterLength + (int) length;
            visitor.value(tag, afterLength, to);
            at = to;
        }
        return null;
    }

    /** Bytes between a tag and its value. */
    int lengthBytes(long tag) {
        int index = Arrays.binarySearch(known, tag);
        if (index >= 0) {
            return lengths[index] == Tagged.SAID ? 1 : 0;
        }
        return tagged.length().map(Wire::bytes).orElse(0);
    }

    /** Length of a tag's value where the profile says it, -1 where the frame does or nothing does. */
    int knownLength(long tag) {
        int index = Arrays.binarySearch(known, tag);
        return index >= 0 ? lengths[index] : -1;
    }

    private long length(long tag, byte[] bytes, int at) {
        int index = Arrays.binarySearch(known, tag);
        if (index >= 0) {
            return lengths[index] == Tagged.SAID ? bytes[at] & 0xFF : lengths[index];
        }
        return tagged.length().isPresent() ? RawBits.bits(tagged.length().get(), bytes, at) : -1;
    }

    private String named(long tag, int offset) {
        String hex = String.format(Locale.ROOT, "0x%0" + 2 * tagged.tag().bytes() + "X", tag);
        return "tag " + hex + " at offset " + (offset == 0 ? tagged.at() : offset);
    }
}
