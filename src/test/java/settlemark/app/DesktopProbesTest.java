package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.GraphicsEnvironment;
import java.awt.event.KeyEvent;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Program;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.link.RadioBench;
import settlemark.measure.Role;
import settlemark.profile.ProfileLibrary;
import settlemark.session.ProbeKeys;
import settlemark.session.RecordSource;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.store.SqliteStore;
import settlemark.ui.WindowHands;

/** The window from its first choice to a running job on a probe by radio, by hand; the Bluetooth service is the fake one. */
@Tag("display")
@Timeout(300)
class DesktopProbesTest {
    private static final String ADDRESS = "C0:FF:EE:00:00:01";
    private static final long SEND_MILLIS = 50;
    private static final int BEFORE_THE_LOSS = 20;

    @TempDir
    private Path folder = Path.of("");

    private final StringWriter err = new StringWriter();

    @BeforeEach
    void needsADisplay() {
        Assumptions.assumeFalse(GraphicsEnvironment.isHeadless(), "no display");
    }

    private Path workspace() {
        return RadioDesk.workspace(folder);
    }

    /** The plan that needs one pressure alone. */
    private static void plate(WindowHands hands) {
        hands.click("2, Connect probes");
        hands.click("Plan: ");
        hands.choose("gas supply with all");
        hands.fill("Place and job", "quarry rise 3");
        hands.fill("Appliance", "furnace");
        hands.fill("Inlet, least", "4.5");
        hands.fill("Inlet, most", "10.5");
        hands.key(KeyEvent.VK_ENTER);
        hands.awaitSeen("Look again");
    }

    @Test
    void aProbeIsFoundChosenStreamedLostAndBack() throws Exception {
        AtomicBoolean end = new AtomicBoolean();
        AtomicInteger sent = new AtomicInteger();
        try (RadioBench bench = new RadioBench()) {
            WindowHands hands = new WindowHands();
            CompletableFuture<Integer> program = RadioDesk.open(bench, folder, err);
            plate(hands);
            RadioBench.Probe probe = bench.probe(ADDRESS, "Room sensor");
            int pressure = probe.characteristic(RadioBench.ENVIRONMENT, RadioBench.PRESSURE);
            // Temperature and humidity, which the profile describes too.
            probe.characteristic(RadioBench.ENVIRONMENT, "00002a6e-0000-1000-8000-00805f9b34fb");
            probe.characteristic(RadioBench.ENVIRONMENT, "00002a6f-0000-1000-8000-00805f9b34fb");
            probe.advertises(RadioBench.ENVIRONMENT);
            hands.awaitSeen("Room sensor: ");
            assertThat(bench.wasCalled("Connect " + ADDRESS))
                    .as("a look connects nothing")
                    .isFalse();
            hands.click("probe of the Inlet");
            hands.choose("Room sensor, Air pressure");
            CompletableFuture<Void> sender = CompletableFuture.runAsync(() -> send(probe, pressure, end, sent));
            hands.click("Connect and start the job");
            hands.awaitSeen("strip of the job");
            hands.awaitSeen("The plate says so");
            hands.key(KeyEvent.VK_SPACE);
            hands.awaitWords("Inlet: probe Room sensor, Air pressure, C0:FF:EE:00:00:01, now 3.500");
            assertThat(hands.seen()).noneMatch(n -> n.toLowerCase(Locale.ROOT).contains("simulated"));
            RadioBench.await("values", () -> sent.get() >= BEFORE_THE_LOSS);
            probe.onAir(false);
            probe.drop();
            hands.awaitWords("link lost, 0 frames bad, health Room sensor: ");
            probe.onAir(true);
            int before = sent.get();
            hands.awaitWords("link up, lost once, 0 frames bad, health good");
            RadioBench.await("values again", () -> sent.get() > before);
            end.set(true);
            sender.get(20, TimeUnit.SECONDS);
            WindowHands.closeAll();
            assertThat(program.get(60, TimeUnit.SECONDS)).isEqualTo(Program.DONE);
            assertThat(bench.wasCalled("Pair")).isFalse();
        }
        assertStored();
    }

    private void assertStored() throws Exception {
        try (SqliteStore store = Workspaces.reading(Optional.of(workspace()))) {
            List<SessionStore.Summary> sessions = store.sessions();
            assertThat(sessions).hasSize(1);
            SessionHeader header = store.header(sessions.get(0).number());
            assertThat(header.simulated()).isFalse();
            assertThat(header.title()).isEqualTo("quarry rise 3");
            assertThat(header.plan().orElseThrow().key()).isEqualTo("supply-check");
            assertThat(header.probes()).singleElement().satisfies(p -> {
                assertThat(p.identity()).isEqualTo(ADDRESS);
                assertThat(p.roles()).containsEntry("air-pressure", Role.INLET);
            });
            assertThat(store.sampleCount(sessions.get(0).number(), 0))
                    .as("all that was sent before the loss, and something after it")
                    .isGreaterThan(BEFORE_THE_LOSS);
        }
    }

