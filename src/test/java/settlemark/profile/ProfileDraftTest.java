package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.document.Problem;
import settlemark.profile.ProfileDraft.Answers;
import settlemark.profile.ProfileDraft.Check;
import settlemark.profile.ProfileDraft.Reading;
import settlemark.profile.ProfileDraft.Shape;

final class ProfileDraftTest {
    private static final SerialLine LINE =
            new SerialLine(9600, 8, SerialLine.Parity.NONE, SerialLine.StopBits.ONE, SerialLine.Flow.NONE);
    private static final Reading PRESSURE = new Reading("pressure", "P1", "[psi]", 1, "int16", true, 0.01, 0.01);

    static Stream<Shape> shapes() {
        return Stream.of(
                new ProfileDraft.TextLines(LINE, "\r\n", ' ', 3),
                new ProfileDraft.TextLines(LINE, "\n", ';', 0),
                new ProfileDraft.AskedText(LINE, "MEAS?\n", 0.5, "\n"),
                new ProfileDraft.FixedFrames(LINE, ByteText.ofHex("A5"), 8, Check.NONE),
                new ProfileDraft.FixedFrames(LINE, ByteText.EMPTY, 8, Check.SUM_8),
                new ProfileDraft.LengthFrames(LINE, ByteText.EMPTY, 0, 3, 32, Check.CRC_16_MODBUS),
                new ProfileDraft.ModbusRegisters(LINE, 5, 1, 3, 1, 4, 1));
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void everyShapeReadsBackWithoutProblems(Shape shape) {
        Profile profile = readBack(new Answers("my-gauge", "My gauge", shape, List.of(PRESSURE), capture("01 02")));
        assertThat(profile.id()).isEqualTo("my-gauge");
        assertThat(profile.name()).isEqualTo("My gauge");
        assertThat(profile.serial()).contains(LINE);
        assertThat(profile.channels().get(0).unit().code()).isEqualTo("[psi]");
        assertThat(profile.channels().get(0).label()).isEqualTo("P1");
        assertThat(profile.channels().get(0).resolution()).isEqualTo(0.01);
        Field field = profile.field(profile.sources().get(0).fields().get(0));
        assertThat(curve(field)).isEqualTo(new Curve.Linear(0.01, 0));
        assertThat(profile.examples().get(0).bytes()).isEqualTo(ByteText.ofHex("01 02"));
        assertThat(profile.examples().get(0).gives())
                .isEqualTo(Map.of("pressure", new Example.Expected(6.83, settlemark.measure.SampleStatus.OK)));
    }

    private static Curve curve(Field field) {
        return field.content() instanceof Field.Binary binary
                ? binary.curve()
                : ((Field.Decimal) field.content()).curve();
    }

    @Test
    void aTextLineIsWrittenAsItCame() {
        Shape shape = new ProfileDraft.TextLines(LINE, "\r\n", ' ', 3);
        Profile profile =
                readBack(new Answers("g", "G", shape, List.of(PRESSURE), capture("50 31 20 2B 36 2E 38 0D 0A")));
        assertThat(profile.text()).contains("text: \"P1 +6.8\\r\\n\"");
        Message message = profile.messages().get(0);
        assertThat(message.framing()).isEqualTo(new Framing.Line(ByteText.ofHex("0D 0A"), 200));
        assertThat(message.columns()).contains(new Framing.Columns(' ', 3));
        assertThat(message.fields().get(0).place()).isEqualTo(new Field.InColumn(1));
    }

    @Test
    void aRequestIsAskedAsOftenAsAnswered() {
        Profile profile = readBack(new Answers(
                "g", "G", new ProfileDraft.AskedText(LINE, "MEAS?\n", 0.5, "\n"), List.of(PRESSURE), capture("31 0A")));
        Message message = profile.messages().get(0);
        assertThat(message.source())
                .isEqualTo(new Source.Answer(
                        ByteText.of("MEAS?\n".getBytes(StandardCharsets.US_ASCII)), new Poll(0.5, 1, 0)));
        assertThat(((Field.Decimal) message.fields().get(0).content()).specials())
                .hasSize(3);
    }

    @Test
    void aFrameHasItsStartLengthAndOrder() {
        Shape shape = new ProfileDraft.LengthFrames(LINE, ByteText.ofHex("A5 5A"), 2, 5, 32, Check.CRC_16_XMODEM);
        Message message = readBack(new Answers("g", "G", shape, List.of(PRESSURE), capture("31")))
                .messages()
                .get(0);
        assertThat(message.framing())
                .isEqualTo(new Framing.LengthField(
                        ByteText.ofHex("A5 5A"), 2, new Wire(Wire.Kind.UNSIGNED, 1, Wire.Order.LITTLE), 5, 32));
        assertThat(message.checksum().orElseThrow().order()).isEqualTo(Wire.Order.BIG);
        assertThat(((Field.Binary) message.fields().get(0).content()).wire())
                .isEqualTo(new Wire(Wire.Kind.SIGNED, 2, Wire.Order.BIG));
    }

    @Test
    void registersOfMoreThanOneWordHaveTheirOrder() {
        Reading flow = new Reading("flow", "Flow", "m3/h", 3, "float32", false, 1, Double.NaN);
        Shape shape = new ProfileDraft.ModbusRegisters(LINE, 5, 1, 4, 1, 4, 2);
        Profile profile = readBack(new Answers("g", "G", shape, List.of(PRESSURE, flow), capture("31 FF")));
        assertThat(profile.link()).contains(new Link.ModbusRtu(LINE, 5));
        Message message = profile.messages().get(0);
        assertThat(message.source()).isEqualTo(new Source.Registers(4, 0, 4, new Poll(2, 1, 0)));
        assertThat(message.fields().get(1).place()).isEqualTo(new Field.AtByte(7));
        assertThat(((Field.Binary) message.fields().get(1).content()).wire())
                .isEqualTo(new Wire(Wire.Kind.IEEE_FLOAT, 4, Wire.Order.BIG_WORDS_SWAPPED));
        assertThat(profile.channels().get(1).resolution()).isNaN();
        assertThat(profile.text()).contains("hex: \"31 FF\"");
    }

    @ParameterizedTest
    @EnumSource(Check.class)
    void everyCheckReadsBack(Check check) {
        Shape shape = new ProfileDraft.FixedFrames(LINE, ByteText.ofHex("A5"), 8, check);
        Optional<Checksum> read = readBack(new Answers("g", "G", shape, List.of(PRESSURE), capture("31")))
                .messages()
                .get(0)
                .checksum();
        assertThat(read.map(c -> c.algorithm().width()))
                .isEqualTo(
                        switch (check) {
                            case NONE -> Optional.empty();
                            case SUM_8, XOR_8 -> Optional.of(8);
                            default -> Optional.of(16);
                        });
    }

    @Test
    void lineSettingsAreKept() {
        SerialLine line = new SerialLine(
                300, 7, SerialLine.Parity.EVEN, SerialLine.StopBits.ONE_AND_A_HALF, SerialLine.Flow.SOFTWARE);
        SerialLine other =
                new SerialLine(19200, 8, SerialLine.Parity.ODD, SerialLine.StopBits.TWO, SerialLine.Flow.HARDWARE);
        assertThat(readBack(lines("G", line)).serial()).contains(line);
        assertThat(readBack(lines("G", other)).serial()).contains(other);
    }

    @ParameterizedTest
    @org.junit.jupiter.params.provider.ValueSource(
            strings = {
                "no",
                "12",
                "a: b",
                "# not a comment",
                "\"quoted\" \\ back",
                "tab\there",
                "Prüfstand 3",
                "true",
                "- a",
                "[psi]"
            })
    void namesThatYamlCouldMisreadAreQuoted(String name) {
        assertThat(readBack(lines(name, LINE)).name()).isEqualTo(name);
    }

    private static Answers lines(String name, SerialLine line) {
        return new Answers("g", name, new ProfileDraft.TextLines(line, "\n", ' ', 0), List.of(PRESSURE), capture("31"));
    }

    @Test
    void withoutACaptureItSaysWhatIsMissing() {
        Shape shape = new ProfileDraft.TextLines(LINE, "\n", ' ', 0);
        String text = ProfileDraft.text(new Answers("g", "G", shape, List.of(PRESSURE), Optional.empty()));
        ProfileReading reading = ProfileReader.read("g.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.profile()).isPresent();
        assertThat(reading.problems())
                .extracting(Problem::message)
                .singleElement()
                .asString()
                .startsWith("no examples");
        assertThat(text).contains("# examples:\n#   - hex: \"...\"\n#     gives: {pressure: 0}\n");
    }

    /** Whoever opens the file for the first time learns from it what each part is for. */
    @Test
    void aDraftExplainsItself() {
        assertThat(draft(new ProfileDraft.ModbusRegisters(LINE, 5, 1, 4, 1, 4, 2)))
                .isEqualTo("""
                        # yaml-language-server: $schema=profile.schema.json
                        #
                        # A first draft. Try it with: settlemark profile check g.yaml
                        language: 1
                        id: g
                        name: "G"

                        # How the device is connected; the numbers are in its manual.
                        link:
                          # address-base: 1 where the manual calls the first register number 1, 0 where number 0.
                          modbus-rtu: {unit: 5, address-base: 1, baud: 9600, data-bits: 8, parity: none, stop-bits: 1, flow: none}

                        # Which registers are asked for, and how often in seconds. Function 3 reads holding registers, 4
                        # input registers.
                        ask: {function: 4, register: 1, count: 4, period: 2}

                        fields:
                          - {name: pressure, register: 1, type: int16, scale: 0.01}

                        channels:
                          - id: pressure
                            label: "P1"
                            field: pressure
                            unit: "[psi]"
                            resolution: 0.01
                            # From the data sheet; without it the uncertainty of a reading is not known.
                            # accuracy: {reading-percent: 0.5, digits: 1}

                        # Frames that the device has sent, with what it showed then. They prove the profile.
                        # examples:
                        #   - hex: "..."
                        #     gives: {pressure: 0}
                        """);
        assertThat(draft(new ProfileDraft.AskedText(LINE, "MEAS?\n", 0.5, "\n")))
                .contains("""

                        # What is sent, and how often in seconds.
                        ask: {text: "MEAS?\\n", period: 0.5}

                        # With "\\n" as the end, lines that end with "\\r\\n" are read as well.
                        framing:
                          line: {end: "\\n", maximum-bytes: 200}

                        # A blank as the separator stands for any run of blanks. Columns count from 0.
                        columns: {separator: ","}

                        """);
        assertThat(draft(new ProfileDraft.LengthFrames(LINE, ByteText.ofHex("A5"), 1, 3, 32, Check.NONE)))
                .contains("""

                        # Each frame says its length; adds: the bytes that the length does not count.
                        framing:
                          length-field: {start: "A5", at: 1, type: uint8, adds: 3, maximum-bytes: 32}

                        # No checksum: noise on the line can look like a reading.

                        """);
        assertThat(draft(new ProfileDraft.FixedFrames(LINE, ByteText.ofHex("A5"), 8, Check.CRC_16_XMODEM)))
                .contains("""
                        # Every frame has one length, with its start and its checksum.
                        framing:
                          fixed: {start: "A5", length-bytes: 8}

                        checksum:
                          # The catalogue calls these parameters CRC-16/XMODEM.
                        """);
    }

    private static String draft(Shape shape) {
        return ProfileDraft.text(new Answers("g", "G", shape, List.of(PRESSURE), Optional.empty()));
    }

    @Test
    void anExampleOfPrintableCharactersIsTextAndAnyOtherIsHex() {
        Shape shape = new ProfileDraft.TextLines(LINE, "\n", ' ', 0);
        assertThat(readBack(new Answers("g", "G", shape, List.of(PRESSURE), capture("20 09 7E 0A")))
                        .text())
                .contains("text: \" \\t~\\n\"");
        assertThat(readBack(new Answers("g", "G", shape, List.of(PRESSURE), capture("7F 0A")))
                        .text())
                .contains("hex: \"7F 0A\"");
    }

    @Test
    void badAnswersAreNamedByTheReader() {
        Reading bad = new Reading("pressure", "P1", "inH2O", 0, "text", true, 1, Double.NaN);
        Shape shape = new ProfileDraft.TextLines(LINE, "\n", ' ', 0);
        String text = ProfileDraft.text(new Answers("g", "G", shape, List.of(bad), capture("31")));
        assertThat(ProfileReader.read("g.yaml", text.getBytes(StandardCharsets.UTF_8))
                        .problems())
                .extracting(Problem::message)
                .containsExactly("unit must be a UCUM code, got \"inH2O\"; did you mean \"[in_i'H2O]\"?");
    }

    @Test
    void thereIsSomethingToRead() {
        Shape shape = new ProfileDraft.TextLines(LINE, "\n", ' ', 0);
        assertThatThrownBy(() -> new Answers("g", "G", shape, List.of(), Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("one reading at least");
    }

    private static Optional<ProfileDraft.Capture> capture(String hex) {
        return Optional.of(new ProfileDraft.Capture(ByteText.ofHex(hex), Map.of("pressure", 6.83)));
    }

    private static Profile readBack(Answers answers) {
        String text = ProfileDraft.text(answers);
        ProfileReading reading = ProfileReader.read("g.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.problems()).as(text).isEmpty();
        return reading.orThrow();
    }
}
