package settlemark.profile;

import com.google.re2j.Pattern;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import settlemark.measure.SampleStatus;

/**
 * A part of a frame that means something.
 *
 * @param name key, unique within the profile
 * @param place where in the frame it stands
 * @param content what stands there
 * @param when it stands there, empty for always
 * @param line where the profile describes it
 */
public record Field(String name, Place place, Content content, Optional<Condition> when, int line) {
    public Field {
        Objects.requireNonNull(name);
        Objects.requireNonNull(place);
        Objects.requireNonNull(content);
        Objects.requireNonNull(when);
    }

    /** Where in the frame a field stands. */
    public sealed interface Place {}

    /**
     * At an offset in bytes from the frame's start.
     *
     * @param offset from 0
     */
    public record AtByte(int offset) implements Place {}

    /**
     * In the value of a tag.
     *
     * @param tag as it travels
     * @param nth which of several values with the same tag, from 0
     * @param offset in bytes from the value's start, from 0
     */
    public record ByTag(long tag, int nth, int offset) implements Place {}

    /**
     * A column of a delimited line.
     *
     * @param index from 0
     */
    public record InColumn(int index) implements Place {}

    /**
     * The first group of a pattern's first match in a line. The engine is linear in the length of the line.
     *
     * @param pattern with one group
     */
    public record ByPattern(Pattern pattern) implements Place {}

    /**
     * A field stands in a frame only where another one has one of some raw numbers.
     *
     * @param field index of the other field in the same message, an integer
     * @param raws its raw numbers, one at least
     */
    public record Condition(int field, List<Long> raws) {
        public Condition {
            raws = List.copyOf(raws);
        }
    }

    /** What stands at a field's place. */
    public sealed interface Content {}

    /**
     * The same bytes in every frame.
     *
     * @param bytes one at least
     */
    public record Literal(ByteText bytes) implements Content {}

    /**
     * A number in bytes.
     *
     * @param wire how the number travels; for a bit field the integer around it
     * @param bits which bits of the integer are meant, empty for all
     * @param mask integers are combined with it by AND before anything else is done; -1 for none
     * @param curve from the raw number to the value
     * @param specials raw numbers that are no measurement; for integers sign- or zero-extended to 64 bits, for packed
     *     decimals the digits as they travel, four bits each, for IEEE 754 numbers the bits of the double, for IEEE 11073 numbers the bits as they travel
     * @param counts each frame carries the number after the last one's: gaps are lost frames
     */
    public record Binary(
            Wire wire,
            Optional<Bits> bits,
            long mask,
            Curve curve,
            Map<SampleStatus, List<Long>> specials,
            boolean counts)
            implements Content {
        public Binary {
            Objects.requireNonNull(wire);
            Objects.requireNonNull(bits);
            Objects.requireNonNull(curve);
            specials = Map.copyOf(specials);
            if (bits.isPresent() && (!wire.isInteger() || bits.get().end() > 8 * wire.bytes())) {
                throw new IllegalArgumentException("bits lie within an integer of " + wire.bytes() + " bytes");
            }
        }
    }

    /**
     * Some bits of an integer; its kind, signed or unsigned, is theirs.
     *
     * @param from number of the lowest one, 0 for the integer's lowest bit
     * @param count 1 to 64
     */
    public record Bits(int from, int count) {
        public Bits {
            if (from < 0 || count < 1 || from + count > 64) {
                throw new IllegalArgumentException("bits are 1 to 64 of an integer, got " + count + " from " + from);
            }
        }

        int end() {
            return from + count;
        }
    }

    /**
     * A decimal number in text.
     *
     * @param curve from the number in the text to the value
     * @param decimals digits after the point when it is written, empty for as many as the number needs
     * @param plus whether a sign is written before a number that is not negative
     * @param specials texts that are no measurement
     */
    public record Decimal(
            Curve curve, Optional<Integer> decimals, boolean plus, Map<SampleStatus, List<String>> specials)
            implements Content {
        public Decimal {
            Objects.requireNonNull(curve);
            specials = Map.copyOf(specials);
        }
    }

    /**
     * Characters in UTF-8, without blanks and nulls at their ends.
     *
     * @param bytes how many, 0 for all up to the end of the frame, the value, the column or the match
     */
    public record Characters(int bytes) implements Content {}
}
