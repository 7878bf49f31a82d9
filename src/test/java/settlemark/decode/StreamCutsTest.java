package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import settlemark.measure.Chunk;
import settlemark.measure.Sample;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;

/** For every framing of a stream: any cut gives the same, and whatever comes in, the good frames behind it arrive. */
final class StreamCutsTest {
    private static final int CUTS = 100_000;
    private static final int CUTS_OF_EACH_STREAM = 50;
    private static final long SILENCE_NANOS = 10_000_000;

    private static Random random(String what, Framed framed) {
        long seed = Long.getLong("cuts.seed", System.nanoTime());
        System.out.println("StreamCutsTest " + what + " " + framed + " seed " + seed);
        return new Random(seed);
    }

    private static byte[] frame(Encoder encoder, double p, double q) {
        return encoder.encode(new double[] {p, q}, new SampleStatus[] {SampleStatus.OK, SampleStatus.OK});
    }

    private static byte[] frame(Encoder encoder, Random random) {
        // Small numbers and such as look like marks, escapes and starts.
        int[] pieces = {0, 1, 2, 3, 0x10, 0x20, 0x5A, 0x5E, 0x7D, 0x7E, 0xA5, 0xC0, 0xDB, 0xDC, 0xDD};
        int p = pieces[random.nextInt(pieces.length)] << 8 | pieces[random.nextInt(pieces.length)];
        int q = pieces[random.nextInt(pieces.length)] << 8 | pieces[random.nextInt(pieces.length)];
        return frame(encoder, (short) p, q);
    }

    @ParameterizedTest
    @EnumSource
    void anyCutGivesTheSame(Framed framed) {
        Random random = random("cuts", framed);
        Profile profile = framed.profile;
        long samples = 0;
        long rejections = 0;
        for (int cuts = 0; cuts < CUTS; cuts += CUTS_OF_EACH_STREAM) {
            List<Chunk> stream = stream(profile, random);
            Recorder whole = decoded(profile, stream);
            samples += whole.samples.size();
            rejections += whole.rejections.size();
            for (int i = 0; i < CUTS_OF_EACH_STREAM; i++) {
                Recorder cut = decoded(profile, cut(stream, random));
                if (!cut.events.equals(whole.events)) {
                    assertThat(cut.events).isEqualTo(whole.events);
                }
            }
        }
        assertThat(samples).isGreaterThan(CUTS / CUTS_OF_EACH_STREAM);
        assertThat(rejections).isGreaterThan(CUTS / CUTS_OF_EACH_STREAM / 4);
    }

    private static Recorder decoded(Profile profile, List<Chunk> chunks) {
        Recorder recorder = new Recorder();
        ProbeDecoder decoder = new ProbeDecoder(profile);
        chunks.forEach(chunk -> decoder.accept(chunk, recorder));
        decoder.finish(recorder);
        assertThat(decoder.rejectedFrames()).isEqualTo(recorder.rejections.size());
        assertThat(decoder.samples()).isEqualTo(recorder.samples.size());
        return recorder;
    }

    /** A few frames, good and damaged, with noise and silences between them, in chunks that begin and end anywhere. */
    private static List<Chunk> stream(Profile profile, Random random) {
        Encoder encoder = new Encoder(profile);
        List<Chunk> chunks = new ArrayList<>();
        long[] time = {0};
        for (int i = 0; i < 5; i++) {
            byte[] frame = frame(encoder, random);
            byte[] piece = switch (random.nextInt(6)) {
                case 0 -> {
                    byte[] noise = new byte[1 + random.nextInt(60)];
                    random.nextBytes(noise);
                    yield noise;
                }
                case 1 -> {
                    frame[random.nextInt(frame.length)] ^= (byte) (1 << random.nextInt(8));
                    yield frame;
                }
                case 2 -> Arrays.copyOf(frame, 1 + random.nextInt(frame.length));
                default -> frame;
            };
            int from = 0;
            while (from < piece.length) {
                int to = Math.min(piece.length, from + 1 + random.nextInt(20));
                time[0] += random.nextInt(3) * 1_000_000L;
                chunks.add(new Chunk(time[0], Arrays.copyOfRange(piece, from, to)));
                from = to;
            }
            time[0] += random.nextInt(8) == 0 ? 0 : SILENCE_NANOS;
        }
        chunks.add(new Chunk(time[0], frame(encoder, random)));
        return chunks;
    }

