package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.measure.Chunk;
import settlemark.measure.Sample;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.ByteText;
import settlemark.profile.Curve;
import settlemark.profile.Example;
import settlemark.profile.Field;
import settlemark.profile.Framing;
import settlemark.profile.Poll;
import settlemark.profile.Profile;
import settlemark.profile.Secrets;
import settlemark.profile.Source;
import settlemark.profile.Wire;

/** Profiles with several messages, facts, conditions and descriptors. */
final class MessagesTest {
    private static final SampleStatus OK = SampleStatus.OK;

    private static Source characteristic(boolean described) {
        return new Source.Characteristic(
                Optional.empty(), new UUID(0, 0x2A6D), Source.By.NOTIFY, new Poll(1, 1, 0), described, described);
    }

    private static Made pressure(Unit unit) {
        return Made.message("pressure", new Framing.Packet(20))
                .from(characteristic(true))
                .at("p", 0, Made.scaled(Made.wire(Wire.Kind.UNSIGNED, 4), 0.1))
                .channel("p", unit, 1, "p");
    }

    private static Made serial() {
        return Made.message("serial", new Framing.Packet(20))
                .from(characteristic(false))
                .at("serial", 0, new Field.Characters(0))
                .fact("serial-number", "serial");
    }

    @Test
    void eachMessageHasItsOwnStream() {
        Made lines = Made.message("lines", new Framing.Line(ByteText.ofHex("0A"), 20))
                .columns(',', 1)
                .field("x", new Field.InColumn(0), Made.decimal())
                .shown("x");
        Made slip = Made.message("slip", Framing.Marked.slip(20))
                .checksum(Made.MODBUS_CRC)
                .at("y", 0, Made.number(Made.U8))
                .shown("y");
        Profile profile = Made.together(lines, slip);
        byte[] frame = new Encoder(profile).encode(1, new double[] {0, 5}, new SampleStatus[] {null, OK});
        Recorder recorder = new Recorder();
        ProbeDecoder decoder = new ProbeDecoder(profile);
        decoder.accept(new Chunk(1, 0, "\n1".getBytes(StandardCharsets.US_ASCII)), recorder);
        decoder.accept(new Chunk(2, 1, frame), recorder);
        decoder.accept(new Chunk(3, 0, "2\nx\n".getBytes(StandardCharsets.US_ASCII)), recorder);
        assertThat(recorder.samples).containsExactly(new Sample(1, 2, 5, OK), new Sample(0, 3, 12, OK));
        assertThat(recorder.rejections).containsExactly(new Rejected(3, 4, "lines: x must be a number, got \"x\""));
        assertThat(decoder.acceptedFrames()).isEqualTo(2);
    }

    @Test
    void strayBytesAreCountedRejections() {
        Recorder recorder = new Recorder();
        ProbeDecoder decoder = new ProbeDecoder(pressure(Unit.PASCAL).profile());
        decoder.accept(new Chunk(5, Chunk.STRAY, Made.hex("0102")), recorder);
        decoder.accept(new Chunk(6, 9, Made.hex("03")), recorder);
        assertThat(recorder.rejections)
                .containsExactly(
                        new Rejected(5, 0, "stray: 2 bytes that belong to no message, 01 02"),
                        new Rejected(6, 2, "stray: 1 bytes that belong to no message, 03"));
        assertThat(decoder.rejectedFrames()).isEqualTo(2);
    }

    @Test
    void aPacketThatIsTooLongIsRejected() {
        Recorder recorder =
                Recorder.of(pressure(Unit.PASCAL).profile(), new Chunk(1, new byte[21]), new Chunk(2, new byte[3]));
        assertThat(recorder.rejections)
                .containsExactly(
                        new Rejected(1, 0, "the packet has 21 bytes where a frame has at most 20"),
                        new Rejected(2, 21, "the frame has 3 bytes where the fields need 4"));
    }

