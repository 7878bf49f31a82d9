package settlemark.fuzz;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import settlemark.decode.Encoder;
import settlemark.measure.SampleStatus;
import settlemark.profile.Example;
import settlemark.profile.Profile;

/** Streams to start a fuzzer with. */
final class Frames {
    private static final int COUNT = 6;
    private static final int LONGEST_CHUNK = 255;

    private Frames() {}

    /** A few good frames of a profile's first message. */
    static FuzzedStream encoded(Profile profile, int cut) {
        Encoder encoder = new Encoder(profile);
        int channels = profile.channels().size();
        SampleStatus[] statuses = new SampleStatus[channels];
        Arrays.fill(statuses, SampleStatus.OK);
        double[] values = new double[channels];
        ByteArrayOutputStream frames = new ByteArrayOutputStream();
        for (int i = 0; i < COUNT; i++) {
            Arrays.fill(values, 10.25 * i);
            frames.writeBytes(encoder.encode(values, statuses));
        }
        return new FuzzedStream(profile.id(), cut, frames.toByteArray());
    }

    /** All examples of a profile, each a chunk that says its input, which is that of its message. */
    static FuzzedStream examples(Profile profile) {
        ByteArrayOutputStream chunks = new ByteArrayOutputStream();
        for (Example example : profile.examples()) {
            byte[] frame = example.bytes().toBytes();
            int length = Math.min(frame.length, LONGEST_CHUNK);
            chunks.write(example.message() + 1);
            chunks.write(length);
            chunks.write(frame, 0, length);
        }
        return new FuzzedStream(profile.id(), -1, chunks.toByteArray());
    }
}
