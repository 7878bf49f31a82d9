package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import settlemark.profile.ProfileLibrary;
import settlemark.profile.SerialLine;
import settlemark.profile.SerialLine.Flow;
import settlemark.profile.SerialLine.Parity;
import settlemark.profile.SerialLine.StopBits;

final class LineSettingsTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            9600   | 8 | NONE | ONE            | NONE     | 9600 baud, 8N1
            19200  | 7 | EVEN | TWO            | HARDWARE | 19200 baud, 7E2, RTS/CTS
            300    | 5 | ODD  | ONE_AND_A_HALF | SOFTWARE | 300 baud, 5O1.5, XON/XOFF
            """)
    void areSaidAsTechniciansSayThem(int baud, int bits, Parity parity, StopBits stop, Flow flow, String words) {
        assertThat(LineSettings.words(new SerialLine(baud, bits, parity, stop, flow)))
                .isEqualTo(words);
    }

    @Test
    void comeFromTheProfile() {
        assertThat(ProfileLibrary.get("plain-line").serial()).isPresent();
        assertThat(LineSettings.of(ProfileLibrary.get("plain-line")))
                .isEqualTo(ProfileLibrary.get("plain-line").serial().orElseThrow());
    }

    /** A pseudo terminal accepts every rate; what reaches it is what stty(1) then reads back. */
    @ParameterizedTest
    @ValueSource(ints = {300, 1200, 9600, 38_400, 115_200, 250_000, 921_600})
    void reachTheDevice(int baud, @TempDir Path folder) throws Exception {
        try (SocatPair pair = SocatPair.start(folder)) {
            Path node = Path.of(pair.near()).toRealPath();
            SerialLine line = new SerialLine(baud, 8, Parity.NONE, StopBits.TWO, Flow.HARDWARE);
            Tty tty = new NativeTtys().open(node, line);
            try {
                String settings = stty(node);
                assertThat(settings).contains("cs8", " cstopb", " crtscts", "-parenb");
                if (baud != 250_000) {
                    assertThat(settings).contains("speed " + baud + " baud");
                }
            } finally {
                tty.close();
            }
        }
    }

    private static String stty(Path node) throws Exception {
        Process stty = new ProcessBuilder("stty", "-a", "-F", node.toString()).start();
        return new String(stty.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
    }
}
