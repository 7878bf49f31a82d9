package settlemark.cli;

import java.io.IOException;
import java.util.List;
import settlemark.cli.Interview.Choice;
import settlemark.cli.Interview.EndedException;
import settlemark.cli.Interview.RefusedException;
import settlemark.profile.ByteText;
import settlemark.profile.ProfileDraft;
import settlemark.profile.ProfileDraft.Check;
import settlemark.profile.SerialLine;

/** How a device speaks. */
final class ShapeQuestions {
    private static final int MOST_FRAME_BYTES = 65_536;

    private enum Kind {
        TEXT,
        ASKED,
        FIXED,
        LENGTH,
        MODBUS
    }

    private final Interview interview;

    ShapeQuestions(Interview interview) {
        this.interview = interview;
    }

    ProfileDraft.Shape ask() throws EndedException, IOException {
        Kind kind = interview.choose(
                "Kind of device",
                "How does it speak? The chapter on its interface in the manual says so.",
                List.of(
                        new Choice<>("text", "text lines that it sends by itself", Kind.TEXT),
                        new Choice<>("asked", "text that it answers when it is asked, such as SCPI", Kind.ASKED),
                        new Choice<>("fixed", "binary frames that all have one length", Kind.FIXED),
                        new Choice<>("length", "binary frames that say their length", Kind.LENGTH),
                        new Choice<>("modbus", "Modbus RTU registers", Kind.MODBUS)));
        SerialLine line = line(kind == Kind.MODBUS);
        return switch (kind) {
            case TEXT -> text(line);
            case ASKED -> asked(line);
            case FIXED -> fixed(line);
            case LENGTH -> length(line);
            case MODBUS -> modbus(line);
        };
    }

    private SerialLine line(boolean modbus) throws EndedException, IOException {
        int baud = interview.number(
                "Baud", "Speed of the serial line in bits per second.", modbus ? 19_200 : 9600, 50, 4_000_000);
        int bits = interview.number("Data bits", "Bits in a character: 8 in nearly all devices.", 8, 5, 8);
        Choice<SerialLine.Parity> none = new Choice<>("none", "the N of 8N1", SerialLine.Parity.NONE);
        Choice<SerialLine.Parity> even = new Choice<>("even", "the E of 8E1", SerialLine.Parity.EVEN);
        Choice<SerialLine.Parity> odd = new Choice<>("odd", "the O of 8O1", SerialLine.Parity.ODD);
        SerialLine.Parity parity = interview.choose(
                "Parity",
                "The check bit of each character.",
                modbus ? List.of(even, none, odd) : List.of(none, even, odd));
        SerialLine.StopBits stop = interview.choose(
                "Stop bits",
                "The last number of 8N1.",
                List.of(
                        new Choice<>("one", "1 bit", SerialLine.StopBits.ONE),
                        new Choice<>("two", "2 bits", SerialLine.StopBits.TWO),
                        new Choice<>("one-half", "1.5 bits", SerialLine.StopBits.ONE_AND_A_HALF)));
        SerialLine.Flow flow = interview.choose(
                "Flow control",
                "Who may stop the other from sending; none unless the manual says otherwise.",
                List.of(
                        new Choice<>("none", "nobody", SerialLine.Flow.NONE),
                        new Choice<>("hardware", "RTS/CTS", SerialLine.Flow.HARDWARE),
                        new Choice<>("software", "XON/XOFF", SerialLine.Flow.SOFTWARE)));
        return new SerialLine(baud, bits, parity, stop, flow);
    }

    private ProfileDraft.Shape text(SerialLine line) throws EndedException, IOException {
        String end = end("a line");
        char separator = interview.choose(
                "Separator",
                "What stands between the columns of a line.",
                List.of(
                        new Choice<>("blank", "any number of blanks", ' '),
                        new Choice<>("comma", ",", ','),
                        new Choice<>("semicolon", ";", ';'),
                        new Choice<>("tab", "a tabulator", '\t')));
        int columns = interview.number(
                "Columns",
                "How many columns each line has, words and units too; 0 where the number changes.",
                1,
                0,
                64);
        return new ProfileDraft.TextLines(line, end, separator, columns);
    }

    private String end(String what) throws EndedException, IOException {
        return interview.choose(
                "End of " + what,
                "What ends " + what + "; with \\n as the end, \\r\\n is read as well.",
                List.of(
                        new Choice<>("\\n", "line feed", "\n"),
                        new Choice<>("\\r\\n", "carriage return and line feed", "\r\n"),
                        new Choice<>("\\r", "carriage return", "\r")));
    }

