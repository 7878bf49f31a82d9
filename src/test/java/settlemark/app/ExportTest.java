package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

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
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Commands;
import settlemark.cli.Program;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.ProfileLibrary;
import settlemark.session.Note;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.RawBytes;
import settlemark.session.SampleBlock;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.WriteBatch;
import settlemark.store.SqliteStore;

/** Samples go out of a workspace and into another one, and are the same. */
final class ExportTest {
    private static final long SEED = System.nanoTime();
    private static final int SAMPLES = 5000;
    private static final Instant NOW = Instant.parse("2026-03-15T10:00:00Z");

    @TempDir
    Path folder;

    private record Ran(int code, String out, String err) {}

    private Path workspace() {
        return folder.resolve("w.settlemark");
    }

    private static Ran run(Object... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Commands.run(
                new Settlemark(),
                new PrintWriter(out),
                new PrintWriter(err),
                Arrays.stream(arguments).map(Object::toString).toArray(String[]::new));
        return new Ran(code, out.toString(), err.toString());
    }

    @BeforeEach
    void aSessionWithEveryKindOfNumber() throws Exception {
        System.out.println("seed " + SEED);
        try (SqliteStore store = Workspaces.person(Optional.of(workspace()))) {
            long session = store.begin(header());
            for (int i = 0; i < 2; i++) {
                List<SampleBlock> blocks = new ArrayList<>();
                for (int channel = 0; channel < 3; channel++) {
                    blocks.add(block(0, channel, i));
                }
                blocks.add(block(1, 0, i));
                store.append(session, new WriteBatch(0, List.of(), blocks, List.of(), List.of(), 1_000_000_000_000L));
            }
            store.end(session, 1_000_000_000_000L);
            store.papers().note(session, new Note(OptionalLong.of(7), NOW, "=wind()"));
            store.papers().attach(session, "plate.txt", "text/plain", NOW, new byte[] {1, 2});
            store.papers().attach(session, "plate.txt", "text/plain", NOW, new byte[] {3});
        }
    }

    private static SessionHeader header() {
        return new SessionHeader(
                "=visit",
                "a visit",
                Instant.parse("2026-03-14T09:31:00.000000001Z"),
                ZoneId.of("America/Denver"),
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                List.of(
                        new ProbeSetup(
                                "=gauge()",
                                new ProbeAddress("rig", "gauge"),
                                ProfileLibrary.get("demo-gauge"),
                                Map.of("port-1", Role.INLET, "port-2", Role.MANIFOLD)),
                        new ProbeSetup(
                                "'air", new ProbeAddress("rig", "air"), ProfileLibrary.get("demo-air"), Map.of())),
                Optional.empty(),
                Optional.empty(),
                "test");
    }

    /** Times that step and sometimes stand still, before the beginning and beyond the end too. */
    private static SampleBlock block(int probe, int channel, int part) {
        Random random = new Random(SEED + 31L * probe + 7L * part + (probe == 0 ? 0 : channel));
        Random numbers = new Random(SEED + 100L * probe + 10L * channel + part);
        long[] times = new long[SAMPLES / 2];
        double[] values = new double[SAMPLES / 2];
        byte[] statuses = new byte[SAMPLES / 2];
        long time = part == 0 ? -5_000_000_000L : 600_000_000_000L;
        for (int i = 0; i < times.length; i++) {
            time += random.nextInt(4) == 0 ? 0 : random.nextInt(400_000_000);
            times[i] = time;
            values[i] = i % 3 == 0
                    ? Double.longBitsToDouble(numbers.nextLong())
                    : i % 3 == 1 ? -0.0 : Double.longBitsToDouble(0x7ff8000000000000L + numbers.nextInt(3));
            statuses[i] = (byte) numbers.nextInt(SampleStatus.values().length);
        }
        return new SampleBlock(probe, channel, times, values, statuses);
    }

