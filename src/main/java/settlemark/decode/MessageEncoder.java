package settlemark.decode;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.SampleStatus;
import settlemark.profile.Secrets;

/** Writes the frames of one message; channels and facts are those of the message. */
final class MessageEncoder {
    private final Contents contents;
    private final FrameWriter writer;
    private final @Nullable FrameCipher cipher;
    private long cipherCount;

    /** Writes frames like a pattern, which keep their protection where the secrets are known. */
    MessageEncoder(Contents contents, Optional<Pattern> pattern, Secrets secrets) {
        this.contents = contents;
        Optional<byte[]> content = pattern.map(Pattern::content);
        writer = contents.isText() ? new LineWriter(contents, content) : new BinaryWriter(contents, content);
        cipher =
                contents.message().cipher().map(c -> FrameCipher.of(c, secrets)).orElse(null);
        cipherCount = pattern.map(Pattern::cipherCount).orElse(0L);
    }

    /**
     * A good frame that others are written after.
     *
     * @param content without delimiter, marks, escapes and protection
     * @param cipherCount the counter of its protection
     */
    record Pattern(byte[] content, long cipherCount) {}

    Contents contents() {
        return contents;
    }

    boolean says(int channel, SampleStatus status) {
        return status == SampleStatus.OK || writer.says(channel, status);
    }

    byte[] encode(double[] values, @Nullable SampleStatus[] statuses, @Nullable String[] words) {
        byte[] content = writer.write(values, statuses, words);
        if (cipher != null) {
            boolean closed = cipher.isClosed(content, 0, content.length) && cipher.canClose();
            content = cipher.marked(content, closed);
            content = closed ? cipher.close(content, cipherCount++) : content;
        }
        return FrameEnvelope.around(content, contents.message().framing());
    }
}
