package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;

/** What one frame says: by channel and by fact of its message. Filled anew by each frame. */
final class FrameValues {
    final double[] values;
    /** Null where the frame says nothing about the channel. */
    final @Nullable SampleStatus[] statuses;
    /** Null where the frame does not hold the fact. */
    final @Nullable String[] words;

    FrameValues(int channels, int facts) {
        values = new double[channels];
        statuses = new SampleStatus[channels];
        words = new String[facts];
    }

    /** A number; one that is infinite is beyond the range, one that is none is a fault. */
    void number(int channel, double value) {
        if (Double.isFinite(value)) {
            values[channel] = value;
            statuses[channel] = SampleStatus.OK;
        } else {
            status(channel, statusOf(value));
        }
    }

    void status(int channel, SampleStatus status) {
        values[channel] = Double.NaN;
        statuses[channel] = status;
    }

    void absent(int channel) {
        values[channel] = Double.NaN;
        statuses[channel] = null;
    }

    static SampleStatus statusOf(double value) {
        if (Double.isNaN(value)) {
            return SampleStatus.FAULT;
        }
        if (Double.isInfinite(value)) {
            return value > 0 ? SampleStatus.OVER_RANGE : SampleStatus.UNDER_RANGE;
        }
        return SampleStatus.OK;
    }
}