    @Test
    void everySampleComesBackBitForBitAndSimulatedStaysSo() throws Exception {
        Path csv = folder.resolve("s.csv");
        Ran exported = run("export", "latest", "--csv", csv, "--workspace", workspace());
        assertThat(exported.code()).as(exported.err()).isZero();
        assertThat(exported.out()).isEqualTo(csv + "\n");
        assertThat(exported.err()).contains("notes and attachments, 3 in all, are not in this file");
        List<String> lines = Files.readAllLines(csv, StandardCharsets.UTF_8);
        assertThat(lines).hasSize(1 + 4 * SAMPLES);
        assertThat(lines.get(1))
                .startsWith("SIMULATED,'=visit,2026-03-14T03:30:5")
                .contains(",'=gauge(),port-1,inlet,");

        Path other = folder.resolve("other.settlemark");
        Ran imported = run("import", csv, "--workspace", other, "--title", "back");
        assertThat(imported.code()).as(imported.err()).isZero();
        assertThat(imported.out()).isEqualTo("session 1 =visit-imported\n");
        assertThat(imported.err()).contains("20000 samples (SIMULATED) of session =visit are imported");
        assertThat(run("store", "check", other).out()).contains("20000 samples").contains("whole:");
        try (SqliteStore before = Workspaces.reading(Optional.of(workspace()));
                SqliteStore after = Workspaces.reading(Optional.of(other))) {
            SessionStore.Summary session = after.sessions().get(0);
            assertThat(session.simulated()).isTrue();
            assertThat(session.ended()).isTrue();
            assertThat(session.title()).isEqualTo("back");
            assertThat(session.startedAt()).isEqualTo(header().startedAt());
            assertThat(after.rawBytes(1)).isEqualTo(RawBytes.DROPPED);
            ProbeSetup gauge = after.header(1).probes().get(0);
            assertThat(gauge.name()).isEqualTo("=gauge()");
            assertThat(gauge.address()).isEqualTo(new ProbeAddress("imported", "s.csv"));
            assertThat(gauge.roles()).isEqualTo(Map.of("port-1", Role.INLET, "port-2", Role.MANIFOLD));
            assertThat(gauge.channels().get(2).unit()).isEqualTo(Unit.PERCENT);
            for (int channel = 0; channel < 3; channel++) {
                same(before, after, 0, channel);
            }
            same(before, after, 1, 0);
        }
        // Once more out and in: what was imported can be exported and imported again.
        Path again = folder.resolve("again.csv");
        assertThat(run("export", "1", "--csv", again, "--workspace", other).code())
                .isZero();
        assertThat(Files.readAllLines(again, StandardCharsets.UTF_8)).hasSameSizeAs(lines);
        assertThat(run("import", again, "--workspace", other).out()).isEqualTo("session 2 =visit-imported-imported\n");
        assertThat(run("import", csv, "--workspace", other).out()).isEqualTo("session 3 =visit-imported-2\n");
        assertThat(run("record", "1", "--workspace", other).err()).contains("without its probes' bytes");
    }

    private static void same(SessionStore before, SessionStore after, int probe, int channel) throws Exception {
        SampleBlock expected = before.samples(1, probe, channel, Long.MIN_VALUE, Long.MAX_VALUE);
        SampleBlock found = after.samples(1, probe, channel, Long.MIN_VALUE, Long.MAX_VALUE);
        assertThat(expected.size()).isEqualTo(SAMPLES);
        assertThat(found.timesNanos()).isEqualTo(expected.timesNanos());
        assertThat(found.statuses()).isEqualTo(expected.statuses());
        for (int i = 0; i < expected.size(); i++) {
            if (Double.doubleToRawLongBits(found.values()[i]) != Double.doubleToRawLongBits(expected.values()[i])) {
                throw new AssertionError("sample " + i + ": " + found.values()[i] + ", not " + expected.values()[i]);
            }
        }
    }

