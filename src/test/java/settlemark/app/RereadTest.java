package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Commands;
import settlemark.cli.Program;
import settlemark.decode.Rejected;
import settlemark.measure.Chunk;
import settlemark.measure.Role;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.ProfileReader;
import settlemark.rig.DemoRig;
import settlemark.session.Correction;
import settlemark.session.LiveSession;
import settlemark.session.ProbeKeys;
import settlemark.session.RereadReport;
import settlemark.session.Rereader;
import settlemark.session.Rereading;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.settle.StageReading;
import settlemark.store.SqliteStore;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A whole simulated job, stored once, decoded again in many ways. */
final class RereadTest {
    private static final Instant MADE = Instant.parse("2026-04-01T12:00:00Z");
    private static final long ALWAYS = Long.MAX_VALUE;

    /** Everything that the day has stored. */
    private static final List<String> OF_THE_DAY = List.of(
            "session",
            "probe",
            "frame",
            "event_block",
            "sample_block",
            "summary",
            "rejected",
            "reading",
            "channel_reading");

    @TempDir
    private static Path shared = Path.of("");

    @TempDir
    private Path folder = Path.of("");

    @BeforeAll
    static void doTheJob() throws Exception {
        try (SqliteStore store = Workspaces.demo(Optional.of(shared.resolve("job.settlemark")))) {
            SessionHeader header = DemoScene.header(Instant.parse("2026-03-14T09:30:00Z"), ZoneOffset.UTC, "test");
            DemoRig rig = new DemoRig(new DemoRig.Settings(7, true));
            new HeadlessDemo(header, store, rig, t -> {}).run();
        }
    }

    @BeforeEach
    void copyTheWorkspace() throws Exception {
        Files.copy(shared.resolve("job.settlemark"), file());
    }

    private Path file() {
        return folder.resolve("job.settlemark");
    }

    private SqliteStore open() throws Exception {
        return Workspaces.demo(Optional.of(file()));
    }

