package settlemark.decode;

import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Framing;
import settlemark.profile.Profile;

/** Values into a binary frame. */
final class BinaryWriter implements FrameWriter {
    private final BinaryLayout layout;
    private final byte[] pattern;
    private long count;

    BinaryWriter(Profile profile) {
        layout = new BinaryLayout(profile);
        pattern = Trial.provedFrame(profile)
                .orElseGet(() -> blank(profile.messages().get(0).framing()));
        for (BinaryLayout.Constant constant : layout.constants) {
            System.arraycopy(constant.bytes(), 0, pattern, constant.offset(), constant.bytes().length);
        }
        BinaryLayout.@Nullable Counter counter = layout.counter;
        count = counter == null ? 0 : counter.read(pattern, 0);
    }

    @Override
    public boolean says(int channel, SampleStatus status) {
        return layout.numbers[channel].says(status);
    }

    @Override
    public byte[] write(double[] values, SampleStatus[] statuses) {
        byte[] frame = pattern.clone();
        for (int i = 0; i < values.length; i++) {
            if (statuses[i] == SampleStatus.OK) {
                layout.numbers[i].write(values[i], frame, 0);
            } else {
                layout.numbers[i].write(statuses[i], frame, 0);
            }
        }
        if (layout.counter != null) {
            layout.counter.write(count++, frame, 0);
        }
        if (layout.checksum != null) {
            layout.checksum.write(frame, 0, frame.length);
        }
        return frame;
    }

    /** A frame with its start and its length, and nothing else. */
    private byte[] blank(Framing framing) {
        if (framing instanceof Framing.LengthField field) {
            byte[] frame = new byte[Math.max(layout.leastBytes(), field.headerBytes())];
            System.arraycopy(field.start().toBytes(), 0, frame, 0, field.start().length());
            RawBits.write(field.wire(), frame.length - field.adds(), frame, field.at());
            return frame;
        }
        Framing.Fixed fixed = (Framing.Fixed) framing;
        byte[] frame = new byte[fixed.maximumBytes()];
        System.arraycopy(fixed.start().toBytes(), 0, frame, 0, fixed.start().length());
        return frame;
    }
}
