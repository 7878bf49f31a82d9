package settlemark.profile;

import java.util.Objects;

/** How a stream of bytes is cut into frames. Every kind has a longest frame, at most 64 KiB. */
public sealed interface Framing {
    /** Longest frame that any profile may describe. */
    int LONGEST_FRAME_BYTES = 1 << 16;

    /** Longest frame in bytes, with its delimiter where it has one. */
    int maximumBytes();

    /**
     * Text lines with an end delimiter. Blank lines are skipped.
     *
     * @param end the delimiter, one byte at least
     * @param maximumBytes longest line with its delimiter
     */
    record Line(ByteText end, int maximumBytes) implements Framing {
        public Line {
            Objects.requireNonNull(end);
            requireLength(maximumBytes);
            if (end.isEmpty() || end.length() >= maximumBytes) {
                throw new IllegalArgumentException("a line needs an end shorter than its longest line");
            }
        }
    }

    /**
     * Frames of one length.
     *
     * @param start bytes that each frame starts with, may be empty
     * @param maximumBytes length of every frame with its start and checksum
     */
    record Fixed(ByteText start, int maximumBytes) implements Framing {
        public Fixed {
            Objects.requireNonNull(start);
            requireLength(maximumBytes);
        }
    }

    /**
     * Frames that say their length.
     *
     * @param start bytes that each frame starts with, one at least
     * @param at offset of the length within the frame
     * @param wire how the length is written, an unsigned integer of at most 32 bits
     * @param adds bytes of a frame that its length does not count
     * @param maximumBytes longest frame with its start and checksum
     */
    record LengthField(ByteText start, int at, Wire wire, int adds, int maximumBytes) implements Framing {
        public LengthField {
            Objects.requireNonNull(start);
            Objects.requireNonNull(wire);
            requireLength(maximumBytes);
            if (start.isEmpty() || at < start.length() || wire.kind() != Wire.Kind.UNSIGNED || wire.bytes() > 4) {
                throw new IllegalArgumentException("a length field stands after a start marker, 1 to 4 bytes unsigned");
            }
        }

        /** Bytes that must have arrived before the length is known. */
        public int headerBytes() {
            return at + wire.bytes();
        }
    }

    /**
     * How a line is cut into columns.
     *
     * @param separator one ASCII character; a blank stands for any run of blanks
     * @param count columns that a line must have; 0 for any number that holds all fields
     */
    record Columns(char separator, int count) {
        public Columns {
            if (separator > 0x7E || count < 0) {
                throw new IllegalArgumentException("columns have an ASCII separator and a count of 0 or more");
            }
        }
    }

    private static void requireLength(int bytes) {
        if (bytes < 1 || bytes > LONGEST_FRAME_BYTES) {
            throw new IllegalArgumentException("a frame has 1 to " + LONGEST_FRAME_BYTES + " bytes, got " + bytes);
        }
    }
}