    @Test
    void aFolderGetsNotesAndAttachmentsToo() throws Exception {
        Path out = Files.createDirectory(folder.resolve("out"));
        Ran ran = run("export", "1", "--csv", out, "--workspace", workspace());
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out().lines())
                .containsExactly(
                        out.resolve("-visit-samples.csv").toString(),
                        out.resolve("-visit-notes.csv").toString(),
                        out.resolve("-visit-attachments/1-plate.txt").toString(),
                        out.resolve("-visit-attachments/2-plate.txt").toString());
        assertThat(out.resolve("-visit-notes.csv"))
                .hasContent("session,session_nanos,written_at,text\n'=visit,7,2026-03-15T10:00:00Z,'=wind()\n");
        assertThat(out.resolve("-visit-attachments/2-plate.txt")).hasBinaryContent(new byte[] {3});
        Ran twice = run("export", "1", "--csv", out, "--workspace", workspace());
        assertThat(twice.code()).isEqualTo(Program.FAULT);
        assertThat(twice.err()).contains("is there already and is not overwritten");
    }

    @Test
    void wrongQuestionsAreToldSo() throws Exception {
        Path csv = folder.resolve("s.csv");
        Ran none = run("export", "7", "--csv", csv, "--workspace", workspace());
        assertThat(none.code()).isEqualTo(Program.USAGE);
        assertThat(none.err()).contains("no session \"7\"");
        assertThat(run("export", "1", "--workspace", workspace()).err()).contains("--csv FILE|FOLDER or --parquet");
        Ran rereading = run("export", "1", "--csv", csv, "--rereading", 2, "--workspace", workspace());
        assertThat(rereading.code()).isEqualTo(Program.USAGE);
        assertThat(rereading.err()).contains("no rereading 2");
        Ran nowhere = run("export", "1", "--csv", folder.resolve("none/s.csv"), "--workspace", workspace());
        assertThat(nowhere.code()).isEqualTo(Program.FAULT);
        assertThat(nowhere.err()).contains("there is no folder");
        assertThat(csv).doesNotExist();
        Files.createSymbolicLink(csv, folder.resolve("elsewhere"));
        assertThat(run("export", "1", "--csv", csv, "--workspace", workspace()).err())
                .contains("is there already");
        assertThat(folder.resolve("elsewhere")).doesNotExist();
    }

    @Test
    void aFileWithOneWrongLineIsNotImportedAtAll() throws Exception {
        Path csv = folder.resolve("s.csv");
        run("export", "1", "--csv", csv, "--workspace", workspace());
        List<String> lines = new ArrayList<>(Files.readAllLines(csv, StandardCharsets.UTF_8));
        lines.set(15_000, lines.get(15_000).replace(",ok", ",good").replace(",fault", ",good"));
        lines.set(15_001, "broken");
        Files.write(csv, lines, StandardCharsets.UTF_8);
        Path other = folder.resolve("other.settlemark");
        Ran ran = run("import", csv, "--workspace", other);
        assertThat(ran.code()).isEqualTo(Program.DAMAGED);
        assertThat(ran.err()).containsPattern("s.csv:1500[12]: .*nothing was imported");
        assertThat(other).doesNotExist();
        assertThat(run("import", folder.resolve("none.csv")).code()).isEqualTo(Program.USAGE);
    }

    private static boolean parquetCanBeWritten() {
        try {
            Class.forName("org.duckdb.DuckDBDriver");
            return true;
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    @Test
    void parquetWithoutItsWriterIsRefusedWithTheRemedy() {
        Assumptions.assumeFalse(parquetCanBeWritten(), "the driver is on the class path");
        Ran ran = run("export", "1", "--parquet", folder.resolve("s.parquet"), "--workspace", workspace());
        assertThat(ran.code()).isEqualTo(Program.FAULT);
        assertThat(ran.err())
                .contains("DuckDB, which is not part of the program")
                .contains("export with --csv");
        assertThat(folder.resolve("s.parquet")).doesNotExist();
    }

    /** Runs with {@code -Pbench}, which brings the driver. */
    @Test
    void parquetHoldsTheSameSamples() throws Exception {
        Assumptions.assumeTrue(parquetCanBeWritten(), "needs the driver, which -Pbench brings");
        Path file = folder.resolve("it's.parquet");
        Ran ran = run("export", "1", "--parquet", file, "--workspace", workspace());
        assertThat(ran.code()).as(ran.err()).isZero();
        try (SqliteStore store = Workspaces.reading(Optional.of(workspace()));
                Connection memory = DriverManager.getConnection("jdbc:duckdb:");
                Statement statement = memory.createStatement();
                ResultSet row = statement.executeQuery(
                        "SELECT session_nanos, value, unit_ucum, status, origin, session, time FROM '"
                                + file.toString().replace("'", "''")
                                + "' WHERE probe = '=gauge()' AND channel = 'port-2'")) {
            SampleBlock expected = store.samples(1, 0, 1, Long.MIN_VALUE, Long.MAX_VALUE);
            for (int i = 0; i < SAMPLES; i++) {
                assertThat(row.next()).isTrue();
                assertThat(row.getLong(1)).isEqualTo(expected.timesNanos()[i]);
                // Boxed: NaN is NaN, and -0.0 is not 0.0.
                assertThat((Double) row.getDouble(2)).isEqualTo((Double) expected.values()[i]);
                assertThat(row.getString(3)).isEqualTo("[in_i'H2O]");
                assertThat(row.getString(4))
                        .isEqualToIgnoringCase(expected.status(i).name());
                assertThat(row.getString(5)).isEqualTo("SIMULATED");
                assertThat(row.getString(6)).isEqualTo("=visit");
                assertThat(row.getString(7)).startsWith("2026-03-14T");
            }
            assertThat(row.next()).isFalse();
        }
        String names = "SELECT count(*) FROM '" + file.toString().replace("'", "''") + "' WHERE probe = '''air'";
        try (Connection memory = DriverManager.getConnection("jdbc:duckdb:");
                Statement statement = memory.createStatement();
                ResultSet row = statement.executeQuery(names)) {
            row.next();
            // The apostrophe that guards is off, that of the name is not.
            assertThat(row.getInt(1)).isEqualTo(SAMPLES);
        }
        assertThat(run("export", "1", "--parquet", file, "--workspace", workspace())
                        .err())
                .contains("is there already");
    }
}
