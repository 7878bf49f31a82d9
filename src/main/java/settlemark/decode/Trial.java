package settlemark.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.ByteText;
import settlemark.profile.Example;
import settlemark.profile.Input;
import settlemark.profile.Profile;

/**
 * What one frame by itself gives; values, statuses and words are those of the last good frame, by channel and fact of
 * its message.
 *
 * @param contents the message as the circumstances make it
 * @param frames good ones
 * @param statuses null for what the frame does not give
 * @param words null for what the frame does not hold
 * @param pattern the last good frame's content
 * @param rejections reasons, in order
 */
record Trial(
        Contents contents,
        long frames,
        double[] values,
        @Nullable SampleStatus[] statuses,
        @Nullable String[] words,
        MessageEncoder.Pattern pattern,
        List<String> rejections) {
    /** The first good example of a message that is indeed one good frame. */
    static Optional<Trial> proved(Profile profile, int message) {
        return profile.examples().stream()
                .filter(example -> example.isGood() && example.message() == message)
                .map(example -> of(profile, example, example.bytes().toBytes()))
                .filter(Trial::isOneGoodFrame)
                .findFirst();
    }

    boolean isOneGoodFrame() {
        return frames == 1 && rejections.isEmpty();
    }

    /** Decodes a frame in an example's circumstances. */
    static Trial of(Profile profile, Example example, byte[] frame) {
        int message = example.message();
        ProbeDecoder decoder = new ProbeDecoder(profile, example.circumstances().secrets());
        MessageDecoder watched = decoder.message(message);
        Recorded recorded = new Recorded(watched.contents());
        watched.watch(recorded);
        describe(
                profile,
                Input.Kind.PRESENTATION,
                example,
                example.circumstances().presentation(),
                decoder,
                recorded);
        describe(
                profile,
                Input.Kind.MEASUREMENT,
                example,
                example.circumstances().measurement(),
                decoder,
                recorded);
        watched.begin();
        if (frame.length > 0) {
            decoder.accept(new Chunk(0, message, frame), recorded);
        }
        if (decoder.undecidedBytes() > 0) {
            decoder.finish(recorded);
        }
        if (decoder.undecidedBytes() > 0 || frame.length == 0) {
            recorded.rejections.add("incomplete: the frame goes on after its " + frame.length + " bytes");
        }
        long cipherCount = watched.contents()
                .message()
                .cipher()
                .map(c -> FrameCipher.of(c, example.circumstances().secrets()).counter(frame, 0, frame.length))
                .orElse(0L);
        return new Trial(
                watched.contents(),
                decoder.acceptedFrames(),
                recorded.values,
                recorded.statuses,
                recorded.words,
                new MessageEncoder.Pattern(recorded.content, cipherCount),
                List.copyOf(recorded.rejections));
    }

    private static void describe(
            Profile profile,
            Input.Kind kind,
            Example example,
            Optional<ByteText> value,
            ProbeDecoder decoder,
            Recorded recorded) {
        int input = profile.inputs().indexOf(new Input(kind, example.message()));
        if (value.isPresent() && !value.get().isEmpty()) {
            if (input < 0) {
                recorded.rejections.add("the message does not honour the descriptor that the example gives");
            } else {
                decoder.accept(new Chunk(0, input, value.get().toBytes()), recorded);
            }
        }
    }

    /** Keeps what the last good frame gives. */
    private static final class Recorded implements DecodeSink, MessageDecoder.Watch {
        private final List<String> rejections = new ArrayList<>();
        private double[] values;
        private @Nullable SampleStatus[] statuses;
        private @Nullable String[] words;
        private byte[] content = new byte[0];

        Recorded(Contents contents) {
            FrameValues nothing = contents.values();
            values = nothing.values;
            statuses = nothing.statuses;
            words = nothing.words;
        }

        @Override
        public void frame(byte[] bytes, int from, int to, long offset, FrameValues found) {
            content = Arrays.copyOfRange(bytes, from, to);
            values = found.values.clone();
            statuses = found.statuses.clone();
            words = found.words.clone();
        }

        @Override
        public void sample(int channel, long timeNanos, double value, SampleStatus status) {}

        @Override
        public void rejected(Rejected rejected) {
            rejections.add(rejected.reason());
        }
    }
}
