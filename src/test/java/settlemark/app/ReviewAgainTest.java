package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Commands;
import settlemark.cli.Program;
import settlemark.document.Document;
import settlemark.document.DocumentLimits;
import settlemark.document.DocumentSchema;
import settlemark.document.Problem;
import settlemark.job.JobPlan;
import settlemark.job.Limit;
import settlemark.job.Outcome;
import settlemark.job.Plans;
import settlemark.job.Verdict;
import settlemark.measure.Unit;
import settlemark.rig.DemoRig;
import settlemark.session.OtherLimit;
import settlemark.store.SqliteStore;

/** A second person judges a job again under other limits and settings, and signs what they changed. */
final class ReviewAgainTest {
    private static final String NAME = "2026-03-14-093000-000-ash-lane";

    @TempDir
    private Path folder = Path.of("");

    private record Ran(int code, String out, String err) {}

    @BeforeEach
    void aSealedSupplyCheck() throws Exception {
        JobPlan plan = Plans.get("supply-check");
        try (SqliteStore store = Workspaces.demo(Optional.of(workspace()))) {
            var header = DemoScene.header(
                    Instant.parse("2026-03-14T09:30:00Z"),
                    ZoneOffset.UTC,
                    "test",
                    DemoScene.within(),
                    plan,
                    DemoScene.plate(plan));
            DemoRig rig = new DemoRig(new DemoRig.Settings(7, true));
            new HeadlessDemo(header, store, rig, new WireWiring(rig), t -> {}).run();
        }
        assertThat(run("record", "latest", "--out", records().toString()).code())
                .isEqualTo(Program.DONE);
    }

    private Path workspace() {
        return folder.resolve("w.settlemark");
    }

    private Path records() {
        return folder.resolve("records");
    }

