package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.IntToDoubleFunction;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/** Several channels in one file, the state at every bin, pictures, rules and settings of {@code settle}. */
final class SettleChannelsTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @TempDir
    private Path folder = Path.of("");

    private int run(String in, String... arguments) {
        return new CommandLine(new SettleCommand(new ByteArrayInputStream(in.getBytes(StandardCharsets.UTF_8))))
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(arguments);
    }

    private List<CsvRecord> rows() {
        return CsvReader.builder().ofCsvRecord(out.toString()).stream().toList();
    }

    private static String trace(int seconds, IntToDoubleFunction gas, IntToDoubleFunction air) {
        StringBuilder text = new StringBuilder("clock,gas pressure,supply\n");
        for (int i = 0; i < seconds; i++) {
            text.append(String.format(Locale.ROOT, "%d,%.2f,", i, gas.applyAsDouble(i)));
            // The air comes each second second: its other cells are empty, which is no break.
            text.append(i % 2 == 0 ? String.format(Locale.ROOT, "%.1f", air.applyAsDouble(i)) : "");
            text.append('\n');
        }
        return text.toString();
    }

    private static String single(int seconds, double step, IntToDoubleFunction value) {
        StringBuilder text = new StringBuilder("t_s,value\n");
        for (int i = 0; i < seconds; i++) {
            text.append(String.format(Locale.ROOT, "%.1f,%.2f%n", i * step, value.applyAsDouble(i)));
        }
        return text.toString();
    }

    @Test
    void eachChannelIsToldWithItsNameAndUnitAndAllOfThemTogether() {
        String trace = trace(200, t -> t < 150 ? 3.5 : 4.5, t -> 50);
        assertThat(run(trace, "--time", "clock", "--value", "gas pressure:gas", "--value", "supply:air:Cel"))
                .isZero();
        assertThat(err.toString()).isEmpty();
        assertThat(rows().get(0).getFields())
                .containsExactly("file", "t_s", "channel", "event", "value", "uncertainty", "unit", "reason");
        assertThat(rows().stream()
                        .skip(1)
                        .map(r -> String.join(" ", r.getFields().subList(2, 4))))
                .containsExactly(
                        "gas pressure settled",
                        "supply settled",
                        "all ready",
                        "gas pressure unsettled",
                        "all spoiled",
                        "gas pressure settled",
                        "all ready");
        CsvRecord supply = rows().get(2);
        assertThat(supply.getField(4)).isEqualTo("50");
        assertThat(supply.getField(6)).isEqualTo("Cel");
        assertThat(rows().get(5).getField(7)).startsWith("gas pressure moved before the reading was taken: not yet: ");
    }

    @Test
    void anEmptyCellAmongSeveralIsNoBreakEvenOfASingleChannel() {
        assertThat(run(trace(200, t -> 3.5, t -> 50), "--time", "clock", "--value", "supply:air:Cel"))
                .isZero();
        assertThat(rows()).hasSize(2);
        assertThat(rows().get(1).getField(3)).isEqualTo("settled");
    }

    @Test
    void theStateAtEveryBinIsExplained() {
        assertThat(run(single(40, 1, i -> 3.5), "--kind", "gas", "--resolution", "0.01", "--explain"))
                .isZero();
        List<CsvRecord> rows = rows();
        assertThat(rows.get(0).getFields())
                .startsWith("file", "t_s", "channel", "state")
                .endsWith("to_go_s", "reason");
        assertThat(rows).as("one a second after the first").hasSize(40);
        assertThat(rows.stream().skip(1).map(r -> r.getField(3)).distinct())
                .containsExactly("filling", "too noisy", "holding", "settled");
        assertThat(rows.get(20).getField(1)).isEqualTo("20");
        assertThat(rows.get(20).getField(3)).isEqualTo("settled");
        assertThat(rows.get(20).getField(11)).startsWith("settled: moved 0 in the last 19 s");
        assertThat(rows.get(18).getField(6)).as("could move").isNotEmpty();
        assertThat(rows.get(18).getField(10)).as("to go").isEqualTo("2");
        assertThat(rows.get(5).getField(4)).isEmpty();
    }

    @Test
    void aRuleIsDemandedBesideTheProof() {
        String quarter = single(3000, 1, i -> 300);
        assertThat(run(quarter, "--kind", "stack", "--rule", "three-readings-3-degf"))
                .isZero();
        assertThat(rows()).hasSize(2);
        assertThat(rows().get(1).getField(1)).isEqualTo("1800");
        assertThat(rows().get(1).getField(5))
                .contains("could still move")
                .contains("; steady by three-readings-3-degf: the last 3 lie within ±0 of their mean, limit ±3");
    }

    @Test
    void whatEitherTakesBackIsTakenBack() {
        String step = single(5000, 1, i -> i < 2000 ? 300 : 310);
        assertThat(run(step, "--kind", "stack", "--rule", "three-readings-3-degf", "--explain"))
                .isZero();
        assertThat(rows().stream().skip(1).map(r -> r.getField(3)).distinct())
                .containsExactly("not settled", "settled");
        out.getBuffer().setLength(0);
        assertThat(run(step, "--kind", "stack", "--rule", "three-readings-3-degf"))
                .isZero();
        assertThat(rows()).hasSize(4);
        assertThat(rows().get(2).getField(2)).isEqualTo("unsettled");
        assertThat(rows().get(3).getField(1))
                .as("readings from before it moved do not count")
                .isEqualTo("4500");
        assertThat(rows().get(3).getField(3)).isEqualTo("310");
        assertThat(Double.parseDouble(rows().get(2).getField(1))).isBetween(2000.0, 2005.0);
        assertThat(rows().get(2).getField(5)).startsWith("not yet: ");
    }

    @Test
    void aRuleAloneIsEnoughWhereTheNoiseForbidsAProof() {
        String noisy = single(2000, 1, i -> i % 2 == 0 ? 71 : 69);
        assertThat(run(noisy, "--kind", "air", "--set", "air.band=0.6", "--rule", "half-hour-2-degf"))
                .isZero();
        assertThat(rows()).hasSize(1);
        out.getBuffer().setLength(0);
        assertThat(run(noisy + "2000,80\n2001,80\n", "--kind", "air", "--rule", "half-hour-2-degf", "--rule-alone"))
                .isZero();
        assertThat(rows().get(1).getFields().subList(1, 4)).containsExactly("1800", "settled", "70");
        assertThat(rows().get(2).getField(5))
                .isEqualTo("not yet by half-hour-2-degf: all readings of the last 30 min lie within 11, limit 2");
        out.getBuffer().setLength(0);
        assertThat(run(noisy, "--kind", "air", "--rule", "half-hour-2-degf", "--rule-alone", "--explain"))
                .isZero();
        assertThat(rows().get(500).getField(11)).startsWith("not yet by half-hour-2-degf: minute ");
    }

    @Test
    void aRuleInAnotherUnitIsTheSameRule() {
        // 1.6 K up and down is 2.88 degF from the mean, 1.7 K 3.06.
        IntToDoubleFunction swing = i -> 150 + (i < 900 ? -1.6 : i < 1800 ? 0 : 1.6);
        String[] arguments = {"--kind", "stack", "--unit", "Cel", "--rule", "three-readings-3-degf", "--rule-alone"};
        assertThat(run(single(1801, 1, swing), arguments)).isZero();
        assertThat(rows()).hasSize(2);
        out.getBuffer().setLength(0);
        IntToDoubleFunction more = i -> 150 + (i < 900 ? -1.7 : i < 1800 ? 0 : 1.7);
        assertThat(run(single(1801, 1, more), arguments)).isZero();
        assertThat(rows()).hasSize(1);
    }

    @Test
    void settingsChangeWhatCountsAsSettled() {
        String ramp = single(200, 1, i -> 3.5 + 0.001 * i);
        assertThat(run(ramp, "--kind", "gas", "--resolution", "0.01")).isZero();
        assertThat(rows()).as("30 s of it are 0.03, the limit 0.02").hasSize(1);
        out.getBuffer().setLength(0);
        assertThat(run(
                        ramp,
                        "--kind",
                        "gas",
                        "--resolution",
                        "0.01",
                        "--set",
                        "gas.drift=15 Pa",
                        "--set",
                        "gas.dwell=0"))
                .isZero();
        assertThat(rows().get(1).getField(2)).isEqualTo("settled");
        assertThat(rows().get(1).getField(5)).endsWith("limit 0.0602");
    }

    @Test
    void aPictureIsDrawnWithSpansAndReasons() throws IOException {
        Path png = folder.resolve("visit.png");
        String trace = trace(300, t -> t < 150 ? 3.5 : 4.5, t -> 50);
        assertThat(run(
                        trace,
                        "--time",
                        "clock",
                        "--value",
                        "gas pressure:gas",
                        "--value",
                        "supply:air:Cel",
                        "--plot",
                        png.toString()))
                .isZero();
        BufferedImage image = ImageIO.read(png.toFile());
        assertThat(image.getWidth()).isEqualTo(1200);
        assertThat(image.getHeight()).as("two lanes and four reasons").isBetween(760, 900);
        assertThat(rows()).as("the table comes as well").hasSizeGreaterThan(5);
        int settled = 0xFFD5E3EC;
        int shaded = 0;
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                shaded += image.getRGB(x, y) == settled ? 1 : 0;
            }
        }
        assertThat(shaded).as("pixels in the colour of settled spans").isGreaterThan(10_000);
    }

    @Test
    void aPictureOfATraceWithAClocksTimesIsDrawnToo() throws IOException {
        Path png = folder.resolve("clock.png");
        StringBuilder text = new StringBuilder("t_s,value\n");
        for (int i = 0; i < 60; i++) {
            text.append(1_700_000_000L + i).append(",3.5\n");
        }
        text.append("1700000059,9\n");
        assertThat(run(text.toString(), "--kind", "gas", "--plot", png.toString()))
                .isZero();
        assertThat(ImageIO.read(png.toFile()).getHeight()).isGreaterThan(300);
        assertThat(err.toString()).contains("1 samples ignored");
    }

    @Test
    void aPictureOfNothingIsNoPicture() {
        Path png = folder.resolve("none.png");
        assertThat(run("t_s,value\n", "--kind", "gas", "--plot", png.toString()))
                .isEqualTo(1);
        assertThat(err.toString()).contains("could not be written: no picture was made of -: it has no samples");
        assertThat(Files.exists(png)).isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                " | Missing required option: '--kind=gas|air|stack', or --value COLUMN:KIND",
                "--kind gas --value a:gas | --kind is for a file with one value, --value for one with several",
                "--value supply | --value must be COLUMN:KIND or COLUMN:KIND:UCUM",
                "--value supply:air:Pa | --value supply:air:Pa must be a unit of temperature such as Cel, K or [degF], got \"Pa\"",
                "--value supply:air:xyz | --value supply:air:xyz must be a UCUM code",
                "--value a:air --value a:gas | --value names a column twice",
                "--value a:air --unit Cel | --unit and --resolution go with --kind",
                "--value a:air --resolution 1 | --unit and --resolution go with --kind",
                "--kind gas --set air.drift=1 | --set air is of no column here; the columns are [value:gas]",
                "--kind gas --set water.drift=1 | --set water.drift=1: no kind of channel is called \"water\"",
                "--kind gas --set gas.drft=1 | nothing is called \"drft\"; there are drift, band, horizon, windows, dwell, hunting",
                "--kind gas --set drift | expected KIND.NAME=VALUE such as gas.drift=0.01",
                "--kind gas --set gas.drift=x | expected a number such as 0.02, got \"x\"",
                "--kind gas --set gas.drift=0 | drift must be above 0, got 0.0",
                "--kind gas --set gas.drift=1e999 | expected a number such as 0.02, got \"1e999\"",
                "--kind gas --set gas.windows=40,20 | windows must be seconds, the shortest first",
                "--kind gas --set gas.windows=20,,40 | expected a number such as 0.02, got \"\"",
                "--kind gas --set gas.horizon=5 | gas horizon 5 s is shorter than the shortest window of 20 s; expected at least 20 s",
                "--kind gas --set gas.dwell=31 | gas dwell 31 s is longer than the horizon of 30 s",
                "--kind gas --set gas.hunting=50 | under three periods of hunting of 50 s; expected at least 150 s",
                "--kind gas --resolution 0.01 --set gas.drift=0.005 | gas drift 0.005 inH₂O is under the gauge's step of 0.01 inH₂O",
                "--kind gas --resolution 0.1 --set gas.drift=0.1 --set gas.band=0.02 | gas band ±0.02 inH₂O is under half the gauge's step",
                "--kind gas --rule three | --rule: no rule is called \"three\"; there are three-readings-3-degf",
                "--kind gas --rule half-hour-2-degf | --rule half-hour-2-degf is about a temperature, and no column is one",
                "--kind gas --rule-alone | --rule-alone needs the rule",
                "--kind gas --plot a.jpg | --plot writes PNG, got a.jpg",
                "--kind gas --plot / | --plot writes PNG, got /",
                "--kind gas --plot nowhere-at-all/a.png | there is no folder",
                "--kind gas --plot a.png - - | --plot draws one file, got 2",
                "--plot a.png --value a:gas --value b:gas:Pa --value c:air | --plot has room for 2 units and 5 channels",
            })
    void wrongUsageIsToldWithItsRemedy(String arguments, String message) {
        String[] split = arguments == null ? new String[0] : arguments.split(" ", -1);
        assertThat(run("t_s,value\n", split)).isEqualTo(2);
        assertThat(err.toString()).contains(message);
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void anAmountMayHaveItsUnitAndATimeNone() {
        assertThat(run("", "--kind", "gas", "--set", "gas.drift=1 Cel")).isEqualTo(2);
        assertThat(err.toString())
                .contains("unit \"Cel\" is no unit of pressure; write its UCUM code, such as [in_i'H2O]");
        err.getBuffer().setLength(0);
        assertThat(run("", "--kind", "gas", "--set", "gas.horizon=1 min")).isEqualTo(2);
        assertThat(err.toString()).contains("horizon is in seconds; write it without a unit");
        assertThat(run("t_s,value\n", "--kind", "gas", "--set", "gas.horizon=60 s", "--set", "gas.windows=20,60"))
                .isZero();
    }

    @Test
    void aColumnThatIsNotThereIsToldWithTheHeader() {
        assertThat(run("t_s,a,b\n", "--value", "c:gas")).isEqualTo(5);
        assertThat(err.toString())
                .isEqualTo("-:1: the header must name the columns t_s and c, got \"t_s,a,b\" (name the file's own with"
                        + " --time and --value)\n");
        err.getBuffer().setLength(0);
        assertThat(run("", "--value", "c:gas", "--time", "x")).isEqualTo(5);
        assertThat(err.toString()).isEqualTo("-:1: the file is empty, expected the header x,c\n");
        err.getBuffer().setLength(0);
        assertThat(run("t_s,c\n0,x\n", "--value", "c:gas")).isEqualTo(5);
        assertThat(err.toString()).startsWith("-:2: c must be a number, got \"x\"");
    }
}
