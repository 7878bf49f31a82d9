package settlemark.profile;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Writes a profile with comments from the answers to a few questions. Good answers give a text that {@link ProfileReader}
 * reads without problems; what it says of other answers names the place in the text.
 */
public final class ProfileDraft {
    private ProfileDraft() {}

    /** The text of the profile, YAML. */
    public static String text(Answers answers) {
        return new DraftWriter(answers).text();
    }

    /**
     * What was answered.
     *
     * @param id key of the device
     * @param name for people
     * @param shape how the device speaks
     * @param readings what it measures, one at least
     * @param capture a frame of it with what it gives, empty where there is none yet
     */
    public record Answers(String id, String name, Shape shape, List<Reading> readings, Optional<Capture> capture) {
        public Answers {
            Objects.requireNonNull(id);
            Objects.requireNonNull(name);
            Objects.requireNonNull(shape);
            Objects.requireNonNull(capture);
            readings = List.copyOf(readings);
            if (readings.isEmpty()) {
                throw new IllegalArgumentException("a device gives one reading at least");
            }
        }
    }

    /** How a device speaks. */
    public sealed interface Shape {
        SerialLine line();
    }

    /**
     * Text lines that come by themselves.
     *
     * @param line serial line
     * @param end what ends a line, such as a line feed
     * @param separator between columns; a blank stands for any run of blanks
     * @param columns that every line has, 0 for any number
     */
    public record TextLines(SerialLine line, String end, char separator, int columns) implements Shape {}

    /**
     * Text that is asked for, as SCPI instruments have it.
     *
     * @param line serial line
     * @param request with its end
     * @param periodSeconds between two requests
     * @param end what ends an answer
     */
    public record AskedText(SerialLine line, String request, double periodSeconds, String end) implements Shape {}

    /**
     * Binary frames of one length that come by themselves.
     *
     * @param line serial line
     * @param start bytes that each begins with, may be empty beside a check
     * @param lengthBytes of the whole frame
     * @param check at the frame's end, covers all before it
     */
    public record FixedFrames(SerialLine line, ByteText start, int lengthBytes, Check check) implements Shape {}

    /**
     * Binary frames that say their length.
     *
     * @param line serial line
     * @param start bytes that each begins with, may be empty beside a check
     * @param lengthAt offset of the length, one byte
     * @param adds bytes of the whole frame that the length does not count
     * @param maximumBytes longest frame
     * @param check at the frame's end, covers all before it
     */
    public record LengthFrames(SerialLine line, ByteText start, int lengthAt, int adds, int maximumBytes, Check check)
            implements Shape {}

    /**
     * Registers of a Modbus device.
     *
     * @param line serial line
     * @param unit address on the line
     * @param addressBase what the document of the device calls the first register, 0 or 1
     * @param function 3 or 4
     * @param first register
     * @param count of registers
     * @param periodSeconds between two requests
     */
    public record ModbusRegisters(
            SerialLine line, int unit, int addressBase, int function, int first, int count, double periodSeconds)
            implements Shape {}

    /** The checksums that are asked about; a profile can have any other. Names as in the public catalogue of CRCs. */
    public enum Check {
        NONE,
        SUM_8,
        XOR_8,
        CRC_16_MODBUS,
        CRC_16_XMODEM,
        CRC_16_IBM_3740
    }

    /**
     * Something that the device measures.
     *
     * @param id key of the channel
     * @param label printed beside the port
     * @param unit UCUM code
     * @param place column from 0, offset in bytes from 0, or number of the register
     * @param type word of the language, such as int16; not used in text
     * @param bigEndian whether the high byte, and in Modbus the high word, comes first
     * @param scale from the number in the frame to the value
     * @param resolution smallest step of the value, NaN where it is not known
     */
    public record Reading(
            String id,
            String label,
            String unit,
            int place,
            String type,
            boolean bigEndian,
            double scale,
            double resolution) {}

    /**
     * A frame that the device has sent.
     *
     * @param bytes all of it, with its end
     * @param gives what it showed then, by channel
     */
    public record Capture(ByteText bytes, Map<String, Double> gives) {
        public Capture {
            gives = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(gives));
        }
    }
}
