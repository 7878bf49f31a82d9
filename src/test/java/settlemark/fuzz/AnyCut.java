package settlemark.fuzz;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Supplier;
import settlemark.decode.DecodeSink;
import settlemark.measure.Chunk;

/** What every decoder must hold: it never throws, and says the same however a chunk was cut. */
final class AnyCut {
    private AnyCut() {}

    /**
     * Runs a stream twice.
     *
     * @param decoder makes a fresh one for each run
     * @return what was heard, the same both times
     */
    static Heard check(FuzzedStream stream, Inputs inputs, Supplier<BiConsumer<Chunk, DecodeSink>> decoder) {
        Heard whole = run(stream.chunks(inputs), decoder.get());
        Heard pieces = run(stream.pieces(inputs), decoder.get());
        if (!whole.events.equals(pieces.events)) {
            throw new AssertionError(
                    "cut otherwise, " + stream.name() + " gives " + pieces.events + "\nand not " + whole.events);
        }
        whole.check();
        return whole;
    }

    private static Heard run(List<Chunk> chunks, BiConsumer<Chunk, DecodeSink> decoder) {
        Heard heard = new Heard();
        chunks.forEach(chunk -> decoder.accept(chunk, heard));
        return heard;
    }
}
