package settlemark.benchmark;

import java.util.List;
import java.util.Locale;
import org.openjdk.jmh.runner.RunnerException;
import settlemark.decode.ProbeDecoder;
import settlemark.measure.Chunk;

/** How fast bytes become samples. */
final class DecodeSuite implements BenchmarkMain.Suite {
    @Override
    public void run(List<String> arguments) throws RunnerException {
        if (!arguments.isEmpty()) {
            throw new IllegalArgumentException("decode takes no arguments, got " + arguments);
        }
        checkThatBothDoTheSame();
        Measured measured = Measured.run(DecodeBenchmark.class);
        measured.print("sample");
        double binary = measured.nanos("binary");
        System.out.printf(
                Locale.ROOT,
                "result binary_samples_per_s=%.0f text_samples_per_s=%.0f vs_bytebuffer=%.2f%n",
                1e9 / binary,
                1e9 / measured.nanos("text"),
                binary / measured.nanos("binaryByHand"));
    }

    /** The comparison is fair only where both find the same samples, also in a stream that is damaged. */
    private static void checkThatBothDoTheSame() {
        List<Chunk> chunks = Streams.chunks(Streams.damaged(Streams.frames(Streams.EIGHT_CHANNELS)));
        ProbeDecoder decoder = new ProbeDecoder(Streams.EIGHT_CHANNELS);
        HandWritten byHand = new HandWritten();
        Sum ours = new Sum();
        Sum theirs = new Sum();
        for (Chunk chunk : chunks) {
            decoder.accept(chunk, ours);
            byHand.accept(chunk, theirs);
        }
        boolean same = ours.samples() == theirs.samples()
                && Math.abs(ours.sum() - theirs.sum()) < 1e-6
                && decoder.missedFrames() == byHand.missedFrames();
        boolean damaged = decoder.missedFrames() > 0 && ours.samples() < (long) Streams.FRAMES * Streams.CHANNELS;
        if (!same || !damaged) {
            throw new IllegalStateException("the decoders do not agree: " + ours.samples() + " samples, sum "
                    + ours.sum() + ", missed " + decoder.missedFrames() + " beside " + theirs.samples() + ", "
                    + theirs.sum() + ", " + byHand.missedFrames());
        }
    }
}
