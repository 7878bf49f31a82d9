package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Commands;
import settlemark.cli.Program;
import settlemark.session.StoreException;
import settlemark.store.ParquetFile;
import settlemark.store.SqliteStore;

/** Single files of a record: what they hold, that they are unsealed and say so, and that they overwrite nothing. */
final class RecordCopiesTest {
    @TempDir
    Path folder;

    private record Ran(int code, String out, String err) {}

    private Path workspace() {
        return folder.resolve("w.settlemark");
    }

    @BeforeEach
    void store() throws Exception {
        try (SqliteStore store = Workspaces.demo(Optional.of(workspace()))) {
            TwoMinutes.in(store);
        }
    }

    private Ran run(Object... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Commands.run(
                new Settlemark(),
                new PrintWriter(out),
                new PrintWriter(err),
                Stream.concat(
                                Stream.of(
                                        "record",
                                        "latest",
                                        "--workspace",
                                        workspace().toString()),
                                Arrays.stream(arguments).map(Object::toString))
                        .toArray(String[]::new));
        return new Ran(code, out.toString(), err.toString());
    }

    private static String text(Path pdf) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }

    private static Path one(Path folder, String end) throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(f -> f.toString().endsWith(end) && !f.toString().endsWith("-seal.json"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    /** The PDF knows the record's other files by this. */
    private static String content(String text) {
        Matcher content = Pattern.compile("content [0-9a-f]{16}").matcher(text);
        assertThat(content.find()).isTrue();
        return content.group();
    }

    @Test
    void eachIsMadeWhereItIsWantedAndNothingElse() throws Exception {
        Path pdf = folder.resolve("a.pdf");
        Path json = folder.resolve("a.json");
        Path csv = folder.resolve("a.csv");
        Ran ran = run("--pdf", pdf, "--json", json, "--csv", csv);
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out().lines()).containsExactly(pdf.toString(), json.toString(), csv.toString());
        assertThat(ran.err()).contains("unsealed copies");
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(p -> p.getFileName().toString()))
                    .containsExactlyInAnyOrder("a.pdf", "a.json", "a.csv", "w.settlemark", "w.settlemark.lock");
        }
    }

    @Test
    void theyAreTheSealedRecordsFilesButForTheSealOnThePdf() throws Exception {
        Path sealed = folder.resolve("sealed");
        assertThat(run("--out", sealed).code()).isZero();
        Path tables = Files.createDirectory(folder.resolve("tables"));
        Path pdf = folder.resolve("a.pdf");
        Path json = folder.resolve("a.json");
        assertThat(run("--pdf", pdf, "--json", json, "--csv", tables).code()).isZero();
        assertThat(json).hasSameBinaryContentAs(one(sealed, ".json"));
        for (String end : List.of("-readings.csv", "-samples.csv")) {
            assertThat(one(tables, end)).hasSameBinaryContentAs(one(sealed, end));
        }
        assertThat(text(pdf)).contains("UNSEALED COPY").doesNotContain("Sealed with the key");
        assertThat(text(one(sealed, ".pdf")))
                .contains("Sealed with the key")
                .doesNotContain("UNSEALED")
                .contains(content(text(pdf)));
    }

    @Test
    void nothingThatIsThereIsOverwrittenAndNoHalfFileStays() throws Exception {
        Path mine = Files.writeString(folder.resolve("mine.pdf"), "mine", StandardCharsets.UTF_8);
        Ran there = run("--pdf", mine);
        assertThat(there.code()).isEqualTo(Program.FAULT);
        assertThat(there.err()).contains(mine + " is there already and is not overwritten");
        assertThat(mine).hasContent("mine");
        Ran nowhere = run("--json", folder.resolve("none/a.json"));
        assertThat(nowhere.code()).isEqualTo(Program.FAULT);
        assertThat(nowhere.err()).contains("there is no folder " + folder.resolve("none"));
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files).noneMatch(f -> f.toString().endsWith(".part"));
        }
    }

    @Test
    void paperAndUnitsAreOfACopyToo() throws Exception {
        Path pdf = folder.resolve("a.pdf");
        assertThat(run("--pdf", pdf, "--paper", "letter", "--units", "si").code())
                .isZero();
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertThat(document.getPage(0).getMediaBox().getWidth()).isEqualTo(612);
        }
        assertThat(text(pdf)).contains("\u00B0C");
    }

    @Test
    void aFolderOrAPassPhraseForTheSealDoesNotGoWithThem() {
        Ran out = run("--pdf", folder.resolve("a.pdf"), "--out", folder);
        assertThat(out.code()).isEqualTo(Program.USAGE);
        assertThat(out.err()).contains("--out is for the sealed record");
        Ran phrase = run("--json", folder.resolve("a.json"), "--phrase-file", folder.resolve("p"));
        assertThat(phrase.code()).isEqualTo(Program.USAGE);
        assertThat(phrase.err()).contains("--phrase-file is for the sealed record");
        Ran again = run("--json", folder.resolve("a.json"), "--rereading", 3);
        assertThat(again.code()).isEqualTo(Program.USAGE);
        assertThat(again.err()).contains("has no rereading 3");
    }

    @Test
    void parquetIsMadeWhereItsDriverIsAndElseRefusedWithTheRemedy() throws Exception {
        Path tables = Files.createDirectory(folder.resolve("tables"));
        Ran ran = run("--parquet", tables);
        try {
            ParquetFile.requireDriver();
        } catch (StoreException e) {
            assertThat(ran.code()).isEqualTo(Program.FAULT);
            assertThat(ran.err()).contains("duckdb_jdbc.jar");
            assertThat(tables).isEmptyDirectory();
            return;
        }
        assertThat(ran.code()).as(ran.err()).isZero();
        long lines;
        Path csv = folder.resolve("a.csv");
        assertThat(run("--csv", csv).code()).isZero();
        try (Stream<String> all = Files.lines(csv)) {
            lines = all.count() - 1;
        }
        try (var memory = java.sql.DriverManager.getConnection("jdbc:duckdb:");
                var statement = memory.createStatement();
                var row = statement.executeQuery("SELECT count(*), any_value(typeof(value)), any_value(origin) FROM '"
                        + one(tables, "-readings.parquet") + "'")) {
            row.next();
            assertThat(row.getLong(1)).isEqualTo(lines).isPositive();
            assertThat(row.getString(2)).isEqualTo("DOUBLE");
            assertThat(row.getString(3)).isEqualTo("SIMULATED");
        }
        assertThat(one(tables, "-samples.parquet")).isNotEmptyFile();
    }
}