    /** Closed at the plate's step, opened again: the job goes on where it stood, in the same session. */
    @Test
    void aJobThatWasLeftIsOfferedAndGoesOnInTheSameSession() throws Exception {
        AtomicBoolean end = new AtomicBoolean();
        AtomicInteger sent = new AtomicInteger();
        try (RadioBench bench = new RadioBench()) {
            WindowHands hands = new WindowHands();
            CompletableFuture<Integer> program = RadioDesk.open(bench, folder, err);
            plate(hands);
            RadioBench.Probe probe = bench.probe(ADDRESS, "Room sensor");
            int pressure = probe.characteristic(RadioBench.ENVIRONMENT, RadioBench.PRESSURE);
            probe.characteristic(RadioBench.ENVIRONMENT, "00002a6e-0000-1000-8000-00805f9b34fb");
            probe.characteristic(RadioBench.ENVIRONMENT, "00002a6f-0000-1000-8000-00805f9b34fb");
            probe.advertises(RadioBench.ENVIRONMENT);
            hands.awaitSeen("Room sensor: ");
            hands.click("probe of the Inlet");
            hands.choose("Room sensor, Air pressure");
            CompletableFuture<Void> sender = CompletableFuture.runAsync(() -> send(probe, pressure, end, sent));
            hands.click("Connect and start the job");
            hands.awaitSeen("The plate says so");
            hands.key(KeyEvent.VK_SPACE);
            hands.awaitWords("Inlet: probe Room sensor, Air pressure, C0:FF:EE:00:00:01, now 3.500");
            WindowHands.closeAll();
            assertThat(program.get(60, TimeUnit.SECONDS)).isEqualTo(Program.DONE);
            assertThat(endedWithOneStepDone()).isFalse();
            program = RadioDesk.open(bench, folder, err);
            hands.click("4, Go on with quarry rise 3");
            hands.awaitSeen("strip of the job");
            hands.awaitWords("Inlet: probe Room sensor, Air pressure, C0:FF:EE:00:00:01, now 3.500");
            end.set(true);
            sender.get(20, TimeUnit.SECONDS);
            WindowHands.closeAll();
            assertThat(program.get(60, TimeUnit.SECONDS)).as(err.toString()).isEqualTo(Program.DONE);
        }
        assertThat(endedWithOneStepDone()).isFalse();
    }

    private boolean endedWithOneStepDone() throws Exception {
        try (SqliteStore store = Workspaces.reading(Optional.of(workspace()))) {
            List<SessionStore.Summary> sessions = store.sessions();
            assertThat(sessions).hasSize(1);
            JobState job = RecordSource.replay(store, sessions.get(0).number(), ProbeKeys.NONE)
                    .job()
                    .orElseThrow();
            assertThat(job.steps().stream().filter(StepState::done).map(StepState::key))
                    .containsExactly("plate");
            return sessions.get(0).ended();
        }
    }

    /** 871.8 Pa, which is 3.500 inches of water of 249.08891 Pa (UCUM), as a tenth of a pascal each. */
    private static void send(RadioBench.Probe probe, int characteristic, AtomicBoolean end, AtomicInteger sent) {
        while (!end.get()) {
            if (probe.isListenedTo(characteristic)) {
                probe.send(characteristic, (byte) 0x0E, (byte) 0x22, (byte) 0, (byte) 0);
                sent.incrementAndGet();
            }
            LockSupport.parkNanos(SEND_MILLIS * 1_000_000);
        }
    }

    @Test
    void withoutABluetoothServiceARemedyIsSaidAndPortsCanStillBeNamed() throws Exception {
        try (RadioBench bench = new RadioBench()) {
            bench.stopService();
            WindowHands hands = new WindowHands();
            CompletableFuture<Integer> program = RadioDesk.open(bench, folder, err);
            plate(hands);
            hands.awaitWords("Bluetooth service does not run");
            hands.key(KeyEvent.VK_O);
            hands.awaitSeen("Port, or ble: and the address");
            hands.type("/dev/nothing-here");
            hands.key(KeyEvent.VK_ENTER);
            hands.choose(ProfileLibrary.get("demo-gauge").name());
            hands.choose("Inlet from P1");
            hands.click("Connect and start the job");
            hands.awaitWords("/dev/nothing-here");
            hands.awaitSeen("Connect and start the job");
            WindowHands.closeAll();
            assertThat(program.get(60, TimeUnit.SECONDS)).isEqualTo(Program.DONE);
        }
        try (SqliteStore store = Workspaces.reading(Optional.of(workspace()))) {
            assertThat(store.sessions())
                    .as("a port that cannot be opened leaves no session behind")
                    .isEmpty();
        }
    }
}
