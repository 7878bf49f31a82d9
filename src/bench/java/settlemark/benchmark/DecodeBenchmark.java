package settlemark.benchmark;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import settlemark.decode.ProbeDecoder;
import settlemark.measure.Chunk;

/** Time for one sample; an operation is a sample. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class DecodeBenchmark {
    private static final int BINARY_SAMPLES = Streams.FRAMES * Streams.CHANNELS;
    private static final int TEXT_SAMPLES = Streams.FRAMES * Streams.NUMBERS;

    /** The binary stream and a decoder made from its profile. */
    @State(Scope.Thread)
    public static class Binary {
        final List<Chunk> chunks = Streams.chunks(Streams.frames(Streams.EIGHT_CHANNELS));
        final ProbeDecoder decoder = new ProbeDecoder(Streams.EIGHT_CHANNELS);
        final Sum sum = new Sum();
    }

    /** The same stream and a decoder written for it. */
    @State(Scope.Thread)
    public static class ByHand {
        final List<Chunk> chunks = Streams.chunks(Streams.frames(Streams.EIGHT_CHANNELS));
        final HandWritten decoder = new HandWritten();
        final Sum sum = new Sum();
    }

    /** Lines of text and a decoder made from their profile. */
    @State(Scope.Thread)
    public static class Text {
        final List<Chunk> chunks = Streams.chunks(Streams.frames(Streams.FOUR_NUMBERS));
        final ProbeDecoder decoder = new ProbeDecoder(Streams.FOUR_NUMBERS);
        final Sum sum = new Sum();

        public Text() {
            // The first line after the start is never taken, so it is one of another pass.
            byte[] line = "+0.00 +0.00 +0.00 +0.00\r\n".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
            decoder.accept(new Chunk(0, line), new Sum());
        }
    }

    @Benchmark
    @OperationsPerInvocation(BINARY_SAMPLES)
    public double binary(Binary state) {
        for (Chunk chunk : state.chunks) {
            state.decoder.accept(chunk, state.sum);
        }
        return state.sum.take(BINARY_SAMPLES);
    }

    @Benchmark
    @OperationsPerInvocation(BINARY_SAMPLES)
    public double binaryByHand(ByHand state) {
        for (Chunk chunk : state.chunks) {
            state.decoder.accept(chunk, state.sum);
        }
        return state.sum.take(BINARY_SAMPLES);
    }

    @Benchmark
    @OperationsPerInvocation(TEXT_SAMPLES)
    public double text(Text state) {
        for (Chunk chunk : state.chunks) {
            state.decoder.accept(chunk, state.sum);
        }
        return state.sum.take(TEXT_SAMPLES);
    }
}
