package settlemark.link;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** Two pseudo terminals joined back to back by socat, under names that stay the same when it starts again. */
final class SocatPair implements AutoCloseable {
    private final Path near;
    private final Path far;
    private Process socat;

    private SocatPair(Path near, Path far, Process socat) {
        this.near = near;
        this.far = far;
        this.socat = socat;
    }

    static SocatPair start(Path folder) throws IOException {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/socat")), "socat is not installed: apt install socat");
        Path near = folder.resolve("near");
        Path far = folder.resolve("far");
        return new SocatPair(near, far, run(near, far));
    }

    String near() {
        return near.toString();
    }

    String far() {
        return far.toString();
    }

    /** As when a plug is pulled: both nodes go at once. */
    void unplug() throws InterruptedException {
        socat.destroyForcibly().waitFor(5, TimeUnit.SECONDS);
    }

    void plugInAgain() throws IOException {
        socat = run(near, far);
    }

    @Override
    public void close() {
        socat.destroy();
    }

    private static Process run(Path near, Path far) throws IOException {
        // A killed socat leaves its links behind, and refuses to replace them.
        Files.deleteIfExists(near);
        Files.deleteIfExists(far);
        Process socat = new ProcessBuilder("socat", "pty,raw,echo=0,link=" + near, "pty,raw,echo=0,link=" + far)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        Await.until("socat's terminals", 5000, () -> Files.exists(near) && Files.exists(far));
        return socat;
    }
}
