package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The model refuses what cannot be, at both sides of each bound. */
final class ModelTest {
    private static final ByteText ONE = ByteText.ofHex("01");
    private static final ByteText FOUR = ByteText.ofHex("01 02 03 04");
    private static final Wire BYTE = new Wire(Wire.Kind.UNSIGNED, 1, Wire.Order.LITTLE);
    private static final Poll POLL = new Poll(1, 1, 0);
    private static final Curve RAW = Curve.IDENTITY;
    private static final SerialLine LINE =
            new SerialLine(9600, 8, SerialLine.Parity.NONE, SerialLine.StopBits.ONE, SerialLine.Flow.NONE);

    private static Arguments bad(String words, ThrowingCallable making) {
        return Arguments.of(words, making);
    }

    static Stream<Arguments> frames() {
        return Stream.of(
                bad("a line needs an end", () -> new Framing.Line(ByteText.EMPTY, 9)),
                bad("a line needs an end", () -> new Framing.Line(FOUR, 4)),
                bad("1 to 65536 bytes, got 0", () -> new Framing.Fixed(ONE, 0)),
                bad("1 to 65536 bytes, got 65537", () -> new Framing.Cobs(65537)),
                bad("1 to 65536 bytes, got 0", () -> new Framing.Packet(0)),
                bad("a length field stands", () -> new Framing.LengthField(ONE, 0, BYTE, 0, 9)),
                bad(
                        "a length field stands",
                        () -> new Framing.LengthField(ONE, 1, new Wire(Wire.Kind.SIGNED, 1, Wire.Order.LITTLE), 0, 9)),
                bad(
                        "a length field stands",
                        () -> new Framing.LengthField(
                                ONE, 1, new Wire(Wire.Kind.UNSIGNED, 5, Wire.Order.LITTLE), 0, 9)),
                bad("need an end", () -> new Framing.Marked(ONE, ByteText.EMPTY, new Framing.Plain(), 9)),
                bad("need an end", () -> new Framing.Marked(ONE, FOUR, new Framing.Plain(), 5)),
                bad("each code stands", () -> new Framing.Stuffed((byte) 1, List.of(), List.of())),
                bad("each code stands", () -> new Framing.Stuffed((byte) 1, List.of((byte) 2), List.of())),
                bad("changes nothing", () -> new Framing.Flipped((byte) 1, (byte) 0)),
                bad("shorter than 1 ms", () -> new Framing.IdleGap(999_999, 9)),
                bad("ASCII separator", () -> new Framing.Columns((char) 0x7F, 0)),
                bad("ASCII separator", () -> new Framing.Columns(',', -1)),
                bad(
                        "got -1",
                        () -> new Checksum(new Checksum.Xor(), Wire.Order.LITTLE, -1, 0, false, ByteText.EMPTY, 1)),
                bad(
                        "a checksum covers",
                        () -> new Checksum(new Checksum.Xor(), Wire.Order.LITTLE, 0, -1, false, ByteText.EMPTY, 1)),
                bad("got 2", () -> new Checksum.Crc(2, 1, 0, false, false, 0)),
                bad("got 65", () -> new Checksum.Crc(65, 1, 0, false, false, 0)),
                bad("got 12", () -> new Checksum.Sum(12, false)),
                bad("a tag is", () -> new Tagged(-1, BYTE, Optional.empty(), Map.of())),
                bad(
                        "a tag is",
                        () -> new Tagged(0, new Wire(Wire.Kind.BCD, 1, Wire.Order.LITTLE), Optional.empty(), Map.of())),
                bad(
                        "a tag is",
                        () -> new Tagged(
                                0, new Wire(Wire.Kind.UNSIGNED, 5, Wire.Order.LITTLE), Optional.empty(), Map.of())));
    }

    static Stream<Arguments> numbers() {
        return Stream.of(
                bad("got 0", () -> new Wire(Wire.Kind.SIGNED, 0, Wire.Order.LITTLE)),
                bad("got 9", () -> new Wire(Wire.Kind.SIGNED, 9, Wire.Order.LITTLE)),
                bad("got 3", () -> new Wire(Wire.Kind.IEEE_FLOAT, 3, Wire.Order.LITTLE)),
                bad("got 8", () -> new Wire(Wire.Kind.MEDICAL_FLOAT, 8, Wire.Order.LITTLE)),
                bad("whole words", () -> new Wire(Wire.Kind.SIGNED, 3, Wire.Order.BIG_WORDS_SWAPPED)),
                bad("whole words", () -> new Wire(Wire.Kind.SIGNED, 5, Wire.Order.LITTLE_WORDS_SWAPPED)),
                bad("got 1 from -1", () -> new Field.Bits(-1, 1)),
                bad("got 0 from 1", () -> new Field.Bits(1, 0)),
                bad("got 64 from 1", () -> new Field.Bits(1, 64)),
                bad("an integer of 1 bytes", () -> binary(BYTE, new Field.Bits(1, 8))),
                bad(
                        "an integer of 4 bytes",
                        () -> binary(new Wire(Wire.Kind.IEEE_FLOAT, 4, Wire.Order.LITTLE), new Field.Bits(0, 1))),
                bad("got 0.0", () -> new Curve.Linear(0, 1)),
                bad("got NaN", () -> new Curve.Linear(Double.NaN, 1)),
                bad("got 1.0", () -> new Curve.Linear(1, Double.POSITIVE_INFINITY)),
                bad("2 to 10", () -> new Curve.Polynomial(List.of(1.0))),
                bad("2 to 10", () -> new Curve.Polynomial(java.util.Collections.nCopies(11, 1.0))),
                bad("2 to 10", () -> new Curve.Polynomial(List.of(1.0, Double.NaN))),
                bad("2 to 1000", () -> new Curve.Table(List.of(1.0), List.of(1.0))),
                bad("2 to 1000", () -> new Curve.Table(List.of(1.0, 2.0), List.of(1.0))),
                bad("2 to 1000", () -> new Curve.Table(List.of(1.0, 1.0), List.of(1.0, 2.0))),
                bad("2 to 1000", () -> new Curve.Table(rising(1001), rising(1001))),
                bad("2 to 1000", () -> new Curve.Table(List.of(1.0, Double.POSITIVE_INFINITY), List.of(1.0, 2.0))),
                bad("rise or fall", () -> new Curve.Table(List.of(1.0, 2.0), List.of(1.0, 1.0))));
    }

