package settlemark.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.SampleStatus;
import settlemark.profile.Example;
import settlemark.profile.Framing;
import settlemark.profile.Profile;

/**
 * Runs a profile's examples: each good frame must give its values, and again after it has been written by the encoder;
 * each bad one must be rejected for its reason.
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
        Trial trial = Trial.of(profile, example.bytes().toBytes());
        if (!example.isGood()) {
            return rejectionComplaint(example, trial);
        }
        return valueComplaint(profile, example, trial).or(() -> roundTripComplaint(profile, example, trial));
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

    private static Optional<String> valueComplaint(Profile profile, Example example, Trial trial) {
        if (!trial.rejections().isEmpty()) {
            return Optional.of("was rejected: " + trial.rejections().get(0));
        }
        if (trial.frames() != 1) {
            return Optional.of("must be one frame, but holds " + trial.frames());
        }
        for (Map.Entry<String, Example.Expected> entry : example.gives().entrySet()) {
            int channel = profile.channelIndex(entry.getKey()).orElseThrow();
            Example.Expected expected = entry.getValue();
            if (!holds(expected, trial.values()[channel], trial.statuses()[channel])) {
                return Optional.of(entry.getKey() + " must give " + shown(expected.value(), expected.status())
                        + ", got " + shown(trial.values()[channel], trial.statuses()[channel]));
            }
        }
        return Optional.empty();
    }

    private static Optional<String> roundTripComplaint(Profile profile, Example example, Trial trial) {
        byte[] written = new Encoder(profile).encode(trial.values(), trial.statuses());
        return valueComplaint(profile, example, Trial.of(profile, written))
                .map(message -> "written by the encoder as " + shown(profile, written) + ", " + message);
    }

    private static boolean holds(Example.Expected expected, double value, SampleStatus status) {
        if (expected.status() != status) {
            return false;
        }
        double tolerance = RELATIVE_TOLERANCE * Math.abs(expected.value()) + 1e-12;
        return status != SampleStatus.OK || Math.abs(value - expected.value()) <= tolerance;
    }

    private static String shown(double value, SampleStatus status) {
        return status == SampleStatus.OK
                ? String.valueOf(value)
                : status.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }

    private static String shown(Profile profile, byte[] frame) {
        return profile.messages().get(0).framing() instanceof Framing.Line
                ? Ascii.quoted(frame, 0, frame.length)
                : Ascii.hex(frame, 0, frame.length);
    }
}
