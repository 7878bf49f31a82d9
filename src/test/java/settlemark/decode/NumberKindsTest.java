package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.measure.SampleStatus;
import settlemark.profile.Curve;
import settlemark.profile.Field;
import settlemark.profile.Wire;

/** Every way in which a number travels, against published values, and back. */
final class NumberKindsTest {
    private static final SampleStatus OK = SampleStatus.OK;

    private static double decoded(Field.Binary field, String hex) {
        FrameValues out = new FrameValues(1, 0);
        new BinaryNumber(field, 1).read(Made.hex(hex), 0, 0, out);
        assertThat(out.statuses[0]).as(hex).isEqualTo(OK);
        return out.values[0];
    }

    private static SampleStatus status(Field.Binary field, String hex, int sign) {
        FrameValues out = new FrameValues(1, 0);
        new BinaryNumber(field, sign).read(Made.hex(hex), 0, 0, out);
        assertThat(out.values[0]).isNaN();
        SampleStatus status = out.statuses[0];
        assertThat(status).isNotNull();
        return status == null ? OK : status;
    }

    private static byte[] written(Field.Binary field, double value) {
        byte[] bytes = new byte[field.wire().bytes()];
        BinaryCodes.write(new BinaryNumber(field, 1), value, bytes, 0);
        return bytes;
    }

    private static void bothWays(Field.Binary field, String hex, double value) {
        assertThat(decoded(field, hex)).isEqualTo(value);
        assertThat(written(field, value)).isEqualTo(Made.hex(hex));
    }

    /**
     * 123456.0 is 47 F1 20 00 in IEEE 754 single precision. Source: the common example of articles on Modbus registers,
     * from memory; the four orders by definition.
     */
    @ParameterizedTest
    @CsvSource({
        "BIG, 47 F1 20 00",
        "BIG_WORDS_SWAPPED, 20 00 47 F1",
        "LITTLE_WORDS_SWAPPED, F1 47 00 20",
        "LITTLE, 00 20 F1 47"
    })
    void aSinglePrecisionNumberInFourOrders(Wire.Order order, String hex) {
        bothWays(Made.number(new Wire(Wire.Kind.IEEE_FLOAT, 4, order)), hex, 123456);
    }

    /** 0x0102030405060708 in all orders of bytes and words: by definition. */
    @ParameterizedTest
    @CsvSource({
        "BIG, 01 02 03 04 05 06 07 08",
        "BIG_WORDS_SWAPPED, 07 08 05 06 03 04 01 02",
        "LITTLE_WORDS_SWAPPED, 02 01 04 03 06 05 08 07",
        "LITTLE, 08 07 06 05 04 03 02 01"
    })
    void eightBytesInFourOrders(Wire.Order order, String hex) {
        Wire wire = new Wire(Wire.Kind.SIGNED, 8, order);
        assertThat(new BinaryNumber(Made.number(wire), 1).raw(Made.hex(hex), 0)).isEqualTo(0x0102030405060708L);
        byte[] bytes = new byte[8];
        RawBits.writeBits(0x0102030405060708L, bytes, 0, wire);
        assertThat(bytes).isEqualTo(Made.hex(hex));
    }

    /** Half precision. Source: the table of examples in the public encyclopedia article on binary16, from memory. */
    @ParameterizedTest
    @CsvSource({
        "0001, 5.9604644775390625e-8",
        "03FF, 6.097555160522461e-5",
        "0400, 6.103515625e-5",
        "3555, 0.333251953125",
        "3BFF, 0.99951171875",
        "3C00, 1",
        "3C01, 1.0009765625",
        "7BFF, 65504",
        "C000, -2"
    })
    void halfPrecisionNumbers(String hex, double value) {
        bothWays(Made.number(new Wire(Wire.Kind.IEEE_FLOAT, 2, Wire.Order.BIG)), hex, value);
    }