    static Stream<Arguments> exchanges() {
        UUID uuid = new UUID(1, 2);
        return Stream.of(
                bad("got 0.0 s", () -> new Poll(0, 1, 0)),
                bad("0.0 s, 0 retries", () -> new Poll(1, 0, 0)),
                bad("-1 retries", () -> new Poll(1, 1, -1)),
                bad("one byte at least", () -> new Source.Answer(ByteText.EMPTY, POLL)),
                bad("got 2", () -> new Source.Registers(2, 0, 1, POLL)),
                bad("got 1 from -1", () -> new Source.Registers(3, -1, 1, POLL)),
                bad("got 0 from 0", () -> new Source.Registers(3, 0, 0, POLL)),
                bad("got 126 from 0", () -> new Source.Registers(3, 0, 126, POLL)),
                bad("got 2 from 65535", () -> new Source.Registers(3, 65535, 2, POLL)),
                bad("1 to 123 registers", () -> new Step.SetRegisters(0, List.of())),
                bad("1 to 123 registers", () -> new Step.SetRegisters(0, java.util.Collections.nCopies(124, 1))),
                bad("1 to 123 registers", () -> new Step.SetRegisters(-1, List.of(1))),
                bad("1 to 123 registers", () -> new Step.SetRegisters(65535, List.of(1, 2))),
                bad("a step needs", () -> new Step(Optional.empty(), Optional.empty(), 0, 0, 0, 1)),
                bad("a step needs", () -> new Step(Optional.empty(), Optional.empty(), 1, -1, 0, 1)),
                bad("a step needs", () -> new Step(Optional.empty(), Optional.empty(), 1, 0, -1, 1)),
                bad("one step at least", () -> new Action("a", "A", "", List.of(), 1)),
                bad("got 0", () -> new Link.ModbusRtu(LINE, 0)),
                bad("got 248", () -> new Link.ModbusRtu(LINE, 248)),
                bad("got 49", () -> line(49, 8)),
                bad("got 4000001", () -> line(4_000_001, 8)),
                bad("got 4", () -> line(50, 4)),
                bad("got 9", () -> line(50, 9)),
                bad("got 4", () -> new Secrets(FOUR, ByteText.EMPTY)),
                bad("got 1", () -> new Secrets(ByteText.EMPTY, ONE)),
                bad(
                        "one of the two",
                        () -> new Example(
                                "x",
                                0,
                                ONE,
                                Map.of(),
                                Map.of(),
                                Set.of(uuid.toString()),
                                "",
                                Example.Circumstances.NONE,
                                1,
                                1)));
    }

    @ParameterizedTest(name = "{0} {index}")
    @MethodSource({"frames", "numbers", "exchanges"})
    void refuses(String words, ThrowingCallable making) {
        assertThatIllegalArgumentException().isThrownBy(making).withMessageContaining(words);
    }

