package settlemark.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import settlemark.measure.Chunk;

/**
 * A stream from a fuzzer's bytes: a line with a name, four bytes that say where it is cut, and then what the probe
 * sends. The name is text, so that a kept finding means the same when there are more profiles.
 *
 * @param name up to the first newline, of which the first {@value #LONGEST_NAME} bytes are searched; empty without one
 * @param cutSeed decides all cuts; 0 for a stream in one piece, and negative for one whose chunks come from any input
 *     of the profile or from none, where otherwise all come from the first
 * @param bytes what the probe sends
 */
record FuzzedStream(String name, int cutSeed, byte[] bytes) {
    private static final int LONGEST_NAME = 40;
    private static final int LONGEST_CHUNK = 60;

    static FuzzedStream of(byte[] input) {
        int end = 0;
        while (end < Math.min(input.length, LONGEST_NAME) && input[end] != '\n') {
            end++;
        }
        boolean named = end < input.length && input[end] == '\n';
        int from = named ? end + 1 : 0;
        int cutSeed = 0;
        for (int i = from; i < Math.min(input.length, from + Integer.BYTES); i++) {
            cutSeed = cutSeed << Byte.SIZE | input[i] & 0xFF;
        }
        return new FuzzedStream(
                named ? new String(input, 0, end, StandardCharsets.ISO_8859_1) : "",
                cutSeed,
                Arrays.copyOfRange(input, Math.min(input.length, from + Integer.BYTES), input.length));
    }

    /** The input that gives this stream again. */
    byte[] toInput() {
        ByteArrayOutputStream input = new ByteArrayOutputStream();
        input.writeBytes((name + "\n").getBytes(StandardCharsets.ISO_8859_1));
        for (int shift = Integer.SIZE - Byte.SIZE; shift >= 0; shift -= Byte.SIZE) {
            input.write(cutSeed >>> shift);
        }
        input.writeBytes(bytes);
        return input.toByteArray();
    }

    /**
     * As it arrived: chunks with rising times.
     *
     * @param inputs how many the profile has
     */
    List<Chunk> chunks(int inputs) {
        Random random = new Random(cutSeed);
        List<Chunk> chunks = new ArrayList<>();
        for (byte[] part : cut(bytes, random)) {
            int input = cutSeed < 0 ? random.nextInt(Chunk.STRAY, inputs) : 0;
            chunks.add(new Chunk(chunks.size() * 1_000_000L, input, part));
        }
        return chunks;
    }

    /** The same, with every chunk in pieces that keep its time. */
    List<Chunk> pieces(int inputs) {
        Random random = new Random(~cutSeed);
        List<Chunk> pieces = new ArrayList<>();
        for (Chunk chunk : chunks(inputs)) {
            for (byte[] part : cut(chunk.bytes(), random)) {
                pieces.add(new Chunk(chunk.timeNanos(), chunk.input(), part));
            }
        }
        return pieces;
    }

    private List<byte[]> cut(byte[] whole, Random random) {
        if (cutSeed == 0) {
            return whole.length == 0 ? List.of() : List.of(whole);
        }
        int longest = 1 + random.nextInt(LONGEST_CHUNK);
        List<byte[]> parts = new ArrayList<>();
        for (int from = 0; from < whole.length; ) {
            int to = Math.min(whole.length, from + 1 + random.nextInt(longest));
            parts.add(Arrays.copyOfRange(whole, from, to));
            from = to;
        }
        return parts;
    }
}
