package settlemark.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import settlemark.measure.Chunk;

/**
 * A stream from a fuzzer's bytes: a line with a name, four bytes that say how it is cut, and then what the probe sends.
 * The name is text, so that a kept finding means the same when there are more profiles.
 *
 * @param name up to the first newline, of which the first {@value #LONGEST_NAME} bytes are searched; empty without one
 * @param cut decides all cuts. Where it is 0, all arrives in one chunk of the first input. Where it is positive, it
 *     arrives in random chunks of the first input. Where it is negative, the bytes say it themselves: before each chunk
 *     a byte for its input, where 0 is a stray chunk and 1 the first input, and a byte for its length.
 * @param bytes what the probe sends
 */
record FuzzedStream(String name, int cut, byte[] bytes) {
    private static final int LONGEST_NAME = 40;
    private static final int LONGEST_CHUNK = 60;
    private static final long NANOS_BETWEEN_CHUNKS = 1_000_000;

    static FuzzedStream of(byte[] input) {
        int end = 0;
        while (end < Math.min(input.length, LONGEST_NAME) && input[end] != '\n') {
            end++;
        }
        boolean named = end < input.length && input[end] == '\n';
        int from = named ? end + 1 : 0;
        int cut = 0;
        for (int i = from; i < Math.min(input.length, from + Integer.BYTES); i++) {
            cut = cut << Byte.SIZE | input[i] & 0xFF;
        }
        return new FuzzedStream(
                named ? new String(input, 0, end, StandardCharsets.ISO_8859_1) : "",
                cut,
                Arrays.copyOfRange(input, Math.min(input.length, from + Integer.BYTES), input.length));
    }

    /** The input that gives this stream again. */
    byte[] toInput() {
        ByteArrayOutputStream input = new ByteArrayOutputStream();
        input.writeBytes((name + "\n").getBytes(StandardCharsets.ISO_8859_1));
        for (int shift = Integer.SIZE - Byte.SIZE; shift >= 0; shift -= Byte.SIZE) {
            input.write(cut >>> shift);
        }
        input.writeBytes(bytes);
        return input.toByteArray();
    }

    /** As it arrived: chunks with rising times. */
    List<Chunk> chunks(Inputs inputs) {
        if (cut < 0) {
            return saidChunks(inputs);
        }
        return bytes.length == 0 ? List.of() : cut(new Chunk(0, bytes), 1);
    }

    private List<Chunk> saidChunks(Inputs inputs) {
        List<Chunk> chunks = new ArrayList<>();
        for (int from = 0; from + 2 < bytes.length; ) {
            int input = (bytes[from] & 0xFF) % (inputs.count() + 1) + Chunk.STRAY;
            int start = from + 2;
            from = Math.min(bytes.length, start + Math.max(1, bytes[from + 1] & 0xFF));
            chunks.add(new Chunk(chunks.size() * NANOS_BETWEEN_CHUNKS, input, Arrays.copyOfRange(bytes, start, from)));
        }
        return chunks;
    }

    /** The same, with every chunk that may be cut in pieces that keep its time. */
    List<Chunk> pieces(Inputs inputs) {
        List<Chunk> pieces = new ArrayList<>();
        for (Chunk chunk : chunks(inputs)) {
            pieces.addAll(inputs.mayBeCut(chunk.input()) ? cut(chunk, 0) : List.of(chunk));
        }
        return pieces;
    }

    /** Random parts of a chunk, with times that rise from its own by so many steps a part. */
    private List<Chunk> cut(Chunk whole, int steps) {
        if (cut == 0) {
            return List.of(whole);
        }
        Random random = new Random(cut + whole.timeNanos());
        int longest = 1 + random.nextInt(LONGEST_CHUNK);
        List<Chunk> parts = new ArrayList<>();
        for (int from = 0; from < whole.bytes().length; ) {
            int to = Math.min(whole.bytes().length, from + 1 + random.nextInt(longest));
            long timeNanos = whole.timeNanos() + parts.size() * steps * NANOS_BETWEEN_CHUNKS;
            parts.add(new Chunk(timeNanos, whole.input(), Arrays.copyOfRange(whole.bytes(), from, to)));
            from = to;
        }
        return parts;
    }
}
