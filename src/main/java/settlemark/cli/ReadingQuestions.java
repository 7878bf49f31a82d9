package settlemark.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import settlemark.cli.Interview.EndedException;
import settlemark.cli.Interview.RefusedException;
import settlemark.profile.ProfileDraft;
import settlemark.profile.ProfileDraft.Reading;

/** What a device measures and where it stands in a frame. */
final class ReadingQuestions {
    private static final int MOST = 64;
    private static final String KEY = "[a-z][a-z0-9-]{0,63}";
    private static final String TYPE =
            "u?int([1-9]|[1-5][0-9]|6[0-4])|bcd(8|16|24|32|40|48|56|64)|float(16|32|64)|medfloat(16|32)";

    private final Interview interview;
    private final ProfileDraft.Shape shape;
    private final List<Reading> readings = new ArrayList<>();

    ReadingQuestions(Interview interview, ProfileDraft.Shape shape) {
        this.interview = interview;
        this.shape = shape;
    }

    List<Reading> ask() throws EndedException, IOException {
        do {
            Reading reading = reading();
            List<Reading> with = new ArrayList<>(readings);
            with.add(reading);
            List<String> complaints = DraftCheck.complaints(shape, with);
            if (complaints.isEmpty()) {
                readings.add(reading);
            } else {
                interview.say("  This reading does not fit; please answer for it again:");
                complaints.forEach(complaint -> interview.say("  " + complaint));
            }
        } while (readings.isEmpty() || more());
        return List.copyOf(readings);
    }

    private boolean more() throws EndedException, IOException {
        return readings.size() < MOST
                && interview.yes("Another reading", "Does the device send something else that matters?", false);
    }

    private Reading reading() throws EndedException, IOException {
        int number = readings.size() + 1;
        String label = interview.ask(
                "Label",
                "Reading " + number + ": what it is called, as printed on the port or display.",
                number == 1 ? "Pressure" : "Reading " + number,
                ReadingQuestions::label);
        String id = interview.ask(
                "Key",
                "Its key in commands and files.",
                key(label, "reading-" + number),
                answer -> isTaken(answer) ? taken(answer) : key(answer));
        String unit = interview.ask(
                "Unit",
                "Its unit as a UCUM code: Pa, hPa, kPa, mbar, [in_i'H2O] (inch of water), [psi], Cel, [degF], %.",
                "Pa",
                ReadingQuestions::unit);
        int place = place();
        String type = isText() ? "text" : type();
        boolean big = !isText() && isBig(type);
        double scale = interview.real(
                "Scale",
                "What the number in the frame is multiplied by; 0.01 where 683 means 6.83.",
                "1",
                ReadingQuestions::notANumber);
        double resolution = interview.real(
                "Resolution",
                "Smallest step of the reading in its unit, such as 0.01; \"unknown\" where it is not known.",
                "unknown",
                answer -> answer.equals("unknown") ? Double.NaN : notANumber(answer));
        return new Reading(id, label, unit, place, type, big, scale, Math.abs(resolution));
    }

    private static double notANumber(String answer) throws RefusedException {
        throw new RefusedException(
                "a number other than 0 is needed, such as 0.01 (with a point), got \"" + answer + "\"");
    }

    private static String label(String answer) throws RefusedException {
        if (answer.length() > 100) {
            throw new RefusedException("100 characters at most, got " + answer.length());
        }
        return answer;
    }

    static String key(String answer) throws RefusedException {
        if (answer.matches(KEY)) {
            return answer;
        }
        throw new RefusedException(
                "a key is lower-case letters, digits and hyphens, a letter first, 64 at most; got \"" + answer + "\"");
    }

    /** A key from any words. */
    static String key(String words, String otherwise) {
        String key =
                words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^[-0-9]+|-+$", "");
        String cut = key.length() > 40 ? key.substring(0, 40).replaceAll("-+$", "") : key;
        return cut.isEmpty() ? otherwise : cut;
    }

    private boolean isTaken(String id) {
        return readings.stream().anyMatch(reading -> reading.id().equals(id));
    }

    private static String taken(String id) throws RefusedException {
        throw new RefusedException("there is a reading \"" + id + "\" already; choose another key");
    }

    /** Asks the reader of profiles itself, so that its remedies are heard at once. */
    private static String unit(String answer) throws RefusedException {
        Optional<String> complaint = DraftCheck.unitComplaint(answer);
        if (complaint.isPresent()) {
            throw new RefusedException(complaint.get());
        }
        return answer;
    }

    private int place() throws EndedException, IOException {
        if (isText()) {
            return interview.number("Column", "Its column in the line; the first is 0.", next(0), 0, 63);
        }
        if (shape instanceof ProfileDraft.ModbusRegisters modbus) {
            return interview.number(
                    "Register",
                    "Number of its register as the manual counts; of the first where it takes several.",
                    next(modbus.first()),
                    modbus.first(),
                    modbus.first() + modbus.count() - 1);
        }
        int first = shape instanceof ProfileDraft.LengthFrames frames
                ? frames.lengthAt() + 1
                : shape instanceof ProfileDraft.FixedFrames fixed
                        ? fixed.start().length()
                        : 0;
        return interview.number(
                "Offset", "Bytes of the frame before it; the frame's first byte has offset 0.", next(first), 0, 65_535);
    }

    /** Right behind the last reading. */
    private int next(int first) {
        if (readings.isEmpty()) {
            return first;
        }
        Reading last = readings.get(readings.size() - 1);
        int size = isText() ? 1 : bytes(last.type());
        int next = last.place() + (shape instanceof ProfileDraft.ModbusRegisters ? (size + 1) / 2 : size);
        return shape instanceof ProfileDraft.ModbusRegisters modbus
                ? Math.min(next, modbus.first() + modbus.count() - 1)
                : next;
    }

    private static int bytes(String type) {
        return (Integer.parseInt(type.replaceAll("[^0-9]", "")) + 7) / 8;
    }

    private boolean isText() {
        return shape instanceof ProfileDraft.TextLines || shape instanceof ProfileDraft.AskedText;
    }

    private String type() throws EndedException, IOException {
        return interview.ask(
                "Type",
                "How the number is written: int16 (signed, 16 bits), uint16 (unsigned), int32, float32, bcd16 and so on.",
                "int16",
                answer -> {
                    if (answer.matches(TYPE)) {
                        return answer;
                    }
                    throw new RefusedException(
                            "a type is int or uint with 1 to 64 bits, float16, float32, float64, bcd8"
                                    + " to bcd64, medfloat16 or medfloat32, got \"" + answer + "\"");
                });
    }

    private boolean isBig(String type) throws EndedException, IOException {
        boolean modbus = shape instanceof ProfileDraft.ModbusRegisters;
        if (bytes(type) < (modbus ? 3 : 2)) {
            return modbus;
        }
        return interview.choose(
                modbus ? "Word order" : "Byte order",
                modbus ? "Which of its registers comes first." : "Which of its bytes comes first.",
                modbus
                        ? List.of(
                                new Interview.Choice<>("big", "the high one", true),
                                new Interview.Choice<>("little", "the low one", false))
                        : List.of(
                                new Interview.Choice<>("little", "the low one", false),
                                new Interview.Choice<>("big", "the high one", true)));
    }
}
