package settlemark.store;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.logging.Level;
import java.util.logging.Logger;
import settlemark.session.SessionHeader;
import settlemark.session.StoreException;

/** A process of its own that writes to a workspace and says on standard output what has been acknowledged. */
final class ChildWriter {
    /** Kept, because loggers are forgotten otherwise. The driver logs each way of loading that fails. */
    private static final Logger DRIVER = Logger.getLogger("org.sqlite");

    private ChildWriter() {}

    /**
     * Makes all that it will need, says "ready", and begins when it is told to by a line on standard input.
     *
     * @param arguments the workspace, the session's key, how many batches at most
     */
    public static void main(String[] arguments) {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        DRIVER.setLevel(Level.OFF);
        long most = Long.parseLong(arguments[2]);
        SessionHeader header = Fixtures.log(arguments[1]);
        Fixtures.second(0);
        out.println("ready");
        waitForWord();
        // Blocks are packed beside the writing, as in the program.
        ExecutorService packer = Executors.newSingleThreadExecutor();
        try (SqliteStore store = Fixtures.open(Path.of(arguments[0]), packer)) {
            long session = store.begin(header);
            out.println("session " + session);
            for (long n = 0; n < most; n++) {
                store.append(session, Fixtures.second(n));
                out.println("stored " + (n + 1));
            }
            store.end(session, most);
        } catch (StoreException e) {
            out.println("refused " + e.kind() + " " + e.getMessage());
        } finally {
            packer.shutdown();
        }
    }

    private static void waitForWord() {
        try {
            if (System.in.read() < 0) {
                throw new IllegalStateException("nobody is there any more");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Starts it; it goes no further than to be ready. */
    static Process start(List<String> options, Path file, String key, long most) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Xmx128m"));
        command.addAll(options);
        command.addAll(List.of(
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                ChildWriter.class.getName(),
                file.toString(),
                key,
                Long.toString(most)));
        return new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    static BufferedReader output(Process child) {
        return new BufferedReader(new InputStreamReader(child.getInputStream(), StandardCharsets.UTF_8));
    }

    static void begin(Process child) throws IOException {
        child.getOutputStream().write('\n');
        child.getOutputStream().flush();
    }

    /** Lets it run to its end; returns what it said. */
    static List<String> run(Path file, long most, String... options) throws IOException, InterruptedException {
        Process child = start(List.of(options), file, "child", most);
        try (BufferedReader output = output(child)) {
            begin(child);
            List<String> said =
                    output.lines().filter(line -> !line.equals("ready")).toList();
            child.waitFor(60, TimeUnit.SECONDS);
            return said;
        } finally {
            child.destroyForcibly();
        }
    }

    /** Kills it when so many batches are acknowledged. */
    static void killAfter(Path file, long acknowledged) throws IOException, InterruptedException {
        Process child = start(List.of(), file, "child", Long.MAX_VALUE);
        try (BufferedReader output = output(child)) {
            begin(child);
            String line = output.readLine();
            while (line != null && !line.equals("stored " + acknowledged)) {
                line = output.readLine();
            }
        } finally {
            child.destroyForcibly();
            child.waitFor(60, TimeUnit.SECONDS);
        }
    }
}