    @Test
    void factsAreWordsWithoutBlanksAndControls() {
        Profile profile = Made.together(pressure(Unit.PASCAL), serial());
        Recorder recorder = new Recorder();
        ProbeDecoder decoder = new ProbeDecoder(profile);
        for (String words : List.of("  SN-1\u00b5 \0\0", "a\u001b[31mb", "", "\0")) {
            if (!words.isEmpty()) {
                decoder.accept(new Chunk(4, 1, words.getBytes(StandardCharsets.UTF_8)), recorder);
            }
        }
        decoder.accept(new Chunk(4, 1, Made.hex("41FF42")), recorder);
        assertThat(recorder.facts).containsExactly("0: SN-1\u00b5", "0: a\ufffd[31mb", "0: ", "0: A\ufffdB");
        assertThat(recorder.samples).isEmpty();
    }

    @Test
    void factsAreWrittenBack() {
        Made fixed = Made.message("fixed", new Framing.Packet(20))
                .at("model", 1, new Field.Characters(4))
                .at("x", 0, Made.number(Made.U8))
                .shown("x")
                .fact("model", "model");
        Profile profile = Made.together(serial(), fixed);
        Encoder encoder = new Encoder(profile);
        @Nullable SampleStatus[] none = {null};
        SampleStatus[] ok = {OK};
        assertThat(encoder.encode(0, new double[1], none, new String[] {"SN 7", null}))
                .isEqualTo("SN 7".getBytes(StandardCharsets.US_ASCII));
        assertThat(encoder.encode(1, new double[] {9}, ok, new String[] {null, "ab"}))
                .isEqualTo(Made.hex("09 61 62 00 00"));
        assertThatThrownBy(() -> encoder.encode(1, new double[] {9}, ok, new String[] {null, "abcde"}))
                .hasMessage("model has room for 4 bytes, got 5");
        assertThatThrownBy(() -> encoder.encode(1, new double[] {9}, none, new String[2]))
                .hasMessage("every frame holds x: it cannot be left out");
        assertThatThrownBy(() -> encoder.encode(1, new double[] {9}, ok, new String[1]))
                .hasMessage("the profile has 2 facts, got 1 words");
    }

    /** A thermometer that says its unit in a flag, as Bluetooth's Temperature Measurement (0x2A1C) does. */
    private static Made thermometer() {
        Wire medical = Made.wire(Wire.Kind.MEDICAL_FLOAT, 4);
        return Made.message("thermometer", new Framing.Packet(20))
                .at("fahrenheit?", 0, Made.bits(Made.U8, 0, 1))
                .at("type?", 0, Made.bits(Made.U8, 2, 1))
                .at("celsius", 1, Made.number(medical))
                .when("fahrenheit?", 0L)
                .at("fahrenheit", 1, Made.number(medical, new Curve.Linear(5.0 / 9, -160.0 / 9)))
                .when("fahrenheit?", 1L)
                .at("type", 5, Made.number(Made.U8))
                .when("type?", 1L)
                .channel("t", Unit.CELSIUS, 1, "celsius", "fahrenheit")
                .channel("type", Unit.PERCENT, 1, "type");
    }

    /** 36.4 degC is 97.52 degF; FF00016C is 36.4 (see NumberKindsTest). */
    @Test
    void theFirstFieldThatStandsThereGivesTheValue() {
        Profile profile = thermometer().profile();
        Recorder recorder = Recorder.of(
                profile,
                new Chunk(1, Made.hex("00 6C 01 00 FF")),
                new Chunk(2, Made.hex("01 18 26 00 FE")),
                new Chunk(3, Made.hex("04 6C 01 00 FF 02")),
                new Chunk(4, Made.hex("04 6C 01 00 FF")),
                new Chunk(5, Made.hex("00 FF FF 7F 00")));
        assertThat(recorder.values(0).get(0)).isEqualTo(36.4);
        assertThat(recorder.values(0).get(1)).isCloseTo(36.4, within(1e-9));
        assertThat(recorder.values(0).get(2)).isEqualTo(36.4);
        assertThat(recorder.values(1)).containsExactly(2.0);
        assertThat(recorder.reasons()).containsExactly("type ends at byte 6 where there are 5");
        assertThat(recorder.samples.get(recorder.samples.size() - 1).status()).isEqualTo(SampleStatus.FAULT);
    }

