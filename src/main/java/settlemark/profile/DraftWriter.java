package settlemark.profile;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The text of a drafted profile, part by part. */
final class DraftWriter {
    private final ProfileDraft.Answers answers;
    private final ProfileDraft.Shape shape;
    private final StringBuilder out = new StringBuilder();

    DraftWriter(ProfileDraft.Answers answers) {
        this.answers = answers;
        this.shape = answers.shape();
    }

    String text() {
        lines(
                "# yaml-language-server: $schema=profile.schema.json",
                "#",
                "# A first draft. Try it with: settlemark profile check " + answers.id() + ".yaml",
                "language: 1",
                "id: " + quoted(answers.id()),
                "name: " + quoted(answers.name()),
                "");
        link();
        framing();
        lines("", "fields:");
        answers.readings().forEach(this::field);
        lines("", "channels:");
        answers.readings().forEach(this::channel);
        example();
        return out.toString();
    }

    private void link() {
        SerialLine line = shape.line();
        String settings = "baud: " + line.baud() + ", data-bits: " + line.dataBits() + ", parity: "
                + word(line.parity()) + ", stop-bits: " + stopBits(line.stopBits()) + ", flow: " + word(line.flow());
        lines("# How the device is connected; the numbers are in its manual.", "link:");
        if (shape instanceof ProfileDraft.ModbusRegisters modbus) {
            lines(
                    "  # address-base: 1 where the manual calls the first register number 1, 0 where number 0.",
                    "  modbus-rtu: {unit: " + modbus.unit() + ", address-base: " + modbus.addressBase() + ", "
                            + settings + "}",
                    "");
        } else {
            lines("  serial: {" + settings + "}", "");
        }
    }

    private void framing() {
        if (shape instanceof ProfileDraft.TextLines text) {
            textFraming(text.end());
            columns(text.separator(), text.columns());
        } else if (shape instanceof ProfileDraft.AskedText asked) {
            lines("# What is sent, and how often in seconds.");
            lines("ask: {text: " + quoted(asked.request()) + ", period: " + number(asked.periodSeconds()) + "}", "");
            textFraming(asked.end());
            columns(',', 0);
        } else if (shape instanceof ProfileDraft.FixedFrames fixed) {
            lines("# Every frame has one length, with its start and its checksum.", "framing:");
            lines("  fixed: {" + start(fixed.start()) + "length-bytes: " + fixed.lengthBytes() + "}");
            check(fixed.check());
        } else if (shape instanceof ProfileDraft.LengthFrames frames) {
            lines("# Each frame says its length; adds: the bytes that the length does not count.", "framing:");
            lines("  length-field: {" + start(frames.start()) + "at: " + frames.lengthAt() + ", type: uint8, adds: "
                    + frames.adds() + ", maximum-bytes: " + frames.maximumBytes() + "}");
            check(frames.check());
        } else if (shape instanceof ProfileDraft.ModbusRegisters modbus) {
            lines("# Which registers are asked for, and how often in seconds. Function 3 reads holding registers, 4");
            lines("# input registers.");
            lines("ask: {function: " + modbus.function() + ", register: " + modbus.first() + ", count: "
                    + modbus.count() + ", period: " + number(modbus.periodSeconds()) + "}");
        }
    }

    private void textFraming(String end) {
        lines("# With \"\\n\" as the end, lines that end with \"\\r\\n\" are read as well.", "framing:");
        lines("  line: {end: " + quoted(end) + ", maximum-bytes: 200}", "");
    }

    private void columns(char separator, int count) {
        lines("# A blank as the separator stands for any run of blanks. Columns count from 0.");
        String counted = count > 0 ? ", count: " + count : "";
        lines("columns: {separator: " + quoted(String.valueOf(separator)) + counted + "}");
    }

    private static String start(ByteText start) {
        return start.isEmpty() ? "" : "start: \"" + start + "\", ";
    }

    private void check(ProfileDraft.Check check) {
        switch (check) {
            case NONE -> lines("", "# No checksum: noise on the line can look like a reading.");
            case SUM_8 -> lines("", "checksum:", "  sum: {width: 8}");
            case XOR_8 -> lines("", "checksum:", "  xor: {width: 8}");
            case CRC_16_MODBUS -> crc("CRC-16/MODBUS", "poly: 0x8005, init: 0xFFFF", true, "0x4B37", "little");
            case CRC_16_XMODEM -> crc("CRC-16/XMODEM", "poly: 0x1021, init: 0x0000", false, "0x31C3", "big");
            case CRC_16_IBM_3740 -> crc("CRC-16/IBM-3740", "poly: 0x1021, init: 0xFFFF", false, "0x29B1", "big");
        }
    }