    private Ran run(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] all = Stream.concat(
                        Stream.of(arguments),
                        Stream.of("--workspace", workspace().toString()))
                .toArray(String[]::new);
        int code = Commands.run(new Settlemark(), new PrintWriter(out), new PrintWriter(err), all);
        return new Ran(code, out.toString(), err.toString());
    }

    private Ran review(String... more) {
        return run(Stream.concat(Stream.of("review", "latest", "--accept", "--by", "A. Second"), Stream.of(more))
                .toArray(String[]::new));
    }

    /** The rig's lock-up is 7.8 inH2O; 8 to 10 leaves it outside, and the running inlet of about 6.8 too. */
    @Test
    void anotherLimitIsJudgedSignedKeptAndOnTheRecord() throws Exception {
        Ran judged = review("--limit", "lock-up.inlet=8..10", "--limit", "this-appliance.inlet=17..25 mbar");
        assertThat(judged.code()).as(judged.err()).isEqualTo(Program.DONE);
        assertThat(judged.out())
                .contains("; judged again under lock-up.inlet=8..10, this-appliance.inlet=17..25 mbar:"
                        + " lock-up inlet: inside became outside");
        assertThat(judged.out())
                .as("6.8 inH2O are 17.0 mbar")
                .doesNotContain("this-appliance inlet: inside became outside");

        assertThat(run("record", "latest", "--out", records().toString()).code())
                .isEqualTo(Program.DONE);
        Path json = records().resolve(NAME + ".json");
        assertThat(Files.readString(json))
                .contains(
                        "\"judged_again\"",
                        "\"lock-up.inlet=8..10\"",
                        "\"figure\" : \"inlet\"",
                        "\"to\" : \"outside\"");
        assertThat(problems(json)).isEmpty();
        Ran verified = run("verify", records().resolve(NAME + ".pdf").toString());
        assertThat(verified.code()).as(verified.out()).isEqualTo(Program.DONE);
        assertThat(verified.out()).contains("lock-up inlet: inside became outside");
    }

    @Test
    void whatIsSignedCannotBeChangedAfterwards() throws Exception {
        review("--limit", "lock-up.inlet=8..10");
        String kept;
        try (SqliteStore store = Workspaces.existing(Optional.of(workspace()))) {
            var paper = store.papers().attachments(1).stream()
                    .filter(a -> a.name().equals("review-1.json"))
                    .findFirst()
                    .orElseThrow();
            kept = new String(store.papers().content(paper), StandardCharsets.UTF_8);
        }
        assertThat(kept).contains("\"review\" : 2", "lock-up.inlet=8..10");
        Path seal = records().resolve(NAME + "-seal.json");
        Path beside = records().resolve(NAME + "-review-1.json");
        Files.writeString(beside, kept);
        assertThat(run("verify", seal.toString()).code()).isEqualTo(Program.DONE);
        for (String[] change :
                new String[][] {{"8..10", "7..10"}, {"\"outside\"", "\"inside\""}, {"\"lock-up\"", "\"shut\""}}) {
            assertThat(kept).contains(change[0]);
            Files.writeString(beside, kept.replace(change[0], change[1]));
            Ran changed = run("verify", seal.toString());
            assertThat(changed.code()).as(change[0]).isEqualTo(Program.CHECK_FAILED);
            assertThat(changed.out()).contains("changed: the review of A. Second");
        }
    }

    @Test
    void aLimitOfARiseIsInTheUnitOfItsScaleAndAFigureHasAnyName() {
        Ran refused = review("--limit", "lock-up.rise by Maker's sheet 4=3..8 [degF]");
        assertThat(refused.err()).contains("has no verdict on \"rise by Maker's sheet 4\"; there are inlet");
        Limit day = new Limit(30, 60, Unit.FAHRENHEIT_DIFFERENCE, "plate");
        Verdict rise = Verdict.judge("rise", 45, 1.4, day);
        // 45 degF of difference are 25 K.
        for (String limit :
                List.of("left-high.rise=35..60 [degF]", "left-high.rise=24..26 K", "left-high.rise=24..26 Cel")) {
            assertThat(OtherLimit.of(limit).judge(rise).outcome()).as(limit).isEqualTo(Outcome.INSIDE);
        }
        assertThat(OtherLimit.of("left-high.rise=26..30 K").judge(rise).outcome())
                .isEqualTo(Outcome.OUTSIDE);
    }

    @Test
    void otherSettingsAreSignedThoughTheyChangeNothing() {
        Ran judged = review("--set", "gas.drift=0.03", "--set", "air.horizon=240");
        assertThat(judged.code()).as(judged.err()).isEqualTo(Program.DONE);
        assertThat(judged.out())
                .contains("judged again under gas.drift=0.03 [in_i'H2O], air.horizon=240: no verdict is another");
    }

    @Test
    void whatCannotBeJudgedIsRefusedInWordsAndNothingIsSigned() {
        for (String[] wrong : new String[][] {
            {"lock-up.inlet=8-10", "expected STEP.FIGURE=LOW..HIGH"},
            {"lock-up.inlet=..", "expected STEP.FIGURE=LOW..HIGH"},
            {"lock-up.inlet=10..8", "a limit runs from low to high, got 10 to 8"},
            {"lock-up.rise=3..8", "the step \"lock-up\" has no verdict on \"rise\"; there are inlet"},
            {"attic.inlet=3..8", "no step \"attic\" has a verdict; there are lock-up, this-appliance"},
            {"lock-up.inlet=3..8 [degF]", "which [degF] cannot be changed into"},
            {"lock-up.inlet=3..8 furlong", "furlong"}
        }) {
            Ran refused = review("--limit", wrong[0]);
            assertThat(refused.code()).as(wrong[0]).isEqualTo(Program.USAGE);
            assertThat(refused.err()).contains(wrong[1]);
        }
        Ran noData = run(
                "review",
                records().resolve(NAME + "-seal.json").toString(),
                "--accept",
                "--by",
                "A. Second",
                "--limit",
                "lock-up.inlet=8..10");
        assertThat(noData.code()).isEqualTo(Program.USAGE);
        assertThat(noData.err()).contains("holds no data to judge again; name its session");
        Ran verified = run("verify", records().resolve(NAME + "-seal.json").toString());
        assertThat(verified.code()).as(verified.err()).isEqualTo(Program.DONE);
        assertThat(verified.out()).contains("untouched").doesNotContain("review:");
    }

    private static List<Problem> problems(Path json) throws Exception {
        try (InputStream in =
                Objects.requireNonNull(settlemark.record.RecordFiles.class.getResourceAsStream("record.schema.json"))) {
            List<Problem> problems = new ArrayList<>();
            Document document = Document.read("record.json", Files.readAllBytes(json), DocumentLimits.DEFAULT, problems)
                    .orElseThrow();
            DocumentSchema.of(in.readAllBytes()).check(document, problems);
            return problems;
        }
    }
}
