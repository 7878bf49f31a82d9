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
 * @param name key within the profile
 * @param place where in the frame it stands
 * @param content what stands there
 * @param line where the profile describes it
 */
public record Field(String name, Place place, Content content, int line) {
    public Field {
        Objects.requireNonNull(name);
        Objects.requireNonNull(place);
        Objects.requireNonNull(content);
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

    /** What stands at a field's place. */
    public sealed interface Content {}

    /**
     * The same bytes in every frame.
     *
     * @param bytes one at least
     */
    public record Literal(ByteText bytes) implements Content {}

    /**
     * A number in bytes; the value is {@code number * scale + offset}.
     *
     * @param wire how the number travels
     * @param scale not zero
     * @param offset in the channel's unit
     * @param specials raw numbers that are no measurement; for integers sign- or zero-extended to 64 bits, for IEEE
     *     numbers the bits of the double
     * @param counts each frame carries the number after the last one's: gaps are lost frames
     */
    public record Binary(Wire wire, double scale, double offset, Map<SampleStatus, List<Long>> specials, boolean counts)
            implements Content {
        public Binary {
            requireScale(scale, offset);
            specials = Map.copyOf(specials);
        }
    }

    /**
     * A decimal number in text; the value is {@code number * scale + offset}.
     *
     * @param scale not zero
     * @param offset in the channel's unit
     * @param decimals digits after the point when it is written, empty for as many as the number needs
     * @param plus whether a sign is written before a number that is not negative
     * @param specials texts that are no measurement
     */
    public record Decimal(
            double scale,
            double offset,
            Optional<Integer> decimals,
            boolean plus,
            Map<SampleStatus, List<String>> specials)
            implements Content {
        public Decimal {
            requireScale(scale, offset);
            specials = Map.copyOf(specials);
        }
    }

    private static void requireScale(double scale, double offset) {
        if (!Double.isFinite(scale) || scale == 0 || !Double.isFinite(offset)) {
            throw new IllegalArgumentException("scale must be a number other than 0, got " + scale);
        }
    }
}
