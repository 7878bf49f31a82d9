package settlemark.cli;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.cli.Interview.EndedException;
import settlemark.cli.Interview.RefusedException;
import settlemark.decode.FrameExplanation;
import settlemark.decode.FrameExplanation.FieldReading;
import settlemark.decode.FrameExplanation.NumberReading;
import settlemark.measure.SampleStatus;
import settlemark.profile.ByteText;
import settlemark.profile.Profile;
import settlemark.profile.ProfileDraft;
import settlemark.profile.Secrets;

/** A frame that the device has sent, and what it showed then. */
final class FrameQuestion {
    private static final String NONE = "none";
    private static final String HEX = "hex ";

    private final Interview interview;
    private final ProfileDraft.Shape shape;
    private final Profile profile;

    FrameQuestion(Interview interview, ProfileDraft.Shape shape, Profile profile) {
        this.interview = interview;
        this.shape = shape;
        this.profile = profile;
    }

    Optional<ProfileDraft.Capture> ask() throws EndedException, IOException {
        while (true) {
            ByteText bytes = interview.ask("Example frame", help(), NONE, this::bytes);
            if (bytes.isEmpty()) {
                return Optional.empty();
            }
            List<FrameExplanation> frames = FrameExplanation.of(profile, 0, bytes.toBytes(), Secrets.NONE);
            frames.forEach(frame -> ExplanationText.text(frame).lines().forEach(line -> interview.say("  " + line)));
            if (frames.size() != 1 || !frames.get(0).isGood()) {
                interview.say("  That is not one good frame; paste another, or nothing.");
                continue;
            }
            Map<String, Double> gives = gives(frames.get(0));
            if (!gives.isEmpty()) {
                return Optional.of(new ProfileDraft.Capture(bytes, gives));
            }
            interview.say("  It gives no value; paste a frame with a reading in it, or nothing.");
        }
    }

    private String help() {
        return end().isEmpty()
                ? "A whole frame that the device has sent, in hexadecimal. It proves the profile. Empty: leave it out."
                : "A line that the device has sent, as text, or \"hex\" and its bytes. It proves the profile. Empty: leave"
                        + " it out.";
    }

    private ByteText bytes(String answer) throws RefusedException {
        if (answer.equals(NONE)) {
            return ByteText.EMPTY;
        }
        boolean hex = answer.startsWith(HEX) || end().isEmpty();
        if (hex) {
            return EscapedText.hexBytes(answer.startsWith(HEX) ? answer.substring(HEX.length()) : answer);
        }
        String text = EscapedText.of(answer);
        return EscapedText.bytes(text.endsWith(end()) ? text : text + end());
    }

    /** What ends a text; empty for a device that does not speak in text. */
    private String end() {
        if (shape instanceof ProfileDraft.TextLines text) {
            return text.end();
        }
        return shape instanceof ProfileDraft.AskedText asked ? asked.end() : "";
    }

    private Map<String, Double> gives(FrameExplanation frame) throws EndedException, IOException {
        Map<String, NumberReading> read = new LinkedHashMap<>();
        for (FieldReading field : frame.fields()) {
            field.reading()
                    .filter(number -> !number.channel().isEmpty() && number.status() == SampleStatus.OK)
                    .ifPresent(number -> read.put(number.channel(), number));
        }
        Map<String, Double> gives = new LinkedHashMap<>();
        if (read.isEmpty()) {
            return gives;
        }
        boolean right =
                interview.yes("Is that right", "Compare it with what the device showed when it sent this.", true);
        for (Map.Entry<String, NumberReading> entry : read.entrySet()) {
            double value = entry.getValue().value();
            gives.put(entry.getKey(), right ? value : shown(entry.getKey(), value));
        }
        if (!right) {
            interview.say(
                    "  The check at the end says where the two differ: look at place, type, byte order and scale.");
        }
        return gives;
    }

    private double shown(String channel, double value) throws EndedException, IOException {
        return interview.real(
                "Shown for " + channel,
                "What the device showed for " + channel + ".",
                Double.toString(value),
                answer -> {
                    if (answer.matches("[-+]?0+(\\.0*)?")) {
                        return 0.0;
                    }
                    throw new RefusedException(
                            "a number is needed, such as 6.83 (with a point), got \"" + answer + "\"");
                });
    }
}