    /** The second port's numbers times 1.2. */
    private static Profile corrected() {
        String text = ProfileLibrary.get("demo-gauge").text();
        String scaled = text.substring(0, text.indexOf("\nexamples:"))
                .replace("- name: pressure-2\n", "- name: pressure-2\n    scale: 1.2\n");
        return ProfileReader.read("corrected.yaml", scaled.getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }

    private Path correctedFile() throws Exception {
        return Files.writeString(folder.resolve("corrected.yaml"), corrected().text(), StandardCharsets.UTF_8);
    }

    private static RereadReport reread(SqliteStore store, long session, Map<String, Profile> profiles)
            throws Exception {
        return Rereader.run(
                store, session, Correction.of(store.header(session), profiles), ProbeKeys.NONE, MADE, "again");
    }

    private static List<Rejected> rejectedOfTheDay(SqliteStore store, long session, int probe) throws Exception {
        List<Rejected> rejected = new ArrayList<>();
        store.rejected(session, probe, rejected::add);
        return rejected;
    }

    private static List<Rejected> rejected(SqliteStore store, Rereading of, int probe) throws Exception {
        List<Rejected> rejected = new ArrayList<>();
        store.rereadings().rejected(of, probe, rejected::add);
        return rejected;
    }

    /** All samples, refused frames and readings are those of a session's day, bit for bit. */
    private static void sameAsTheDay(SqliteStore store, long session, Rereading again) throws Exception {
        long samples = 0;
        SessionHeader header = store.header(session);
        for (int probe = 0; probe < header.probes().size(); probe++) {
            for (int c = 0; c < header.probes().get(probe).channels().size(); c++) {
                SampleBlock day = store.samples(session, probe, c, 0, ALWAYS);
                SampleBlock now = store.rereadings().samples(again, probe, c, 0, ALWAYS);
                assertThat(now.timesNanos()).isEqualTo(day.timesNanos());
                assertThat(bits(now.values())).isEqualTo(bits(day.values()));
                assertThat(now.statuses()).isEqualTo(day.statuses());
                samples += day.size();
            }
            assertThat(store.rereadings().sampleCount(again, probe)).isEqualTo(store.sampleCount(session, probe));
            assertThat(rejected(store, again, probe)).isEqualTo(rejectedOfTheDay(store, session, probe));
        }
        assertThat(samples).isGreaterThan(10_000);
        assertThat(store.rereadings().readings(again)).isEqualTo(store.readings(session));
    }

    private static long[] bits(double[] values) {
        return Arrays.stream(values).mapToLong(Double::doubleToRawLongBits).toArray();
    }

    @Test
    void theOwnProfilesGiveExactlyWhatIsStored() throws Exception {
        try (SqliteStore store = open()) {
            RereadReport report = reread(store, 1, Map.of());
            assertThat(report.changes()).isEmpty();
            assertThat(report.probes()).allMatch(RereadReport.Probe::sameProfile);
            assertThat(store.readings(1)).isNotEmpty();
            sameAsTheDay(store, 1, report.kept().orElseThrow());
        }
    }

    /** The same bytes with noise among them, as the day stored them; and cut anywhere, as a day of its own. */
    @Test
    void noiseAndCutsGiveExactlyTheSameAgain() throws Exception {
        long seed = System.nanoTime();
        System.out.println("seed " + seed);
        Random random = new Random(seed);
        try (SqliteStore store = open()) {
            List<SessionEvent> noisy = new ArrayList<>();
            store.events(1, event -> noisy.add(noisy(event, random)));
            long day = log(store, "noisy", noisy, random);
            long cut = log(
                    store,
                    "cut",
                    noisy.stream().flatMap(e -> cut(e, random).stream()).toList(),
                    random);
            RereadReport ofTheDay = reread(store, day, Map.of());
            RereadReport ofTheCut = reread(store, cut, Map.of());
            assertThat(rejectedOfTheDay(store, day, 0)).hasSizeGreaterThan(20);
            assertThat(rejectedOfTheDay(store, day, 1)).hasSizeGreaterThan(20);
            sameAsTheDay(store, day, ofTheDay.kept().orElseThrow());
            sameAsTheDay(store, day, ofTheCut.kept().orElseThrow());
        }
    }

    /** As if it came live: committed at any moments. */
    private static long log(SqliteStore store, String key, List<SessionEvent> events, Random random) throws Exception {
        SessionHeader of = store.header(1);
        SessionHeader header = new SessionHeader(
                key,
                key,
                of.startedAt(),
                of.zone(),
                of.pressureUnit(),
                of.temperatureUnit(),
                of.probes(),
                of.plan(),
                of.plate(),
                "test");
        long number = store.begin(header);
        LiveSession live = new LiveSession(header);
        for (SessionEvent event : events) {
            live.take(event);
            if (random.nextInt(2000) == 0) {
                store.append(number, live.drain());
            }
        }
        store.append(number, live.drain());
        return number;
    }

    private static SessionEvent noisy(SessionEvent event, Random random) {
        if (!(event instanceof SessionEvent.Bytes bytes) || random.nextInt(100) > 0) {
            return event;
        }
        byte[] spoilt = bytes.chunk().bytes().clone();
        spoilt[random.nextInt(spoilt.length)] ^= (byte) (1 << random.nextInt(8));
        return new SessionEvent.Bytes(bytes.probe(), new Chunk(bytes.timeNanos(), spoilt));
    }

    private static List<SessionEvent> cut(SessionEvent event, Random random) {
        if (!(event instanceof SessionEvent.Bytes bytes)) {
            return List.of(event);
        }
        List<SessionEvent> pieces = new ArrayList<>();
        byte[] all = bytes.chunk().bytes();
        for (int from = 0; from < all.length; ) {
            int to = Math.min(all.length, from + 1 + random.nextInt(all.length));
            byte[] piece = Arrays.copyOfRange(all, from, to);
            pieces.add(new SessionEvent.Bytes(bytes.probe(), new Chunk(bytes.timeNanos(), piece)));
            from = to;
        }
        return pieces;
    }

    @Test
    void aCorrectedProfileGivesNewSamplesAndLeavesEveryRowOfTheDayAsItWas() throws Exception {
        List<String> before = rowsOfTheDay();
        try (SqliteStore store = open()) {
            Profile now = corrected();
            RereadReport report = reread(store, 1, Map.of("gauge", now));
            Rereading again = report.kept().orElseThrow();
            assertThat(report.probes().get(0).sameProfile()).isFalse();
            assertThat(report.probes().get(1).sameProfile()).isTrue();
            assertThat(again.probes().get(0).profile().digest()).isEqualTo(now.digest());
            assertThat(store.rereadings().of(1)).containsExactly(again);
            int port = now.channelIndex("port-2").orElseThrow();
            double[] day = store.samples(1, 0, port, 0, ALWAYS).values();
            double[] after =
                    store.rereadings().samples(again, 0, port, 0, ALWAYS).values();
            assertThat(after).hasSameSizeAs(day).hasSizeGreaterThan(1000);
            for (int i = 0; i < day.length; i++) {
                assertThat(after[i]).isCloseTo(1.2 * day[i], within(1e-9));
            }
            assertThat(report.changes())
                    .anyMatch(c -> c.role() == Role.MANIFOLD && c.step().equals("left-high"));
            assertThat(report.changes()).noneMatch(c -> c.role() == Role.SUPPLY);
            List<StageReading> readings = store.rereadings().readings(again);
            assertThat(readings).isNotEmpty().isNotEqualTo(store.readings(1));
        }
        assertThat(rowsOfTheDay()).isEqualTo(before).hasSizeGreaterThan(50);
    }

    private List<String> rowsOfTheDay() throws Exception {
        List<String> rows = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement()) {
            for (String table : OF_THE_DAY) {
                try (ResultSet row = statement.executeQuery("SELECT * FROM " + table)) {
                    int columns = row.getMetaData().getColumnCount();
                    while (row.next()) {
                        StringBuilder text = new StringBuilder(table);
                        for (int c = 1; c <= columns; c++) {
                            Object value = row.getObject(c);
                            text.append('|').append(value instanceof byte[] b ? Arrays.toString(b) : value);
                        }
                        rows.add(text.toString());
                    }
                }
            }
        }
        return rows;
    }

