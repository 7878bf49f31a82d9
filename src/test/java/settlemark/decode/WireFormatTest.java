package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.ByteText;
import settlemark.profile.Checksum;
import settlemark.profile.Profile;
import settlemark.profile.Wire;

/** Numbers and checksums of published encodings. */
final class WireFormatTest {
    private static byte[] hex(String digits) {
        return HexFormat.of().parseHex(digits.replace(" ", ""));
    }

    /**
     * Whole Modbus RTU frames with their CRC-16, low byte first. Source: open test vectors, recomputed; the last row is
     * the appendix example of the Modbus over Serial Line specification, from memory.
     */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "11 03 00 6B 00 03 76 87",
                "11 01 00 13 00 25 0E 84",
                "11 02 00 C4 00 16 BA A9",
                "11 04 00 08 00 01 B2 98",
                "01 03 00 00 00 0A C5 CD",
                "01 03 00 00 00 02 C4 0B",
                "11 03 06 AE 41 56 52 43 40 49 AD",
                "02 07 41 12"
            })
    void modbusFramesEndWithTheirCrc(String frame) {
        Checksum.Crc modbus = new Checksum.Crc(16, 0x8005, 0xFFFF, true, true, 0);
        ChecksumCheck check =
                new ChecksumCheck(new Checksum(modbus, Wire.Order.LITTLE, 0, 0, false, ByteText.EMPTY, 1));
        byte[] bytes = hex(frame);
        assertThat(check.complaint(bytes, 0, bytes.length)).isNull();
        byte[] written = bytes.clone();
        Arrays.fill(written, written.length - 2, written.length, (byte) 0);
        check.write(written, 0, written.length);
        assertThat(written).isEqualTo(bytes);
        bytes[1] ^= 0x10;
        assertThat(check.complaint(bytes, 0, bytes.length)).startsWith("checksum ");
    }

    /** Longitudinal redundancy check of Modbus ASCII: the negated sum. Source: open test vector, recomputed. */
    @Test
    void theNegatedSumIsTheLrcOfModbusAscii() {
        ChecksumCheck check = new ChecksumCheck(
                new Checksum(new Checksum.Sum(8, true), Wire.Order.BIG, 0, 0, false, ByteText.EMPTY, 1));
        byte[] frame = hex("01 03 00 00 00 02 FA");
        assertThat(check.complaint(frame, 0, frame.length)).isNull();
    }

    /**
     * Bluetooth pressure (0x2A6D: unsigned 32 bits, 0.1 Pa) and temperature (0x2A6E: signed 16 bits, 0.01 degC), low
     * byte first. Computed from the formats of the GATT Specification Supplement.
     */
    @ParameterizedTest
    @CsvSource({
        "uint32, 0.1,  02 76 0F 00, 101325.0",
        "uint32, 0.1,  0E 22 00 00, 871.8",
        "int16,  0.01, C4 09,       25.00",
        "int16,  0.01, DA FD,       -5.50"
    })
    void bluetoothEnvironmentalValues(String type, double scale, String wire, double value) {
        roundTrip(type, "little", scale, wire, value, 0);
    }

    /** 0x8000 of the Bluetooth temperature means unknown. Source: GATT Specification Supplement, from memory. */
    @Test
    void anUnknownBluetoothTemperatureIsNotReady() {
        Profile profile = profile("int16", "little", 0.01, ", special: {not-ready: 0x8000}");
        Recorder recorder = Recorder.of(profile, new Chunk(1, hex("AA 00 80")));
        assertThat(recorder.samples.get(0).status()).isEqualTo(SampleStatus.NOT_READY);
    }

    /** IEEE 754 single precision, low byte first. Source: a published protocol table, recomputed. */
    @ParameterizedTest
    @CsvSource({"00 00 C8 42, 100.0", "00 00 C8 C2, -100.0", "29 5C 0F 3F, 0.56"})
    void singlePrecisionNumbers(String wire, double value) {
        roundTrip("float32", "little", 1, wire, value, 3e-8);
    }

    /** Two's complement and byte orders: by definition. */
    @ParameterizedTest
    @CsvSource({
        "int8,   big,    FF,                      -1",
        "uint8,  big,    FF,                      255",
        "uint16, big,    12 34,                   4660",
        "uint16, little, 12 34,                   13330",
        "int24,  big,    FF FF FE,                -2",
        "int24,  little, FE FF FF,                -2",
        "uint24, little, 01 00 80,                8388609",
        "int32,  big,    80 00 00 00,             -2147483648",
        "uint32, big,    80 00 00 00,             2147483648",
        "int40,  big,    FF 00 00 00 00,          -4294967296",
        "uint48, little, 01 00 00 00 00 01,       1099511627777",
        "int56,  big,    FF FF FF FF FF FF 00,    -256",
        "int64,  little, FF FF FF FF FF FF FF FF, -1",
        "uint64, big,    80 00 00 00 00 00 00 00, 9223372036854775808",
        "float64, big,   C0 59 00 00 00 00 00 00, -100"
    })
    void numbersOfEveryWidth(String type, String order, String wire, double value) {
        roundTrip(type, order, 1, wire, value, 0);
    }

    private static void roundTrip(String type, String order, double scale, String wire, double value, double within) {
        Profile profile = profile(type, order, scale, "");
        byte[] frame = hex("AA " + wire);
        Recorder recorder = Recorder.of(profile, new Chunk(1, frame));
        assertThat(recorder.rejections).isEmpty();
        assertThat(recorder.samples).hasSize(1);
        double decoded = recorder.samples.get(0).value();
        assertThat(decoded).isCloseTo(value, within(within));
        assertThat(new Encoder(profile).encode(new double[] {decoded}, new SampleStatus[] {SampleStatus.OK}))
                .isEqualTo(frame);
    }

    private static Profile profile(String type, String order, double scale, String more) {
        int bytes = Integer.parseInt(type.replaceAll("\\D", "")) / 8;
        return Recorder.profile("""
                language: 1
                id: wire
                name: Wire
                framing: {fixed: {start: "AA", length-bytes: %d}}
                fields:
                  - {name: x, at: 1, type: %s, byte-order: %s, scale: %s%s}
                channels:
                  - {id: x, field: x, unit: Pa}
                """.formatted(1 + bytes, type, order, scale, more));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0",
                "-0.0",
                "1",
                "+6.83",
                "-3.49",
                ".5",
                "5.",
                "1e3",
                "1e0003",
                "-1.5E-7",
                "9.91E37",
                "9007199254740991",
                "9007199254740993",
                "0.0000000000000000000003",
                "0.00000000000000000000003",
                "1.000000000000000000000000000000000000e2"
            })
    void decimalTextIsRead(String text) {
        byte[] bytes = ("x" + text + "y").getBytes(StandardCharsets.US_ASCII);
        assertThat(NumberText.parse(bytes, 1, bytes.length - 1)).isEqualTo(Double.parseDouble(text));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "+",
                "-",
                ".",
                "+.",
                "e5",
                "1e",
                "1e+",
                "1e12345",
                "1e00003",
                "1e3x",
                "1x",
                "1e3.5",
                "1.0000000000000000000000000000000000000e2",
                "1.2.3",
                "1 2",
                "0x10",
                "NaN",
                "Infinity",
                "1d",
                "--1",
                "1,5",
                "1e999",
                "1234567890123456789012345678901234567890123"
            })
    void otherTextIsNoNumber(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
        assertThat(NumberText.parse(bytes, 0, bytes.length)).isNaN();
    }

    /** Against the platform's correctly rounding parser. */
    @Test
    void decimalTextHasTheNearestDouble() {
        long seed = System.nanoTime();
        System.out.println("WireFormatTest seed " + seed);
        Random random = new Random(seed);
        for (int i = 0; i < 100_000; i++) {
            StringBuilder text = new StringBuilder(random.nextBoolean() ? "-" : "");
            int digits = 1 + random.nextInt(24);
            int point = random.nextInt(digits + 1);
            for (int d = 0; d < digits; d++) {
                text.append(d == point ? "." : "").append(random.nextInt(10));
            }
            byte[] bytes = text.toString().getBytes(StandardCharsets.US_ASCII);
            assertThat(NumberText.parse(bytes, 0, bytes.length))
                    .as(text.toString())
                    .isEqualTo(Double.parseDouble(text.toString()));
        }
    }
}
