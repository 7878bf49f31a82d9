package settlemark.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The first, the second, the third ... opening, writing or syncing of a file fails, until a run needs no more of them:
 * each failure is said, nothing that was acknowledged is lost, and what is stored is an exact beginning.
 */
final class FailingCallsTest {
    private static final Pattern LINE =
            Pattern.compile("call (\\d+) (failed|never came), acknowledged (\\d+), stored (-?\\d+) \\[(.*)\\]");

    @TempDir
    Path folder;

    @Test
    void whicheverCallFailsNothingAcknowledgedIsLost() throws Exception {
        Path shim = build();
        Path disk = Files.createDirectory(folder.resolve("faulty-disk"));
        ProcessBuilder command = new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-Xmx128m",
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                FaultyWriter.class.getName(),
                disk.toString());
        command.environment().put("LD_PRELOAD", shim.toString());
        Process child = command.redirectError(ProcessBuilder.Redirect.INHERIT).start();
        String said;
        try (InputStream output = child.getInputStream()) {
            said = new String(output.readAllBytes(), StandardCharsets.UTF_8);
            assertThat(child.waitFor(60, TimeUnit.SECONDS)).isTrue();
        } finally {
            child.destroyForcibly();
        }
        List<String> lines = said.lines().toList();
        assertThat(child.exitValue()).as(said).isZero();
        System.out.println(lines.size() - 1 + " calls failed, one a run; " + lines.get(lines.size() - 1));
        lines.forEach(FailingCallsTest::check);
        assertThat(lines).hasSizeBetween(30, 400);
        assertThat(lines.get(lines.size() - 1)).contains("never came, acknowledged 4, stored 4 []");
    }

    private static void check(String line) {
        Matcher parts = LINE.matcher(line);
        assertThat(parts.matches()).as(line).isTrue();
        int acknowledged = Integer.parseInt(parts.group(3));
        // What failed may have come through all the same.
        assertThat(Integer.parseInt(parts.group(4))).as(line).isBetween(acknowledged, Math.min(4, acknowledged + 1));
        if (acknowledged < 4) {
            assertThat(parts.group(5)).as(line).startsWith("workspace ");
        }
    }

    private Path build() throws IOException, InterruptedException {
        boolean linux = System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("linux");
        Assumptions.assumeTrue(linux, "needs Linux");
        Path source = folder.resolve("failing-calls.c");
        try (InputStream in = Objects.requireNonNull(getClass().getResourceAsStream("/store/failing-calls.c"))) {
            Files.write(source, in.readAllBytes());
        }
        Path shim = folder.resolve("failing-calls.so");
        try {
            Process compiler = new ProcessBuilder(
                            "gcc", "-shared", "-fPIC", "-O1", "-o", shim.toString(), source.toString(), "-ldl")
                    .inheritIO()
                    .start();
            assertThat(compiler.waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(compiler.exitValue()).isZero();
        } catch (IOException e) {
            Assumptions.abort("needs gcc: " + e.getMessage());
        }
        return shim;
    }
}
