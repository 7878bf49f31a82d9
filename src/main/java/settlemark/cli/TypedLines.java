package settlemark.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;

/** Lines that a person or a script types, read on a thread of their own so that a job goes on meanwhile. */
final class TypedLines {
    /** More than anybody types; the rest of a longer line is left out. */
    private static final int LONGEST = 1000;

    private final BlockingQueue<Optional<String>> queue = new LinkedBlockingQueue<>(64);
    private final boolean terminal;
    private boolean ended;

    private TypedLines(boolean terminal) {
        this.terminal = terminal;
    }

    /** @param terminal whether somebody sits there and may type at any time; a script's lines are kept for questions */
    static TypedLines of(InputStream in, boolean terminal, Program program) {
        TypedLines lines = new TypedLines(terminal);
        program.beside("typed", () -> lines.read(in));
        return lines;
    }

    private void read(InputStream in) {
        try {
            BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                String plain = line.replaceAll("\\p{Cc}", " ").strip();
                queue.put(Optional.of(plain.substring(0, Math.min(LONGEST, plain.length()))));
            }
        } catch (IOException e) {
            // What cannot be read any more has ended.
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            end();
        }
    }

    private void end() {
        try {
            queue.put(Optional.empty());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** What has been typed meanwhile on a terminal, empty where nothing was. */
    Optional<String> typed() {
        Optional<String> line = terminal && !ended ? queue.poll() : null;
        if (line != null && line.isEmpty()) {
            ended = true;
        }
        return line == null ? Optional.empty() : line;
    }

    /** The next line that is there, empty at the end of all. */
    Optional<String> next() throws InterruptedException {
        if (ended) {
            return Optional.empty();
        }
        Optional<String> line = queue.take();
        ended = line.isEmpty();
        return line;
    }
}
