package settlemark.fuzz;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import settlemark.decode.Encoder;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;

/** A few good frames of a profile, as a start for a fuzzer. */
final class Frames {
    private static final int COUNT = 6;

    private Frames() {}

    static byte[] of(Profile profile) {
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
        return frames.toByteArray();
    }
}
