package settlemark.link;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A command of the program as a process of its own, whose system bus is the virtual machine's. */
final class BleVmProcess implements AutoCloseable {
    private final Process process;
    private final Path out;
    private final Path err;

    /** @param name of the files that its output goes to */
    BleVmProcess(BleVmBench bench, String name, String... arguments) throws IOException {
        this.out = bench.folder().resolve(name + ".out");
        this.err = bench.folder().resolve(name + ".err");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "settlemark.app.Main"));
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .redirectInput(ProcessBuilder.Redirect.from(Path.of("/dev/null").toFile()));
        builder.environment().put("DBUS_SYSTEM_BUS_ADDRESS", bench.bus);
        // It must not write where a person keeps work.
        builder.environment()
                .put("XDG_DATA_HOME", bench.folder().resolve("data").toString());
        this.process = builder.start();
    }

    String out() {
        return read(out);
    }

    String said() {
        return read(out) + read(err);
    }

    private static String read(Path file) {
        try {
            return Files.readString(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError("the output is gone", e);
        }
    }

    /** Waits until it has said something, or fails with what it did say. */
    void says(String words, long limitSeconds) {
        long end = System.nanoTime() + limitSeconds * 1_000_000_000L;
        while (!said().contains(words)) {
            if (!process.isAlive() || System.nanoTime() > end) {
                throw new AssertionError("it did not say \"" + words + "\" within " + limitSeconds + " s, but " + said()
                        + (process.isAlive() ? "" : " and ended with " + process.exitValue()));
            }
            BleVmChecks.pause(100);
        }
    }

    /** As Ctrl-C does. */
    void interrupt() throws IOException {
        new ProcessBuilder("kill", "-INT", Long.toString(process.pid())).start();
    }

    /** Waits for its end; returns its exit code. */
    int ends(long limitSeconds) {
        try {
            if (!process.waitFor(limitSeconds, TimeUnit.SECONDS)) {
                throw new AssertionError("it did not end within " + limitSeconds + " s; it said " + said());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("broken off", e);
        }
        return process.exitValue();
    }

    @Override
    public void close() {
        process.destroy();
    }
}
