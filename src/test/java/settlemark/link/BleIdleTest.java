package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** Who asks for no Bluetooth pays nothing for it and cannot fail by it. */
final class BleIdleTest {
    @Test
    void noClassOfTheBusIsLoadedBeforeBluetoothIsAskedFor() throws Exception {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xlog:class+load:stdout",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "settlemark.link.BleIdleMain")
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        List<String> lines = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                .lines()
                .toList();
        assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
        assertThat(lines).contains("ble and serial").anyMatch(l -> l.startsWith("refused: "));
        assertThat(lines).anyMatch(l -> l.contains("settlemark.link.BleHost"));
        assertThat(lines).noneMatch(l -> l.contains(" org.freedesktop.") || l.contains(" org.bluez."));
    }
}
