package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** With a program in place of systemd-inhibit that writes down how it was called and that it ended. */
final class SleepGuardTest {
    private static final String WHY = "logging two gauges";

    @TempDir
    private Path folder;

    private final BlockingQueue<String> warnings = new LinkedBlockingQueue<>();
    private Path arguments;
    private Path ended;

    @BeforeEach
    void files() {
        arguments = folder.resolve("arguments");
        ended = folder.resolve("ended");
    }

    @Test
    void holdsSleepIdleAndLidUntilItIsClosed() throws IOException {
        Path program = program("printf '%s\\n' \"$@\" > arguments.new && mv arguments.new arguments\ncat\n: > ended\n");
        try (SleepGuard guard = SleepGuard.hold(program.toString(), WHY, warnings::add)) {
            await(() -> Files.exists(arguments));
            assertThat(guard).isNotNull();
            assertThat(Files.readAllLines(arguments))
                    .containsExactly(
                            "--what=sleep:idle:handle-lid-switch",
                            "--mode=block",
                            "--who=Settlemark",
                            "--why=" + WHY,
                            "cat");
            assertThat(ended).doesNotExist();
        }
        await(() -> Files.exists(ended));
        assertThat(warnings).isEmpty();
    }

    @Test
    void endsWithTheProgramHoweverThatEnds() throws Exception {
        Path program = program("echo holds > arguments\ncat\n: > ended\n");
        Process holding = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        Holding.class.getName(),
                        program.toString())
                .start();
        await(() -> Files.exists(arguments));
        assertThat(ended).doesNotExist();
        // destroyForcibly is SIGKILL here: no hook of the program runs.
        holding.destroyForcibly().waitFor();
        await(() -> Files.exists(ended));
    }

    @Test
    void aRefusalIsSaidOnceInPlainWords() throws Exception {
        Path program = program("echo 'Failed to inhibit: Access denied' >&2\nexit 1\n");
        try (SleepGuard guard = SleepGuard.hold(program.toString(), WHY, warnings::add)) {
            assertThat(guard).isNotNull();
            assertThat(warnings.poll(5, TimeUnit.SECONDS))
                    .contains("may go to sleep")
                    .contains("Failed to inhibit: Access denied")
                    .contains("stay awake");
        }
        assertThat(warnings).isEmpty();
    }

    @Test
    void aLockThatIsTakenAwayLaterIsSaid() throws Exception {
        Path program = program("echo holds > arguments\nexit 0\n");
        try (SleepGuard guard = SleepGuard.hold(program.toString(), WHY, warnings::add)) {
            assertThat(guard).isNotNull();
            assertThat(warnings.poll(5, TimeUnit.SECONDS)).contains("ended with 0");
        }
    }

    @Test
    void aMissingProgramIsSaidOnce() {
        String missing = folder.resolve("none").toString();
        SleepGuard.hold(missing, WHY, warnings::add).close();
        assertThat(List.copyOf(warnings)).singleElement().asString().contains(missing + " is missing");
    }

    private Path program(String body) throws IOException {
        Path program = folder.resolve("inhibit");
        Files.writeString(program, "#!/bin/sh\ncd '" + folder + "'\n" + body, StandardCharsets.UTF_8);
        return Files.setPosixFilePermissions(program, PosixFilePermissions.fromString("rwx------"));
    }

    private static void await(BooleanSupplier condition) {
        long start = System.nanoTime();
        while (!condition.getAsBoolean()) {
            assertThat(System.nanoTime() - start).as("nanoseconds waited").isLessThan(10_000_000_000L);
            LockSupport.parkNanos(2_000_000);
        }
    }

    /** Holds a guard until it is killed. */
    static final class Holding {
        private Holding() {}

        public static void main(String[] args) throws InterruptedException {
            SleepGuard.hold(args[0], WHY, System.out::println);
            Thread.currentThread().join();
        }
    }
}