    @Test
    void everyHalfPrecisionNumberComesBack() {
        for (int bits = 0; bits < 0x10000; bits++) {
            double value = HalfPrecision.value(bits);
            long back = HalfPrecision.bits(value);
            if (Double.isNaN(value)) {
                assertThat(HalfPrecision.value(back)).isNaN();
            } else {
                assertThat(back).isEqualTo(bits);
            }
        }
        assertThat(HalfPrecision.bits(65519.9)).isEqualTo(0x7BFF);
        assertThat(HalfPrecision.bits(65520)).isEqualTo(0x7C00);
        assertThat(HalfPrecision.bits(1e300)).isEqualTo(0x7C00);
        // Halfway between 1 and 1.0009765625: to the even one.
        assertThat(HalfPrecision.bits(1.00048828125)).isEqualTo(0x3C00);
        assertThat(HalfPrecision.bits(2.9e-8)).isZero();
    }

    /**
     * IEEE 11073 FLOAT, low byte first. Source: a question-and-answer page that quotes the IEEE 11073 table (36.4, 34.79,
     * 36.97), recomputed as mantissa and exponent.
     */
    @ParameterizedTest
    @CsvSource({"6C 01 00 FF, 36.4", "97 0D 00 FE, 34.79", "71 0E 00 FE, 36.97"})
    void medicalNumbers(String hex, double value) {
        bothWays(Made.number(Made.wire(Wire.Kind.MEDICAL_FLOAT, 4)), hex, value);
    }

    /** IEEE 11073 SFLOAT: mantissa times a power of ten, by definition. */
    @ParameterizedTest
    @CsvSource({"72 F0, 11.4", "8E FF, -11.4", "FD 77, 20450000000", "03 78, -20450000000", "01 80, 1e-8", "00 00, 0"})
    void shortMedicalNumbers(String hex, double value) {
        bothWays(Made.number(Made.wire(Wire.Kind.MEDICAL_FLOAT, 2)), hex, value);
    }

    /** The special mantissas of ISO/IEEE 11073-20601, from memory. */
    @ParameterizedTest
    @CsvSource({
        "FF 07, FF FF 7F 00, FAULT, FAULT",
        "00 08, 00 00 80 00, FAULT, FAULT",
        "01 08, 01 00 80 00, FAULT, FAULT",
        "FE 07, FE FF 7F 00, OVER_RANGE, UNDER_RANGE",
        "02 08, 02 00 80 00, UNDER_RANGE, OVER_RANGE"
    })
    void medicalNumbersThatAreNone(String shorter, String longer, SampleStatus status, SampleStatus reversed) {
        Field.Binary two = Made.number(Made.wire(Wire.Kind.MEDICAL_FLOAT, 2));
        Field.Binary four = Made.number(Made.wire(Wire.Kind.MEDICAL_FLOAT, 4));
        assertThat(status(two, shorter, 1)).isEqualTo(status);
        assertThat(status(four, longer, 1)).isEqualTo(status);
        assertThat(status(two, shorter, -1)).isEqualTo(reversed);
        for (SampleStatus each : List.of(status, reversed)) {
            assertThat(new BinaryNumber(four, 1).says(each)).isTrue();
            byte[] code = new byte[4];
            BinaryNumber number = new BinaryNumber(four, -1);
            BinaryCodes.writeRaw(number, BinaryCodes.of(number, each).orElseThrow(), code, 0);
            assertThat(number.statusOf(number.raw(code, 0))).isEqualTo(each);
        }
    }