    @Test
    void conditionsAreWrittenSoThatExactlyTheWantedChannelsStandThere() {
        Profile profile = thermometer().profile();
        Encoder encoder = new Encoder(profile);
        assertThat(encoder.encode(0, new double[] {36.4, 2}, new SampleStatus[] {OK, null}))
                .isEqualTo(Made.hex("00 6C 01 00 FF"));
        assertThat(encoder.encode(0, new double[] {36.4, 2}, new SampleStatus[] {OK, OK}))
                .isEqualTo(Made.hex("04 6C 01 00 FF 02"));
        assertThat(encoder.canSay(0, SampleStatus.OVER_RANGE)).isTrue();
        Profile shown = thermometer()
                .good("05 18 26 00 FE 03", Map.of("t", 36.4), Map.of(), Set.of(), Example.Circumstances.NONE)
                .good("01 18 26 00 FE", Map.of("t", 36.4), Map.of(), Set.of("type"), Example.Circumstances.NONE)
                .profile();
        assertThat(ProfileProof.of(shown).faults()).isEmpty();
        assertThat(new Encoder(shown).encode(0, new double[] {36.4, 2}, new SampleStatus[] {OK, null})[0])
                .isEqualTo((byte) 1);
        // No number in one bit is neither 0 nor 1.
        assertThatThrownBy(() -> encoder.encode(0, new double[2], new SampleStatus[] {null, OK}))
                .hasMessage("no number in fahrenheit? makes a frame that holds just this");
    }

    @Test
    void textHasConditionsAndFactsToo() {
        Made made = Made.message(new Framing.Line(ByteText.ofHex("0A"), 40))
                .columns(',', 4)
                .field("mode", new Field.InColumn(0), Made.decimal())
                .field("p", new Field.InColumn(1), Made.decimal())
                .when("mode", 1L)
                .field("q", new Field.InColumn(1), Made.decimal())
                .when("mode", 2L, 3L)
                .field("name", new Field.InColumn(2), new Field.Characters(0))
                .field("end", new Field.InColumn(3), Made.literal("45"))
                .shown("p", "q")
                .fact("name", "name");
        Profile profile = made.profile();
        Recorder recorder = Recorder.of(
                profile,
                new Chunk(
                        1,
                        "\n1,5,Ab c,E\n2,6,,E\n3,7,x,E\n4,8,y,E\n1,x,y,E\n2,6,,F\n"
                                .getBytes(StandardCharsets.US_ASCII)));
        assertThat(recorder.values(0)).containsExactly(5.0);
        assertThat(recorder.values(1)).containsExactly(6.0, 7.0);
        assertThat(recorder.facts).containsExactly("0: Ab c", "0: ", "0: x", "0: y");
        assertThat(recorder.reasons()).containsExactly("p must be a number, got \"x\"", "end must be \"E\", got \"F\"");
        Encoder encoder = new Encoder(profile);
        assertThat(encoder.encode(0, new double[] {0, 2.5}, new SampleStatus[] {null, OK}, new String[] {"n"}))
                .isEqualTo("2,2.5,n,E\n".getBytes(StandardCharsets.US_ASCII));
        assertThat(encoder.encode(0, new double[] {1, 0}, new SampleStatus[] {OK, null}))
                .isEqualTo("1,1,0,E\n".getBytes(StandardCharsets.US_ASCII));
        assertThat(encoder.encode(0, new double[2], new SampleStatus[2], new String[] {"n"}))
                .isEqualTo("0,0,n,E\n".getBytes(StandardCharsets.US_ASCII));
        assertThatThrownBy(() -> encoder.encode(0, new double[2], new SampleStatus[] {OK, OK}))
                .hasMessageContaining("no number in mode makes a frame that holds just this");
    }

