package settlemark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

final class ProfileDecodeCommandTest {
    /** Frames of the shipped demo-air, whose examples prove them. */
    private static final String WARM = "A5 5A 08 01 01 38 15 3A 08 5F 00 9E 38";

    private static final String PULLED_OUT = "A5 5A 08 01 03 00 80 3A 08 5E 00 5F 4C";
    private static final String BAD = "A5 5A 08 01 05 38 15 3A 08 5F 00 59 F9";

    private final FakeProgram program = new FakeProgram();

    @TempDir
    private Path folder = Path.of("");

    private Ran decode(Object... arguments) {
        Object[] line = new Object[arguments.length + 2];
        line[0] = "profile";
        line[1] = "decode";
        System.arraycopy(arguments, 0, line, 2, arguments.length);
        return Ran.of(program, line);
    }

    private Path capture(String text) throws IOException {
        return Files.writeString(folder.resolve("a.capture"), "settlemark-capture 1\n" + text);
    }

    @Test
    void aFrameIsShownFieldByFieldWithBytesRawValueAndUnit() {
        Ran ran = decode("demo-air", "--hex", WARM);
        assertThat(ran.code()).isZero();
        assertThat(ran.err()).isEmpty();
        List<String> lines = ran.out().lines().toList();
        assertThat(lines.get(0)).isEqualTo("frame at byte 0: " + WARM);
        assertThat(lines.get(1)).matches("  kind +3 +01 +01");
        assertThat(lines.get(3)).matches("  temperature-1 +5-6 +38 15 +5432 +probe-1 = 54\\.32 Cel");
        assertThat(lines.get(5)).matches("  battery +9 +5F +95 +battery = 95\\.0 %");
    }

    @Test
    void hexMayStandInOneWordOrMany() {
        Ran one = decode("demo-air", "--hex", WARM.replace(" ", ""));
        Object[] words = ("demo-air --hex " + WARM).split(" ", -1);
        assertThat(decode(words)).isEqualTo(one);
        assertThat(one.out()).contains("54.32 Cel");
    }

    @Test
    void severalFramesAndRejectionsComeWithTheirOffsets() {
        Ran ran = decode("demo-air", "--hex", WARM + BAD + PULLED_OUT);
        assertThat(ran.code()).isZero();
        assertThat(ran.out()).contains("frame at byte 0: ", "rejected at byte 13: ", "checksum", "frame at byte 26: ");
        assertThat(ran.out()).containsPattern("temperature-1 .* probe-1 = open-circuit\n");
        assertThat(decode("demo-air", "--hex", "A5 5A 08").out()).startsWith("rejected at byte 0: incomplete: ");
    }

    @Test
    void aFrameOfTextIsTakenTheSameWay() {
        Ran ran = decode(
                "demo-gauge",
                "--hex",
                "50312 0".replace(" ", "") + "2B362E38332050322 02D332E34392042203837".replace(" ", "") + "0D0A");
        assertThat(ran.out()).containsPattern("pressure-1 +3-7 +2B 36 2E 38 33 .*port-1 = 6\\.83 \\[in_i'H2O]");
        assertThat(ran.out()).containsPattern("pressure-2 .*port-2 = 3\\.49 \\[in_i'H2O]");
    }

    @Test
    void jsonGivesAnObjectAFrame() {
        List<JsonNode> frames = decode("demo-air", "--json", "--hex", WARM + BAD)
                .out()
                .lines()
                .map(JsonMapper.shared()::readTree)
                .toList();
        assertThat(frames).hasSize(2);
        assertThat(frames.get(0).get("message").stringValue()).isEqualTo("frame");
        assertThat(frames.get(0).get("fields").get(2).toString())
                .isEqualTo("{\"name\":\"temperature-1\",\"from\":5,\"to\":7,\"hex\":\"38 15\",\"raw\":\"5432\","
                        + "\"channel\":\"probe-1\",\"value\":54.32,\"unit_ucum\":\"Cel\",\"status\":\"ok\"}");
        assertThat(frames.get(1).get("good").booleanValue()).isFalse();
        assertThat(frames.get(1).get("offset").intValue()).isEqualTo(13);
        assertThat(frames.get(1).get("rejection").stringValue()).contains("checksum");
    }

