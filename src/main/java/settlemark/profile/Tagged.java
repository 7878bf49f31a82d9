package settlemark.profile;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * How a frame is cut into tagged values: from an offset to the frame's end (before its checksum), each a tag, a length
 * where there is one, and a value.
 *
 * @param at offset of the first tag within the frame
 * @param tag how a tag is written, an unsigned integer of 1 to 4 bytes
 * @param length how the length of a value is written after its tag, unsigned, 1 to 4 bytes; empty where only {@code
 *     lengths} say it
 * @param lengths bytes of the value of each tag without a written length; {@link #SAID} for a tag whose value begins with
 *     one byte that says its length
 */
public record Tagged(int at, Wire tag, Optional<Wire> length, Map<Long, Integer> lengths) {
    /** In {@code lengths}: one byte after the tag says the length. */
    public static final int SAID = -1;

    public Tagged {
        Objects.requireNonNull(tag);
        Objects.requireNonNull(length);
        lengths = Map.copyOf(lengths);
        if (at < 0 || tag.kind() != Wire.Kind.UNSIGNED || tag.bytes() > 4) {
            throw new IllegalArgumentException("a tag is an unsigned integer of 1 to 4 bytes");
        }
    }
}
