package settlemark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.ByteText;
import settlemark.profile.Checksum;
import settlemark.profile.CrcTable;
import settlemark.profile.Field;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.Source;
import settlemark.profile.Wire;

/**
 * Every row of the published check values of wire formats. The file names a source for each; its status says whether
 * the value was seen there, computed from the published format, or is from memory.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
final class PublishedFormatsTest {
    private static final String FILE = "/check-values/wire-formats.csv";
    private static final List<Row> ROWS = read();
    private static final Set<Row> RUN = new HashSet<>();

    private static final Checksum.Crc MODBUS = new Checksum.Crc(16, 0x8005, 0xFFFF, true, true, 0);
    /** Parameters as in the public catalogue of parametrised CRC algorithms by G. Cook. */
    private static final Map<String, Checksum.Crc> CATALOGUE = Map.of(
            "CRC-16/MODBUS", MODBUS,
            "CRC-16/XMODEM", new Checksum.Crc(16, 0x1021, 0, false, false, 0),
            "CRC-16/IBM-SDLC (X-25)", new Checksum.Crc(16, 0x1021, 0xFFFF, true, true, 0xFFFF),
            "CRC-32/ISO-HDLC", new Checksum.Crc(32, 0x04C11DB7L, 0xFFFFFFFFL, true, true, 0xFFFFFFFFL),
            "CRC-32/ISCSI", new Checksum.Crc(32, 0x1EDC6F41L, 0xFFFFFFFFL, true, true, 0xFFFFFFFFL));

    /** A row of the file. */
    record Row(int line, String topic, String quantity, String inputs, String expected, String source, String status) {
        static Row of(NamedCsvRecord csv) {
            return new Row(
                    (int) csv.getStartingLineNumber(),
                    csv.getField("topic"),
                    csv.getField("quantity"),
                    csv.getField("inputs"),
                    csv.getField("expected"),
                    csv.getField("source"),
                    csv.getField("status"));
        }

        byte[] bytes() {
            return hex(expected);
        }

        /** The number at the beginning of the inputs. */
        double number() {
            return Double.parseDouble(inputs.split(" ", 2)[0]);
        }

        int code() {
            return Integer.decode(expected);
        }

        @Override
        public String toString() {
            return "line " + line + ": " + quantity + ", " + inputs + " is " + expected + " (" + source + "; " + status
                    + ")";
        }
    }

    private static List<Row> read() {
        try (InputStream in = PublishedFormatsTest.class.getResourceAsStream(FILE);
                CsvReader<NamedCsvRecord> csv = CsvReader.builder()
                        .ofNamedCsvRecord(new InputStreamReader(Objects.requireNonNull(in), StandardCharsets.UTF_8))) {
            return csv.stream().map(Row::of).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Row> rows(String quantity) {
        return ROWS.stream().filter(row -> row.quantity().startsWith(quantity)).toList();
    }

    private static <T> T known(Map<String, T> meanings, String name) {
        return Objects.requireNonNull(meanings.get(name), "no test knows " + name);
    }

    private static byte[] hex(String digits) {
        return HexFormat.of().parseHex(digits.replace(" ", ""));
    }

    private static ChecksumCheck check(Checksum.Algorithm algorithm) {
        return new ChecksumCheck(new Checksum(algorithm, Wire.Order.LITTLE, 0, 0, false, ByteText.EMPTY, 1));
    }

    static List<Row> modbusFrames() {
        return rows("RTU frame");
    }

    @Order(1)
    @ParameterizedTest
    @MethodSource("modbusFrames")
    void aModbusFrameEndsWithItsCrc(Row row) {
        holdsAndIsWritten(check(MODBUS), row.bytes(), 2);
        RUN.add(row);
    }

    static List<Row> lrcs() {
        return rows("ASCII LRC");
    }

    @Order(1)
    @ParameterizedTest
    @MethodSource("lrcs")
    void aModbusAsciiFrameEndsWithItsLrc(Row row) {
        holdsAndIsWritten(check(new Checksum.Sum(8, true)), hex(row.inputs() + row.expected()), 1);
        RUN.add(row);
    }

    /** The check passes, writes the same bytes, and finds a single bit that is wrong. */
    private static void holdsAndIsWritten(ChecksumCheck check, byte[] frame, int checksumBytes) {
        assertThat(check.complaint(frame, 0, frame.length)).isNull();
        byte[] written = frame.clone();
        Arrays.fill(written, written.length - checksumBytes, written.length, (byte) 0);
        check.write(written, 0, written.length);
        assertThat(written).isEqualTo(frame);
        written[1] ^= 0x10;
        assertThat(check.complaint(written, 0, written.length)).startsWith("checksum ");
    }

    static List<Row> crcs() {
        return rows("check value");
    }

    @Order(1)
    @ParameterizedTest
    @MethodSource("crcs")
    void aCrcMeetsTheCheckValueOfTheCatalogue(Row row) {
        byte[] digits = "123456789".getBytes(StandardCharsets.US_ASCII);
        assertThat(row.quantity()).contains(new String(digits, StandardCharsets.US_ASCII));
        long crc = new CrcTable(known(CATALOGUE, row.inputs())).of(digits);
        assertThat(Long.toHexString(crc).toUpperCase(Locale.ROOT)).isEqualTo(row.expected());
        RUN.add(row);
    }

    static List<Row> singles() {
        return rows("float32 little-endian");
    }

    /** The nearest single-precision number to 0.56 is 2e-9 away. */
    @Order(1)
    @ParameterizedTest
    @MethodSource("singles")
    void aSinglePrecisionNumberTravelsBothWays(Row row) {
        travelsBothWays(value("float32"), 0, row.bytes(), row.number());
        RUN.add(row);
    }

    private static final Profile ENVIRONMENT = ProfileLibrary.get("ble-environment");

    /** Where the shipped profiles use an assigned number. */
    private static final Map<String, Integer> NUMBERS = Map.of(
            "Temperature",
                    number(characteristic("ble-environment", "temperature").uuid()),
            "Humidity", number(characteristic("ble-environment", "humidity").uuid()),
            "Battery Level", number(characteristic("ble-battery", "battery").uuid()),
            "Environmental Sensing service",
                    number(characteristic("ble-environment", "pressure")
                            .service()
                            .orElseThrow()),
            "Characteristic Presentation Format", Source.Characteristic.PRESENTATION_FORMAT,
            "Environmental Sensing Measurement", Source.Characteristic.MEASUREMENT);

    private static Source.Characteristic characteristic(String profile, String message) {
        return ProfileLibrary.get(profile).messages().stream()
                .filter(m -> m.id().equals(message))
                .map(m -> (Source.Characteristic) m.source())
                .findFirst()
                .orElseThrow();
    }

    /** The assigned number in a UUID that is made of one. */
    private static int number(UUID uuid) {
        int number = (int) (uuid.getMostSignificantBits() >>> 32);
        assertThat(uuid)
                .isEqualTo(UUID.fromString(String.format(Locale.ROOT, "%08x-0000-1000-8000-00805f9b34fb", number)));
        return number;
    }

    static List<Row> assignedNumbers() {
        return rows("assigned number");
    }

    @Order(1)
    @ParameterizedTest
    @MethodSource("assignedNumbers")
    void aShippedProfileUsesTheAssignedNumber(Row row) {
        assertThat(known(NUMBERS, row.inputs())).isEqualTo(row.code());
        RUN.add(row);
    }

    private static final Map<String, String> UNITS =
            Map.of("pascal", "Pa", "degree Fahrenheit", "[degF]", "bar", "bar", "Celsius", "Cel");

    static List<Row> units() {
        return rows("unit UUID");
    }

    @Order(1)
    @ParameterizedTest
    @MethodSource("units")
    void aUnitIsKnownByItsNumber(Row row) {
        assertThat(BluetoothUnits.find(row.code())).contains(Unit.ucum(known(UNITS, row.inputs())));
        RUN.add(row);
    }

    /** Empty for what is no number: such a code leaves the type that the profile says. */
    private static final Map<String, Optional<Wire>> TYPES = Map.of(
            "uint16", wire(Wire.Kind.UNSIGNED, 2),
            "uint24", wire(Wire.Kind.UNSIGNED, 3),
            "uint32", wire(Wire.Kind.UNSIGNED, 4),
            "sint16", wire(Wire.Kind.SIGNED, 2),
            "IEEE-754 float32", wire(Wire.Kind.IEEE_FLOAT, 4),
            "SFLOAT", wire(Wire.Kind.MEDICAL_FLOAT, 2),
            "IEEE-11073 FLOAT", wire(Wire.Kind.MEDICAL_FLOAT, 4),
            "utf8s", Optional.empty(),
            "struct", Optional.empty());

    private static Optional<Wire> wire(Wire.Kind kind, int bytes) {
        return Optional.of(new Wire(kind, bytes, Wire.Order.LITTLE));
    }

    /** A profile of a characteristic that is one number. */
    private static Profile value(String type) {
        return Recorder.profile("""
                language: 1
                id: any
                name: Any
                link: {ble: connected}
                characteristic: {uuid: "2A6D", by: notify, presentation-format: true}
                fields:
                  - {name: x, at: 0, type: %s}
                channels:
                  - {id: x, field: x, unit: Pa}
                """.formatted(type));
    }

    static List<Row> formatCodes() {
        return rows("presentation format code");
    }

    /** The profile says a type that no row names, so that a code which changes nothing is seen. */
    @Order(1)
    @ParameterizedTest
    @MethodSource("formatCodes")
    void aFormatCodeNamesItsType(Row row) {
        Profile profile = value("int40");
        Contents contents = new Presentation(row.code(), 0, 0x2724).applyTo(Contents.of(profile, 0));
        Field.Binary number = (Field.Binary) contents.field(0).content();
        Wire unchanged = new Wire(Wire.Kind.SIGNED, 5, Wire.Order.LITTLE);
        assertThat(number.wire()).isEqualTo(known(TYPES, row.inputs()).orElse(unchanged));
        RUN.add(row);
    }

    static List<Row> presentations() {
        return rows("CPF descriptor bytes");
    }

    @Order(1)
    @ParameterizedTest
    @MethodSource("presentations")
    void aPresentationFormatIsReadFromItsBytes(Row row) {
        String[] words = row.inputs().split(", (exp )?", -1);
        Presentation presentation = Presentation.read(row.bytes()).orElseThrow();
        Row code = formatCodes().stream()
                .filter(other -> other.inputs().equals(words[0]))
                .findFirst()
                .orElseThrow();
        assertThat(presentation.format()).isEqualTo(code.code());
        assertThat(presentation.exponent()).isEqualTo(Integer.parseInt(words[1]));
        assertThat(BluetoothUnits.find(presentation.unit())).contains(Unit.ucum(known(UNITS, words[2])));
        RUN.add(row);
    }

    static List<Row> characteristicValues() {
        return ROWS.stream()
                .filter(row -> row.quantity().matches("(Pressure|Temperature) 0x2A6[DE] bytes"))
                .toList();
    }

    @Order(1)
    @ParameterizedTest
    @MethodSource("characteristicValues")
    void aCharacteristicTravelsBothWays(Row row) {
        int message = row.quantity().startsWith("Pressure") ? 0 : 1;
        travelsBothWays(ENVIRONMENT, message, row.bytes(), row.number());
        RUN.add(row);
    }

    /** The channel has the message's index. */
    private static void travelsBothWays(Profile profile, int message, byte[] bytes, double value) {
        Recorder recorder = Recorder.of(profile, new Chunk(1, message, bytes));
        assertThat(recorder.rejections).isEmpty();
        assertThat(recorder.samples).hasSize(1).allSatisfy(sample -> {
            assertThat(sample.channel()).isEqualTo(message);
            assertThat(sample.status()).isEqualTo(SampleStatus.OK);
            assertThat(sample.value()).isCloseTo(value, within(1e-8));
        });
        double[] values = new double[profile.sources().size()];
        values[message] = value;
        SampleStatus[] statuses = new SampleStatus[values.length];
        statuses[message] = SampleStatus.OK;
        assertThat(new Encoder(profile).encode(message, values, statuses)).isEqualTo(bytes);
    }

    static List<Row> unknownTemperatures() {
        return rows("Temperature 0x2A6E unknown");
    }

    @Order(1)
    @ParameterizedTest
    @MethodSource("unknownTemperatures")
    void anUnknownTemperatureIsNotReady(Row row) {
        byte[] bytes = {(byte) row.code(), (byte) (row.code() >> 8)};
        Recorder recorder = Recorder.of(ENVIRONMENT, new Chunk(1, 1, bytes));
        assertThat(recorder.samples)
                .singleElement()
                .satisfies(sample -> assertThat(sample.status()).isEqualTo(SampleStatus.NOT_READY));
        RUN.add(row);
    }

    static List<Row> medicalFloats() {
        return rows("IEEE-11073 FLOAT");
    }

    /** Some rows give the bytes as they travel, some the number with its high byte first, one both. */
    @Order(1)
    @ParameterizedTest
    @MethodSource("medicalFloats")
    void aMedicalFloatTravelsBothWays(Row row) {
        String last = row.expected().replaceFirst("bytes ", "").replaceFirst(".*-> ", "");
        byte[] bytes = hex(last);
        if (!last.contains(" ")) {
            bytes = new byte[] {bytes[3], bytes[2], bytes[1], bytes[0]};
        }
        byte[] frame = new byte[5];
        System.arraycopy(bytes, 0, frame, 1, 4);
        travelsBothWays(ProfileLibrary.get("ble-thermometer"), 0, frame, row.number());
        RUN.add(row);
    }

    @Test
    @Order(9)
    void noRowIsLeftOut() {
        assertThat(ROWS).hasSize(45).allSatisfy(row -> assertThat(row.source()).isNotBlank());
        assertThat(RUN).containsExactlyInAnyOrderElementsOf(ROWS);
    }
}