    @Test
    void boundsThemselvesAreTaken() {
        assertThat(new Framing.Line(FOUR, 5).maximumBytes()).isEqualTo(5);
        assertThat(new Framing.Cobs(65536).maximumBytes()).isEqualTo(65536);
        assertThat(new Framing.LengthField(ONE, 1, new Wire(Wire.Kind.UNSIGNED, 4, Wire.Order.BIG), 0, 9).headerBytes())
                .isEqualTo(5);
        assertThat(new Framing.Marked(ONE, FOUR, new Framing.Plain(), 6).maximumBytes())
                .isEqualTo(6);
        assertThat(new Framing.IdleGap(1_000_000, 1).maximumBytes()).isEqualTo(1);
        assertThat(new Framing.Columns('~', 0).count()).isZero();
        assertThat(new Checksum.Crc(3, 1, 0, false, false, 0).width()).isEqualTo(3);
        assertThat(new Checksum.Crc(64, 1, 0, false, false, 0).width()).isEqualTo(64);
        assertThat(new Field.Bits(63, 1).end()).isEqualTo(64);
        assertThat(binary(BYTE, new Field.Bits(1, 7)).bits()).isPresent();
        assertThat(new Curve.Polynomial(java.util.Collections.nCopies(10, 1.0)).coefficients())
                .hasSize(10);
        assertThat(new Curve.Table(rising(1000), rising(1000)).raws()).hasSize(1000);
        assertThat(new Source.Registers(4, 65411, 125, POLL).answerBytes()).isEqualTo(255);
        assertThat(new Step.SetRegisters(65413, java.util.Collections.nCopies(123, 1)).words())
                .hasSize(123);
        assertThat(new Link.ModbusRtu(LINE, 247).unit()).isEqualTo(247);
        assertThat(new Link.ModbusRtu(LINE, 1).unit()).isEqualTo(1);
        assertThat(line(50, 5).baud()).isEqualTo(50);
        assertThat(line(4_000_000, 8).dataBits()).isEqualTo(8);
        assertThat(new Poll(Double.NaN, 1, 0).isOnce()).isTrue();
        assertThat(POLL.isOnce()).isFalse();
    }

    @Test
    void secretsDoNotShowThemselves() {
        ByteText key = ByteText.ofHex("231d39c1d7cc1ab1aee224cd096db932");
        assertThat(new Secrets(ByteText.ofHex("5448E68F80A5"), key)).hasToString("Secrets[address known, key known]");
        assertThat(Secrets.NONE).hasToString("Secrets[address unknown, key unknown]");
    }

    @Test
    void bytesCompareByContent() {
        assertThat(ByteText.ofHex("01 ff"))
                .isEqualTo(ByteText.of(new byte[] {1, -1}))
                .hasToString("01 FF");
        assertThat(ONE).isNotEqualTo(FOUR).isNotEqualTo("01").hasSameHashCodeAs(ByteText.ofHex("01"));
        assertThat(FOUR.at(2)).isEqualTo((byte) 3);
    }

    @Test
    void descriptorsThatAreHonouredAreInputsAfterTheMessages() {
        Profile profile = ReadProfiles.read("""
                language: 1
                id: x
                name: X
                link: {ble: connected}
                messages:
                  - id: a
                    characteristic: {uuid: "2A6D", by: notify, measurement: true}
                    fields: [{name: a, at: 0, type: uint8}]
                  - id: b
                    service-data: "FCD2"
                    fields: [{name: b, at: 0, type: uint8}]
                  - id: c
                    characteristic: {uuid: "2A6E", by: notify, presentation-format: true, measurement: true}
                    fields: [{name: c, at: 0, type: uint8}]
                channels: [{id: a, field: a, unit: Pa}]
                examples: [{hex: "01", gives: {a: 1}}]
                """);
        assertThat(profile.inputs())
                .containsExactly(
                        new Input(Input.Kind.FRAMES, 0),
                        new Input(Input.Kind.FRAMES, 1),
                        new Input(Input.Kind.FRAMES, 2),
                        new Input(Input.Kind.MEASUREMENT, 0),
                        new Input(Input.Kind.PRESENTATION, 2),
                        new Input(Input.Kind.MEASUREMENT, 2));
        assertThat(profile.serial()).isEmpty();
        assertThat(profile.field(new FieldRef(2, 0)).name()).isEqualTo("c");
        assertThat(profile.channelIndex("a")).contains(0);
        assertThat(profile.channelIndex("b")).isEmpty();
    }

    @Test
    void aReadingIsAProfileOrHasErrors() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new ProfileReading(Optional.empty(), List.of()))
                .withMessageContaining("a profile has no errors");
    }

    @Test
    void aChannelHasFieldsOfOneMessageAndASign() {
        ChannelSource good = ReadProfiles.read("""
                language: 1
                id: x
                name: X
                framing: {line: {end: "#", maximum-bytes: 9}}
                fields: [{name: x, pattern: "(.)", type: text}]
                channels: [{id: x, field: x, unit: Pa, sign: -1}]
                examples: [{text: "1#", gives: {x: 1}}]
                """).sources().get(0);
        assertThat(good.sign()).isEqualTo(-1);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new ChannelSource(good.channel(), List.of(), 1, 1))
                .withMessageContaining("all of one message");
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> new ChannelSource(good.channel(), List.of(new FieldRef(0, 0), new FieldRef(1, 0)), 1, 1))
                .withMessageContaining("all of one message");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new ChannelSource(good.channel(), good.fields(), 2, 1))
                .withMessageContaining("got 2");
    }

    private static Field.Binary binary(Wire wire, Field.Bits bits) {
        return new Field.Binary(wire, Optional.of(bits), -1L, RAW, Map.of(), false);
    }

    private static SerialLine line(int baud, int dataBits) {
        return new SerialLine(baud, dataBits, SerialLine.Parity.NONE, SerialLine.StopBits.ONE, SerialLine.Flow.NONE);
    }

    private static List<Double> rising(int count) {
        return Stream.iterate(1.0, x -> x + 1).limit(count).toList();
    }
}
