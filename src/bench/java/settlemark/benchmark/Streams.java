package settlemark.benchmark;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import settlemark.decode.Encoder;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;

/** The streams that are decoded: frames of changing values, in chunks that end anywhere in a frame. */
final class Streams {
    /** A multiple of 256, so that the stream can be repeated without a gap in the frames' counter. */
    static final int FRAMES = 4096;

    static final int CHANNELS = 8;
    static final int NUMBERS = 4;
    static final Profile EIGHT_CHANNELS = profile("eight-channels.yaml");
    static final Profile FOUR_NUMBERS = profile("four-numbers.yaml");

    private static final int CHUNK_BYTES = 256;
    private static final long NANOS_PER_CHUNK = 1_000_000;
    private static final long SEED = 20_260_101;

    private Streams() {}

    private static Profile profile(String name) {
        try (InputStream in = Streams.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is not on the class path");
            }
            return ProfileReader.read(name, in.readAllBytes()).orThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** {@link #FRAMES} frames of a profile. */
    static byte[] frames(Profile profile) {
        Random random = new Random(SEED);
        Encoder encoder = new Encoder(profile);
        int channels = profile.channels().size();
        SampleStatus[] statuses = new SampleStatus[channels];
        Arrays.fill(statuses, SampleStatus.OK);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (int i = 0; i < FRAMES; i++) {
            bytes.writeBytes(encoder.encode(random.doubles(channels, -300, 300).toArray(), statuses));
        }
        return bytes.toByteArray();
    }

    static List<Chunk> chunks(byte[] bytes) {
        List<Chunk> chunks = new ArrayList<>();
        for (int from = 0; from < bytes.length; from += CHUNK_BYTES) {
            byte[] part = Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + CHUNK_BYTES));
            chunks.add(new Chunk(chunks.size() * NANOS_PER_CHUNK, part));
        }
        return chunks;
    }

    /** A byte in a thousand changed, lost or doubled. */
    static byte[] damaged(byte[] bytes) {
        Random random = new Random(SEED);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (byte b : bytes) {
            switch (random.nextInt(3000)) {
                case 0 -> out.write(b ^ 1 << random.nextInt(Byte.SIZE));
                case 1 -> {} // lost
                case 2 -> out.writeBytes(new byte[] {b, b});
                default -> out.write(b);
            }
        }
        return out.toByteArray();
    }
}
