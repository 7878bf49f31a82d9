package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

final class SettleCommandTest {
    private static final String HEADER = "file,t_s,event,value,uncertainty,reason\n";

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @TempDir
    private Path folder = Path.of("");

    private int run(InputStream in, Writer to, String... arguments) {
        return new CommandLine(new SettleCommand(in))
                .setOut(new PrintWriter(to))
                .setErr(new PrintWriter(err))
                .execute(arguments);
    }

    private int run(String in, String... arguments) {
        return run(new ByteArrayInputStream(in.getBytes(StandardCharsets.UTF_8)), out, arguments);
    }

    private static String constant(double value, int seconds) {
        StringBuilder text = new StringBuilder("t_s,value\n");
        for (int i = 0; i < seconds; i++) {
            text.append(String.format(Locale.ROOT, "%d,%.2f%n", i, value));
        }
        return text.toString();
    }

    private String file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private List<CsvRecord> rows() {
        return CsvReader.builder().ofCsvRecord(out.toString()).stream().toList();
    }

    @Test
    void helpStartsWithTwoExamples() {
        assertThat(run("", "--help")).isZero();
        assertThat(out.toString().lines().limit(3))
                .containsExactly(
                        "Examples:",
                        "  settlemark settle --kind gas manifold.csv",
                        "  settlemark settle --kind air --resolution 0.1 supply.csv return.csv");
    }