    /**
     * Presentation formats. The first two rows: layout by the Bluetooth Core Specification, unit numbers from the assigned
     * numbers; the third as found in a log of a tyre pressure sensor in a public repository (signed 16 bits, 0.1 psi);
     * conversions by hand.
     */
    @ParameterizedTest
    @CsvSource({
        "Pa,    08 FF 24 27 01 00 00, 02 76 0F 00, 101325",
        "kPa,   08 FF 24 27 01 00 00, 02 76 0F 00, 101.325",
        "[psi], 0E FF A5 27 01 00 00, 7B 01,       37.9",
        "kPa,   08 FB 80 27 01 00 00, 81 96 98 00, 10000.001",
        "Pa,    14 00 24 27 01 00 00, 00 00 C8 42, 100",
        "Pa,    16 00 24 27 01 00 00, 72 F0,       11.4",
        "Pa,    1B 00 24 27 01 00 00, 02 00 00 00, 2",
        "Pa,    08 02 24 27 01 00 00, 02 00 00 00, 200"
    })
    void aPresentationFormatReplacesScaleAndUnit(String unit, String descriptor, String value, double expected) {
        Profile profile = pressure(Unit.ucum(unit)).profile();
        assertThat(profile.inputs()).hasSize(3);
        Recorder recorder =
                Recorder.of(profile, new Chunk(1, 1, Made.hex(descriptor)), new Chunk(2, 0, Made.hex(value)));
        assertThat(recorder.rejections).isEmpty();
        assertThat(recorder.values(0)).hasSize(1);
        assertThat(recorder.values(0).get(0)).isCloseTo(expected, within(Math.abs(expected) * 1e-12));
    }

