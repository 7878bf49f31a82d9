package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;

/** Values out of a binary frame. Makes no object for a good frame. */
final class BinaryReader implements FrameReader {
    private final BinaryLayout layout;
    private final int leastBytes;
    private long lastCount = -1;
    private long missed;

    BinaryReader(Profile profile) {
        this.layout = new BinaryLayout(profile);
        this.leastBytes = layout.leastBytes();
    }

    /** Bytes that a frame needs to hold all fields and the checksum. */
    int leastBytes() {
        return leastBytes;
    }

    @Override
    public @Nullable String read(byte[] bytes, int from, int to, double[] values, SampleStatus[] statuses) {
        if (to - from < leastBytes) {
            return "the frame has " + (to - from) + " bytes where the fields need " + leastBytes;
        }
        if (layout.checksum != null) {
            @Nullable String complaint = layout.checksum.complaint(bytes, from, to);
            if (complaint != null) {
                return complaint;
            }
        }
        for (BinaryLayout.Constant constant : layout.constants) {
            if (!constant.standsIn(bytes, from)) {
                return constant.complaint(bytes, from);
            }
        }
        for (int i = 0; i < values.length; i++) {
            BinaryNumber number = layout.numbers[i];
            long raw = number.raw(bytes, from);
            SampleStatus status = number.status(raw);
            statuses[i] = status;
            values[i] = status == SampleStatus.OK ? number.value(raw) : Double.NaN;
        }
        count(bytes, from);
        return null;
    }

    @Override
    public long missed() {
        return missed;
    }

    @Override
    public void reset() {
        lastCount = -1;
        missed = 0;
    }

    private void count(byte[] bytes, int from) {
        missed = 0;
        BinaryLayout.@Nullable Counter counter = layout.counter;
        if (counter == null) {
            return;
        }
        long count = counter.read(bytes, from);
        if (lastCount >= 0) {
            missed = count - lastCount - 1 & counter.mask();
        }
        lastCount = count;
    }
}
