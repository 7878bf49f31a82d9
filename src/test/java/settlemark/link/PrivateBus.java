package settlemark.link;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** A message bus of a test's own: the real dbus-daemon on a socket in a temporary folder. */
final class PrivateBus implements AutoCloseable {
    private final Path folder;
    private Process daemon;

    PrivateBus() throws IOException {
        folder = Files.createTempDirectory("bus");
        Files.writeString(
                folder.resolve("bus.conf"),
                "<busconfig><type>session</type><listen>" + address() + "</listen><auth>EXTERNAL</auth>"
                        + "<policy context='default'><allow send_destination='*' eavesdrop='true'/><allow eavesdrop='true'/>"
                        + "<allow own='*'/></policy></busconfig>");
        start();
    }

    /** Whether the machine has a dbus-daemon (Debian package dbus-daemon). */
    static boolean isThere() {
        return Files.isExecutable(Path.of("/usr/bin/dbus-daemon"));
    }

    String address() {
        return "unix:path=" + folder.resolve("socket");
    }

    void start() throws IOException {
        Files.deleteIfExists(folder.resolve("socket"));
        daemon = new ProcessBuilder(
                        "/usr/bin/dbus-daemon",
                        "--nofork",
                        "--print-address",
                        "--config-file=" + folder.resolve("bus.conf"))
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        // It tells its address once it listens.
        BufferedReader said =
                new BufferedReader(new InputStreamReader(daemon.getInputStream(), StandardCharsets.UTF_8));
        if (said.readLine() == null) {
            throw new IOException("dbus-daemon did not start");
        }
    }

    void kill() throws IOException {
        daemon.destroyForcibly();
        try {
            daemon.waitFor(5, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() throws IOException {
        kill();
        Files.deleteIfExists(folder.resolve("socket"));
        Files.deleteIfExists(folder.resolve("bus.conf"));
        Files.deleteIfExists(folder);
    }
}
