package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.measure.SampleStatus;
import settlemark.profile.Example;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;

final class ProfileNewCommandTest {
    /** Name, key, kind, baud, data bits, parity, stop bits, flow control. */
    private static final List<String> TEXT_LINE = List.of("Bench gauge", "", "text", "9600", "", "", "", "");

    @TempDir
    private Path folder = Path.of("");

    private Ran run(List<String> answers, Object... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String text = answers.isEmpty() ? "" : String.join("\n", answers) + "\n";
        String[] words = Stream.concat(Stream.of("new"), Stream.of(arguments).map(Object::toString))
                .toArray(String[]::new);
        int code = ProfileCommand.line(
                        new FakeProgram(), new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)))
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(words);
        return new Ran(code, out.toString(), err.toString());
    }

    private static List<String> with(List<String> first, String... more) {
        List<String> all = new ArrayList<>(first);
        all.addAll(List.of(more));
        return all;
    }

    private static Profile read(Path file) throws IOException {
        return ProfileReader.read(file.toString(), Files.readAllBytes(file)).orThrow();
    }

    @Test
    void emptyLinesGiveAGoodProfileThatLacksAnExample() throws IOException {
        Path file = folder.resolve("new.yaml");
        Ran ran = run(Collections.nCopies(30, ""), file);
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out()).isEqualTo(file + ": good profile new, 0 examples ran\n");
        assertThat(ran.err()).contains("warning: no examples", "settlemark capture --probe new=PORT");
        assertThat(read(file).channels())
                .singleElement()
                .satisfies(channel -> assertThat(channel.unit().code()).isEqualTo("Pa"));
        assertThat(Files.readString(file)).contains("# ");
    }

    @Test
    void everyQuestionHasAHelpLineAndAStandardAnswer() {
        for (String kind : List.of("text", "asked", "fixed", "length", "modbus")) {
            List<String> answers =
                    with(List.of("", "", kind), Collections.nCopies(30, "").toArray(String[]::new));
            Ran ran = run(answers, folder.resolve(kind + ".yaml"));
            assertThat(ran.code()).as(ran.err()).isZero();
            List<String> lines = ran.err().lines().toList();
            List<Integer> prompts = IntStream.range(0, lines.size())
                    .filter(i -> lines.get(i).endsWith("]: "))
                    .boxed()
                    .toList();
            assertThat(prompts).as(kind).hasSizeGreaterThan(14);
            assertThat(prompts).as(kind).allSatisfy(i -> {
                assertThat(lines.get(i)).matches("[A-Z][^\\[]+ \\[.+]: ");
                assertThat(lines.get(i - 1)).matches("[A-Z0-9 ].{15,}").doesNotEndWith("]: ");
            });
        }
    }

    @Test
    void aTextLineWithItsExampleProvesItself() throws IOException {
        Path file = folder.resolve("bench.yaml");
        Ran ran = run(
                with(
                        TEXT_LINE,
                        "\\r\\n",
                        "comma",
                        "3", // end, separator, columns
                        "Inlet",
                        "",
                        "[in_i'H2O]",
                        "1",
                        "",
                        "0.01",
                        "yes", // label, key, unit, column, scale, resolution
                        "Temperature",
                        "",
                        "Cel",
                        "2",
                        "0.1",
                        "unknown",
                        "", // no more
                        "P,-6.83,215",
                        "yes"),
                file);
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out()).isEqualTo(file + ": good profile bench, 1 example ran\n");
        assertThat(ran.err())
                .contains("inlet = -6.83 [in_i'H2O]", "temperature = 21.5 Cel", "settlemark log --probe bench=PORT");
        Profile profile = read(file);
        assertThat(profile.name()).isEqualTo("Bench gauge");
        assertThat(profile.examples().get(0).bytes().toBytes())
                .isEqualTo("P,-6.83,215\r\n".getBytes(StandardCharsets.US_ASCII));
        assertThat(profile.examples().get(0).gives())
                .containsEntry("temperature", new Example.Expected(21.5, SampleStatus.OK));
    }

    /** The CRC was computed outside the program, bit by bit, by the catalogue's parameters of CRC-16/MODBUS. */
    @Test
    void modbusRegistersWithACapturedAnswer() throws IOException {
        Path file = folder.resolve("registers.yaml");
        Ran ran = run(
                List.of(
                        "Air meter",
                        "",
                        "modbus",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "1",
                        "4",
                        "1",
                        "2",
                        "0.5", // unit, base, function, first, count, period
                        "Flow",
                        "",
                        "m3/h",
                        "",
                        "",
                        "0.1",
                        "",
                        "yes", // label, key, unit, register, type, scale, resolution
                        "Inlet",
                        "",
                        "Cel",
                        "",
                        "int16",
                        "",
                        "",
                        "",
                        "01 04 04 02 AB FF F6 0B 8D"),
                file);
        assertThat(ran.code()).as(ran.err()).isNotZero();
        assertThat(ran.err()).contains("checksum");
        Ran good = run(
                List.of(
                        "Air meter",
                        "",
                        "modbus",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "1",
                        "3",
                        "1",
                        "2",
                        "0.5",
                        "Flow",
                        "",
                        "m3/h",
                        "",
                        "",
                        "0.1",
                        "",
                        "yes",
                        "Inlet",
                        "",
                        "Cel",
                        "",
                        "int16",
                        "",
                        "",
                        "",
                        "01 03 04 02 AB FF F6 " + MODBUS_CRC,
                        "yes"),
                file);
        assertThat(good.code()).as(good.err()).isZero();
        assertThat(good.err()).contains("flow = 68.3 m3/h", "inlet = -10.0 Cel");
        assertThat(good.out()).endsWith("1 example ran\n");
    }

    private static final String MODBUS_CRC = "4B DD";

    @Test
    void binaryFramesWithAChecksum() throws IOException {
        Path file = folder.resolve("fixed.yaml");
        Ran ran = run(
                List.of(
                        "Box",
                        "",
                        "fixed",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "xmodem",
                        "AA",
                        "7", // checksum, start, length
                        "Pressure",
                        "",
                        "hPa",
                        "1",
                        "uint16",
                        "big",
                        "0.01",
                        "",
                        "yes",
                        "Battery",
                        "",
                        "%",
                        "4",
                        "uint8",
                        "",
                        "",
                        "",
                        "AA 02 AB 00 64 E0 ED",
                        "yes"),
                file);
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.err()).contains("pressure = 6.83 hPa", "battery = 100.0 %");
    }

    @Test
    void aWrongAnswerIsToldAtOnceWithItsRemedyAndAskedForAgain() throws IOException {
        Path file = folder.resolve("wrong.yaml");
        Ran ran = run(
                List.of(
                        "Box",
                        "My Box",
                        "box",
                        "telegraph",
                        "1",
                        "fast",
                        "9600",
                        "9",
                        "8",
                        "maybe",
                        "none",
                        "",
                        "",
                        "",
                        "",
                        "2",
                        "Pressure",
                        "Pressure 1",
                        "pressure",
                        "psi",
                        "C",
                        "[psi]",
                        "-1",
                        "0",
                        "0,1",
                        "0.1",
                        "zero",
                        "",
                        "perhaps",
                        "no",
                        "none"),
                file);
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.err())
                .contains("a key is lower-case letters, digits and hyphens, a letter first, 64 at most; got \"My Box\"")
                .contains("a number from 1 to 5 or a word of the list is needed, got \"telegraph\"")
                .contains("a whole number from 50 to 4000000 is needed, got \"fast\"")
                .contains("a whole number from 5 to 8 is needed, got \"9\"")
                .contains("got \"maybe\"")
                .contains("unit must be a UCUM code, got \"psi\"; did you mean \"[psi]\"?")
                .contains("unit must be a UCUM code, got \"C\"; did you mean \"Cel\"?")
                .contains("a number other than 0 is needed, such as 0.01 (with a point), got \"0,1\"")
                .contains("yes or no is needed, got \"perhaps\"");
        assertThat(read(file).serial().orElseThrow().baud()).isEqualTo(9600);
    }

    @Test
    void answersThatDoNotFitEachOtherAreAskedForAgain() throws IOException {
        Path file = folder.resolve("fit.yaml");
        Ran ran = run(
                with(
                        TEXT_LINE,
                        "",
                        "",
                        "2",
                        "Pressure",
                        "",
                        "",
                        "5",
                        "",
                        "", // there is no column 5
                        "Pressure",
                        "",
                        "",
                        "1",
                        "",
                        "",
                        "no",
                        "none"),
                file);
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.err()).contains("This reading does not fit; please answer for it again:");
        assertThat(read(file).channels()).hasSize(1);
    }

    @Test
    void aFrameThatIsNoneIsToldWhyAndAskedForAgain() throws IOException {
        Path file = folder.resolve("frame.yaml");
        Ran ran = run(
                with(
                        TEXT_LINE,
                        "",
                        "",
                        "1",
                        "Pressure",
                        "",
                        "",
                        "",
                        "",
                        "",
                        "no",
                        "6.83 Pa",
                        "hex 36 2E 38 33 0A",
                        "yes"),
                file);
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.err()).contains("rejected at byte 0: ", "That is not one good frame", "pressure = 6.83 Pa");
    }

    @Test
    void aFrameThatShowedSomethingElseFailsTheCheckAtItsPlace() throws IOException {
        Path file = folder.resolve("other.yaml");
        Ran ran = run(with(TEXT_LINE, "", "", "1", "Pressure", "", "", "", "", "", "no", "683", "no", "6.83"), file);
        assertThat(ran.code()).isEqualTo(3);
        assertThat(ran.err()).containsPattern("other\\.yaml:[0-9]+:[0-9]+: .*pressure must give 6\\.83, got 683");
        assertThat(ran.err()).contains("Next: correct " + file);
        assertThat(ran.out()).isEqualTo(file + "\n");
    }

    @Test
    void endingEarlyAnywhereWritesNothing() {
        List<String> answers = with(TEXT_LINE, "", "", "1", "Pressure", "", "", "", "", "", "no", "683", "no", "6.83");
        Path file = folder.resolve("none.yaml");
        for (int given = 0; given < answers.size(); given++) {
            Ran ran = run(answers.subList(0, given), file);
            assertThat(ran.code()).as("%d answers", given).isEqualTo(2);
            assertThat(ran.err()).endsWith("The answers ended early: nothing was written.\n");
            assertThat(ran.out()).isEmpty();
            assertThat(file).doesNotExist();
        }
        assertThat(run(answers, file).code()).isEqualTo(3);
    }

    @Test
    void aFileThatIsThereIsNotOverwritten() throws IOException {
        Path there = Files.writeString(folder.resolve("there.yaml"), "mine");
        Ran given = run(List.of(), there);
        assertThat(given.code()).isEqualTo(2);
        assertThat(given.err()).contains("is there already and is not overwritten");

        Path fresh = folder.resolve("fresh.yaml");
        List<String> answers =
                new ArrayList<>(List.of("Box", "", there.toString(), folder + "/no/x.yaml", fresh.toString()));
        answers.addAll(Collections.nCopies(30, ""));
        Ran asked = run(answers);
        assertThat(asked.code()).as(asked.err()).isZero();
        assertThat(asked.err()).contains(there + " is there already", "there is no folder " + folder + "/no");
        assertThat(there).hasContent("mine");
        assertThat(fresh).isRegularFile();
    }
}
