package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.profile.ProfileLibrary;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

final class DecodeCommandTest {
    private static final String HEAD = "settlemark-capture 1\nprobe gauge demo-gauge\nprobe meter plain-line\n";

    private final FakeProgram program = new FakeProgram();

    @TempDir
    private Path folder = Path.of("");

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("a.capture"), text);
    }

    private static String hex(String text) {
        return HexFormat.of().formatHex(text.getBytes(StandardCharsets.US_ASCII));
    }

    private static String line(String time, String probe, String text) {
        return time + " " + probe + " 0 " + hex(text) + "\n";
    }

    @Test
    void printsEachSampleWithItsTimeUnitStatusAndOrigin() throws IOException {
        Path file = file(HEAD
                + line("0.1", "gauge", "P1 +6.83 P2 -OVER B 87\r\n")
                + line("0.5", "meter", "1\n")
                + line("1.123456789", "meter", "871.8\n")
                + "end 2\n");
        Ran ran = Ran.of(program, "decode", file);
        assertThat(ran.out())
                .isEqualTo("t_s,probe,channel,value,unit_ucum,status,origin\n"
                        + "0.100000000,gauge,port-1,6.83,[in_i'H2O],ok,SIMULATED\n"
                        + "0.100000000,gauge,port-2,,[in_i'H2O],over-range,SIMULATED\n"
                        + "0.100000000,gauge,battery,87.0,%,ok,SIMULATED\n"
                        + "1.123456789,meter,pressure,871.8,Pa,ok,measured\n");
        String digest = ProfileLibrary.get("demo-gauge").digest().substring(0, 12);
        assertThat(ran.err().lines())
                .hasSize(3)
                .anyMatch(said -> said.startsWith("meter: rejected at 0.500 s, byte 0: "))
                .contains("gauge (SIMULATED): 1 frames, 3 samples, 0 rejected; by demo-gauge " + digest)
                .anyMatch(said -> said.startsWith("meter: 1 frames, 1 samples, 1 rejected; by plain-line "));
        assertThat(ran.code()).isZero();
    }

    @Test
    void jsonIsTheSameInObjects() throws IOException {
        Path file = file(HEAD + line("0.1", "gauge", "P1 +6.83 P2 FAIL B 87\r\n") + "end\n");
        Ran ran = Ran.of(program, "decode", "--json", file);
        List<JsonNode> lines =
                ran.out().lines().map(JsonMapper.shared()::readTree).toList();
        assertThat(lines).hasSize(3);
        assertThat(ran.out().lines().findFirst().orElseThrow())
                .isEqualTo("{\"t_s\":0.100000000,\"probe\":\"gauge\",\"channel\":\"port-1\",\"value\":6.83,"
                        + "\"unit_ucum\":\"[in_i'H2O]\",\"status\":\"ok\",\"origin\":\"SIMULATED\"}");
        assertThat(lines.get(1).get("value").isNull()).isTrue();
        assertThat(lines.get(1).get("status").stringValue()).isEqualTo("fault");
    }

    @Test
    void anotherProfileReadsTheSameBytesOtherwiseAndSaysSo() throws IOException {
        String text = new String(ProfileLibrary.document("plain-line").orElseThrow(), StandardCharsets.UTF_8);
        Path own = Files.writeString(folder.resolve("own.yaml"), text.replace("unit: Pa", "unit: kPa"));
        Path file = file("settlemark-capture 1\nprobe meter plain-line sha256:" + "0".repeat(64) + "\n"
                + line("0", "meter", "\n") + line("1", "meter", "12\n") + "end\n");
        Ran ran = Ran.of(program, "decode", file, "--profile", "meter=" + own);
        assertThat(ran.out()).endsWith("1.000000000,meter,pressure,12.0,kPa,ok,measured\n");
        assertThat(ran.err()).contains("meter: captured with plain-line 000000000000, read now with plain-line ");
    }

    @Test
    void damageIsToldWithItsPlaceAndTheRestIsReadAndExitCodeIsFive() throws IOException {
        Path file = file(HEAD + "0.1 gauge 0 5x\n" + line("0.2", "gauge", "P1 +6.83 P2 -3.49 B 87\r\n") + "end\n");
        Ran ran = Ran.of(program, "decode", file);
        assertThat(ran.code()).isEqualTo(5);
        assertThat(ran.err())
                .startsWith(file + ":4:13: a byte is two hexadecimal digits")
                .contains("1 damaged lines");
        assertThat(ran.out().lines()).hasSize(4);
    }

    @Test
    void aCaptureOfAKilledProgramIsReadWithAWarning() throws IOException {
        Path file = file(HEAD + line("0.2", "gauge", "P1 +6.83 P2 -3.49 B 87\r\n") + "0.3 gauge 0 50 3");
        Ran ran = Ran.of(program, "decode", file);
        assertThat(ran.code()).isZero();
        assertThat(ran.err()).startsWith(file + ":5:1: warning: the last line is cut short");
        assertThat(ran.out().lines()).hasSize(4);
    }

    @Test
    void noNumberIsPutTogetherFromBothSidesOfAGap() throws IOException {
        Path file = file(HEAD + line("0", "meter", "\n12") + "0.5 meter lost unplugged\n"
                + line("1", "meter", "34\n5\n") + "end\n");
        assertThat(Ran.of(program, "decode", file).out().lines().skip(1))
                .containsExactly("1.000000000,meter,pressure,5.0,Pa,ok,measured");
    }

    @Test
    void rejectionsAreToldUpToALimitAndCounted() throws IOException {
        Path file = file(HEAD + line("1", "gauge", "nonsense\r\n".repeat(50)) + "end\n");
        Ran ran = Ran.of(program, "decode", file, "--rejections", "2");
        assertThat(ran.err().lines().filter(said -> said.contains("rejected at")))
                .hasSize(2);
        assertThat(ran.err()).contains("further rejections are only counted").contains(" 50 rejected");
        assertThat(ran.code()).isZero();
    }

    @Test
    void bytesOfInputsThatTheProfileDoesNotHaveAreRejected() throws IOException {
        Path file = file(HEAD + "1 gauge 7 00 00 00\n" + line("1", "gauge", "P1 +6.83 P2 -3.49 B 87\r\n") + "end\n");
        Ran ran = Ran.of(program, "decode", file);
        assertThat(ran.err()).contains("gauge: rejected at 1.000 s, byte 0: stray: 3 bytes");
        assertThat(ran.out().lines()).hasSize(4);
    }

    @Test
    void whatCannotBeReadIsWrongUsageWithTheRemedy() throws IOException {
        assertUsage("no-such.capture: no such file", "decode", "no-such.capture");
        assertUsage("is a folder", "decode", folder);
        Path unknown = file("settlemark-capture 1\nprobe gauge mine\nend\n");
        assertUsage(
                "profile \"mine\" of probe gauge does not come with the program; say --profile gauge=FILE",
                "decode",
                unknown);
        file("settlemark-capture 1\nprobe gauge\nend\n");
        assertUsage("does not say which profile probe gauge has", "decode", unknown);
        assertUsage(
                "which " + unknown + " does not hold; its probes are [gauge]",
                "decode",
                unknown,
                "--profile",
                "x=demo-air");
        assertUsage("no profile \"zork\": neither a file nor one of", "decode", unknown, "--profile", "gauge=zork");
        assertUsage("--rejections must be 0 or more", "decode", unknown, "--rejections=-1");
    }

    private void assertUsage(String message, Object... arguments) {
        Ran ran = Ran.of(program, arguments);
        assertThat(ran.err()).contains(message);
        assertThat(ran.code()).as(message).isEqualTo(2);
    }

    @Test
    void aProfileWithProblemsIsExitCodeThree() throws IOException {
        Path bad = Files.writeString(folder.resolve("bad.yaml"), "language: 1\n");
        Ran ran = Ran.of(program, "decode", file(HEAD + "end\n"), "--profile", "gauge=" + bad);
        assertThat(ran.code()).isEqualTo(3);
        assertThat(ran.err()).contains(bad + ":1:1: ");
    }

    @Test
    void anOutputThatIsGoneIsAFault() throws IOException {
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
        Ran ran = Ran.into(gone, program, "decode", file(HEAD + line("1", "meter", "\n5\n") + "end\n"));
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.err()).contains("the output cannot be written any more");
    }

    /** A stream of good and bad frames of two probes, cut otherwise thirty times. */
    @Test
    void theSameBytesGiveTheSameTextHoweverTheyWereCut() throws IOException {
        long seed = System.nanoTime();
        Random random = new Random(seed);
        StringBuilder whole = new StringBuilder(HEAD);
        for (int i = 1; i <= 40; i++) {
            String frame = i % 7 == 0 ? "P1 noise\r\n" : "P1 +" + i + ".25 P2 -3.49 B 87\r\n";
            whole.append(line(i + ".000000001", "gauge", frame + frame)).append(line(i + ".5", "meter", i + "\n"));
        }
        Ran expected = Ran.of(program, "decode", file(whole + "end\n"));
        assertThat(expected.out().lines()).hasSizeGreaterThan(200);
        for (int round = 0; round < 30; round++) {
            StringBuilder cut = new StringBuilder();
            whole.toString().lines().forEach(line -> cut.append(cut(line, random)));
            assertThat(Ran.of(program, "decode", file(cut + "end\n")))
                    .as("seed %d round %d", seed, round)
                    .isEqualTo(expected);
        }
    }

    private static String cut(String line, Random random) {
        if (!Character.isDigit(line.charAt(0))) {
            return line + "\n";
        }
        int from = line.lastIndexOf(' ') + 1;
        String start = line.substring(0, from);
        StringBuilder pieces = new StringBuilder();
        while (from < line.length()) {
            int to = Math.min(line.length(), from + 2 * (1 + random.nextInt(12)));
            pieces.append(start).append(line, from, to).append('\n');
            from = to;
        }
        return pieces.toString();
    }

    @Test
    void protectedFramesAreOpenedWithAKeyFileAndTheCapturesAddress() throws IOException {
        Path profile = SealedSensor.profile(folder);
        Path key = Files.writeString(folder.resolve("key"), SealedSensor.KEY);
        String frame = "1 s 0 " + SealedSensor.FRAME + "\nend\n";
        Path known = file("settlemark-capture 1\nprobe s sealed - ble:" + SealedSensor.ADDRESS + "\n" + frame);
        Ran ran = Ran.of(program, "decode", known, "--profile", "s=" + profile, "--key-file", "s=" + key);
        assertThat(ran.out()).as(ran.err()).contains(",temperature,25.06,Cel,ok,", ",humidity,50.55,%,ok,");
        assertThat(ran.out() + ran.err()).doesNotContain(SealedSensor.KEY);
        Path unknown = file("settlemark-capture 1\nprobe s sealed\n" + frame);
        assertThat(Ran.of(program, "decode", unknown, "--profile", "s=" + profile, "--key-file", "s=" + key)
                        .err())
                .contains("s: rejected at 1.000 s");
        assertThat(Ran.of(
                                program,
                                "decode",
                                unknown,
                                "--profile",
                                "s=" + profile,
                                "--key-file",
                                "s=" + key,
                                "--address",
                                "s=" + SealedSensor.ADDRESS)
                        .out())
                .isEqualTo(ran.out());
    }

    @Test
    void helpStartsWithTwoExamples() {
        Ran ran = Ran.of(program, "decode", "--help");
        assertThat(ran.code()).isZero();
        assertThat(ran.out().lines().limit(3))
                .containsExactly(
                        "Examples:",
                        "  settlemark decode gauge.capture > gauge.csv",
                        "  settlemark decode two.capture --profile gauge=my-gauge.yaml --json");
    }
}
