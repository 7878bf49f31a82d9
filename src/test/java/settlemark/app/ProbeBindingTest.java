package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Program;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.LinkException;
import settlemark.session.ProbeSetup;
import settlemark.store.SqliteStore;

/** Two gauges of one kind, one reads 100 Pa and the other 200 Pa, and ports that change their numbers. */
final class ProbeBindingTest {
    private static final Profile LINES = ProfileLibrary.get("plain-line");
    private static final String A = "usb:1209:0001:A1";
    private static final String B = "usb:1209:0001:B2";
    private static final String USB0 = "/dev/ttyUSB0";
    private static final String USB1 = "/dev/ttyUSB1";

    @TempDir
    private Path folder = Path.of("");

    private final PluggedGauges plugged = new PluggedGauges();

    private static Program.Probe probe(String name, String port) {
        return new Program.Probe(name, port, LINES, List.of());
    }

    private SqliteStore workspace() throws Exception {
        return Workspaces.person(Optional.of(folder.resolve("w.settlemark")));
    }

    private int log(String nearPort, String farPort, String... anotherDevice) throws Exception {
        StringWriter said = new StringWriter();
        List<Program.Probe> probes = List.of(probe("near", nearPort), probe("far", farPort));
        Program.Log request = new Program.Log(
                probes, Optional.empty(), OptionalDouble.of(0.2), "log", Set.copyOf(Arrays.asList(anotherDevice)));
        try (SqliteStore store = workspace()) {
            return new LogRun(request, store, new Hosts(plugged), new PrintWriter(said))
                    .run(new PrintWriter(said), "test");
        }
    }

    private void plugIn(String identity, String port, double pressurePa) {
        plugged.plugIn(port, identity, pressurePa + "\n");
    }

    private void assertStored(long session, double near, double far) throws Exception {
        try (SqliteStore store = workspace()) {
            assertThat(store.samples(session, 0, 0, 0, Long.MAX_VALUE).values())
                    .hasSizeGreaterThan(2)
                    .containsOnly(near);
            assertThat(store.samples(session, 1, 0, 0, Long.MAX_VALUE).values())
                    .hasSizeGreaterThan(2)
                    .containsOnly(far);
        }
    }

    @Test
    void readingsStayWithTheirGaugeWhenThePortsChangeTheirNumbers() throws Exception {
        plugIn(A, USB0, 100);
        plugIn(B, USB1, 200);
        assertThat(log(USB0, USB1)).isZero();
        assertStored(1, 100, 200);
        plugIn(B, USB0, 200);
        plugIn(A, USB1, 100);
        assertThatThrownBy(() -> log(USB0, USB1))
                .isInstanceOf(LinkException.class)
                .hasMessage("probe near was " + A + " the last time, but at " + USB0 + " is now " + B
                        + ": the ports may have changed their numbers. " + A + " is at " + USB1 + ": say --probe near="
                        + USB1 + ", or --another-device near where another device is meant" + System.lineSeparator()
                        + "probe far was " + B + " the last time, but at " + USB1 + " is now " + A
                        + ": the ports may have changed their numbers. " + B + " is at " + USB0 + ": say --probe far="
                        + USB0 + ", or --another-device far where another device is meant");
        assertThat(plugged.opened()).as("before and after the swap").containsExactly(USB0, USB1);
        try (SqliteStore store = workspace()) {
            assertThat(store.sessions()).hasSize(1);
        }
        assertThat(log(USB1, USB0)).isZero();
        assertStored(2, 100, 200);
    }

    @Test
    void anotherDeviceThatIsMeantIsTakenAndKeptForTheNextTime() throws Exception {
        plugIn(A, USB0, 100);
        plugIn(B, USB1, 200);
        assertThat(log(USB0, USB1)).isZero();
        String third = "usb:1209:0001:C3";
        plugIn(third, USB0, 300);
        assertThatThrownBy(() -> log(USB0, USB1, "far"))
                .isInstanceOf(LinkException.class)
                .hasMessage("probe near was " + A + " the last time, but at " + USB0 + " is now " + third
                        + ": the ports may have changed their numbers. " + A
                        + " is at no port in reach: plug it in where it"
                        + " was, or say --another-device near where another device is meant");
        assertThat(log(USB0, USB1, "near")).isZero();
        assertStored(2, 300, 200);
        try (SqliteStore store = workspace()) {
            assertThat(store.header(2).probes())
                    .extracting(ProbeSetup::identity)
                    .containsExactly(third, B);
        }
        assertThat(log(USB0, USB1)).isZero();
        assertStored(3, 300, 200);
    }

    @Test
    void nothingIsRefusedWhereNothingIsKnown() throws Exception {
        plugIn("", USB0, 100);
        plugIn(B, USB1, 200);
        assertThat(log(USB0, USB1)).isZero();
        plugIn(A, USB0, 300);
        plugIn("", USB1, 400);
        assertThat(log(USB0, USB1)).isZero();
        assertStored(2, 300, 400);
    }

    @Test
    void aDeviceOnASharedLineKeepsItsUnitInTheRemedy() {
        String said = ProbeBinding.objection(probe("two", USB0 + "@18"), A, B, Optional.of("/dev/serial/by-id/a1"));
        assertThat(said).contains("at " + USB0 + " is now " + B, "say --probe two=/dev/serial/by-id/a1@18,");
    }

    @Test
    void aHostThatCannotSayWhatIsInReachStillRefuses() throws Exception {
        plugIn(A, USB0, 100);
        plugIn(B, USB1, 200);
        assertThat(log(USB0, USB1)).isZero();
        plugged.cannotSayWhatIsInReach();
        assertThatThrownBy(() -> log(USB1, USB0))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("probe near was " + A)
                .hasMessageContaining(A + " is at no port in reach");
    }
}
