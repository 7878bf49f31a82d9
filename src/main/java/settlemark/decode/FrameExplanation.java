package settlemark.decode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.profile.Secrets;

/**
 * What a profile makes of some bytes of one message, frame by frame and field by field, for a person who wants to
 * understand why.
 *
 * @param offset of the frame, or of the first bad byte, in the bytes
 * @param content of a good frame without marks and escapes, and opened where it was protected; empty for a bad one
 * @param fields of a good frame in the profile's order, those that stand in it
 * @param rejection why the bytes are no good frame; empty for a good one
 */
public record FrameExplanation(long offset, String content, List<FieldReading> fields, String rejection) {
    public FrameExplanation {
        Objects.requireNonNull(content);
        Objects.requireNonNull(rejection);
        fields = List.copyOf(fields);
    }

    public boolean isGood() {
        return rejection.isEmpty();
    }

    /**
     * A field of a good frame.
     *
     * @param name of the field
     * @param from offset of its first byte in the frame's content
     * @param to offset after its last byte
     * @param hex its bytes as hexadecimal pairs, the first twenty of many
     * @param raw its raw number, its characters in quotes, or its bytes where it is a literal
     * @param reading of a number, empty for a literal and for characters
     */
    public record FieldReading(String name, int from, int to, String hex, String raw, Optional<NumberReading> reading) {
        public FieldReading {
            Objects.requireNonNull(name);
            Objects.requireNonNull(hex);
            Objects.requireNonNull(raw);
            Objects.requireNonNull(reading);
        }
    }

    /**
     * A number of a field as its channel has it.
     *
     * @param channel name of the channel, empty where none shows the field
     * @param value in the unit, NaN where the status is not OK
     * @param unit of the channel, empty where none shows the field
     * @param status what the device says about it
     */
    public record NumberReading(String channel, double value, Optional<Unit> unit, SampleStatus status) {
        public NumberReading {
            Objects.requireNonNull(channel);
            Objects.requireNonNull(unit);
            Objects.requireNonNull(status);
        }
    }

    /**
     * Explains bytes that begin with a frame; what only silence would end is taken as ended.
     *
     * @param message index in the profile's messages
     * @param bytes as they travel, at least one
     * @param secrets of the device, {@link Secrets#NONE} for plain frames
     * @return good and bad frames in the order in which they were decided
     */
    public static List<FrameExplanation> of(Profile profile, int message, byte[] bytes, Secrets secrets) {
        return of(profile, message, List.of(new Chunk(0, message, bytes)), secrets);
    }

    /**
     * Explains chunks of one message, the first of which begins with a frame.
     *
     * @param chunks in the order of their times; their inputs are not looked at
     */
    public static List<FrameExplanation> of(Profile profile, int message, List<Chunk> chunks, Secrets secrets) {
        MessageDecoder decoder = new MessageDecoder(profile, message, secrets);
        List<FrameExplanation> explained = new ArrayList<>();
        FieldListing listing = new FieldListing(decoder.contents());
        decoder.watch((content, from, to, offset, values) -> {
            byte[] frame = Arrays.copyOfRange(content, from, to);
            explained.add(new FrameExplanation(offset, Ascii.wholeHex(frame, 0, frame.length), listing.of(frame), ""));
        });
        DecodeSink rejections = new DecodeSink() {
            @Override
            public void sample(int channel, long timeNanos, double value, SampleStatus status) {}

            @Override
            public void rejected(Rejected rejected) {
                explained.add(new FrameExplanation(rejected.offset(), "", List.of(), rejected.reason()));
            }
        };
        decoder.begin();
        chunks.forEach(chunk -> decoder.accept(chunk, rejections));
        decoder.finish(rejections);
        long left = decoder.undecidedBytes();
        if (left > 0) {
            long all = chunks.stream().mapToLong(chunk -> chunk.bytes().length).sum();
            explained.add(new FrameExplanation(
                    all - left, "", List.of(), "incomplete: the last " + left + " bytes are no whole frame"));
        }
        return List.copyOf(explained);
    }
}
