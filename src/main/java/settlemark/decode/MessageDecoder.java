package settlemark.decode;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.profile.Secrets;
import settlemark.profile.Source;

/** Decodes the frames of one message. */
final class MessageDecoder implements FrameSink {
    /** Sees the content of each good frame, opened where it was protected. */
    interface Watch {
        void frame(byte[] bytes, int from, int to, long offset, FrameValues values);
    }

    private static final DecodeSink NOBODY = new DecodeSink() {
        @Override
        public void sample(int channel, long timeNanos, double value, SampleStatus status) {}

        @Override
        public void rejected(Rejected rejected) {}
    };

    private final Contents original;
    /** As the device says by its descriptors. */
    private Contents contents;

    private final int[] channels;
    private final int[] facts;
    private final Intake intake;
    private final @Nullable FrameCipher cipher;
    private final FrameValues values;
    /** Before each reason: which message it is about, where the profile has several. */
    private final String about;

    /** A link hands on whole answers only, so that none has lost its beginning. */
    private final boolean asked;

    private FrameReader reader;
    private DecodeSink sink = NOBODY;
    private @Nullable Watch watch;
    private long acceptedFrames;
    private long rejectedFrames;
    private long missedFrames;
    private long samples;

    MessageDecoder(Profile profile, int message, Secrets secrets) {
        original = Contents.of(profile, message);
        contents = original;
        channels = indices(original.channels());
        facts = indices(original.facts());
        intake = Intake.of(original);
        cipher =
                original.message().cipher().map(c -> FrameCipher.of(c, secrets)).orElse(null);
        values = original.values();
        about = profile.messages().size() > 1 ? original.message().id() + ": " : "";
        reader = FrameReader.of(original);
        Source source = original.message().source();
        asked = source instanceof Source.Answer || source instanceof Source.Registers;
        beginWhereAsked();
    }

    private void beginWhereAsked() {
        if (asked) {
            intake.begin();
        }
    }

    private static int[] indices(List<Integer> list) {
        return list.stream().mapToInt(Integer::intValue).toArray();
    }

    void accept(Chunk chunk, DecodeSink target) {
        sink = target;
        try {
            intake.accept(chunk, this);
        } finally {
            sink = NOBODY;
        }
    }

    void finish(DecodeSink target) {
        sink = target;
        try {
            intake.finish(this);
        } finally {
            sink = NOBODY;
        }
    }

    /** Takes the value of descriptor 0x2904; where it cannot be honoured the profile's own scale stays. */
    void presentation(Chunk chunk, DecodeSink target) {
        Optional<Presentation> presentation = Presentation.read(chunk.bytes());
        @Nullable String reason = null;
        if (presentation.isEmpty()) {
            reason = "descriptor 0x2904 has 7 bytes, got " + chunk.bytes().length;
        } else {
            try {
                contents = presentation.get().applyTo(original);
                reader = FrameReader.of(contents);
            } catch (IllegalArgumentException e) {
                reason = "descriptor 0x2904 is not honoured: " + e.getMessage();
            }
        }
        if (reason != null) {
            sink = target;
            rejected(chunk.timeNanos(), 0, reason);
            sink = NOBODY;
        }
    }

    /** Takes the value of descriptor 0x290C. */
    void measurement(int message, Chunk chunk, DecodeSink target) {
        Optional<MeasurementNote> note = Descriptors.measurement(chunk.bytes());
        if (note.isPresent()) {
            target.note(message, chunk.timeNanos(), note.get());
        } else {
            sink = target;
            rejected(chunk.timeNanos(), 0, "descriptor 0x290C has 11 bytes, got " + chunk.bytes().length);
            sink = NOBODY;
        }
    }

    void reset() {
        intake.reset();
        reader.reset();
        beginWhereAsked();
    }

    void begin() {
        intake.begin();
    }

    void watch(Watch watching) {
        watch = watching;
    }

    Contents contents() {
        return contents;
    }

    int undecidedBytes() {
        return intake.undecidedBytes();
    }

    long acceptedFrames() {
        return acceptedFrames;
    }

    long rejectedFrames() {
        return rejectedFrames;
    }

    long missedFrames() {
        return missedFrames;
    }

    long samples() {
        return samples;
    }

    @Override
    public @Nullable String frame(byte[] bytes, int from, int to, long timeNanos, long offset) {
        if (cipher != null && cipher.isClosed(bytes, from, to)) {
            FrameCipher.Opened opened = cipher.open(bytes, from, to);
            return opened.complaint() != null
                    ? opened.complaint()
                    : plainFrame(opened.bytes(), 0, opened.bytes().length, timeNanos, offset);
        }
        return plainFrame(bytes, from, to, timeNanos, offset);
    }

    private @Nullable String plainFrame(byte[] bytes, int from, int to, long timeNanos, long offset) {
        @Nullable String reason = reader.read(bytes, from, to, values);
        if (reason != null) {
            return reason;
        }
        acceptedFrames++;
        missedFrames += reader.missed();
        if (watch != null) {
            watch.frame(bytes, from, to, offset, values);
        }
        for (int i = 0; i < channels.length; i++) {
            @Nullable SampleStatus status = values.statuses[i];
            if (status != null) {
                samples++;
                sink.sample(channels[i], timeNanos, values.values[i], status);
            }
        }
        for (int i = 0; i < facts.length; i++) {
            @Nullable String words = values.words[i];
            if (words != null) {
                sink.fact(facts[i], timeNanos, words);
            }
        }
        return null;
    }

    @Override
    public void rejected(long timeNanos, long offset, String reason) {
        rejectedFrames++;
        sink.rejected(new Rejected(timeNanos, offset, about + reason));
    }
}