    @Test
    void aProfileThatDoesNotFitIsSaidAndNothingIsKept() throws Exception {
        List<String> before = rowsOfTheDay();
        Ran ran = run("reread", "latest", "--workspace", file().toString(), "--profile", "gauge=demo-air");
        assertThat(ran.code).isEqualTo(Program.CHECK_FAILED);
        assertThat(ran.out)
                .contains("not one sample from ", "demo-air", "does not fit this device; the first was refused: ")
                .contains("lost inlet at port-1", "lost manifold at port-2")
                .contains("not kept: nothing was stored");
        try (SqliteStore store = open()) {
            assertThat(store.rereadings().of(1)).isEmpty();
        }
        assertThat(rowsOfTheDay()).isEqualTo(before);
    }

    private record Ran(int code, String out, String err) {}

    private static Ran run(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Commands.run(new Settlemark(), new PrintWriter(out), new PrintWriter(err), arguments);
        return new Ran(code, out.toString(), err.toString());
    }

    @Test
    void theCommandSaysWhatChangedAndTheRecordSaysWhatItIsMadeFrom() throws Exception {
        Profile day = ProfileLibrary.get("demo-gauge");
        String workspace = file().toString();
        Ran ran = run("reread", "1", "--profile", "gauge=" + correctedFile(), "--workspace", workspace);
        assertThat(ran.err).hasLineCount(1).contains("corrected.yaml:5:1: warning: no examples");
        assertThat(ran.code).isEqualTo(Program.DONE);
        assertThat(ran.out)
                .contains("session 1, rereading 1, made ")
                .contains("gauge: demo-gauge " + day.digest().substring(0, 12) + " -> demo-gauge "
                        + corrected().digest().substring(0, 12))
                .contains("air: the same profile, demo-air")
                .containsPattern("samples +[0-9]+, the same number")
                .containsPattern(
                        "left-high \\(left\\), manifold: 3\\.(49|5)[0-9]* \u00b1[0-9.]+ -> 4\\.[12][0-9]* \u00b1[0-9.]+ in");
        Path records = folder.resolve("records");
        Ran record = run("record", "1", "--rereading", "1", "--workspace", workspace, "--out", records.toString());
        assertThat(record.out)
                .startsWith("SIMULATED\nThe bytes of this session were decoded again on ")
                .contains("gauge with profile demo-gauge (SHA-256 "
                        + corrected().digest().substring(0, 12))
                .contains(
                        "instead of the one of the day (SHA-256 " + day.digest().substring(0, 12))
                .contains("The readings of the day stay stored")
                .contains("-rereading-1.pdf");
        Ran ofTheDay = run("record", "1", "--workspace", workspace, "--out", records.toString());
        assertThat(ofTheDay.out).doesNotContain("decoded again");
        assertThat(record.code).isEqualTo(Program.CHECK_FAILED);
        assertThat(ofTheDay.code).isEqualTo(Program.DONE);
        try (var files = Files.list(records)) {
            assertThat(files).hasSize(10);
        }
    }

    @Test
    void theSameRereadingMakesTheSameRecordTwice() throws Exception {
        try (SqliteStore store = open()) {
            Rereading again =
                    reread(store, 1, Map.of("gauge", corrected())).kept().orElseThrow();
            RecordMaking.Made first = RecordMaking.make(store, again, ProbeKeys.NONE, "", folder.resolve("a"))
                    .orElseThrow();
            List<Path> second = RecordMaking.make(store, again, ProbeKeys.NONE, "", folder.resolve("b"))
                    .orElseThrow()
                    .files();
            assertThat(first.files()).hasSize(4).hasSameSizeAs(second);
            for (int i = 0; i < second.size(); i++) {
                assertThat(Files.mismatch(first.files().get(i), second.get(i))).isEqualTo(-1);
            }
            // What is drawn and judged is what the rereading has stored.
            assertThat(first.record().job().steps().stream()
                            .flatMap(s -> s.readings().stream())
                            .toList())
                    .isEqualTo(store.rereadings().readings(again));
        }
    }