    /** Every chunk in pieces that keep its time. */
    private static List<Chunk> cut(List<Chunk> chunks, Random random) {
        List<Chunk> pieces = new ArrayList<>();
        int longest = 1 + random.nextInt(12);
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

    @ParameterizedTest
    @EnumSource
    void goodFramesComeBackInOrder(Framed framed) {
        Random random = random("frames", framed);
        Encoder encoder = new Encoder(framed.profile);
        ProbeDecoder decoder = new ProbeDecoder(framed.profile);
        Recorder recorder = new Recorder();
        List<Double> sent = new ArrayList<>();
        for (int i = 0; i < 3_000; i++) {
            double p = (short) random.nextInt(0x10000);
            // Its sign is turned, and 16 bits hold one number more below zero than above.
            double q = framed == Framed.TAGGED_SLIP
                    ? Math.max(-Short.MAX_VALUE, (short) random.nextInt())
                    : random.nextInt(0x1000000);
            sent.add(p);
            sent.add(q);
            decoder.accept(new Chunk(i * SILENCE_NANOS, frame(encoder, p, q)), recorder);
        }
        decoder.finish(recorder);
        assertThat(recorder.rejections).isEmpty();
        assertThat(recorder.samples.stream().map(Sample::value).toList()).isEqualTo(sent);
        assertThat(decoder.acceptedFrames()).isEqualTo(3_000);
    }

    @ParameterizedTest
    @EnumSource
    void goodFramesArriveAfterAnyNoise(Framed framed) {
        Random random = random("noise", framed);
        Encoder encoder = new Encoder(framed.profile);
        for (int i = 0; i < 1_000; i++) {
            byte[] noise = new byte[1 + random.nextInt(400)];
            random.nextBytes(noise);
            List<Chunk> chunks = new ArrayList<>(List.of(new Chunk(0, noise)));
            for (int n = 1; n <= 10; n++) {
                chunks.add(new Chunk(n * SILENCE_NANOS, frame(encoder, 12, 34)));
            }
            // The first may lie in a frame that noise began, and the last wait for a length that noise pretends to
            // have.
            assertThat(decoded(framed.profile, chunks).values(0).stream()
                            .filter(value -> value == 12)
                            .count())
                    .isGreaterThanOrEqualTo(6);
        }
    }

    @ParameterizedTest
    @EnumSource
    void aMegabyteOfOneByteNeitherHangsNorGrows(Framed framed) {
        Encoder encoder = new Encoder(framed.profile);
        for (int b = 0; b < 256; b++) {
            byte[] same = new byte[b == 0x00 || b == 0xA5 || b == 0xC0 ? 1 << 20 : 1 << 12];
            Arrays.fill(same, (byte) b);
            ProbeDecoder decoder = new ProbeDecoder(framed.profile);
            Recorder recorder = new Recorder();
            decoder.accept(new Chunk(1, same), recorder);
            assertThat(decoder.undecidedBytes()).isLessThanOrEqualTo(40);
            for (int n = 0; n < 4; n++) {
                decoder.accept(new Chunk((2 + n) * SILENCE_NANOS, frame(encoder, 7, 8)), recorder);
            }
            decoder.finish(recorder);
            assertThat(recorder.values(0)).as("byte %d", b).contains(7.0);
        }
    }

    /** Headers that all say the longest length: the search for a good frame within them must stay cheap. */
    @Test
    void longLengthsAtEveryByteDoNotHang() {
        Profile profile = Made.message(new settlemark.profile.Framing.LengthField(
                        settlemark.profile.ByteText.ofHex("FF"), 1, Made.U16, 0, 1 << 16))
                .checksum(Made.MODBUS_CRC)
                .at("p", 3, Made.number(Made.S16))
                .at("q", 5, Made.number(Made.S16))
                .shown("p", "q")
                .profile();
        byte[] hostile = new byte[1 << 20];
        Arrays.fill(hostile, (byte) 0xFF);
        ProbeDecoder decoder = new ProbeDecoder(profile);
        Recorder recorder = new Recorder();
        long start = System.nanoTime();
        decoder.accept(new Chunk(1, hostile), recorder);
        assertThat(System.nanoTime() - start).as("nanoseconds for a megabyte").isLessThan(20_000_000_000L);
        assertThat(recorder.rejections).hasSizeBetween(10, 20);
        Encoder encoder = new Encoder(profile);
        byte[] good = frame(encoder, 1, 2);
        for (int i = 0; i < 8_000; i++) {
            decoder.accept(new Chunk(2, good), recorder);
        }
        assertThat(recorder.values(0)).isNotEmpty().containsOnly(1.0);
    }
}
