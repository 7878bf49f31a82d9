package settlemark.profile;

import java.util.List;
import java.util.Objects;

/** How a stream of bytes is cut into frames. Every kind has a longest frame, at most 64 KiB. */
public sealed interface Framing {
    /** Longest frame that any profile may describe. */
    int LONGEST_FRAME_BYTES = ProfileLimits.FRAME_BYTES;

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
     * @param start bytes that each frame starts with, empty only beside a checksum
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
            if (at < start.length() || wire.kind() != Wire.Kind.UNSIGNED || wire.bytes() > 4) {
                throw new IllegalArgumentException("a length field stands after a start marker, 1 to 4 bytes unsigned");
            }
        }

        /** Bytes that must have arrived before the length is known. */
        public int headerBytes() {
            return at + wire.bytes();
        }
    }

    /**
     * Frames between marks.
     *
     * <p>A frame is what stands between the marks, unescaped; offsets count from the byte after the start.
     *
     * @param start bytes that open a frame, empty where a frame begins after the end of the one before
     * @param end bytes that close a frame, one at least
     * @param escaping how bytes that look like a mark travel
     * @param maximumBytes longest frame with its marks and escapes
     */
    record Marked(ByteText start, ByteText end, Escaping escaping, int maximumBytes) implements Framing {
        public Marked {
            Objects.requireNonNull(start);
            Objects.requireNonNull(escaping);
            requireLength(maximumBytes);
            if (end.isEmpty() || start.length() + end.length() >= maximumBytes) {
                throw new IllegalArgumentException("frames between marks need an end, and room between the marks");
            }
        }

        /** Serial Line Internet Protocol, RFC 1055. */
        public static Marked slip(int maximumBytes) {
            return new Marked(
                    ByteText.EMPTY,
                    ByteText.ofHex("C0"),
                    new Stuffed((byte) 0xDB, List.of((byte) 0xDC, (byte) 0xDD), List.of((byte) 0xC0, (byte) 0xDB)),
                    maximumBytes);
        }
    }

    /** How bytes that look like a mark travel. */
    sealed interface Escaping {}

    /** They do not occur. */
    record Plain() implements Escaping {}

    /**
     * An escape byte and a code stand for each.
     *
     * @param escape the byte before a code
     * @param codes what follows the escape
     * @param meanings what each code stands for, in the same order
     */
    record Stuffed(byte escape, List<Byte> codes, List<Byte> meanings) implements Escaping {
        public Stuffed {
            codes = List.copyOf(codes);
            meanings = List.copyOf(meanings);
            if (codes.isEmpty() || codes.size() != meanings.size()) {
                throw new IllegalArgumentException("each code stands for one byte");
            }
        }
    }

    /**
     * An escape byte and the byte combined by exclusive or, as in HDLC-like framing (RFC 1662).
     *
     * @param escape the byte before a combined one; itself and the marks are escaped
     * @param xor what it is combined with, not 0
     */
    record Flipped(byte escape, byte xor) implements Escaping {
        public Flipped {
            if (xor == 0) {
                throw new IllegalArgumentException("an exclusive or with 0 changes nothing");
            }
        }
    }

    /**
     * Consistent overhead byte stuffing (S. Cheshire, M. Baker, 1999), frames end with a zero byte.
     *
     * @param maximumBytes longest frame as it travels, with its zero
     */
    record Cobs(int maximumBytes) implements Framing {
        public Cobs {
            requireLength(maximumBytes);
        }
    }

    /**
     * Frames with silence between them. A frame is known to be whole when the next one begins.
     *
     * @param gapNanos least time without bytes between two frames
     * @param maximumBytes longest frame
     */
    record IdleGap(long gapNanos, int maximumBytes) implements Framing {
        public IdleGap {
            requireLength(maximumBytes);
            if (gapNanos < 1_000_000) {
                throw new IllegalArgumentException("a gap shorter than 1 ms cannot be seen, got " + gapNanos + " ns");
            }
        }
    }

    /**
     * Each chunk is one frame, as a notification or an advertisement is.
     *
     * @param maximumBytes longest frame
     */
    record Packet(int maximumBytes) implements Framing {
        public Packet {
            requireLength(maximumBytes);
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
