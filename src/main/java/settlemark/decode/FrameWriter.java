package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;

/** Writes what one frame says; channels and facts are those of its message. */
sealed interface FrameWriter permits BinaryWriter, LineWriter {
    /** Whether there is a code for a status other than OK. */
    boolean says(int channel, SampleStatus status);

    /**
     * A frame's content with its checksum, without delimiter, marks and escapes.
     *
     * @param statuses by channel, null for one that the frame must not give
     * @param words by fact, null for what stands there anyway
     * @throws IllegalArgumentException where no frame can say exactly this
     */
    byte[] write(double[] values, @Nullable SampleStatus[] statuses, @Nullable String[] words);
}