    private ProfileDraft.Shape asked(SerialLine line) throws EndedException, IOException {
        String request = interview.ask(
                "Request",
                "What is sent to get a reading, with its end: \\n is a line feed, \\r a carriage return.",
                "MEAS?\\n",
                EscapedText::of);
        double period = period("How often it is asked, in seconds.");
        return new ProfileDraft.AskedText(line, request, period, end("an answer"));
    }

    private double period(String help) throws EndedException, IOException {
        return interview.ask("Period", help, "1", answer -> {
            if (answer.matches("[0-9]{1,4}(\\.[0-9]{1,6})?") && Double.parseDouble(answer) > 0) {
                return Double.valueOf(answer);
            }
            throw new RefusedException(
                    "seconds above 0 are needed, such as 0.5 (with a point), got \"" + answer + "\"");
        });
    }

    private ProfileDraft.Shape fixed(SerialLine line) throws EndedException, IOException {
        Check check = check();
        ByteText start = start(check);
        int length = interview.number(
                "Length",
                "Bytes of a whole frame, from its start to the end of its checksum.",
                Math.max(2, start.length() + 4 + bytes(check)),
                2,
                MOST_FRAME_BYTES);
        return new ProfileDraft.FixedFrames(line, start, length, check);
    }

    private ProfileDraft.Shape length(SerialLine line) throws EndedException, IOException {
        Check check = check();
        ByteText start = start(check);
        int at = interview.number(
                "Place of the length",
                "Offset of the byte that says the length; the frame's first byte has offset 0.",
                start.length(),
                0,
                255);
        int adds = interview.number(
                "Bytes not counted",
                "Bytes of the whole frame that the length does not count, such as the start, itself and the checksum.",
                at + 1 + bytes(check),
                -255,
                255);
        int most = interview.number(
                "Longest frame", "Bytes of the longest frame; what says more is garbage.", 64, 2, MOST_FRAME_BYTES);
        return new ProfileDraft.LengthFrames(line, start, at, adds, most, check);
    }

    private Check check() throws EndedException, IOException {
        return interview.choose(
                "Checksum",
                "What stands at the frame's end and covers all before it. Any other can be written into the file.",
                List.of(
                        new Choice<>("none", "nothing", Check.NONE),
                        new Choice<>("sum", "the sum of all bytes, 8 bits", Check.SUM_8),
                        new Choice<>("xor", "all bytes combined by exclusive or", Check.XOR_8),
                        new Choice<>("modbus", "CRC-16/MODBUS, low byte first", Check.CRC_16_MODBUS),
                        new Choice<>("xmodem", "CRC-16/XMODEM, high byte first", Check.CRC_16_XMODEM),
                        new Choice<>("ibm-3740", "CRC-16/IBM-3740, high byte first", Check.CRC_16_IBM_3740)));
    }

    private ByteText start(Check check) throws EndedException, IOException {
        boolean needed = check == Check.NONE;
        return interview.ask(
                "Start",
                "Bytes that each frame begins with, in hexadecimal"
                        + (needed ? "; without a checksum they alone show where a frame begins." : ", or none."),
                needed ? "A5 5A" : "none",
                answer -> !needed && answer.equals("none") ? ByteText.EMPTY : EscapedText.hexBytes(answer));
    }

    static int bytes(Check check) {
        return switch (check) {
            case NONE -> 0;
            case SUM_8, XOR_8 -> 1;
            case CRC_16_MODBUS, CRC_16_XMODEM, CRC_16_IBM_3740 -> 2;
        };
    }

    private ProfileDraft.Shape modbus(SerialLine line) throws EndedException, IOException {
        int unit = interview.number("Unit", "Address of the device on the line.", 1, 1, 247);
        int base = interview.number(
                "First register number",
                "What the manual calls the very first register: 0, or 1 where it counts from 1.",
                0,
                0,
                1);
        int function = interview.number("Function", "3 for holding registers, 4 for input registers.", 3, 3, 4);
        int first = interview.number(
                "First register",
                "Number of the first register that is read, as the manual counts.",
                base,
                base,
                65_535);
        int count = interview.number("Registers", "How many registers are read at once, from the first on.", 2, 1, 125);
        double period = period("How often they are read, in seconds.");
        return new ProfileDraft.ModbusRegisters(line, unit, base, function, first, count, period);
    }
}
