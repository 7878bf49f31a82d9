package settlemark.decode;

import settlemark.measure.SampleStatus;

/** Writes the channels' values into one frame. */
sealed interface FrameWriter permits BinaryWriter, LineWriter {
    /** Whether there is a code for a status other than OK. */
    boolean says(int channel, SampleStatus status);

    /** A whole frame. */
    byte[] write(double[] values, SampleStatus[] statuses);
}
