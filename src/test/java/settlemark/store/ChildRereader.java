package settlemark.store;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import settlemark.session.Rereading;
import settlemark.session.StoreException;

/** A process of its own that stores batch after batch of a rereading of session 1 until it is killed. */
final class ChildRereader {
    private ChildRereader() {}

    /** @param arguments the workspace, and after how many batches it says that it is complete */
    public static void main(String[] arguments) throws StoreException {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        long most = Long.parseLong(arguments[1]);
        try (SqliteStore store = Fixtures.open(Path.of(arguments[0]))) {
            Rereading again = store.rereadings().begin(1, Fixtures.probes(), Instant.EPOCH, "test");
            for (long n = 0; n < most; n++) {
                store.rereadings().append(again, Fixtures.second(n).results());
                out.println("stored " + (n + 1));
            }
            store.rereadings().complete(again);
            out.println("complete");
        }
    }

    /** Kills it a moment after it has said a word; returns whether it had gone on to say that it is complete. */
    static boolean killAfter(Path file, long most, String word, long nanosAfterwards)
            throws IOException, InterruptedException {
        List<String> command = List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Xmx128m",
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                ChildRereader.class.getName(),
                file.toString(),
                Long.toString(most));
        Process child = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        boolean complete = false;
        try (BufferedReader output = ChildWriter.output(child)) {
            for (String line = output.readLine(); line != null; line = output.readLine()) {
                complete |= line.equals("complete");
                if (line.equals(word)) {
                    long until = System.nanoTime() + nanosAfterwards;
                    while (System.nanoTime() < until) {
                        Thread.onSpinWait();
                    }
                    child.toHandle().destroyForcibly();
                }
            }
        } finally {
            child.destroyForcibly();
            child.waitFor(60, TimeUnit.SECONDS);
        }
        return complete;
    }
}
