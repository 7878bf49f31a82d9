package settlemark.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static settlemark.profile.ReadProfiles.field;
import static settlemark.profile.ReadProfiles.read;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.measure.SampleStatus;

/** Every framing, checksum and number of the language arrives in the model. */
final class FrameLanguageTest {
    private static final Wire.Order LITTLE = Wire.Order.LITTLE;

    private static Message message(String framing, String checksum, String number) {
        return read("""
                language: 1
                id: x
                name: X
                framing: {%s}
                %s
                fields:
                  - {name: x, at: 2, %s}
                channels: [{id: x, field: x, unit: "%%"}]
                examples: [{hex: "01", gives: {x: 1}}]
                """.formatted(framing, checksum, number)).messages().get(0);
    }

    static Stream<Arguments> framings() {
        return Stream.of(
                Arguments.of(
                        "marks: {start: \"02\", end: \"03 04\", maximum-bytes: 64}",
                        new Framing.Marked(ByteText.ofHex("02"), ByteText.ofHex("03 04"), new Framing.Plain(), 64)),
                Arguments.of(
                        "marks: {start: \"7E\", end: \"7E\", escape: {byte: \"7D\", xor: \"20\"}, maximum-bytes: 64}",
                        new Framing.Marked(
                                ByteText.ofHex("7E"),
                                ByteText.ofHex("7E"),
                                new Framing.Flipped((byte) 0x7D, (byte) 0x20),
                                64)),
                Arguments.of(
                        "marks: {end: \"C0\", escape: {byte: \"DB\", codes: {\"DC\": \"C0\", \"DD\": \"DB\"}}, maximum-bytes: 64}",
                        Framing.Marked.slip(64)),
                Arguments.of(
                        "marks: {end: \"0A\", escape: {byte: \"5C\", codes: {\"6E\": \"0A\", \"5C\": \"5C\"}}, maximum-bytes: 64}",
                        new Framing.Marked(
                                ByteText.EMPTY,
                                ByteText.ofHex("0A"),
                                new Framing.Stuffed(
                                        (byte) 0x5C, List.of((byte) 0x6E, (byte) 0x5C), List.of((byte) 0x0A, (byte)
                                                0x5C)),
                                64)),
                Arguments.of("slip: {maximum-bytes: 256}", Framing.Marked.slip(256)),
                Arguments.of("cobs: {maximum-bytes: 256}", new Framing.Cobs(256)),
                Arguments.of("idle-gap: {milliseconds: 2.5, maximum-bytes: 64}", new Framing.IdleGap(2_500_000, 64)),
                Arguments.of(
                        "length-field: {at: 0, type: uint16, byte-order: big, adds: -1, maximum-bytes: 64}",
                        new Framing.LengthField(
                                ByteText.EMPTY, 0, new Wire(Wire.Kind.UNSIGNED, 2, Wire.Order.BIG), -1, 64)),
                Arguments.of("fixed: {length-bytes: 10}", new Framing.Fixed(ByteText.EMPTY, 10)));
    }

    @ParameterizedTest
    @MethodSource
    void framings(String yaml, Framing expected) {
        assertThat(message(yaml, "checksum: {xor: {width: 8}}", "type: uint8").framing())
                .isEqualTo(expected);
    }

    static Stream<Arguments> checksums() {
        return Stream.of(
                Arguments.of("{xor: {width: 8}}", checksum(new Checksum.Xor(), LITTLE, 0, false, "")),
                Arguments.of("{lrc: {width: 8}}", checksum(new Checksum.Sum(8, true), LITTLE, 0, false, "")),
                Arguments.of(
                        "{sum: {width: 16}, byte-order: big, followed-by: 2}",
                        checksum(new Checksum.Sum(16, false), Wire.Order.BIG, 2, false, "")),
                Arguments.of(
                        "{crc: {width: 5, poly: 5, init: 0x1F, refin: true, refout: true, xorout: 0x1F, check: 0x19},"
                                + " written: hex, lead-in: \"*\"}",
                        checksum(new Checksum.Crc(5, 5, 0x1F, true, true, 0x1F), LITTLE, 0, true, "2A")));
    }

    private static Checksum checksum(
            Checksum.Algorithm algorithm, Wire.Order order, int followedBy, boolean hex, String leadIn) {
        return new Checksum(algorithm, order, 1, followedBy, hex, ByteText.ofHex(leadIn), 5);
    }

    /** The check value of five bits is that of CRC-5/USB in G. Cook's catalogue, from memory. */
    @ParameterizedTest
    @MethodSource
    void checksums(String yaml, Checksum expected) {
        String with = yaml.substring(0, yaml.length() - 1) + ", covers-from: 1}";
        Checksum read = message("fixed: {length-bytes: 10}", "checksum: " + with, "type: uint8")
                .checksum()
                .orElseThrow();
        assertThat(read).isEqualTo(expected);
        int own = (expected.algorithm().width() + 7) / 8 * (expected.hex() ? 2 : 1);
        assertThat(read.bytes()).isEqualTo(own);
        assertThat(read.bytesAtEnd())
                .isEqualTo(own + expected.followedBy() + expected.leadIn().length());
    }

    private static Field.Binary number(Wire.Kind kind, int bytes, Wire.Order order) {
        return number(kind, bytes, order, null, -1, Map.of());
    }

    private static Field.Binary number(
            Wire.Kind kind,
            int bytes,
            Wire.Order order,
            Field.@Nullable Bits bits,
            long mask,
            Map<SampleStatus, List<Long>> specials) {
        Curve raw = new Curve.Linear(1, 0);
        return new Field.Binary(new Wire(kind, bytes, order), Optional.ofNullable(bits), mask, raw, specials, false);
    }

