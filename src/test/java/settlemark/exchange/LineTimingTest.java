package settlemark.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import settlemark.profile.SerialLine;

/**
 * Silence between frames: 3.5 characters, and 1.75 ms above 19200 baud (Modbus over Serial Line 1.02, section 2.5.1.1).
 * The times are 3.5 * bits / baud, worked out by hand beside each row.
 */
final class LineTimingTest {
    @ParameterizedTest
    @CsvSource({
        // 11 bits: 38.5 / baud
        "1200, 8, EVEN, ONE, 32083",
        "2400, 8, EVEN, ONE, 16042",
        "4800, 8, EVEN, ONE, 8021",
        "9600, 8, EVEN, ONE, 4010",
        "9600, 8, NONE, TWO, 4010",
        "19200, 8, EVEN, ONE, 2005",
        // 10 bits: 35 / baud
        "9600, 8, NONE, ONE, 3646",
        "19200, 8, NONE, ONE, 1823",
        // 10.5 and 12 bits
        "9600, 8, NONE, ONE_AND_A_HALF, 3828",
        "9600, 8, ODD, TWO, 4375",
        // above 19200 baud
        "38400, 8, EVEN, ONE, 1750",
        "57600, 8, EVEN, ONE, 1750",
        "115200, 8, NONE, TWO, 1750",
        "1000000, 8, NONE, ONE, 1750"
    })
    void silenceCountsEveryBitOfACharacter(
            int baud, int data, SerialLine.Parity parity, SerialLine.StopBits stop, double micros) {
        LineTiming timing = LineTiming.of(new SerialLine(baud, data, parity, stop, SerialLine.Flow.NONE));
        assertThat(timing.silenceNanos() / 1e3).isCloseTo(micros, within(1.0));
    }

    @ParameterizedTest
    @CsvSource({"9600, 8, 8333", "1200, 8, 66667", "115200, 1, 87"})
    void aTransmissionLastsAsLongAsItsCharacters(int baud, int bytes, double micros) {
        LineTiming timing = LineTiming.of(
                new SerialLine(baud, 8, SerialLine.Parity.NONE, SerialLine.StopBits.ONE, SerialLine.Flow.NONE));
        assertThat(timing.transmissionNanos(bytes) / 1e3).isCloseTo(micros, within(1.0));
    }
}
