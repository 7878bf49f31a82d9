package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Program;
import settlemark.decode.Encoder;
import settlemark.exchange.Responder;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.store.SqliteStore;

/** A log of two devices that are asked on one line; the same description speaks for them at its far end. */
final class LogAsksTest {
    private static final Profile REGISTERS = ProfileLibrary.get("modbus-registers");

    @TempDir
    private Path folder;

    @Test
    void aLogAsksTwoUnitsOnOneLineAndStoresTheirAnswersByInput() throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/socat")), "socat is not installed: apt install socat");
        Path near = folder.resolve("near");
        Path far = folder.resolve("far");
        Process socat = new ProcessBuilder("socat", "pty,raw,echo=0,link=" + near, "pty,raw,echo=0,link=" + far)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        try {
            for (int i = 0; i < 1000 && !(Files.exists(near) && Files.exists(far)); i++) {
                LockSupport.parkNanos(10_000_000);
            }
            speak(far.toRealPath().toString());
            Path workspace = folder.resolve("w.settlemark");
            StringWriter err = new StringWriter();
            List<Program.Probe> probes = List.of(
                    new Program.Probe("one", near.toString(), REGISTERS, List.of()),
                    new Program.Probe("two", near + "@18", REGISTERS, List.of()));
            int code = new Settlemark()
                    .log(
                            new Program.Log(probes, Optional.of(workspace), OptionalDouble.of(4), "log"),
                            new PrintWriter(err),
                            new PrintWriter(err));
            assertThat(code).as(err.toString()).isZero();
            check(workspace);
        } finally {
            socat.destroy();
        }
    }

    private static void check(Path workspace) throws Exception {
        SqliteStore store = Workspaces.reading(Optional.of(workspace));
        try {
            for (int probe = 0; probe < 2; probe++) {
                SampleBlock supply = store.samples(1, probe, 0, 0, Long.MAX_VALUE);
                assertThat(supply.values()).hasSizeGreaterThan(2).containsOnly(probe == 0 ? 55.5 : 33.5);
                SampleBlock manifold = store.samples(1, probe, 3, 0, Long.MAX_VALUE);
                assertThat(manifold.values()).hasSizeGreaterThan(2).containsOnly(800.25);
            }
            boolean[] inputs = new boolean[2];
            store.events(1, event -> {
                if (event instanceof SessionEvent.Bytes bytes) {
                    inputs[bytes.chunk().input()] = true;
                    // whole answers, with unit and CRC
                    assertThat(bytes.chunk().bytes()).hasSize(bytes.chunk().input() == 0 ? 11 : 9);
                    assertThat(bytes.chunk().bytes()[0]).isEqualTo((byte) (17 + bytes.probe()));
                }
            });
            assertThat(inputs).containsExactly(true, true);
        } finally {
            store.close();
        }
    }

    private static void speak(String node) throws IOException {
        List<Responder> units = List.of(unit(17, 55.5), unit(18, 33.5));
        InputStream in = new FileInputStream(node);
        OutputStream out = new FileOutputStream(node);
        Thread thread = new Thread(() -> {
            byte[] buffer = new byte[256];
            try {
                for (int count = in.read(buffer); count > 0; count = in.read(buffer)) {
                    for (Responder unit : units) {
                        out.write(unit.received(buffer, 0, count));
                    }
                }
            } catch (IOException e) {
                return;
            }
        });
        thread.setDaemon(true);
        thread.start();
    }

    private static Responder unit(int unit, double supply) {
        Encoder encoder = new Encoder(REGISTERS);
        return new Responder(REGISTERS, unit, message -> {
            @Nullable SampleStatus[] given = new SampleStatus[4];
            Arrays.fill(given, message == 0 ? 0 : 3, message == 0 ? 3 : 4, SampleStatus.OK);
            return encoder.encode(message, new double[] {supply, 1, 2, 800.25}, given);
        });
    }
}