    private static Map<SampleStatus, List<Long>> fault(Long... raws) {
        return Map.of(SampleStatus.FAULT, List.of(raws));
    }

    static Stream<Arguments> numbers() {
        return Stream.of(
                Arguments.of("type: int8", number(Wire.Kind.SIGNED, 1, LITTLE)),
                Arguments.of("type: uint64, byte-order: big", number(Wire.Kind.UNSIGNED, 8, Wire.Order.BIG)),
                Arguments.of(
                        "type: int48, byte-order: big, word-order: little",
                        number(Wire.Kind.SIGNED, 6, Wire.Order.BIG_WORDS_SWAPPED)),
                Arguments.of(
                        "type: uint32, byte-order: little, word-order: big",
                        number(Wire.Kind.UNSIGNED, 4, Wire.Order.LITTLE_WORDS_SWAPPED)),
                Arguments.of(
                        "type: uint32, byte-order: big, word-order: big",
                        number(Wire.Kind.UNSIGNED, 4, Wire.Order.BIG)),
                Arguments.of("type: uint32, word-order: little", number(Wire.Kind.UNSIGNED, 4, LITTLE)),
                Arguments.of(
                        "type: uint12", number(Wire.Kind.UNSIGNED, 2, LITTLE, new Field.Bits(0, 12), -1, Map.of())),
                Arguments.of(
                        "type: int4, bit: 4", number(Wire.Kind.SIGNED, 1, LITTLE, new Field.Bits(4, 4), -1, Map.of())),
                Arguments.of(
                        "type: uint8, bit: 8",
                        number(Wire.Kind.UNSIGNED, 2, LITTLE, new Field.Bits(8, 8), -1, Map.of())),
                Arguments.of(
                        "type: uint1, bit: 63",
                        number(Wire.Kind.UNSIGNED, 8, LITTLE, new Field.Bits(63, 1), -1, Map.of())),
                Arguments.of(
                        "type: uint16, mask: 0xFFFF", number(Wire.Kind.UNSIGNED, 2, LITTLE, null, 0xFFFF, Map.of())),
                Arguments.of("type: bcd24", number(Wire.Kind.BCD, 3, LITTLE)),
                Arguments.of(
                        "type: bcd16, special: {fault: [0, 9999, \"FfA0\"]}",
                        number(Wire.Kind.BCD, 2, LITTLE, null, -1, fault(0L, 0x9999L, 0xFFA0L))),
                Arguments.of("type: float64", number(Wire.Kind.IEEE_FLOAT, 8, LITTLE)),
                Arguments.of("type: medfloat16", number(Wire.Kind.MEDICAL_FLOAT, 2, LITTLE)),
                Arguments.of(
                        "type: medfloat32, special: {fault: 0x007FFFFF}",
                        number(Wire.Kind.MEDICAL_FLOAT, 4, LITTLE, null, -1, fault(0x7FFFFFL))),
                Arguments.of(
                        "type: int12, special: {fault: [0x800, -2048, 0x7FF]}",
                        number(Wire.Kind.SIGNED, 2, LITTLE, new Field.Bits(0, 12), -1, fault(-2048L, -2048L, 2047L))),
                Arguments.of(
                        "type: uint64, special: {fault: 0xFFFFFFFFFFFFFFFF}",
                        number(Wire.Kind.UNSIGNED, 8, LITTLE, null, -1, fault(-1L))),
                Arguments.of(
                        "type: int64, special: {fault: 0x8000000000000000}",
                        number(Wire.Kind.SIGNED, 8, LITTLE, null, -1, fault(Long.MIN_VALUE))));
    }

    @ParameterizedTest
    @MethodSource
    void numbers(String yaml, Field.Binary expected) {
        Message message = message("fixed: {start: \"AA\", length-bytes: 30}", "", yaml);
        assertThat(field(message, "x")).isEqualTo(expected);
    }

    /** Half precision by IEEE 754-2019, table 3.5: 11 bits, largest number 65504, smallest step 2^-24. */
    static Stream<Arguments> rounded() {
        return Stream.of(
                Arguments.of("float16", "1", 1.0),
                Arguments.of("float16", "0", 0.0),
                Arguments.of("float16", "-0.1", -0.0999755859375),
                Arguments.of("float16", "65504", 65504.0),
                Arguments.of("float16", "65519", 65504.0),
                Arguments.of("float16", "65520", Double.POSITIVE_INFINITY),
                Arguments.of("float16", "-1e9", Double.NEGATIVE_INFINITY),
                Arguments.of("float16", "2049", 2048.0),
                Arguments.of("float16", "3e-8", 0x1p-24),
                Arguments.of("float16", "6.1e-5", 0x1.ff8p-15),
                Arguments.of("float16", "\"inf\"", Double.POSITIVE_INFINITY),
                Arguments.of("float32", "0.1", (double) 0.1f),
                Arguments.of("float64", "0.1", 0.1),
                Arguments.of("float64", "\"nan\"", Double.NaN),
                Arguments.of("float64", "\"-inf\"", Double.NEGATIVE_INFINITY));
    }

    @ParameterizedTest
    @MethodSource
    void rounded(String type, String written, double expected) {
        Message message = message(
                "fixed: {start: \"AA\", length-bytes: 30}",
                "",
                "type: " + type + ", special: {fault: " + written + "}");
        assertThat(((Field.Binary) field(message, "x")).specials()).isEqualTo(fault(Double.doubleToLongBits(expected)));
    }
}
