package settlemark.decode;

import java.util.List;
import java.util.function.ToLongFunction;
import settlemark.measure.Chunk;
import settlemark.profile.Input;
import settlemark.profile.Profile;
import settlemark.profile.Secrets;

/**
 * Turns a probe's bytes into samples, as its profile says. The samples depend on the bytes and the times of the chunks
 * that they came in, and not on how a chunk was cut: a frame has the time of the chunk with its last byte. Where each
 * chunk is a frame by itself, as with notifications, chunks must come as they were sent.
 *
 * <p>Each message of the profile has its own stream; a chunk's input says which one it belongs to. Offsets of rejections
 * count the bytes of their stream, and their reasons name the message where the profile has several.
 *
 * <p>Garbage never throws: it is handed on as {@link Rejected} and counted, and the next good frame is found. Where
 * neither a start, a first literal nor a checksum proves that a frame is whole, the first one after the start or a
 * {@link #reset} is rejected, because it may have lost its beginning and still look like a number.
 *
 * <p>A channel that a frame says nothing about gives no sample for it.
 *
 * <p>For one thread at a time.
 */
public final class ProbeDecoder {
    private final MessageDecoder[] messages;
    private final Input[] inputs;
    private long strayChunks;
    private long strayBytes;

    /** For a device whose frames are plain; of another the protected frames are rejected. */
    public ProbeDecoder(Profile profile) {
        this(profile, Secrets.NONE);
    }

    public ProbeDecoder(Profile profile, Secrets secrets) {
        messages = new MessageDecoder[profile.messages().size()];
        for (int i = 0; i < messages.length; i++) {
            messages[i] = new MessageDecoder(profile, i, secrets);
        }
        List<Input> list = profile.inputs();
        inputs = list.toArray(Input[]::new);
    }

    /** Takes the next bytes of the stream; the sink hears of all that is now certain. */
    public void accept(Chunk chunk, DecodeSink sink) {
        int input = chunk.input();
        if (input < 0 || input >= inputs.length) {
            stray(chunk, sink);
            return;
        }
        int message = inputs[input].message();
        switch (inputs[input].kind()) {
            case FRAMES -> messages[message].accept(chunk, sink);
            case PRESENTATION -> messages[message].presentation(chunk, sink);
            case MEASUREMENT -> messages[message].measurement(message, chunk, sink);
        }
    }

    private void stray(Chunk chunk, DecodeSink sink) {
        int bytes = chunk.bytes().length;
        strayChunks++;
        sink.rejected(new Rejected(
                chunk.timeNanos(),
                strayBytes,
                "stray: " + bytes + " bytes that belong to no message, " + Ascii.hex(chunk.bytes(), 0, bytes)));
        strayBytes += bytes;
    }

    /** The stream has ended: a frame that only silence would end is handed on. */
    public void finish(DecodeSink sink) {
        for (MessageDecoder message : messages) {
            message.finish(sink);
        }
    }

    /** Forgets the frames that were under way, after a gap in the stream. Counters and offsets go on. */
    public void reset() {
        for (MessageDecoder message : messages) {
            message.reset();
        }
    }

    public long acceptedFrames() {
        return sum(MessageDecoder::acceptedFrames);
    }

    /** Rejections so far; each was handed to a sink. */
    public long rejectedFrames() {
        return strayChunks + sum(MessageDecoder::rejectedFrames);
    }

    /** Frames that never arrived or were rejected, by the gaps in the frames' own counter; 0 without a counter. */
    public long missedFrames() {
        return sum(MessageDecoder::missedFrames);
    }

    public long samples() {
        return sum(MessageDecoder::samples);
    }

    /** Bytes that have arrived and are not decided yet. */
    int undecidedBytes() {
        return (int) sum(MessageDecoder::undecidedBytes);
    }

    MessageDecoder message(int index) {
        return messages[index];
    }

    private long sum(ToLongFunction<MessageDecoder> count) {
        long sum = 0;
        for (MessageDecoder message : messages) {
            sum += count.applyAsLong(message);
        }
        return sum;
    }
}
