package settlemark.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/** A small file system in memory, which only root on Linux can make; without that a test is skipped and says so. */
public final class TinyDisk implements AutoCloseable {
    private final Path point;

    private TinyDisk(Path point) {
        this.point = point;
    }

    /** @param options of mount, such as {@code size=4m} */
    public static TinyDisk mount(Path point, String options) throws IOException, InterruptedException {
        boolean linux = System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("linux");
        Assumptions.assumeTrue(linux, "needs Linux");
        boolean mounted = run("mount", "-t", "tmpfs", "-o", options, "tmpfs", point.toString());
        Assumptions.assumeTrue(mounted, "needs the right to mount a tmpfs");
        return new TinyDisk(point);
    }

    public Path file(String name) {
        return point.resolve(name);
    }

    void remount(String options) throws IOException, InterruptedException {
        if (!run("mount", "-o", "remount," + options, point.toString())) {
            throw new IOException("cannot remount " + point);
        }
    }

    @Override
    public void close() throws IOException {
        try {
            if (!run("umount", point.toString())) {
                throw new IOException("cannot unmount " + point);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
    }

    private static boolean run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(List.of(command))
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        return process.waitFor(30, TimeUnit.SECONDS) && process.exitValue() == 0;
    }
}
