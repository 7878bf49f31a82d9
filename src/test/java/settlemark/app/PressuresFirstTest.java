package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Program;
import settlemark.job.JobPlan;
import settlemark.job.JobState;
import settlemark.job.PlanReader;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.rig.DemoRig;
import settlemark.session.LiveSession;
import settlemark.settle.ChannelReading;
import settlemark.store.SqliteStore;

/** A plan that takes the pressures first, from the rig's bytes to the record's files. */
final class PressuresFirstTest {
    private static final String PLAN = """
            language: 1
            id: pressures-first
            title: two stages, pressures first
            fuels: [natural-gas]
            stages:
              - { key: low, name: low fire }
              - { key: high, name: high fire }
            steps:
              - act: plate
              - act: probes
              - act: zero
              - act: lock-up
              - act: found
                stage: low
                pressures-first: true
              - act: found
                stage: high
                pressures-first: true
              - act: close
                ticks: []
              - act: record
            """;

    @TempDir
    private Path folder = Path.of("");

    @Test
    void eachPartHasItsOwnTimeInTheReadingTheFilesAndTheSeal() throws Exception {
        JobPlan plan = PlanReader.read("pressures-first.yaml", PLAN.getBytes(StandardCharsets.UTF_8))
                .orThrow();
        try (SqliteStore store = Workspaces.demo(Optional.of(folder.resolve("job.settlemark")))) {
            Instant when = Instant.parse("2026-03-14T09:30:00Z");
            var header =
                    DemoScene.header(when, ZoneOffset.UTC, "test", DemoScene.within(), plan, DemoScene.plate(plan));
            DemoRig rig = new DemoRig(new DemoRig.Settings(7, true));
            long session = new HeadlessDemo(header, store, rig, new WireWiring(rig), t -> {}).run();
            assertThat(store.header(session)).isEqualTo(header);

            JobState job = again(store, session);
            assertThat(job.missing()).isEmpty();
            for (String key : List.of("found-low", "found-high")) {
                StepState step = job.step(key).orElseThrow();
                // Air takes minutes, gas seconds (the rig's heat exchanger and cabinet).
                assertThat((to(step, Role.SUPPLY) - to(step, Role.MANIFOLD)) / 1e9)
                        .as(key)
                        .isGreaterThan(30);
                assertThat(to(step, Role.INLET)).isEqualTo(to(step, Role.MANIFOLD));
                assertThat(step.reading().orElseThrow().channels()).allMatch(ChannelReading::settled);
                assertThat(step.remarks()).anyMatch(w -> w.startsWith("The pressures were taken "));
            }

            RecordMaking.Made made =
                    RecordMaking.make(store, session, folder.resolve("a")).orElseThrow();
            Path csv = made.files().stream()
                    .filter(f -> f.toString().endsWith("-readings.csv"))
                    .findFirst()
                    .orElseThrow();
            List<String> lines = Files.readAllLines(csv).stream()
                    .filter(l -> l.contains("found-high"))
                    .toList();
            assertThat(lines).hasSize(5);
            assertThat(lines.stream()
                            .map(l -> l.replaceAll(".*,(\\S+),\"settled.*", "$1"))
                            .distinct())
                    .as("ends of the windows: two pressures together, the air, and the rise, which has none")
                    .hasSizeGreaterThanOrEqualTo(3);
            Path seal = Sealing.seal(store, session, made.files(), Instant.parse("2026-03-14T11:00:00Z"));
            assertThat(SealCheck.verify(seal, Optional.of(store), new PrintWriter(Writer.nullWriter())))
                    .isEqualTo(Program.DONE);
        }
    }

    private static JobState again(SqliteStore store, long session) throws Exception {
        LiveSession again = new LiveSession(store.header(session));
        store.events(session, again::take);
        return again.job().orElseThrow();
    }

    private static long to(StepState step, Role role) {
        return step.reading().orElseThrow().channel(role).orElseThrow().toNanos();
    }
}