    @Test
    void tellsTheEventsOfStandardInput() {
        assertThat(run(constant(3.5, 30), "--kind", "gas", "--resolution", "0.01"))
                .isZero();
        assertThat(out.toString())
                .isEqualTo(HEADER + "-,20,settled,3.5,0.01143,\"moved 0 in the last 19 s,"
                        + " could still move 0.0161, limit 0.02\"\n");
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void tellsTheEventsOfEachFile() throws IOException {
        String first = file("a,b \"c\".csv", constant(3.5, 30) + "30,9\n31,9\n");
        String second = file("second.csv", constant(7, 30));
        assertThat(run("", "--kind", "gas", first, second)).isZero();
        assertThat(rows()).hasSize(4);
        assertThat(rows().get(1).getField(0)).isEqualTo(first);
        assertThat(rows().get(2).getFields()).containsExactly(first, "31", "unsettled", "", "", "changed by 5.500");
        assertThat(rows().get(3).getFields().subList(0, 4)).containsExactly(second, "20", "settled", "7");
    }

    @Test
    void exitIsZeroWhateverTheTracesDo() throws IOException {
        String still = file("empty.csv", "t_s,value\n");
        assertThat(run("", "--kind", "stack", still)).isZero();
        assertThat(out.toString()).isEqualTo(HEADER);
    }

    @Test
    void textInANumberIsMalformedAndCostsNoOtherFile() throws IOException {
        String good = file("good.csv", constant(3.5, 30));
        String bad = file("bad.csv", constant(3.5, 30) + "30,abc\n31,3.5\n");
        String after = file("after.csv", constant(4, 30));
        assertThat(run("", "--kind", "gas", good, bad, after)).isEqualTo(5);
        assertThat(rows()).extracting(row -> row.getField(0)).containsExactly("file", good, bad, after);
        assertThat(err.toString())
                .isEqualTo(bad + ":32: value must be a number, got \"abc\""
                        + " (write it like 3.52, or leave it empty where there was no reading)\n");
    }

    @Test
    void everyMalformedTraceIsToldWithItsLine() {
        assertMalformed("", "-:1: the file is empty, expected the header t_s,value");
        assertMalformed("0,3.5\n1,3.5\n", "-:1: the header must name the columns t_s and value, got \"0,3.5\"");
        assertMalformed("t_s,value\n0,3,5\n", "-:2: expected 2 fields as in the header, got 3");
        assertMalformed("t_s,value\n0\n", "-:2: expected 2 fields as in the header, got 1");
        assertMalformed("t_s,value\n\n1,NaN\n", "-:3: value must be a number, got \"NaN\"");
        assertMalformed("t_s,value\n1,1e999\n", "-:2: value must be a number, got \"1e999\"");
        assertMalformed("t_s,value\n1,0x1p3\n", "-:2: value must be a number");
        assertMalformed("t_s,value\n,3.5\n", "-:2: t_s must be a number, got \"\"");
        assertMalformed("t_s,value\n1,\"3.5\n2,3.5\n", "-:2: ");
        assertMalformed("t_s,value\n1," + "9".repeat(100_000) + "\n", "-:2: ");
    }

    private void assertMalformed(String trace, String message) {
        err.getBuffer().setLength(0);
        assertThat(run(trace, "--kind", "gas")).as(trace).isEqualTo(5);
        assertThat(err.toString()).startsWith(message);
        assertThat(err.toString().lines()).hasSize(1);
    }

    @Test
    void otherColumnsByteOrderMarkAndQuotesDoNotMatter() {
        String trace = "\uFEFFprobe, value ,t_s\r\n"
                + constant(3.5, 30)
                        .lines()
                        .skip(1)
                        .map(row -> row.split(",", -1))
                        .map(row -> "a,\"" + row[1] + "\"," + row[0] + "\r\n")
                        .reduce("", String::concat);
        assertThat(run(trace, "--kind", "gas")).isZero();
        assertThat(rows()).hasSize(2);
    }

    @Test
    void anEmptyValueIsAMomentWithoutAReading() {
        assertThat(run(constant(3.5, 30) + "30,\n", "--kind", "gas")).isZero();
        assertThat(rows().get(2).getFields()).containsExactly("-", "30", "unsettled", "", "", "no value");
    }

    @Test
    void samplesOutOfOrderAreToldOf() {
        assertThat(run(constant(3.5, 30) + "7,3.5\n7,3.5\n", "--kind", "gas")).isZero();
        assertThat(err.toString()).isEqualTo("-: 2 samples ignored, their time was not later than the one before\n");
    }

    @Test
    void wrongUsageIsToldAndPrintsNoData() {
        assertWrongUsage("must be gas, air or stack, got \"water\"", "--kind", "water");
        assertWrongUsage("--kind", "-");
        assertWrongUsage("no-such.csv: no such file", "--kind", "gas", "no-such.csv");
        assertWrongUsage("is a directory", "--kind", "gas", folder.toString());
        assertWrongUsage("--resolution must be positive", "--kind", "gas", "--resolution=-1");
        assertWrongUsage("got \"zork\"", "--kind", "gas", "--unit", "zork");
        assertWrongUsage("must be a unit of pressure", "--kind", "gas", "--unit", "Cel");
    }

    private void assertWrongUsage(String message, String... arguments) {
        err.getBuffer().setLength(0);
        assertThat(run("", arguments)).as(message).isEqualTo(2);
        assertThat(err.toString()).contains(message);
        assertThat(out.toString()).isEmpty();
    }

    /** 249.08891 Pa to the inch of water (NIST SP 811, appendix B.8): the same trace in Pa tells the same times. */
    @Test
    void theUnitScalesTheLimits() {
        StringBuilder trace = new StringBuilder("t_s,value\n");
        for (int i = 0; i < 30; i++) {
            trace.append(i).append(',').append(3.5 * 249.08891).append('\n');
        }
        assertThat(run(trace.toString(), "--kind", "gas", "--unit", "Pa", "--resolution", "2.4908891"))
                .isZero();
        assertThat(rows().get(1).getFields())
                .containsExactly(
                        "-",
                        "20",
                        "settled",
                        "871.811",
                        "2.846",
                        "moved 0 in the last 19 s, could still move 4, limit 4.98");
    }

    @Test
    void eventsAreToldAsTheyHappen() throws Exception {
        CountDownLatch told = new CountDownLatch(1);
        StringWriter seen = new StringWriter() {
            @Override
            public void flush() {
                if (toString().contains("settled")) {
                    told.countDown();
                }
            }
        };
        PipedOutputStream feed = new PipedOutputStream();
        PipedInputStream in = new PipedInputStream(feed, 1 << 16);
        CompletableFuture<Integer> exit = CompletableFuture.supplyAsync(() -> run(in, seen, "--kind", "gas"));
        feed.write(constant(3.5, 22).getBytes(StandardCharsets.UTF_8));
        feed.flush();
        assertThat(told.await(20, TimeUnit.SECONDS)).isTrue();
        assertThat(exit.isDone()).isFalse();
        feed.close();
        assertThat(exit.get(20, TimeUnit.SECONDS)).isZero();
    }

    @Test
    void anOutputThatIsGoneStopsTheWork() {
        Writer gone = new Writer() {
            @Override
            public void write(char[] text, int from, int count) throws IOException {
                throw new IOException("gone");
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        };
        InputStream in = new ByteArrayInputStream(constant(3.5, 30).getBytes(StandardCharsets.UTF_8));
        assertThat(run(in, gone, "--kind", "gas")).isEqualTo(1);
        assertThat(err.toString()).contains("the output cannot be written any more");
    }
}
