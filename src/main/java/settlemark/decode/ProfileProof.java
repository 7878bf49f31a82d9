package settlemark.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Example;
import settlemark.profile.Profile;

/**
 * Runs a profile's examples: each good frame must give its values and facts, and again after it has been written by the
 * encoder; each bad one must be rejected for its reason.
 *
 * @param examplesRun how many
 * @param faults what went wrong, in the profile's order
 */
public record ProfileProof(int examplesRun, List<Fault> faults) {
    /** A single-precision number has a relative step of 1.2e-7; a text or integer is met far more closely. */
    private static final double RELATIVE_TOLERANCE = 1e-7;

    public ProfileProof {
        faults = List.copyOf(faults);
    }

    /**
     * An example that does not hold.
     *
     * @param line where the profile describes it, from 1
     * @param column from 1
     * @param message what was expected and what came
     */
    public record Fault(int line, int column, String message) {}

    /** Runs all examples of a profile. */
    public static ProfileProof of(Profile profile) {
        List<Fault> faults = new ArrayList<>();
        for (Example example : profile.examples()) {
            complaint(profile, example)
                    .ifPresent(message ->
                            faults.add(new Fault(example.line(), example.column(), example.name() + ": " + message)));
        }
        return new ProfileProof(profile.examples().size(), faults);
    }

    private static Optional<String> complaint(Profile profile, Example example) {
        Trial trial = Trial.of(profile, example, example.bytes().toBytes());
        if (!example.isGood()) {
            return rejectionComplaint(example, trial);
        }
        return goodComplaint(profile, example, trial).or(() -> roundTripComplaint(profile, example, trial));
    }

    private static Optional<String> rejectionComplaint(Example example, Trial trial) {
        if (trial.rejections().isEmpty()) {
            return Optional.of("must be rejected, but gave samples");
        }
        boolean named = trial.rejections().stream().anyMatch(reason -> reason.contains(example.rejected()));
        if (!named) {
            return Optional.of("must be rejected with \"" + example.rejected() + "\", but was rejected with \""
                    + trial.rejections().get(0) + "\"");
        }
        return trial.frames() > 0 ? Optional.of("was rejected, but gave samples as well") : Optional.empty();
    }

    private static Optional<String> goodComplaint(Profile profile, Example example, Trial trial) {
        if (!trial.rejections().isEmpty()) {
            return Optional.of("was rejected: " + trial.rejections().get(0));
        }
        if (trial.frames() != 1) {
            return Optional.of("must be one frame, but holds " + trial.frames());
        }
        return valueComplaint(profile, example, trial)
                .or(() -> absenceComplaint(profile, example, trial))
                .or(() -> factComplaint(profile, example, trial));
    }

    private static Optional<String> valueComplaint(Profile profile, Example example, Trial trial) {
        for (Map.Entry<String, Example.Expected> entry : example.gives().entrySet()) {
            int channel = channel(profile, trial, entry.getKey());
            Example.Expected expected = entry.getValue();
            double value = channel < 0 ? Double.NaN : trial.values()[channel];
            @Nullable SampleStatus status = channel < 0 ? null : trial.statuses()[channel];
            if (!holds(expected, value, status)) {
                return Optional.of(entry.getKey() + " must give " + shown(expected.value(), expected.status())
                        + ", got " + shown(value, status));
            }
        }
        return Optional.empty();
    }

    private static Optional<String> absenceComplaint(Profile profile, Example example, Trial trial) {
        for (String name : example.absent().stream().sorted().toList()) {
            int channel = channel(profile, trial, name);
            if (channel >= 0 && trial.statuses()[channel] != null) {
                return Optional.of(
                        name + " must be absent, got " + shown(trial.values()[channel], trial.statuses()[channel]));
            }
        }
        return Optional.empty();
    }

    private static Optional<String> factComplaint(Profile profile, Example example, Trial trial) {
        for (Map.Entry<String, String> entry : example.facts().entrySet()) {
            @Nullable String words = null;
            for (int i = 0; i < trial.contents().facts().size(); i++) {
                int fact = trial.contents().facts().get(i);
                words = profile.facts().get(fact).id().equals(entry.getKey()) ? trial.words()[i] : words;
            }
            if (!entry.getValue().equals(words)) {
                return Optional.of(entry.getKey() + " must say \"" + entry.getValue() + "\", got "
                        + (words == null ? "nothing" : "\"" + words + "\""));
            }
        }
        return Optional.empty();
    }

    private static Optional<String> roundTripComplaint(Profile profile, Example example, Trial trial) {
        byte[] written;
        try {
            written = new MessageEncoder(
                            trial.contents(),
                            Optional.of(trial.pattern()),
                            example.circumstances().secrets())
                    .encode(trial.values(), trial.statuses(), trial.words());
        } catch (IllegalArgumentException e) {
            return Optional.of("cannot be written by the encoder: " + e.getMessage());
        }
        return goodComplaint(profile, example, Trial.of(profile, example, written))
                .map(message -> "written by the encoder as " + shown(trial.contents(), written) + ", " + message);
    }

    /** Index among the channels of the message, -1 where it is none of them. */
    private static int channel(Profile profile, Trial trial, String name) {
        return profile.channelIndex(name)
                .map(trial.contents().channels()::indexOf)
                .orElse(-1);
    }

    private static boolean holds(Example.Expected expected, double value, @Nullable SampleStatus status) {
        if (expected.status() != status) {
            return false;
        }
        double tolerance = RELATIVE_TOLERANCE * Math.abs(expected.value()) + 1e-12;
        return status != SampleStatus.OK || Math.abs(value - expected.value()) <= tolerance;
    }

    private static String shown(double value, @Nullable SampleStatus status) {
        if (status == null) {
            return "nothing";
        }
        return status == SampleStatus.OK
                ? String.valueOf(value)
                : status.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String shown(Contents contents, byte[] frame) {
        return contents.isText() ? Ascii.quoted(frame, 0, frame.length) : Ascii.hex(frame, 0, frame.length);
    }
}
