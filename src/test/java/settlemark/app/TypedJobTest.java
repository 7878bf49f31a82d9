package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Commands;
import settlemark.cli.Program;
import settlemark.job.JobState;
import settlemark.job.Progress;
import settlemark.job.StepState;
import settlemark.session.ProbeKeys;
import settlemark.session.RecordSource;
import settlemark.store.SqliteStore;

/** Jobs done by typing, from the command line on, on the rig. */
final class TypedJobTest {
    @TempDir
    private Path folder = Path.of("");

    private String out = "";
    private String err = "";

    private int run(String typed, String... arguments) {
        List<String> all = new ArrayList<>(List.of(arguments));
        all.addAll(List.of(
                "--rig",
                "--workspace",
                file().toString(),
                "--out",
                folder.resolve("rec").toString()));
        StringWriter said = new StringWriter();
        StringWriter told = new StringWriter();
        InputStream before = System.in;
        try {
            System.setIn(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)));
            return Commands.run(
                    new Settlemark(), new PrintWriter(said), new PrintWriter(told), all.toArray(new String[0]));
        } finally {
            System.setIn(before);
            out = said.toString();
            err = told.toString();
        }
    }

    private Path file() {
        return folder.resolve("w.settlemark");
    }

    private JobState job(long session) throws Exception {
        try (SqliteStore store = Workspaces.reading(Optional.of(file()))) {
            return RecordSource.replay(store, session, ProbeKeys.NONE).job().orElseThrow();
        }
    }

    @Test
    void aScriptDoesAWholeJobToItsSeal() throws Exception {
        assertThat(run("\n".repeat(20), "job", "new", "--plan", "supply-check", "--title", "Ash Lane 12"))
                .as(err)
                .isEqualTo(Program.DONE);
        assertThat(err)
                .contains("[4/10] Supply at lock-up")
                .contains("CAUTION: An inlet that keeps climbing")
                .contains("(SIMULATED)");
        assertThat(out).startsWith("SIMULATED").contains("-seal.json");
        assertThat(job(1).complete()).isTrue();
    }

    @Test
    void stepsAreSkippedWithAReasonRepeatedAndNoted() throws Exception {
        String typed = "\n\n\n\nn the cock was stiff\ns\ns the cock is seized\nr zero\n\n\n\nq\n";
        assertThat(run(typed, "job", "new", "--plan", "supply-check")).isEqualTo(Program.FAULT);
        assertThat(err).contains("say why, behind the letter").contains("settlemark job resume 1");
        JobState job = job(1);
        assertThat(job.step("this-appliance").orElseThrow().progress()).isEqualTo(Progress.SKIPPED);
        assertThat(job.step("this-appliance").orElseThrow().skipReason()).isEqualTo("the cock is seized");
        assertThat(job.notes()).singleElement().extracting(n -> n.text()).isEqualTo("the cock was stiff");
        assertThat(job.step("zero").orElseThrow().superseded()).isTrue();
        assertThat(job.step("zero#2").orElseThrow().progress()).isEqualTo(Progress.TAKEN);
    }

    @Test
    void whatCountsAsSettledIsSetOtherwiseInTheCourseOfAJob() throws Exception {
        String typed = String.join(
                "\n",
                "\n\nsettings",
                "settings gas.drift=fine",
                "settings gas.speed=3",
                "settings stack.drift=3",
                "settings air.drift=1",
                "settings gas.dwell=500",
                "settings gas.drift=0.02",
                "settings gas.drift=2.5 Pa gas.dwell=8",
                "settings",
                "\n",
                "q",
                "");
        assertThat(run(typed, "job", "new", "--plan", "supply-check")).isEqualTo(Program.FAULT);
        assertThat(err)
                .contains(
                        "  gas: drift 0.02 inH\u2082O, band \u00b10.05 inH\u2082O, horizon 30 s, windows 20,40,60,120 s, dwell 3 s")
                .contains("  gas.drift=fine: expected a number such as 0.02, got \"fine\"")
                .contains("  gas.speed=3: nothing is called \"speed\"; there are drift, band, horizon")
                .contains("  no probe of this job measures stack; it has gas, air")
                .contains("  gas dwell 500 s is longer than the horizon of 30 s")
                .contains("  nothing is changed: it is so already")
                // The conventional inch of water is 249.0889 Pa (NIST SP 811, appendix B; from memory).
                .contains(
                        "  gas: drift 0.010037 inH\u2082O, band \u00b10.05 inH\u2082O, horizon 30 s, windows 20,40,60,120 s, dwell 8 s");
        JobState job = job(1);
        assertThat(job.settings()).hasSize(2);
        assertThat(job.settings().get(1).words())
                .anySatisfy(w -> assertThat(w).startsWith("gas pressure, drift limit 0.01"))
                .anySatisfy(w -> assertThat(w).isEqualTo("gas pressure, dwell 8 s instead of 3 s"));
        assertThat(job.step("zero").orElseThrow().remarks())
                .anySatisfy(r -> assertThat(r).startsWith("Settled by other settings than the job began with: "));
    }

    @Test
    void theStateOfTheSiteIsSaidWithThePressThatBeginsTheRise() throws Exception {
        assertThat(run("\n".repeat(5) + "q\n", "job", "new", "--plan", "one-stage-natural-gas"))
                .isEqualTo(Program.FAULT);
        assertThat(err)
                .contains("it says too: Blower doors on, filter in; Bypass and dampers as in use;"
                        + " Room doors and windows closed (s REASON");
        StepState found = job(1).step("found-high").orElseThrow();
        assertThat(found.progress()).isEqualTo(Progress.TAKEN);
        assertThat(found.ticked().keySet())
                .containsExactlyInAnyOrderElementsOf(found.step().ticks());
        assertThat(found.ticked().values()).allSatisfy(t -> assertThat(t).isEqualTo(found.armedNanos()));
    }

    @Test
    void anInputThatEndsLeavesTheJobToBeTakenUpAgain() throws Exception {
        assertThat(run("\n\n\n", "job", "new", "--plan", "supply-check")).isEqualTo(Program.FAULT);
        assertThat(err).contains("the input has ended at the step \"lock-up\"");
        assertThat(run("\n".repeat(20), "job", "resume", "latest")).as(err).isEqualTo(Program.DONE);
        assertThat(err).contains("3 of 10 steps are done already");
        assertThat(job(1).complete()).isTrue();
        assertThat(run("", "job", "resume", "1")).isEqualTo(Program.FAULT);
        assertThat(err).contains("is complete");
    }

    @Test
    void anOwnPlanIsCheckedWithAllItsProblems() throws Exception {
        Path plan = folder.resolve("mine.yaml");
        Files.writeString(
                plan,
                "language: 1\nid: mine\ntitle: mine\nsteps:\n  - act: plate\n  - act: lock-up\n  - act: nonsense\n");
        assertThat(run("", "job", "new", "--plan", plan.toString())).isEqualTo(Program.USAGE);
        assertThat(err)
                .contains("mine.yaml:7:")
                .contains("no act is called \"nonsense\"")
                .doesNotContain("Usage:");
        assertThat(Files.exists(file())).isFalse();
        Path plate = folder.resolve("bad.yaml");
        Files.writeString(plate, "language: 1\ninlet: { least: 9, most: 4, unit: mbar }\n");
        assertThat(run("", "job", "new", "--plan", "supply-check", "--plate", plate.toString()))
                .isEqualTo(Program.USAGE);
        assertThat(err)
                .contains("bad.yaml:2:17: the range begins at 9.0 and ends at 4.0: it is reversed")
                .contains("bad.yaml:1:1: ")
                .doesNotContain("Usage:");
        assertThat(run("", "job", "new", "--plan", "no-such")).isEqualTo(Program.USAGE);
        assertThat(err).contains("Usage:");
    }

    @Test
    void theLastVisitLendsItsPlate() throws Exception {
        Path plate = folder.resolve("plate.yaml");
        Files.writeString(plate, """
                language: 1
                appliance: the furnace in the cellar
                fuel: natural-gas
                inlet: { least: 4.7, most: 10.5, unit: "[in_i'H2O]" }
                stages:
                  - { key: high, name: full fire }
                """);
        assertThat(run(
                        "q\n",
                        "job",
                        "new",
                        "--plan",
                        "supply-check",
                        "--plate",
                        plate.toString(),
                        "--title",
                        "Elm Row 3"))
                .isEqualTo(Program.FAULT);
        assertThat(run("q\n", "job", "new", "--plan", "supply-check", "--title", "elm row 3 "))
                .isEqualTo(Program.FAULT);
        assertThat(job(2).plate()).isEqualTo(job(1).plate());
        assertThat(job(2).plate().appliance()).isEqualTo("the furnace in the cellar");
    }

    @Test
    void whatTheLastVisitLeftIsHeldAgainstWhatIsFoundNow() throws Exception {
        Path plan = folder.resolve("short.yaml");
        Files.writeString(plan, """
                language: 1
                id: short
                title: one stage, pressures only
                stages:
                  - { key: high, name: full fire }
                steps:
                  - act: plate
                  - act: zero
                  - { act: found, stage: high, required: [inlet, manifold] }
                  - { act: left, stage: high, required: [inlet, manifold] }
                  - act: record
                """);
        String[] job = {"job", "new", "--plan", plan.toString(), "--title", "Ash Lane 12"};
        assertThat(run("\n".repeat(20), job)).as(err).isZero();
        assertThat(run("\n".repeat(20), job)).as(err).isZero();
        assertThat(job(1).step("found-high").orElseThrow().remarks()).isEmpty();
        // The rig begins as it was found each time: its high fire stands some 0.4 inH2O below the 3.5 that was left.
        assertThat(job(2).step("found-high").orElseThrow().remarks())
                .anySatisfy(r -> assertThat(r)
                        .startsWith("At the last visit (20")
                        .contains("the manifold was left at 3.5")
                        .contains("; now it is found at 3.")
                        .contains(", -0.4"));
    }

    @Test
    void namesWithMarkupFormulasAndRightToLeftScriptAreKeptAndHarmNothing() throws Exception {
        String title = "=HYPERLINK(\"x\") <b>&amp; \u05d1\u05d9\u05ea 12 \u202e+1";
        assertThat(run(
                        "\n".repeat(8) + "@SUM(A1) <i>\u05d3\u05e0\n",
                        "job",
                        "new",
                        "--plan",
                        "supply-check",
                        "--title",
                        title))
                .as(err)
                .isEqualTo(Program.DONE);
        assertThat(job(1).person()).isEqualTo("@SUM(A1) <i>\u05d3\u05e0");
        try (SqliteStore store = Workspaces.reading(Optional.of(file()))) {
            assertThat(store.header(1).title()).isEqualTo(title);
        }
        try (var files = Files.list(folder.resolve("rec"))) {
            for (Path csv : files.filter(f -> f.toString().endsWith(".csv")).toList()) {
                assertThat(Files.readAllLines(csv))
                        .allSatisfy(line -> assertThat(line.split(","))
                                .noneMatch(cell -> cell.replaceFirst("^\"", "").startsWith("=")));
            }
        }
    }

    @Test
    void aFaultOfTheRigThatDoesNotExistIsRefused() {
        assertThat(run("", "job", "new", "--fault", "gremlins")).isEqualTo(Program.USAGE);
        assertThat(err).contains("no fault of the rig is called \"gremlins\"");
    }
}
