package settlemark.cli;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import settlemark.document.Problem;
import settlemark.profile.Profile;
import settlemark.profile.ProfileDraft;
import settlemark.profile.ProfileDraft.Answers;
import settlemark.profile.ProfileDraft.Reading;
import settlemark.profile.ProfileReader;
import settlemark.profile.ProfileReading;
import settlemark.profile.SerialLine;

/** Tries answers by drafting a profile with them and reading it: the reader's own words say what is wrong. */
final class DraftCheck {
    private static final SerialLine LINE =
            new SerialLine(9600, 8, SerialLine.Parity.NONE, SerialLine.StopBits.ONE, SerialLine.Flow.NONE);

    private DraftCheck() {}

    /** What is wrong with a shape and readings together. */
    static List<String> complaints(ProfileDraft.Shape shape, List<Reading> readings) {
        return read(new Answers("draft", "draft", shape, readings, Optional.empty())).problems().stream()
                .filter(Problem::isError)
                .map(Problem::message)
                .toList();
    }

    /** What is wrong with a shape by itself. */
    static List<String> complaints(ProfileDraft.Shape shape) {
        return complaints(shape, List.of(anyReading(shape)));
    }

    static Optional<String> unitComplaint(String unit) {
        ProfileDraft.Shape shape = new ProfileDraft.TextLines(LINE, "\n", ' ', 1);
        return complaints(shape, List.of(new Reading("x", "x", unit, 0, "text", false, 1, Double.NaN))).stream()
                .findFirst();
    }

    /** The profile that the answers give, empty where something is wrong with them. */
    static Optional<Profile> profile(Answers answers) {
        return read(answers).profile();
    }

    private static ProfileReading read(Answers answers) {
        byte[] text = ProfileDraft.text(answers).getBytes(StandardCharsets.UTF_8);
        return ProfileReader.read("draft", text);
    }

    private static Reading anyReading(ProfileDraft.Shape shape) {
        boolean text = shape instanceof ProfileDraft.TextLines || shape instanceof ProfileDraft.AskedText;
        int place = 0;
        String type = text ? "text" : "uint8";
        if (shape instanceof ProfileDraft.ModbusRegisters modbus) {
            place = modbus.first();
            type = "uint16";
        } else if (shape instanceof ProfileDraft.FixedFrames fixed) {
            place = fixed.start().length();
        } else if (shape instanceof ProfileDraft.LengthFrames frames) {
            place = Math.max(frames.start().length(), frames.lengthAt() + 1);
        }
        return new Reading("x", "x", "Pa", place, type, true, 1, Double.NaN);
    }
}
