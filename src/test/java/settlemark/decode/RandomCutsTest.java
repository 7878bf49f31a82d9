package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;

/** The same bytes give the same samples and the same rejections, however they are cut. */
final class RandomCutsTest {
    /** Ways to cut for each profile, over ten thousand in all; twenty for each stream. */
    private static final int CUTS = 3_400;

    @ParameterizedTest
    @ValueSource(strings = {"demo-gauge", "demo-air", "plain-line"})
    void anyCutGivesTheSame(String id) {
        long seed = System.nanoTime();
        System.out.println("RandomCutsTest " + id + " seed " + seed);
        Random random = new Random(seed);
        Profile profile = ProfileLibrary.get(id);
        int cuts = 0;
        while (cuts < CUTS) {
            List<Chunk> stream = stream(profile, random);
            Recorder whole = Recorder.of(profile, stream.toArray(Chunk[]::new));
            assertThat(whole.samples).isNotEmpty();
            for (int i = 0; i < 20; i++) {
                List<Chunk> pieces = cut(stream, random);
                cuts++;
                assertThat(Recorder.of(profile, pieces.toArray(Chunk[]::new)).events)
                        .as("seed %d", seed)
                        .isEqualTo(whole.events);
            }
        }
    }

    /** Good frames with noise, damage and losses between them, in chunks that may begin and end anywhere. */
    private static List<Chunk> stream(Profile profile, Random random) {
        Encoder encoder = new Encoder(profile);
        java.io.ByteArrayOutputStream bytes = new java.io.ByteArrayOutputStream();
        bytes.writeBytes(frame(profile, encoder, random));
        for (int i = 0; i < 30; i++) {
            byte[] frame = frame(profile, encoder, random);
            switch (random.nextInt(8)) {
                case 0 -> {
                    byte[] noise = new byte[random.nextInt(150)];
                    random.nextBytes(noise);
                    bytes.writeBytes(noise);
                }
                case 1 -> {
                    frame[random.nextInt(frame.length)] ^= (byte) (1 << random.nextInt(8));
                    bytes.writeBytes(frame);
                }
                case 2 -> bytes.writeBytes(Arrays.copyOf(frame, random.nextInt(frame.length)));
                default -> bytes.writeBytes(frame);
            }
        }
        // Quiet frames at the end, so that the whole stream holds samples whatever came before.
        for (int i = 0; i < 40; i++) {
            bytes.writeBytes(frame(profile, encoder, random));
        }
        return chunks(bytes.toByteArray(), random);
    }

    private static byte[] frame(Profile profile, Encoder encoder, Random random) {
        int channels = profile.sources().size();
        double[] values = random.doubles(channels, 0, 100).toArray();
        SampleStatus[] statuses = new SampleStatus[channels];
        for (int c = 0; c < channels; c++) {
            boolean over = random.nextInt(10) == 0 && encoder.canSay(c, SampleStatus.OVER_RANGE);
            statuses[c] = over ? SampleStatus.OVER_RANGE : SampleStatus.OK;
        }
        return encoder.encode(values, statuses);
    }

    private static List<Chunk> chunks(byte[] bytes, Random random) {
        List<Chunk> chunks = new ArrayList<>();
        int from = 0;
        while (from < bytes.length) {
            int to = Math.min(bytes.length, from + 1 + random.nextInt(60));
            chunks.add(new Chunk(chunks.size(), Arrays.copyOfRange(bytes, from, to)));
            from = to;
        }
        return chunks;
    }

    /** Every chunk in pieces that keep its time. */
    private static List<Chunk> cut(List<Chunk> chunks, Random random) {
        List<Chunk> pieces = new ArrayList<>();
        int longest = 1 + random.nextInt(30);
        for (Chunk chunk : chunks) {
            int from = 0;
            while (from < chunk.bytes().length) {
                int to = Math.min(chunk.bytes().length, from + 1 + random.nextInt(longest));
                pieces.add(new Chunk(chunk.timeNanos(), Arrays.copyOfRange(chunk.bytes(), from, to)));
                from = to;
            }
        }
        return pieces;
    }
}
