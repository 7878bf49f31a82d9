package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;

final class AllocationTest {
    private static final int FRAMES = 20_000;

    /** Sums what it hears and makes nothing. */
    private static final class Sum implements DecodeSink {
        private double sum;
        private long samples;

        @Override
        public void sample(int channel, long timeNanos, double value, SampleStatus status) {
            sum += value;
            samples++;
        }

        @Override
        public void rejected(Rejected rejected) {
            throw new AssertionError(rejected);
        }
    }

    @Test
    void binaryFramesAreDecodedWithoutMakingObjects() {
        Profile profile = ProfileLibrary.get("demo-air");
        Encoder encoder = new Encoder(profile);
        SampleStatus[] ok = {SampleStatus.OK, SampleStatus.OK, SampleStatus.OK};
        List<Chunk> chunks = new ArrayList<>();
        for (int i = 0; i < FRAMES; i++) {
            chunks.add(new Chunk(i, encoder.encode(new double[] {20 + i % 100, 50, 90}, ok)));
        }
        ProbeDecoder decoder = new ProbeDecoder(profile);
        Sum sink = new Sum();
        chunks.forEach(chunk -> decoder.accept(chunk, sink)); // classes loaded, arrays grown
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
        for (int i = 0; i < FRAMES; i++) {
            decoder.accept(chunks.get(i), sink);
        }
        long allocated = threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
        assertThat(sink.samples).isEqualTo(6L * FRAMES);
        assertThat(sink.sum).isPositive();
        // A few hundred bytes are the measurement's own; one object a frame would be over 300 kB.
        assertThat(allocated).isLessThan(20_000);
    }
}
