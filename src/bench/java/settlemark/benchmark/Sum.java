package settlemark.benchmark;

import settlemark.decode.DecodeSink;
import settlemark.decode.Rejected;
import settlemark.measure.SampleStatus;

/** Adds up what it hears, so that no decoder can leave work out. */
final class Sum implements DecodeSink {
    private double sum;
    private long samples;
    private long rejections;

    @Override
    public void sample(int channel, long timeNanos, double value, SampleStatus status) {
        sum += value;
        samples++;
    }

    @Override
    public void rejected(Rejected rejected) {
        rejections++;
    }

    double sum() {
        return sum;
    }

    /** Starts anew after a stream that must have given this many samples, and no rejection. */
    double take(long expectedSamples) {
        if (samples != expectedSamples || rejections != 0) {
            throw new IllegalStateException(
                    "expected " + expectedSamples + " samples, got " + samples + " and " + rejections + " rejections");
        }
        double taken = sum;
        sum = 0;
        samples = 0;
        return taken;
    }

    /** Samples so far. */
    long samples() {
        return samples;
    }
}
