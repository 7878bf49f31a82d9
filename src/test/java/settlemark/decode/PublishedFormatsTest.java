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
import java.util.Set;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.ByteText;
import settlemark.profile.Checksum;
import settlemark.profile.CrcTable;
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
            return Double.parseDouble(inputs.split(" ")[0]);
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
                CsvReader<NamedCsvRecord> csv =
                        CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return csv.stream().map(Row::of).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Row> rows(String quantity) {
        return ROWS.stream().filter(row -> row.quantity().startsWith(quantity)).toList();
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
        long crc = new CrcTable(CATALOGUE.get(row.inputs())).of(digits);
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
        Wire single = new Wire(Wire.Kind.IEEE_FLOAT, 4, Wire.Order.LITTLE);
        byte[] bytes = row.bytes();
        double value = RawBits.value(single, RawBits.read(single, bytes, 0));
        assertThat(value).isCloseTo(row.number(), within(1e-8));
        byte[] written = new byte[4];
        RawBits.write(single, Double.doubleToLongBits(row.number()), written, 0);
        assertThat(written).isEqualTo(bytes);
        RUN.add(row);
    }

    @Test
    @Order(9)
    void noRowIsLeftOut() {
        assertThat(ROWS).hasSize(45).allSatisfy(row -> assertThat(row.source()).isNotBlank());
        assertThat(RUN).containsExactlyInAnyOrderElementsOf(ROWS);
    }
}