    @Test
    void aCaptureIsExplainedAndNothingIsPutTogetherAcrossAHole() throws IOException {
        Path file = capture("probe air demo-air\n0.1 air 0 " + WARM + " A5 5A 08\n0.2 air lost unplugged\n0.3 air 0 "
                + PULLED_OUT + "\nend\n");
        Ran ran = decode("demo-air", "--capture", file);
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out()).contains("probe-1 = 54.32 Cel", "incomplete: the last 3 bytes", "probe-1 = open-circuit");
    }

    @Test
    void aDamagedCaptureIsToldAndExitCodeIsFive() throws IOException {
        Path file = capture("probe air demo-air\n0.1 air 0 A5 5\n0.2 air 0 " + WARM + "\nend\n");
        Ran ran = decode("demo-air", "--capture", file);
        assertThat(ran.code()).isEqualTo(5);
        assertThat(ran.err()).startsWith(file + ":3:14: ");
        assertThat(ran.out()).contains("probe-1 = 54.32 Cel");
    }

    @Test
    void ofSeveralProbesOneIsNamed() throws IOException {
        Path file = capture("probe a demo-air\nprobe b demo-air\n0.1 b 0 " + WARM + "\nend\n");
        Ran unclear = decode("demo-air", "--capture", file);
        assertThat(unclear.code()).isEqualTo(2);
        assertThat(unclear.err()).contains("say --probe NAME with one of the capture's probes: [a, b]");
        assertThat(decode("demo-air", "--capture", file, "--probe", "b").out()).contains("54.32");
        assertThat(decode("demo-air", "--capture", file, "--probe", "a").out()).isEmpty();
        assertThat(decode("demo-air", "--capture", file, "--probe", "c").code()).isEqualTo(2);
    }

    @Test
    void wrongUsageIsToldWithTheRemedy() throws IOException {
        assertUsage("bytes are pairs of hexadecimal digits", "demo-air", "--hex", "A5 5");
        assertUsage("no profile \"zork\": neither a file nor one of", "zork", "--hex", "A5");
        assertUsage(
                "profile demo-air has no message \"x\"; it has [frame]", "demo-air", "--message", "x", "--hex", "A5");
        assertUsage("no-such: no such file", "demo-air", "--capture", "no-such");
        assertUsage("--hex", "demo-air");
        assertUsage("mutually exclusive", "demo-air", "--hex", "A5", "--capture", "x");
        assertUsage("a device address is six pairs", "demo-air", "--hex", "A5", "--address", "5448");
        Path bad = Files.writeString(folder.resolve("bad.yaml"), "language: 1\n");
        assertThat(decode(bad, "--hex", "A5").code()).isEqualTo(3);
    }

    private void assertUsage(String message, Object... arguments) {
        Ran ran = decode(arguments);
        assertThat(ran.err()).contains(message);
        assertThat(ran.code()).as(message).isEqualTo(2);
        assertThat(ran.out()).isEmpty();
    }

    /** Key, address, frame and values are those of the page bthome.io/encryption. */
    @Test
    void aProtectedFrameIsOpenedWithTheKeyOfAFileAndTheKeyIsNeverShown() throws IOException {
        Path profile = SealedSensor.profile(folder);
        Path key = Files.writeString(folder.resolve("key"), SealedSensor.KEY + "\n");
        Ran ran = decode(profile, "--hex", SealedSensor.FRAME, "--key-file", key, "--address", SealedSensor.ADDRESS);
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out()).contains("temperature = 25.06 Cel", "humidity = 50.55 %");
        Ran without = decode(profile, "--hex", SealedSensor.FRAME);
        assertThat(without.out()).startsWith("rejected at byte 0: ").contains("key");
        assertThat((ran.out() + ran.err()).replace(" ", "")).doesNotContainIgnoringCase(SealedSensor.KEY);
    }

    @Test
    void aKeyThatIsNoneIsRefusedWithoutShowingIt() throws IOException {
        Path key = Files.writeString(folder.resolve("key"), SealedSensor.KEY.substring(1));
        Ran ran = decode("demo-air", "--hex", "A5", "--key-file", key);
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.err())
                .contains("a key is 32 hexadecimal digits")
                .doesNotContain(SealedSensor.KEY.substring(1, 9));
        assertThat(decode("demo-air", "--hex", "A5", "--key", SealedSensor.KEY).code())
                .isEqualTo(2);
    }

    @Test
    void aNumberWithoutAUnitStandsAlone() throws Exception {
        Path profile = Files.writeString(folder.resolve("ratio.yaml"), """
                language: 1
                id: ratio
                name: Ratio
                framing: {fixed: {start: "A5", length-bytes: 2}}
                fields:
                  - {name: ratio, at: 1, type: uint8}
                channels:
                  - {id: ratio, field: ratio, unit: "1"}
                examples:
                  - {hex: "A5 02", gives: {ratio: 2}}
                """);
        assertThat(decode(profile, "--hex", "A5 02").out()).endsWith("ratio = 2.0\n");
    }
}
