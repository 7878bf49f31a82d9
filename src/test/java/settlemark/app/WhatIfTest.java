package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Commands;
import settlemark.cli.Program;
import settlemark.job.SettledBy;
import settlemark.measure.Role;
import settlemark.rig.DemoRig;
import settlemark.session.ProbeKeys;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.WhatIf;
import settlemark.session.WhatIfReport;
import settlemark.session.WriteBatch;
import settlemark.settle.PublishedRule;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleKind;
import settlemark.store.SqliteStore;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A stored job and a stored log with other settings; the workspace's settings. */
final class WhatIfTest {
    private static final SettleAdjustment DWELL =
            new SettleAdjustment(Double.NaN, Double.NaN, Double.NaN, List.of(), 10, Double.NaN);
    private static final SettleChoices LONGER_DWELL = new SettleChoices(Map.of(SettleKind.GAS, DWELL));

    @TempDir
    private static Path shared = Path.of("");

    @TempDir
    private Path folder = Path.of("");

    private record Ran(int code, String out, String err) {}

    private static Ran run(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Commands.run(new Settlemark(), new PrintWriter(out), new PrintWriter(err), arguments);
        return new Ran(code, out.toString(), err.toString());
    }

    /** Session 1 is a job, session 2 the same bytes as a plain log. */
    @BeforeAll
    static void doTheJob() throws Exception {
        SessionHeader header = DemoScene.header(Instant.parse("2026-03-14T09:30:00Z"), ZoneOffset.UTC, "test");
        try (SqliteStore store = Workspaces.demo(Optional.of(file()))) {
            DemoRig rig = new DemoRig(new DemoRig.Settings(7, true));
            long job = new HeadlessDemo(header, store, rig, t -> {}).run();
            long log = store.begin(new SessionHeader(
                    "log",
                    "log",
                    header.startedAt(),
                    header.zone(),
                    header.pressureUnit(),
                    header.temperatureUnit(),
                    header.probes(),
                    Optional.empty(),
                    Optional.empty(),
                    "test"));
            List<SessionEvent> events = new ArrayList<>();
            store.events(job, e -> {
                if (!(e instanceof SessionEvent.Done)) {
                    events.add(e);
                }
            });
            store.append(
                    log,
                    new WriteBatch(
                            0,
                            events,
                            List.of(),
                            List.of(),
                            List.of(),
                            events.get(events.size() - 1).timeNanos()));
        }
    }

    private static Path file() {
        return shared.resolve("job.settlemark");
    }

    private static WhatIfReport whatIf(long session, SettleChoices choices, Optional<SettledBy> by) throws Exception {
        try (SqliteStore store = SqliteStore.openForReading(file(), text -> {
            throw new IllegalStateException("not asked");
        })) {
            assertThat(store.sessions()).hasSize(2);
        }
        try (SqliteStore store = Workspaces.reading(Optional.of(file()))) {
            return WhatIf.run(store, session, choices, by, ProbeKeys.NONE);
        }
    }

    @Test
    void theDaysOwnSettingsChangeNothing() throws Exception {
        WhatIfReport report = whatIf(1, SettleChoices.NONE, Optional.empty());
        assertThat(report.job()).isTrue();
        assertThat(report.lines()).hasSizeGreaterThan(20);
        assertThat(report.changed()).isZero();
        assertThat(report.otherThanStored()).isZero();
        assertThat(whatIf(2, SettleChoices.NONE, Optional.empty()).changed()).isZero();
    }

    @Test
    void whatWouldNotHaveSettledBeforeThePersonWentOnIsSaidNotToBe() throws Exception {
        WhatIfReport report = whatIf(1, LONGER_DWELL, Optional.empty());
        assertThat(report.changed()).isPositive();
        assertThat(report.lines()).allSatisfy(line -> {
            assertThat(line.before()).isPresent();
            assertThat(line.after()).as(line.step()).isPresent();
        });
        WhatIfReport.Line zero = line(report, "zero", Role.MANIFOLD);
        assertThat(zero.before().orElseThrow().settled()).isTrue();
        WhatIfReport.Value after = zero.after().orElseThrow();
        assertThat(after.settled()).isFalse();
        assertThat(after.byHand()).isFalse();
        assertThat(after.timeNanos()).isEqualTo(zero.before().orElseThrow().timeNanos());
        assertThat(after.reason()).startsWith("not settled: holding for ");
        WhatIfReport.Line lockUp = line(report, "lock-up", Role.INLET);
        assertThat(lockUp.after().orElseThrow().settled()).isTrue();
        assertThat(lockUp.after().orElseThrow().timeNanos())
                .as("later, but before the next act")
                .isGreaterThan(lockUp.before().orElseThrow().timeNanos());
        WhatIfReport.Line found = line(report, "found-low", Role.SUPPLY);
        assertThat(found.changed()).as("nothing was set of the air").isFalse();
    }

