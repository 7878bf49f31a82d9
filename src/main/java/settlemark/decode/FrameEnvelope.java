package settlemark.decode;

import java.io.ByteArrayOutputStream;
import settlemark.profile.Framing;

/** Puts the content of a frame between its marks. */
final class FrameEnvelope {
    private FrameEnvelope() {}

    static byte[] around(byte[] content, Framing framing) {
        if (framing instanceof Framing.Line line) {
            return joined(new byte[0], content, line.end().toBytes());
        }
        if (framing instanceof Framing.Cobs) {
            return joined(new byte[0], new OverheadStuffing().stuff(content), new byte[1]);
        }
        if (framing instanceof Framing.Marked marked) {
            byte[] stuffed = Stuffing.of(marked).stuff(content);
            return joined(marked.start().toBytes(), stuffed, marked.end().toBytes());
        }
        return content;
    }

    private static byte[] joined(byte[] start, byte[] content, byte[] end) {
        ByteArrayOutputStream frame = new ByteArrayOutputStream(start.length + content.length + end.length);
        frame.writeBytes(start);
        frame.writeBytes(content);
        frame.writeBytes(end);
        return frame.toByteArray();
    }
}
