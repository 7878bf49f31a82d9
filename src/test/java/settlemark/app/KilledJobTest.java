package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.job.JobState;
import settlemark.session.JobRecord;
import settlemark.session.ProbeKeys;
import settlemark.session.RecordSource;
import settlemark.session.SessionStore;
import settlemark.settle.StageReading;
import settlemark.store.SqliteStore;

/**
 * A job's process is killed (SIGKILL) whenever it asks for something, at every step, and taken up again by a new one: it
 * stands at the same step with everything that was recorded, and in the end it is complete.
 */
final class KilledJobTest {
    @TempDir
    private Path folder = Path.of("");

    @Test
    void aJobKilledTwiceIsCompleteInTheEnd() throws Exception {
        killed("supply-check", 4);
    }

    @Test
    @Tag("long")
    void aSupplyCheckKilledAtEveryStepIsCompleteInTheEnd() throws Exception {
        killed("supply-check", 1);
    }

    @Test
    @Tag("long")
    void aTwoStageJobKilledAtEveryStepIsCompleteInTheEnd() throws Exception {
        killed("two-stage-natural-gas", 1);
    }

    /** @param steps done between two kills */
    private void killed(String plan, int steps) throws Exception {
        JobState before = killAfter(steps - 1, "new", "--plan", plan, "--title", "Ash Lane 12");
        int kills = 1;
        while (before.steps().stream().filter(s -> !s.done()).count() > steps) {
            String at = before.currentStep().orElseThrow().key();
            JobState after = killAfter(steps, "resume", "latest");
            kills++;
            assertThat(readings(after)).as("after the kill at %s", at).containsAll(readings(before));
            assertThat(after.step(at).orElseThrow().done()).as(at).isTrue();
            before = after;
        }
        Process last = start("resume", "latest");
        last.getOutputStream().write("\n".repeat(before.steps().size()).getBytes(StandardCharsets.UTF_8));
        last.getOutputStream().close();
        assertThat(last.waitFor(120, TimeUnit.SECONDS)).isTrue();
        assertThat(last.exitValue()).isZero();
        System.out.println(kills + " kills in " + plan + ", none lost a step");
        complete(kills);
    }

    private void complete(int kills) throws Exception {
        try (SqliteStore store = open()) {
            assertThat(store.sessions()).hasSize(1).allMatch(SessionStore.Summary::ended);
            JobRecord record = RecordSource.of(store, 1, ProbeKeys.NONE).orElseThrow();
            assertThat(record.job().complete()).isTrue();
            assertThat(record.job().missing()).isEmpty();
            List<Long> gaps = record.events().stream()
                    .filter(e -> e.words().startsWith("the program had ended"))
                    .map(JobRecord.Happened::timeNanos)
                    .toList();
            assertThat(gaps).hasSize(kills);
            for (StageReading reading : readings(record.job())) {
                reading.channels()
                        .forEach(part -> assertThat(gaps)
                                .as("%s %s", reading.step(), part.role())
                                .noneMatch(gap -> gap > part.fromNanos() && gap < part.toNanos()));
            }
            assertThat(store.readings(1)).containsAll(readings(record.job()));
        }
        assertThat(Workspaces.tools().check(file()).damage()).isEmpty();
        try (Stream<Path> files = Files.list(folder.resolve("rec"))) {
            assertThat(files.map(f -> f.getFileName().toString())).anyMatch(n -> n.endsWith("-seal.json"));
        }
    }

    private static List<StageReading> readings(JobState job) {
        return job.steps().stream().flatMap(s -> s.readings().stream()).toList();
    }

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    private SqliteStore open() throws Exception {
        return Workspaces.reading(Optional.of(file()));
    }

    /** Runs the job for so many steps, kills it at the question that follows, and says how it stands in the store. */
    private JobState killAfter(int steps, String... arguments) throws Exception {
        Process process = start(arguments);
        try (BufferedReader said =
                new BufferedReader(new InputStreamReader(process.getErrorStream(), StandardCharsets.UTF_8))) {
            awaitQuestion(said);
            for (int i = 0; i < steps; i++) {
                process.getOutputStream().write('\n');
                process.getOutputStream().flush();
                awaitQuestion(said);
            }
        } finally {
            process.destroyForcibly();
            process.waitFor(20, TimeUnit.SECONDS);
        }
        assertThat(process.exitValue()).as("killed by SIGKILL").isEqualTo(137);
        try (SqliteStore store = open()) {
            assertThat(store.sessions()).hasSize(1).noneMatch(SessionStore.Summary::ended);
            return RecordSource.replay(store, 1, ProbeKeys.NONE).job().orElseThrow();
        }
    }

    private static void awaitQuestion(BufferedReader said) throws IOException {
        List<String> lines = new ArrayList<>();
        for (String line = said.readLine(); line != null; line = said.readLine()) {
            lines.add(line);
            if (line.startsWith("  > ")) {
                return;
            }
        }
        throw new AssertionError("the job ended without asking: " + lines);
    }

    private Process start(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                "settlemark.app.Main",
                "job"));
        command.addAll(List.of(arguments));
        command.addAll(List.of(
                "--rig",
                "--workspace",
                file().toString(),
                "--out",
                folder.resolve("rec").toString()));
        return new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
    }
}