    private static WhatIfReport.Line line(WhatIfReport report, String step, Role role) {
        return report.lines().stream()
                .filter(l -> l.step().equals(step) && l.role() == role)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aRuleIsAskedOfTheChannelsThatItIsAbout() throws Exception {
        SettledBy rule = new SettledBy(Optional.of(PublishedRule.THREE_READINGS_3_DEGF), false);
        WhatIfReport report = whatIf(1, SettleChoices.NONE, Optional.of(rule));
        assertThat(line(report, "zero", Role.INLET).changed()).isFalse();
        WhatIfReport.Value supply =
                line(report, "found-low", Role.SUPPLY).after().orElseThrow();
        assertThat(supply.reason()).contains("not yet by three-readings-3-degf: reading 1 of 3");
    }

    @Test
    void aLogIsComparedByItsSettledStretches() throws Exception {
        WhatIfReport report = whatIf(2, LONGER_DWELL, Optional.empty());
        assertThat(report.job()).isFalse();
        assertThat(report.lines()).extracting(WhatIfReport.Line::purpose).containsOnly("settled");
        List<WhatIfReport.Line> inlet =
                report.lines().stream().filter(l -> l.role() == Role.INLET).toList();
        assertThat(inlet).anySatisfy(l -> {
            assertThat(l.after()).isPresent();
            assertThat(l.after().orElseThrow().timeNanos())
                    .isGreaterThan(l.before().orElseThrow().timeNanos());
        });
        assertThat(report.lines().stream().filter(l -> l.role() == Role.RETURN))
                .allSatisfy(l -> assertThat(l.changed()).isFalse());
        SettleChoices finer = new SettleChoices(Map.of(
                SettleKind.AIR, new SettleAdjustment(0.05, Double.NaN, Double.NaN, List.of(), Double.NaN, Double.NaN)));
        assertThat(whatIf(2, finer, Optional.empty()).lines())
                .anySatisfy(l -> assertThat(l.after()).isEmpty());
        SettleChoices coarser = new SettleChoices(
                Map.of(SettleKind.GAS, new SettleAdjustment(0.2, 0.5, 10, List.of(9.0), 0, Double.NaN)));
        assertThat(whatIf(2, coarser, Optional.empty()).lines())
                .anySatisfy(l -> assertThat(l.before()).isEmpty());
    }

    @Test
    void theCommandPrintsATableAndTouchesNothing() throws Exception {
        byte[] before = Files.readAllBytes(file());
        String workspace = file().toString();
        Ran ran = run("whatif", "1", "--set", "gas.dwell=10", "--workspace", workspace);
        assertThat(ran.err).isEmpty();
        assertThat(ran.code).isEqualTo(Program.DONE);
        assertThat(ran.out)
                .contains("stage readings are others\n")
                .containsPattern(
                        "  zero \\(zero\\) +inlet +0\\.0[0-9]+ ±0\\.0[0-9]+ +[0-9.]+ s +yes +0\\.0[0-9]+ ±0\\.0[0-9]+"
                                + " +[0-9.]+ s +no +inH₂O +other\n")
                .containsPattern("zero \\(zero\\) manifold: not settled: holding for ");
        Ran log = run("whatif", "2", "--set", "gas.dwell=10", "--workspace", workspace);
        assertThat(log.out).contains("settled stretches are others\n").containsPattern("  settled  inlet ");
        assertThat(Files.readAllBytes(file())).isEqualTo(before);
    }

    @Test
    void theReportAsJsonHasEveryReading() {
        Ran ran = run("whatif", "job", "--workspace", file().toString());
        assertThat(ran.code).isEqualTo(Program.USAGE);
        assertThat(ran.err).contains("nothing is set: say what if");
        ran = run("whatif", "1", "--set", "gas.dwell=10", "--json", "--workspace", file().toString());
        JsonNode root = JsonMapper.builder().build().readTree(ran.out);
        assertThat(root.path("session").asLong()).isEqualTo(1);
        assertThat(root.path("readings").size()).isGreaterThan(20);
        JsonNode zero = root.path("readings").get(0);
        assertThat(zero.path("before").path("settled").asBoolean()).isTrue();
        assertThat(zero.path("after").path("settled").asBoolean()).isFalse();
        assertThat(zero.path("unit_ucum").asString()).isEqualTo("[in_i'H2O]");
        assertThat(zero.path("after").path("expanded_uncertainty").asDouble()).isPositive();
    }

    @Test
    void whatCannotBeMeantIsAnErrorOfUse() {
        String workspace = file().toString();
        Ran none = run("whatif", "9", "--set", "gas.dwell=10", "--workspace", workspace);
        assertThat(none.code).isEqualTo(Program.USAGE);
        assertThat(none.err).contains("has no session \"9\"");
        Ran under = run("whatif", "1", "--set", "gas.drift=0.001", "--workspace", workspace);
        assertThat(under.code).isEqualTo(Program.USAGE);
        assertThat(under.err)
                .contains(
                        "gauge.port-1: gas drift 0.001 inH₂O is under the gauge's step of 0.01 inH₂O; expected at least"
                                + " 0.01: take a larger limit");
        Ran rule = run("whatif", "2", "--rule", "half-hour-2-degf", "--workspace", workspace);
        assertThat(rule.code).isEqualTo(Program.USAGE);
        assertThat(rule.err).contains("session 2 has no step that the rule half-hour-2-degf could be asked of");
        Ran key = run(
                "whatif",
                "1",
                "--set",
                "gas.dwell=10",
                "--workspace",
                folder.resolve("none").toString());
        assertThat(key.code).isEqualTo(Program.FAULT);
        assertThat(key.err).contains("there is none yet");
    }

    @Test
    void theWorkspaceKeepsSettingsAndASessionBegunAfterHasThem() throws Exception {
        String workspace = folder.resolve("own.settlemark").toString();
        Ran set = run("settings", "--set", "gas.drift=0.04", "--set", "air.dwell=9", "--workspace", workspace);
        assertThat(set.err).isEmpty();
        assertThat(set.out).containsPattern("gas +0\\.04 inH₂O +±0\\.05 inH₂O +30 s +20,40,60,120 s +3 s +here\n");
        Ran more = run("settings", "--set", "gas.dwell=5", "--workspace", workspace);
        assertThat(more.out).containsPattern("gas +0\\.04 inH₂O .* 5 s +here\n").containsPattern("air .* 9 s +here\n");
        Ran json = run("settings", "--json", "--workspace", workspace);
        assertThat(json.out)
                .isEqualTo(
                        "{\"gas\":{\"unit\":\"[in_i'H2O]\",\"drift\":0.04,\"dwell\":5.0},\"air\":{\"dwell\":9.0}}\n");
        Ran demo = run("demo", "--headless", "--workspace", workspace, "--seed", "7");
        assertThat(demo.err).isEmpty();
        try (SqliteStore store = Workspaces.reading(Optional.of(Path.of(workspace)))) {
            SessionHeader header = store.header(1);
            assertThat(header.settle().settings(SettleKind.GAS).driftLimit()).isEqualTo(0.04);
            assertThat(header.settings().of(SettleKind.AIR).dwellSeconds()).isEqualTo(9);
            assertThat(store.readings(1).get(0).channels().get(0).reason()).endsWith("limit 0.04");
        }
        Ran verified = run("verify", seal(Path.of(workspace)).toString(), "--workspace", workspace);
        assertThat(verified.code).as(verified.out + verified.err).isEqualTo(Program.DONE);
        Ran hunting =
                run("settings", "--set", "gas.windows=20,40", "--set", "gas.hunting=12", "--workspace", workspace);
        assertThat(hunting.out).contains("here, hunting of 12 s expected");
        Ran refused = run("settings", "--set", "gas.hunting=20", "--workspace", workspace);
        assertThat(refused.code).isEqualTo(Program.USAGE);
        assertThat(refused.err).contains("under three periods of hunting of 20 s; expected at least 60 s");
        Ran reset = run("settings", "--reset", "--workspace", workspace);
        assertThat(reset.out).containsPattern("gas +0\\.02 inH₂O .* defaults\n").doesNotContain("here");
        assertThat(run("settings", "--json", "--workspace", workspace).out).isEqualTo("{}\n");
    }

    private static Path seal(Path workspace) throws Exception {
        try (var files = Files.list(workspace.resolveSibling("records"))) {
            return files.filter(f -> f.toString().endsWith("-seal.json"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    @Test
    void settingsThatDoNotFitTheGaugesStopTheSessionBeforeItBegins() throws Exception {
        Path workspace = folder.resolve("fine.settlemark");
        assertThat(run("settings", "--set", "gas.drift=0.002", "--workspace", workspace.toString()).code)
                .isEqualTo(Program.DONE);
        Ran demo = run("demo", "--headless", "--workspace", workspace.toString());
        assertThat(demo.code).isEqualTo(Program.USAGE);
        assertThat(demo.err).contains("gauge.port-1: gas drift 0.002 inH₂O is under the gauge's step of 0.01 inH₂O");
        try (SqliteStore store = Workspaces.demo(Optional.of(workspace))) {
            assertThat(store.sessions()).isEmpty();
            store.settings().put("settle", "{\"gas\":{\"drift\":\"much\"}}");
        }
        Ran damaged = run("settings", "--workspace", workspace.toString());
        assertThat(damaged.code).isEqualTo(Program.DAMAGED);
        assertThat(damaged.err)
                .contains("settings of settled detection cannot be read (gas drift must be a number")
                .contains("settings --reset");
        assertThat(run("settings", "--reset", "--workspace", workspace.toString()).code)
                .isEqualTo(Program.DONE);
    }
}