    @Test
    void theReportAsJsonHasTheWholeDigests() throws Exception {
        Ran ran =
                run("reread", "1", "--json", "--profile", "gauge=" + correctedFile(), "--workspace", file().toString());
        assertThat(ran.code).isEqualTo(Program.DONE);
        JsonNode root = JsonMapper.builder().build().readTree(ran.out);
        JsonNode gauge = root.required("probes").get(0);
        assertThat(root.required("rereading").intValue()).isEqualTo(1);
        assertThat(gauge.required("profile_after").required("digest").stringValue())
                .isEqualTo(corrected().digest());
        assertThat(gauge.required("samples_after").longValue())
                .isEqualTo(gauge.required("samples_before").longValue())
                .isPositive();
        assertThat(root.required("changes").size()).isPositive();
        JsonNode change = root.required("changes").get(0);
        assertThat(change.required("before").required("value").isNumber()).isTrue();
        assertThat(change.required("unit_ucum").stringValue()).isEqualTo("[in_i'H2O]");
    }

    @Test
    void damageEndsItWithItsPlaceAndLeavesNothingHalfMade() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement()) {
            statement.executeUpdate(
                    "DELETE FROM event_block WHERE first_sequence = (SELECT min(next_sequence) FROM event_block)");
        }
        List<String> before = rowsOfTheDay();
        Ran ran = run("reread", "1", "--workspace", file().toString());
        assertThat(ran.code).isEqualTo(Program.DAMAGED);
        assertThat(ran.err).containsPattern("is damaged: of session 1 event [0-9]+ is missing");
        assertThat(ran.out).isEmpty();
        try (SqliteStore store = open()) {
            assertThat(store.rereadings().of(1)).isEmpty();
        }
        assertThat(rowsOfTheDay()).isEqualTo(before);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT count(*) FROM reread_frame")) {
            assertThat(row.getLong(1)).isZero();
        }
    }

    @Test
    void aWorkspaceWithoutASessionHasNoLatestOne() throws Exception {
        Path empty = folder.resolve("empty.settlemark");
        Workspaces.demo(Optional.of(empty)).close();
        Ran ran = run("reread", "latest", "--workspace", empty.toString());
        assertThat(ran.code).isEqualTo(Program.USAGE);
        assertThat(ran.err).isEqualToNormalizingNewlines("settlemark: " + empty + " has no session yet\n");
    }

    @Test
    void whatCannotBeMeantIsAnErrorOfUse() throws Exception {
        String workspace = file().toString();
        Ran ran = run("reread", "17", "--workspace", workspace);
        assertThat(ran.code).isEqualTo(Program.USAGE);
        assertThat(ran.err).contains("has no session \"17\"; name its number or key, or \"latest\"");
        ran = run("reread", "1", "--workspace", workspace, "--profile", "gauga=demo-gauge");
        assertThat(ran.code).isEqualTo(Program.USAGE);
        assertThat(ran.err).contains("no probe \"gauga\"; it has [gauge, air]");
        ran = run("reread", "1", "--workspace", workspace, "--profile", "gauge=no-such");
        assertThat(ran.code).isEqualTo(Program.USAGE);
        assertThat(ran.err).contains("no profile \"no-such\"", "--profile gauge=FILE");
        ran = run("reread", "1", "--workspace", workspace, "--profile", "gauge=plain-line");
        assertThat(ran.code).isEqualTo(Program.USAGE);
        assertThat(ran.err).contains("simulated");
        ran = run("record", "1", "--workspace", workspace, "--rereading", "3");
        assertThat(ran.code).isEqualTo(Program.USAGE);
        assertThat(ran.err).contains("has no rereading 3", "settlemark reread");
        Path none = folder.resolve("none.settlemark");
        ran = run("reread", "1", "--workspace", none.toString());
        assertThat(ran.code).isEqualTo(Program.FAULT);
        assertThat(ran.err).contains("there is none yet");
        assertThat(none).doesNotExist();
        Path bad = Files.writeString(folder.resolve("bad.yaml"), "language: 1\nid: BAD\n");
        ran = run("reread", "1", "--workspace", workspace, "--profile", "gauge=" + bad);
        assertThat(ran.code).isEqualTo(Program.CHECK_FAILED);
        assertThat(ran.err).contains("bad.yaml:2:");
    }
}
