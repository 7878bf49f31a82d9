package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A probe that stays connected after its reader has gone is silent for everybody. */
@Timeout(60)
final class BleInterruptTest {
    @Test
    void anInterruptedProgramLetsItsProbeGo() throws Exception {
        try (BleBench bench = new BleBench()) {
            bench.probe(BleBench.ADDRESS);
            Process process =
                    OtherProcess.start(List.of(), BleInterruptMain.class, bench.bus.address(), BleBench.ADDRESS);
            try (BufferedReader said =
                    new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
                String line = said.readLine();
                while (line != null && !line.equals("open")) {
                    line = said.readLine();
                }
                assertThat(line).isEqualTo("open");
                assertThat(bench.service.count("Disconnect")).isZero();
                // As from a terminal or a service manager.
                process.destroy();
                assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
                assertThat(bench.service.count("Disconnect")).isEqualTo(1);
            } finally {
                process.destroyForcibly();
            }
        }
    }
}