    private void crc(String name, String start, boolean reflected, String check, String order) {
        lines(
                "",
                "checksum:",
                "  # The catalogue calls these parameters " + name + ".",
                "  crc: {width: 16, " + start + ", refin: " + reflected + ", refout: " + reflected
                        + ", xorout: 0x0000, check: " + check + "}",
                "  byte-order: " + order);
    }

    private void field(ProfileDraft.Reading reading) {
        List<String> keys = new ArrayList<>();
        keys.add("name: " + quoted(reading.id()));
        boolean text = shape instanceof ProfileDraft.TextLines || shape instanceof ProfileDraft.AskedText;
        boolean modbus = shape instanceof ProfileDraft.ModbusRegisters;
        keys.add((text ? "column: " : modbus ? "register: " : "at: ") + reading.place());
        keys.add("type: " + (text ? "text" : quoted(reading.type())));
        String order = reading.bigEndian() ? "big" : "little";
        if (modbus && takesSeveralRegisters(reading.type())) {
            keys.add("word-order: " + order);
        } else if (!text && !modbus) {
            keys.add("byte-order: " + order);
        }
        if (reading.scale() != 1) {
            keys.add("scale: " + number(reading.scale()));
        }
        if (shape instanceof ProfileDraft.AskedText) {
            // SCPI 1999.0, 7.2.1, from memory: 9.9E37 is infinity and 9.91E37 is not a number.
            keys.add("special: {over-range: [\"9.9E37\", \"+9.9E37\", \"9.90000000E+37\", \"+9.90000000E+37\"],"
                    + " under-range: [\"-9.9E37\", \"-9.90000000E+37\"],"
                    + " fault: [\"9.91E37\", \"+9.91E37\", \"9.91000000E+37\", \"+9.91000000E+37\"]}");
        }
        lines("  - {" + String.join(", ", keys) + "}");
    }

    private static boolean takesSeveralRegisters(String type) {
        String bits = type.replaceAll("[^0-9]", "");
        return !bits.isEmpty() && bits.length() <= 2 && Integer.parseInt(bits) > 16;
    }

    private void channel(ProfileDraft.Reading reading) {
        lines(
                "  - id: " + quoted(reading.id()),
                "    label: " + quoted(reading.label()),
                "    field: " + quoted(reading.id()),
                "    unit: " + quoted(reading.unit()));
        if (!Double.isNaN(reading.resolution())) {
            lines("    resolution: " + number(reading.resolution()));
        }
        lines(
                "    # From the data sheet; without it the uncertainty of a reading is not known.",
                "    # accuracy: {reading-percent: 0.5, digits: 1}");
    }

    private void example() {
        lines("", "# Frames that the device has sent, with what it showed then. They prove the profile.");
        if (answers.capture().isEmpty()) {
            lines("# examples:", "#   - hex: \"...\"");
            lines("#     gives: {" + answers.readings().get(0).id() + ": 0}");
            return;
        }
        ProfileDraft.Capture capture = answers.capture().get();
        List<String> gives = new ArrayList<>();
        capture.gives().forEach((id, value) -> gives.add(quoted(id) + ": " + number(value)));
        lines("examples:");
        lines("  - "
                + (isText(capture.bytes())
                        ? "text: " + quoted(ascii(capture.bytes()))
                        : "hex: \"" + capture.bytes() + "\""));
        lines("    gives: {" + String.join(", ", gives) + "}");
    }

    private static boolean isText(ByteText bytes) {
        return ascii(bytes).chars().allMatch(c -> c >= ' ' && c <= '~' || c == '\r' || c == '\n' || c == '\t');
    }

    private static String ascii(ByteText bytes) {
        return new String(bytes.toBytes(), StandardCharsets.ISO_8859_1);
    }

    private static String stopBits(SerialLine.StopBits bits) {
        return switch (bits) {
            case ONE -> "1";
            case ONE_AND_A_HALF -> "1.5";
            case TWO -> "2";
        };
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    private static String number(double value) {
        return new BigDecimal(String.valueOf(value)).stripTrailingZeros().toPlainString();
    }

    /** Plain where that cannot be misread, else in double quotes. */
    private static String quoted(String text) {
        if (text.matches("[a-z][a-z0-9-]*") && !text.matches("true|false|null|no|yes|on|off|y|n")) {
            return text;
        }
        StringBuilder quoted = new StringBuilder("\"");
        text.codePoints().forEach(c -> quoted.append(escaped(c)));
        return quoted.append('"').toString();
    }

    private static String escaped(int c) {
        return switch (c) {
            case '"' -> "\\\"";
            case '\\' -> "\\\\";
            case '\n' -> "\\n";
            case '\r' -> "\\r";
            case '\t' -> "\\t";
            default -> c < ' ' || c == 0x7F ? String.format(Locale.ROOT, "\\x%02x", c) : Character.toString(c);
        };
    }

    private void lines(String... lines) {
        for (String line : lines) {
            out.append(line).append('\n');
        }
    }
}