    @Test
    void everyShortMedicalNumberComesBackAsTheSameNumber() {
        MedicalFloat medical = MedicalFloat.of(2);
        for (int bits = 0; bits < 0x10000; bits++) {
            double value = medical.value(bits);
            if (Double.isFinite(value)) {
                assertThat(medical.value(medical.bits(value))).isEqualTo(value);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"2046, 2050", "123456, 123500", "-2.0461, -2.05", "1e-12, 0", "3.14159265, 3.14"})
    void aMedicalNumberIsRoundedToItsDigits(double value, double rounded) {
        MedicalFloat medical = MedicalFloat.of(2);
        double back = medical.value(medical.bits(value));
        assertThat(back).isCloseTo(rounded, within(Math.abs(value) * 0.003 + 1e-9));
        assertThat(Math.abs(back - value)).isLessThanOrEqualTo(Math.abs(value) / 400 + 1e-8);
    }

    @Test
    void aMedicalNumberThatIsTooLargeIsInfinite() {
        assertThat(MedicalFloat.of(2).bits(2.1e11)).isEqualTo(0x07FE);
        assertThat(MedicalFloat.of(2).bits(-2.1e11)).isEqualTo(0x0802);
        assertThat(MedicalFloat.of(4).bits(1e200)).isEqualTo(0x007FFFFE);
        // A power of ten above 10^22 is no exact double.
        assertThat(MedicalFloat.of(4).value(0x7F7FFFFDL)).isCloseTo(8388605e127, within(1e119));
        assertThat(MedicalFloat.of(4).value(0x80000001L)).isCloseTo(1e-128, within(1e-143));
    }

    /** Packed decimal digits: by definition. */
    @ParameterizedTest
    @CsvSource({
        "1, BIG, 99, 99",
        "2, BIG, 12 34, 1234",
        "2, LITTLE, 34 12, 1234",
        "4, BIG_WORDS_SWAPPED, 56 78 12 34, 12345678",
        "8, BIG, 99 99 99 99 99 99 99 99, 9999999999999999"
    })
    void packedDecimals(int bytes, Wire.Order order, String hex, double value) {
        bothWays(Made.number(new Wire(Wire.Kind.BCD, bytes, order)), hex, value);
    }

    @Test
    void aPackedDigitAboveNineIsAFault() {
        Field.Binary two = Made.number(new Wire(Wire.Kind.BCD, 2, Wire.Order.BIG));
        for (String hex : List.of("0A00", "000A", "A000", "00F0", "FFFF")) {
            assertThat(status(two, hex, 1)).isEqualTo(SampleStatus.FAULT);
        }
        BinaryNumber number = new BinaryNumber(two, 1);
        assertThat(BinaryCodes.of(number, SampleStatus.FAULT)).hasValue(0xFFFF);
        assertThat(number.says(SampleStatus.OVER_RANGE)).isFalse();
        assertThat(written(two, 123456)).isEqualTo(Made.hex("9999"));
        assertThat(written(two, -1)).isEqualTo(Made.hex("0000"));
        assertThat(PackedDecimal.most(6)).isEqualTo(39);
    }

    /** Every number of bits at every place of its integer comes back, and its neighbours are left alone. */
    @Test
    void anyBitsOfAnyInteger() {
        long seed = System.nanoTime();
        System.out.println("NumberKindsTest seed " + seed);
        Random random = new Random(seed);
        for (int i = 0; i < 20_000; i++) {
            int bytes = 1 + random.nextInt(8);
            int count = 1 + random.nextInt(8 * bytes);
            int from = random.nextInt(8 * bytes - count + 1);
            boolean signed = random.nextBoolean();
            Wire.Order order = random.nextBoolean() ? Wire.Order.LITTLE : Wire.Order.BIG;
            Wire wire = new Wire(signed ? Wire.Kind.SIGNED : Wire.Kind.UNSIGNED, bytes, order);
            BinaryNumber number = new BinaryNumber(Made.bits(wire, from, count), 1);
            byte[] before = new byte[bytes];
            random.nextBytes(before);
            byte[] after = before.clone();
            long raw = signed ? random.nextLong() >> 64 - count : random.nextLong() >>> 64 - count;
            BinaryCodes.writeRaw(number, raw, after, 0);
            assertThat(number.raw(after, 0)).as("seed %d", seed).isEqualTo(raw);
            BinaryCodes.writeRaw(number, number.raw(before, 0), after, 0);
            assertThat(after).as("seed %d", seed).isEqualTo(before);
        }
    }

    @Test
    void bitsAreValuesOfTheirOwn() {
        // 0xB5 = 10110101: bits 2 to 4 are 101, signed -3.
        bothWays(Made.bits(Made.U8, 2, 3), "14", 5);
        assertThat(decoded(Made.bits(Made.U8, 2, 3), "B5")).isEqualTo(5);
        assertThat(decoded(Made.bits(Made.wire(Wire.Kind.SIGNED, 1), 2, 3), "B5"))
                .isEqualTo(-3);
        assertThat(decoded(Made.bits(new Wire(Wire.Kind.UNSIGNED, 3, Wire.Order.BIG), 4, 12), "12 34 56"))
                .isEqualTo(0x345);
        assertThat(written(Made.bits(Made.U8, 2, 3), 99)).isEqualTo(Made.hex("1C"));
        assertThat(written(Made.bits(Made.wire(Wire.Kind.SIGNED, 1), 2, 3), -99))
                .isEqualTo(Made.hex("10"));
    }

    @Test
    void aMaskIsAppliedBeforeAnythingElse() {
        Field.Binary masked = new Field.Binary(
                Made.S16,
                Optional.empty(),
                0x0FF0,
                new Curve.Linear(0.5, 0),
                Map.of(SampleStatus.OPEN_CIRCUIT, List.of(0x0FF0L)),
                false);
        assertThat(decoded(masked, "2F F1")).isEqualTo(0x120 / 2.0);
        assertThat(status(masked, "FF FF", 1)).isEqualTo(SampleStatus.OPEN_CIRCUIT);
        byte[] bytes = Made.hex("0F F0");
        BinaryCodes.write(new BinaryNumber(masked, 1), 0x120 / 2.0, bytes, 0);
        assertThat(bytes).isEqualTo(Made.hex("2F F1"));
        // 16 steps of one half lie between two numbers that can be said.
        BinaryCodes.write(new BinaryNumber(masked, 1), 0x123 / 2.0, bytes, 0);
        assertThat(bytes).isEqualTo(Made.hex("2F F1"));
        BinaryCodes.write(new BinaryNumber(masked, 1), 1e9, bytes, 0);
        assertThat(bytes).isEqualTo(Made.hex("EF FF"));
        BinaryCodes.write(new BinaryNumber(masked, 1), -1e9, bytes, 0);
        assertThat(bytes).isEqualTo(Made.hex("0F F0"));
    }

    @Test
    void aFloatThatIsTooLargeIsTheLargest() {
        assertThat(written(Made.number(new Wire(Wire.Kind.IEEE_FLOAT, 4, Wire.Order.BIG)), 1e300))
                .isEqualTo(Made.hex("7F7FFFFF"));
        assertThat(written(Made.number(new Wire(Wire.Kind.IEEE_FLOAT, 2, Wire.Order.BIG)), -1e300))
                .isEqualTo(Made.hex("FBFF"));
        Wire eight = new Wire(Wire.Kind.IEEE_FLOAT, 8, Wire.Order.BIG);
        assertThat(written(Made.scaled(eight, 1e-300), 1e300)).isEqualTo(Made.hex("7FEFFFFFFFFFFFFF"));
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 4, 8})
    void aFloatNeverBecomesASpecialNumber(int bytes) {
        Wire wire = new Wire(Wire.Kind.IEEE_FLOAT, bytes, Wire.Order.BIG);
        for (double taken : new double[] {999, -999}) {
            Field.Binary field = Made.special(wire, SampleStatus.OVER_RANGE, Double.doubleToLongBits(taken));
            byte[] code = written(field, taken);
            assertThat(decoded(field, java.util.HexFormat.of().formatHex(code)))
                    .isCloseTo(taken, within(1.0))
                    .isNotEqualTo(taken);
        }
    }

