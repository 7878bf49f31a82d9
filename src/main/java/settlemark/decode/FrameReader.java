package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Framing;
import settlemark.profile.Profile;

/** Reads the channels' values out of one frame. */
sealed interface FrameReader permits BinaryReader, LineReader {
    /**
     * Fills in a value and a status for each channel.
     *
     * @return null where the frame is good, else why not
     */
    @Nullable
    String read(byte[] bytes, int from, int to, double[] values, SampleStatus[] statuses);

    /** Frames lost since the last one by the frames' own counter, 0 where they carry none. */
    long missed();

    /** Forgets the counter. */
    void reset();

    static FrameReader of(Profile profile) {
        boolean lines = profile.messages().get(0).framing() instanceof Framing.Line;
        return lines ? new LineReader(profile) : new BinaryReader(profile);
    }
}