    @Test
    void temperaturesAreConvertedWithTheirOffset() {
        Made made = Made.message("t", new Framing.Packet(20))
                .from(characteristic(true))
                .at("t", 0, Made.scaled(Made.S16, 0.01))
                .channel("t", Unit.CELSIUS, 1, "t");
        // 9752 hundredths of a degree Fahrenheit are 36.4 degC; 30955 hundredths of a kelvin are 36.4 degC.
        Recorder recorder = Recorder.of(
                made.profile(),
                new Chunk(1, 1, Made.hex("0E FE AC 27 01 00 00")),
                new Chunk(2, 0, Made.hex("18 26")),
                new Chunk(3, 1, Made.hex("0E FE 05 27 01 00 00")),
                new Chunk(4, 0, Made.hex("EB 78")),
                new Chunk(5, 1, Made.hex("0E FE 2F 27 01 00 00")),
                new Chunk(6, 0, Made.hex("DA FD")));
        assertThat(recorder.values(0).get(0)).isCloseTo(36.4, within(1e-9));
        assertThat(recorder.values(0).get(1)).isCloseTo(36.4, within(1e-9));
        assertThat(recorder.values(0).get(2)).isEqualTo(-5.5);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            08 FF 24 27 01 00          | descriptor 0x2904 has 7 bytes, got 6
            08 FF FF 27 01 00 00       | descriptor 0x2904 is not honoured: unit 0x27FF is not known
            08 FF 2F 27 01 00 00       | descriptor 0x2904 is not honoured: cannot convert Cel (TEMPERATURE) to Pa (PRESSURE)
            """)
    void aPresentationFormatThatDoesNotFitLeavesTheProfileAsItIs(String descriptor, String reason) {
        Recorder recorder = Recorder.of(
                pressure(Unit.PASCAL).profile(),
                new Chunk(1, 1, Made.hex(descriptor)),
                new Chunk(2, 0, Made.hex("02 76 0F 00")));
        assertThat(recorder.rejections).containsExactly(new Rejected(1, 0, reason));
        assertThat(recorder.values(0)).containsExactly(101325.0);
    }

    @Test
    void specialNumbersStayWhereTheTypeDoes() {
        Made made = Made.message("t", new Framing.Packet(20))
                .from(characteristic(true))
                .at("t", 0, Made.special(Made.S16, SampleStatus.NOT_READY, -32768L))
                .channel("t", Unit.CELSIUS, 1, "t");
        Recorder recorder = Recorder.of(
                made.profile(),
                new Chunk(1, 1, Made.hex("0E FE 2F 27 01 00 00")),
                new Chunk(2, 0, Made.hex("00 80")),
                new Chunk(3, 1, Made.hex("06 FE 2F 27 01 00 00")),
                new Chunk(4, 0, Made.hex("00 80")));
        assertThat(recorder.samples)
                .containsExactly(new Sample(0, 2, Double.NaN, SampleStatus.NOT_READY), new Sample(0, 4, 327.68, OK));
    }

    @Test
    void aMessageWithoutANumberHasNoPresentation() {
        Made made = Made.message("serial", new Framing.Packet(20))
                .from(characteristic(true))
                .at("serial", 0, new Field.Characters(0))
                .fact("serial", "serial");
        assertThat(Recorder.of(made.profile(), new Chunk(1, 1, Made.hex("08 FF 24 27 01 00 00")))
                        .reasons())
                .containsExactly("descriptor 0x2904 is not honoured: the message has no number in bytes");
        Made unseen = Made.message("x", new Framing.Packet(20))
                .from(characteristic(true))
                .at("x", 0, Made.number(Made.U8));
        assertThat(Recorder.of(unseen.profile(), new Chunk(1, 1, Made.hex("08 FF 24 27 01 00 00")))
                        .reasons())
                .containsExactly("descriptor 0x2904 is not honoured: the message has no number that a channel shows");
    }

    /** Layout of 0x290C by the Environmental Sensing Service 1.0, from memory. */
    @Test
    void aMeasurementDescriptorIsANote() {
        Profile profile = Made.together(serial(), pressure(Unit.PASCAL));
        Recorder recorder = Recorder.of(
                profile,
                new Chunk(1, 3, Made.hex("0000 01 0A0000 3C0000 01 05")),
                new Chunk(2, 3, Made.hex("0000 01 000000 000000 01 FF")),
                new Chunk(3, 3, Made.hex("0000")));
        assertThat(recorder.notes)
                .containsExactly(
                        "1: " + new MeasurementNote(2.5, 60, 10),
                        "1: " + new MeasurementNote(Double.NaN, Double.NaN, Double.NaN));
        assertThat(recorder.rejections)
                .containsExactly(new Rejected(3, 0, "pressure: descriptor 0x290C has 11 bytes, got 2"));
        assertThatThrownBy(() -> new MeasurementNote(-1, 1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new MeasurementNote(1, 0, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new MeasurementNote(1, 1, 0)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void examplesAreProvedInTheirCircumstances() {
        Example.Circumstances described = new Example.Circumstances(
                Secrets.NONE,
                Optional.of(ByteText.ofHex("0E FF A5 27 01 00 00")),
                Optional.of(ByteText.ofHex("0000 01 0A0000 3C0000 01 05")));
        Profile profile = pressure(Unit.ucum("[psi]"))
                .good("7B 01", Map.of("p", 37.9), Map.of(), Set.of(), described)
                .good("02 76 0F 00", Map.of("p", 101325.0))
                .bad("7B 01", "need 4", Example.Circumstances.NONE)
                .profile();
        assertThat(ProfileProof.of(profile).faults()).isEmpty();
        Profile facts = Made.together(
                serial().good("41 42", Map.of(), Map.of("serial-number", "AB"), Set.of(), Example.Circumstances.NONE));
        assertThat(ProfileProof.of(facts).faults()).isEmpty();
    }

    @Test
    void whatDoesNotHoldIsSaid() {
        Profile facts = Made.together(
                serial().good("41 42", Map.of(), Map.of("serial-number", "AC"), Set.of(), Example.Circumstances.NONE),
                pressure(Unit.PASCAL)
                        .good(
                                "02 76 0F 00",
                                Map.of("p", 101325.0),
                                Map.of("other", "x"),
                                Set.of(),
                                Example.Circumstances.NONE)
                        .good("02 76 0F 00", Map.of("p", 101325.0), Map.of(), Set.of("p"), Example.Circumstances.NONE)
                        .good("", Map.of("p", 101325.0)));
        assertThat(ProfileProof.of(facts).faults())
                .extracting(ProfileProof.Fault::message)
                .containsExactly(
                        "example 1: serial-number must say \"AC\", got \"AB\"",
                        "example 1: other must say \"x\", got nothing",
                        "example 2: p must be absent, got 101325.0",
                        "example 3: was rejected: incomplete: the frame goes on after its 0 bytes");
        Example.Circumstances described = new Example.Circumstances(
                Secrets.NONE, Optional.of(ByteText.ofHex("0E FF A5 27 01 00 00")), Optional.empty());
        Profile undescribed = serial().good("41", Map.of(), Map.of("serial-number", "A"), Set.of(), described)
                .profile();
        assertThat(ProfileProof.of(undescribed).faults().get(0).message())
                .contains("the message does not honour the descriptor that the example gives");
    }
}
