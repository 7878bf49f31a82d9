package settlemark.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.Example;
import settlemark.profile.Framing;
import settlemark.profile.Profile;

/**
 * What one frame by itself gives.
 *
 * @param frames good ones
 * @param values of the last good frame, by channel
 * @param statuses of the last good frame, by channel
 * @param rejections reasons, in order
 */
record Trial(long frames, double[] values, SampleStatus[] statuses, List<String> rejections) {
    /** The first good example that is indeed one good frame. */
    static Optional<byte[]> provedFrame(Profile profile) {
        return profile.examples().stream()
                .filter(Example::isGood)
                .map(example -> example.bytes().toBytes())
                .filter(bytes -> of(profile, bytes).isOneGoodFrame())
                .findFirst();
    }

    boolean isOneGoodFrame() {
        return frames == 1 && rejections.isEmpty();
    }

    static Trial of(Profile profile, byte[] frame) {
        double[] values = new double[profile.sources().size()];
        SampleStatus[] statuses = new SampleStatus[values.length];
        Arrays.fill(values, Double.NaN);
        Arrays.fill(statuses, SampleStatus.NOT_READY);
        List<String> rejections = new ArrayList<>();
        ProbeDecoder decoder = new ProbeDecoder(profile);
        DecodeSink sink = new DecodeSink() {
            @Override
            public void sample(int channel, long timeNanos, double value, SampleStatus status) {
                values[channel] = value;
                statuses[channel] = status;
            }

            @Override
            public void rejected(Rejected rejected) {
                rejections.add(rejected.reason());
            }
        };
        if (profile.messages().get(0).framing() instanceof Framing.Line line) {
            // A delimiter before it, so that the frame is known to be whole.
            decoder.accept(new Chunk(0, line.end().toBytes()), sink);
        }
        decoder.accept(new Chunk(0, frame), sink);
        if (decoder.undecidedBytes() > 0) {
            rejections.add("incomplete: the frame goes on after its " + frame.length + " bytes");
        }
        return new Trial(decoder.acceptedFrames(), values, statuses, rejections);
    }
}
