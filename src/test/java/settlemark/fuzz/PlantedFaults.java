package settlemark.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.Arrays;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.decode.DecodeSink;
import settlemark.decode.ProbeDecoder;
import settlemark.decode.Rejected;
import settlemark.measure.Chunk;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;

/**
 * Decoders with a fault planted in them, which the fuzzer must find: where it does not, it finds nothing elsewhere
 * either. No test of the build, because here a failure is the good end.
 */
final class PlantedFaults {
    private static final Profile PROFILE = ProfileLibrary.get("demo-air");
    private static final Inputs INPUTS = Inputs.of(PROFILE);

    static Stream<Arguments> goodFrames() {
        return Stream.of(
                Arguments.of(Named.of("good frames", Frames.encoded(PROFILE, 0).toInput())));
    }

    @MethodSource("goodFrames")
    @FuzzTest(maxDuration = "1m")
    void aLengthThatIsBelieved(byte[] input) {
        AnyCut.check(FuzzedStream.of(input), INPUTS, () -> PlantedFaults::believeTheLength);
    }

    @MethodSource("goodFrames")
    @FuzzTest(maxDuration = "1m")
    void halfAStartMarkerThatIsForgotten(byte[] input) {
        AnyCut.check(FuzzedStream.of(input), INPUTS, () -> forgetful(new ProbeDecoder(PROFILE)));
    }

    @MethodSource("goodFrames")
    @FuzzTest(maxDuration = "1m")
    void aBufferThatNeverStopsGrowing(byte[] input) {
        AnyCut.check(FuzzedStream.of(input), INPUTS, () -> PlantedFaults::reserveTheLength);
    }

    @MethodSource("goodFrames")
    @FuzzTest(maxDuration = "1m")
    void aLoopWithoutEnd(byte[] input) {
        AnyCut.check(FuzzedStream.of(input), INPUTS, () -> PlantedFaults::stepByTheLength);
    }

    /** Reads as many bytes as a frame of kind 7 says that it has, whether or not they are there. */
    private static void believeTheLength(Chunk chunk, DecodeSink sink) {
        byte[] bytes = chunk.bytes();
        for (int i = 0; i + 3 < bytes.length; i++) {
            if (bytes[i] == (byte) 0xA5 && bytes[i + 1] == 0x5A && bytes[i + 3] == 7) {
                int sum = 0;
                for (int k = 0; k < bytes[i + 2]; k++) {
                    sum += bytes[i + 3 + k];
                }
                // Never: the sum is wanted only so that the bytes are read, and it is for that fault to be found.
                if (sum == Integer.MIN_VALUE) {
                    sink.rejected(new Rejected(chunk.timeNanos(), i, "empty"));
                }
            }
        }
    }

    /** Loses the first byte of a start marker where the chunk ends behind it. */
    private static BiConsumer<Chunk, DecodeSink> forgetful(ProbeDecoder decoder) {
        return (chunk, sink) -> {
            byte[] bytes = chunk.bytes();
            int kept = bytes[bytes.length - 1] == (byte) 0xA5 ? bytes.length - 1 : bytes.length;
            if (kept > 0) {
                decoder.accept(new Chunk(chunk.timeNanos(), chunk.input(), Arrays.copyOf(bytes, kept)), sink);
            }
        };
    }

    /** Makes room for the length that a frame of kind 7 promises, without a limit. */
    private static void reserveTheLength(Chunk chunk, DecodeSink sink) {
        byte[] bytes = chunk.bytes();
        for (int i = 0; i + 5 < bytes.length; i++) {
            if (bytes[i] == (byte) 0xA5 && bytes[i + 1] == 0x5A && bytes[i + 3] == 7 && bytes[i + 4] > 0) {
                byte[] room = new byte[bytes[i + 4] << 24];
                if (room.length < bytes[i + 5]) {
                    sink.rejected(new Rejected(chunk.timeNanos(), i, "no room"));
                }
            }
        }
    }

    /** Goes on to the next frame by the length of this one, which can be nothing. */
    private static void stepByTheLength(Chunk chunk, DecodeSink sink) {
        byte[] bytes = chunk.bytes();
        int at = 0;
        while (at + 2 < bytes.length) {
            boolean frame = bytes[at] == (byte) 0xA5 && bytes[at + 1] == 0x5A;
            at += frame ? bytes[at + 2] & 0xFF : 1;
        }
        if (at < 0) {
            sink.rejected(new Rejected(chunk.timeNanos(), at, "before the start"));
        }
    }
}