    @Test
    void anInfiniteFloatIsAFaultAndAFaultIsWrittenAsNone() {
        Field.Binary half = Made.number(new Wire(Wire.Kind.IEEE_FLOAT, 2, Wire.Order.BIG));
        assertThat(status(half, "7C00", 1)).isEqualTo(SampleStatus.FAULT);
        assertThat(status(half, "FC00", 1)).isEqualTo(SampleStatus.FAULT);
        BinaryNumber number = new BinaryNumber(half, 1);
        byte[] code = new byte[2];
        BinaryCodes.writeRaw(number, BinaryCodes.of(number, SampleStatus.FAULT).orElseThrow(), code, 0);
        assertThat(HalfPrecision.value(RawBits.bits(half.wire(), code, 0))).isNaN();
        assertThat(number.says(SampleStatus.NOT_READY)).isFalse();
        // Where NaN has another meaning, infinite is left for a fault.
        BinaryNumber open = new BinaryNumber(
                Made.special(half.wire(), SampleStatus.OPEN_CIRCUIT, Double.doubleToLongBits(Double.NaN)), 1);
        assertThat(BinaryCodes.of(open, SampleStatus.FAULT))
                .hasValue(Double.doubleToLongBits(Double.POSITIVE_INFINITY));
    }

    @Test
    void aScaledNumberBeyondAllDoublesIsOutOfRange() {
        Field.Binary huge = Made.scaled(new Wire(Wire.Kind.IEEE_FLOAT, 8, Wire.Order.BIG), 1e300);
        assertThat(status(huge, "7FE0000000000000", 1)).isEqualTo(SampleStatus.OVER_RANGE);
        assertThat(status(huge, "7FE0000000000000", -1)).isEqualTo(SampleStatus.UNDER_RANGE);
    }

