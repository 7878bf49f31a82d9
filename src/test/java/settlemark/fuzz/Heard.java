package settlemark.fuzz;

import java.util.ArrayList;
import java.util.List;
import settlemark.decode.DecodeSink;
import settlemark.decode.Rejected;
import settlemark.measure.Sample;
import settlemark.measure.SampleStatus;

/** Keeps all that a decoder says, in its order. */
final class Heard implements DecodeSink {
    final List<Record> events = new ArrayList<>();
    private int wrongSamples;

    @Override
    public void sample(int channel, long timeNanos, double value, SampleStatus status) {
        events.add(new Sample(channel, timeNanos, value, status));
        if ((status == SampleStatus.OK) == Double.isNaN(value)) {
            wrongSamples++;
        }
    }

    @Override
    public void rejected(Rejected rejected) {
        events.add(rejected);
    }

    long samples() {
        return events.stream().filter(Sample.class::isInstance).count();
    }

    long rejections() {
        return events.size() - samples();
    }

    /** A value is there exactly where the gauge says that all is well. */
    void check() {
        if (wrongSamples != 0) {
            throw new AssertionError(wrongSamples + " samples with a status that does not fit the value: " + events);
        }
    }
}