    /** The fast ways to read agree with the general one for every byte. */
    @Test
    void allWaysToReadAgree() {
        long seed = System.nanoTime();
        System.out.println("NumberKindsTest seed " + seed);
        Random random = new Random(seed);
        byte[] bytes = new byte[8];
        for (Wire.Kind kind : List.of(Wire.Kind.SIGNED, Wire.Kind.UNSIGNED, Wire.Kind.IEEE_FLOAT)) {
            for (int count : kind == Wire.Kind.IEEE_FLOAT ? new int[] {4, 8} : new int[] {1, 2, 3, 4, 5, 6, 7, 8}) {
                for (Wire.Order order : List.of(Wire.Order.LITTLE, Wire.Order.BIG)) {
                    random.nextBytes(bytes);
                    Wire wire = new Wire(kind, count, order);
                    long bits = RawBits.bits(wire, bytes, 0);
                    int unused = 64 - 8 * count;
                    long expected = switch (kind) {
                        case SIGNED -> bits << unused >> unused;
                        case UNSIGNED -> bits;
                        default ->
                            Double.doubleToLongBits(
                                    count == 4 ? Float.intBitsToFloat((int) bits) : Double.longBitsToDouble(bits));
                    };
                    assertThat(new BinaryNumber(Made.number(wire), 1).raw(bytes, 0))
                            .as("%s seed %d %s", wire, seed, Arrays.toString(bytes))
                            .isEqualTo(expected);
                }
            }
        }
    }

    @Test
    void rawNumbersAreShownInTheirKind() {
        assertThat(new BinaryNumber(Made.number(Made.S16), 1).shownRaw(Made.hex("FEFF"), 0, 2))
                .isEqualTo("-2");
        assertThat(new BinaryNumber(Made.number(Made.wire(Wire.Kind.UNSIGNED, 8)), 1)
                        .shownRaw(Made.hex("FFFFFFFFFFFFFFFF"), 0, 8))
                .isEqualTo("18446744073709551615");
        assertThat(new BinaryNumber(Made.number(Made.wire(Wire.Kind.BCD, 2)), 1).shownRaw(Made.hex("3A12"), 0, 2))
                .isEqualTo("0x123A");
        assertThat(new BinaryNumber(Made.number(Made.wire(Wire.Kind.MEDICAL_FLOAT, 2)), 1)
                        .shownRaw(Made.hex("72F0"), 0, 2))
                .isEqualTo("0xF072");
        assertThat(new BinaryNumber(Made.number(Made.wire(Wire.Kind.IEEE_FLOAT, 4)), 1)
                        .shownRaw(Made.hex("0000C842"), 0, 4))
                .isEqualTo("100.0");
    }
}
