package settlemark.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import settlemark.cli.Commands;
import settlemark.cli.Program;
import settlemark.cli.SealedSensor;
import settlemark.link.RadioBench;
import settlemark.measure.Role;
import settlemark.profile.ByteText;
import settlemark.profile.ProfileLibrary;
import settlemark.session.DeviceList;
import settlemark.session.LinkException;
import settlemark.session.PairingPerson;
import settlemark.session.ProbeAddress;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.store.SqliteStore;

/** The commands with Bluetooth probes, through the program's real parts and a fake Bluetooth service. */
@Timeout(120)
final class RadioCommandsTest {
    private static final String ADDRESS = "C0:FF:EE:00:00:01";
    private static final String OTHER = "C0:FF:EE:00:00:02";
    private static final String KEY = SealedSensor.KEY;
    private static final String BTHOME = "0000fcd2-0000-1000-8000-00805f9b34fb";

    @TempDir
    private Path folder = Path.of("");

    private RadioBench bench;
    private Settlemark program;

    private record Ran(int code, String out, String err) {}

    @BeforeEach
    void setUp() throws Exception {
        bench = new RadioBench();
        program = new Settlemark(new BenchRadio(bench));
    }

    @AfterEach
    void tearDown() throws Exception {
        bench.close();
    }

    private Ran run(Object... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] words = Arrays.stream(arguments).map(Object::toString).toArray(String[]::new);
        int code = Commands.run(program, new PrintWriter(out), new PrintWriter(err), words);
        return new Ran(code, out.toString(), err.toString());
    }

    private Path workspace() {
        return folder.resolve("w.settlemark");
    }

    private SqliteStore stored() throws Exception {
        return Workspaces.reading(Optional.of(workspace()));
    }

    /** An environment sensor that says a temperature of 21.5 degrees as soon as somebody listens, a hundred times a second. */
    private RadioBench.Probe sensor(String address) {
        RadioBench.Probe probe = bench.probe(address, "Sensor " + address.charAt(address.length() - 1));
        probe.advertises(RadioBench.ENVIRONMENT);
        int pressure = probe.characteristic(RadioBench.ENVIRONMENT, RadioBench.PRESSURE);
        int temperature = probe.characteristic(RadioBench.ENVIRONMENT, uuid("2A6E"));
        probe.characteristic(RadioBench.ENVIRONMENT, uuid("2A6F"));
        background(() -> {
            while (!Thread.currentThread().isInterrupted()) {
                if (probe.isListenedTo(temperature)) {
                    probe.send(temperature, (byte) 0x66, (byte) 0x08);
                    probe.send(pressure, (byte) 0x02, (byte) 0x76, (byte) 0x0F, (byte) 0);
                }
                LockSupport.parkNanos(10_000_000);
            }
        });
        return probe;
    }

    private static void background(Runnable work) {
        Thread thread = new Thread(work, "background");
        thread.setDaemon(true);
        thread.start();
    }

    private static String uuid(String digits) {
        return "0000" + digits.toLowerCase(Locale.ROOT) + "-0000-1000-8000-00805f9b34fb";
    }

    @Test
    void aLogOfARadioProbeKeepsItsAddressAndItsRolesForTheNextTime() throws Exception {
        sensor(ADDRESS);
        Ran first = run(
                "log",
                "--probe",
                "air=ble:" + ADDRESS + "@hci0",
                "--profile",
                "air=ble-environment",
                "--role",
                "air.temperature=return",
                "--seconds",
                2,
                "--workspace",
                workspace());
        assertThat(first.code()).as(first.err()).isZero();
        assertThat(first.err()).contains("air: looking for ble:" + ADDRESS + "@hci0");
        try (SqliteStore store = stored()) {
            assertThat(store.header(1).probes().get(0).identity()).isEqualTo(ADDRESS);
            SampleBlock temperature = store.samples(1, 0, 1, 0, Long.MAX_VALUE);
            assertThat(temperature.values()).hasSizeGreaterThan(20).containsOnly(21.5);
        }
        Ran again = run(
                "log",
                "--probe",
                "room=ble:" + ADDRESS,
                "--profile",
                "room=ble-environment",
                "--seconds",
                1,
                "--workspace",
                workspace());
        assertThat(again.code()).as(again.err()).isZero();
        assertThat(again.err()).contains("room: temperature is the return, as this device was used the last time");
        Ran without = run(
                "log",
                "--probe",
                "room=ble:" + ADDRESS,
                "--profile",
                "room=ble-environment",
                "--seconds",
                1,
                "--no-roles",
                "--workspace",
                workspace());
        assertThat(without.code()).as(without.err()).isZero();
        try (SqliteStore store = stored()) {
            assertThat(store.header(2).probes().get(0).roles()).isEqualTo(Map.of("temperature", Role.RETURN));
            assertThat(store.header(3).probes().get(0).roles()).isEmpty();
        }
        sensor(OTHER);
        Ran another = run(
                "log",
                "--probe",
                "room=ble:" + OTHER,
                "--profile",
                "room=ble-environment",
                "--seconds",
                1,
                "--workspace",
                workspace());
        assertThat(another.code()).isEqualTo(4);
        assertThat(another.err())
                .contains("probe room was " + ADDRESS + " the last time, and now " + OTHER + " is named")
                .contains("--another-device room");
    }

    @Test
    void aCaptureOfARadioProbeIsDecodedAsTheLogIs() throws Exception {
        sensor(ADDRESS);
        Path file = folder.resolve("air.capture");
        Ran ran = run(
                "capture",
                "--probe",
                "air=ble:" + ADDRESS,
                "--profile",
                "air=ble-environment",
                "--out",
                file,
                "--seconds",
                1);
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out()).containsPattern("captured air [1-9][0-9]* bytes");
        assertThat(Files.readString(file)).contains("ble:" + ADDRESS);
        Ran decoded = run("decode", file);
        assertThat(decoded.code()).as(decoded.err()).isZero();
        assertThat(decoded.out().lines().filter(l -> l.contains("temperature"))).hasSizeGreaterThan(10);
    }

    @Test
    void theListNamesWhatIsHeardWithItsProfileSignalHealthAndLastUse() throws Exception {
        RadioBench.Probe sensor = sensor(ADDRESS);
        bench.probe(OTHER, "");
        assertThat(run(
                                "log",
                                "--probe",
                                "air=ble:" + ADDRESS,
                                "--profile",
                                "air=ble-environment",
                                "--role",
                                "air.temperature=supply",
                                "--seconds",
                                1,
                                "--workspace",
                                workspace())
                        .code())
                .isZero();
        Ran ran = run("probes", "--workspace", workspace());
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out().lines())
                .contains(
                        "  good",
                        "    gives air-pressure in Pa, temperature in \u00b0C, humidity in %",
                        "    settlemark log --probe gauge=ble:" + ADDRESS + " --profile gauge=ble-environment")
                .anyMatch(l -> l.startsWith("ble:" + ADDRESS + "  Sensor 1  -60 dBm, heard 0 s ago"))
                .anyMatch(l -> l.matches(
                        "  last used \\d{4}-\\d\\d-\\d\\d as air by profile ble-environment:" + " temperature supply"))
                .anyMatch(l -> l.startsWith("  not ") && l.contains("bthome-2"))
                .anyMatch(l -> l.startsWith("ble:" + OTHER + "  (no name)  -60 dBm"));
        assertThat(ran.out().indexOf(OTHER))
                .as("strangers come last")
                .isGreaterThan(ran.out().indexOf(ADDRESS));
        sensor.onAir(false);
        // Each command hears for itself, so what was heard a moment ago does not count.
        Ran json = run("probes", "--json", "--workspace", workspace());
        assertThat(json.out().lines().filter(l -> l.contains(ADDRESS)))
                .singleElement()
                .satisfies(l -> assertThat(l)
                        .contains(
                                "\"in_reach\":false",
                                "\"health\":\"failure\"",
                                "\"roles\":{\"temperature\":\"supply\"}")
                        .containsSubsequence("asleep", "out of range", "a telephone or another computer holds it"));
    }

    @Test
    void theRigServesItsInstrumentsAndALogReadsThem() throws Exception {
        StringWriter said = new StringWriter();
        background(() -> Commands.run(
                program,
                new PrintWriter(said, true),
                new PrintWriter(said, true),
                "rig",
                "--ble",
                "hci1",
                "--no-drop-outs"));
        RadioBench.await("served", () -> said.toString().contains("at ble:"));
        assertThat(said.toString()).contains("serving set by demo-set-ble at ble:" + RadioBench.SERVED);
        Ran ran = run(
                "log",
                "--probe",
                "set=ble:" + RadioBench.SERVED,
                "--profile",
                "set=demo-set-ble",
                "--seconds",
                3,
                "--workspace",
                workspace());
        assertThat(ran.code()).as(ran.err()).isZero();
        try (SqliteStore store = stored()) {
            for (String channel : List.of("port-1", "port-2", "probe-1", "probe-2")) {
                int index = store.header(1)
                        .probes()
                        .get(0)
                        .profile()
                        .channelIndex(channel)
                        .orElseThrow();
                assertThat(store.samples(1, 0, index, 0, Long.MAX_VALUE).size())
                        .as(channel)
                        .isGreaterThan(10);
            }
            // 87 % when it comes out of its case.
            assertThat(store.samples(1, 0, 4, 0, Long.MAX_VALUE).values()).containsOnly(87);
            assertThat(store.header(1).simulated()).isTrue();
        }
    }

    @Test
    void theRigServesAnyBluetoothProfileByNameAndSaysWhichInstrumentsThereAre() throws Exception {
        StringWriter said = new StringWriter();
        background(() -> Commands.run(
                program,
                new PrintWriter(said, true),
                new PrintWriter(said, true),
                "rig",
                "--ble",
                "room=hci1",
                "--profile",
                "room=ble-environment"));
        RadioBench.await("served", () -> said.toString().contains("serving room by ble-environment"));
        Ran ran = run(
                "log",
                "--probe",
                "room=ble:" + RadioBench.SERVED,
                "--profile",
                "room=ble-environment",
                "--seconds",
                3,
                "--workspace",
                workspace());
        assertThat(ran.code()).as(ran.err()).isZero();
        try (SqliteStore store = stored()) {
            // A share stands still at 45 %.
            assertThat(store.samples(1, 0, 2, 0, Long.MAX_VALUE).values())
                    .isNotEmpty()
                    .containsOnly(45);
            assertThat(store.samples(1, 0, 1, 0, Long.MAX_VALUE).values()).isNotEmpty();
        }
        Ran unknown = run("rig", "--ble", "manometer=hci1");
        assertThat(unknown.code()).isEqualTo(4);
        assertThat(unknown.err())
                .contains("the rig has a gauge, an air instrument and both as a set, not \"manometer\"");
    }

    @Test
    void sealedFramesNeedTheirKeyWhichIsNeitherStoredNorPrinted() throws Exception {
        RadioBench.Probe probe = bench.probe(SealedSensor.ADDRESS, "Sealed");
        probe.serviceData(BTHOME, ByteText.ofHex(SealedSensor.FRAME).toBytes());
        Path key = Files.writeString(folder.resolve("key"), KEY);
        Object[] log = {
            "log",
            "--probe",
            "room=ble:" + SealedSensor.ADDRESS,
            "--profile",
            "room=" + SealedSensor.profile(folder),
            "--seconds",
            1,
            "--workspace",
            workspace(),
            "--key",
            "room=" + key
        };
        Ran ran = run(log);
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.err() + ran.out()).doesNotContainIgnoringCase(KEY);
        try (SqliteStore store = stored()) {
            assertThat(store.samples(1, 0, 0, 0, Long.MAX_VALUE).values())
                    .isNotEmpty()
                    .containsOnly(25.06);
        }
        String raw = Files.readString(workspace(), StandardCharsets.ISO_8859_1);
        assertThat(raw).doesNotContain(KEY);
        assertThat(raw).doesNotContain(new String(ByteText.ofHex(KEY).toBytes(), StandardCharsets.ISO_8859_1));
        Ran without = run("reread", 1, "--workspace", workspace());
        assertThat(without.code()).as(without.err()).isEqualTo(3);
        Ran with = run("reread", 1, "--workspace", workspace(), "--key", "room=" + key);
        assertThat(with.code()).as(with.err()).isZero();
        Ran stranger = run("reread", 1, "--workspace", workspace(), "--key", "hall=" + key);
        assertThat(stranger.code()).isEqualTo(2);
        assertThat(stranger.err()).contains("--key names \"hall\", but the session's probes are [room]");
    }

    @Test
    void aKeyForAProbeThatNeedsNoneIsRefused() throws Exception {
        Path key = Files.writeString(folder.resolve("key"), KEY);
        Ran ran = run(
                "log",
                "--probe",
                "air=ble:" + ADDRESS,
                "--profile",
                "air=ble-environment",
                "--key",
                "air=" + key,
                "--workspace",
                workspace());
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.err())
                .contains("no such probe whose profile protects its frames")
                .doesNotContain(KEY);
    }

    @Test
    void withoutAnAdapterASentenceSaysSoAndTheListGoesOn() {
        bench.unplugAdapters();
        assertRefused("this computer has no Bluetooth adapter: plug one in");
        Ran list = run("probes", "--workspace", workspace());
        assertThat(list.err()).contains("this computer has no Bluetooth adapter");
        // Where this machine has a serial port of its own, that is in the list all the same.
        assertThat(list.code()).isEqualTo(list.out().isEmpty() ? 4 : 0);
    }

    @Test
    void anAdapterThatIsSwitchedOffIsSaid() {
        bench.switchOff();
        assertRefused("is switched off: switch Bluetooth on in the system's settings");
    }

    @Test
    void aServiceThatDoesNotRunIsSaid() {
        bench.stopService();
        assertRefused("the Bluetooth service does not run on this computer: install bluez and start it");
        Ran rig = run("rig", "--ble", "hci1", "--seconds", 1);
        assertThat(rig.code()).isEqualTo(4);
        assertThat(rig.err()).contains("the Bluetooth service does not run on this computer");
    }

    @Test
    void aServiceThatRefusesThisAccountIsSaid() {
        bench.refuse();
        assertRefused("this account may not use Bluetooth: add it to the group bluetooth");
    }

    private void assertRefused(String words) {
        Ran ran = run(
                "log", "--probe", "air=ble:" + ADDRESS, "--profile", "air=ble-environment", "--workspace", workspace());
        assertThat(ran.err()).contains(words);
        assertThat(ran.code()).isEqualTo(4);
    }

    @Test
    void aDeviceIsPairedWithByAPersonListedAndForgotten() throws Exception {
        sensor(ADDRESS);
        List<String> asked = new ArrayList<>();
        program.pair(ProbeAddress.written("ble:" + ADDRESS), new Agreeable(asked));
        assertThat(asked).containsExactly("Sensor 1 (" + ADDRESS + ") shows 123456");
        assertThat(run("probes").out().lines()).anyMatch(l -> l.startsWith("ble:" + ADDRESS) && l.contains(", paired"));
        Ran forgotten = run("probes", "--forget", "ble:" + ADDRESS);
        assertThat(forgotten.code()).as(forgotten.err()).isZero();
        assertThat(bench.wasCalled("RemoveDevice /org/bluez/hci0/dev_C0_FF_EE_00_00_01"))
                .isTrue();
        Ran stranger = run("probes", "--forget", "ble:" + OTHER);
        assertThat(stranger.code()).isEqualTo(4);
        assertThat(stranger.err()).contains("this computer knows no device " + OTHER);
    }

    private record Agreeable(List<String> asked) implements PairingPerson {
        @Override
        public boolean confirm(String probe, int number) {
            return asked.add(probe + " shows " + number);
        }

        @Override
        public boolean allow(String probe) {
            return false;
        }

        @Override
        public OptionalInt passkey(String probe) {
            return OptionalInt.empty();
        }

        @Override
        public void show(String probe, int number) {
            asked.add("shown " + number);
        }

        @Override
        public void brokenOff() {
            asked.add("broken off");
        }
    }

    @Test
    void withoutABusALogOfAWiredGaugeGoesOnAndOneByRadioSaysWhy() throws Exception {
        PluggedGauges plugged = new PluggedGauges();
        plugged.plugIn("/dev/ttyUSB0", "usb:1209:0001:A1", "100.0\n");
        Program.Probe wired = new Program.Probe("wired", "/dev/ttyUSB0", ProfileLibrary.get("plain-line"), List.of());
        Program.Probe radio =
                new Program.Probe("radio", "ble:" + ADDRESS, ProfileLibrary.get("ble-environment"), List.of());
        StringWriter said = new StringWriter();
        Hosts hosts = new Hosts(plugged, RadioBench.hostWithoutBus());
        assertThat(log(hosts, said, wired)).isZero();
        assertThatThrownBy(() -> log(hosts, said, wired, radio))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("Bluetooth needs the system's message bus, and there is none")
                .hasMessageContaining("Serial gauges work without it");
        DeviceList list = new DeviceSearch(hosts, Optional.of(workspace()), List.of()).look();
        assertThat(list.devices())
                .singleElement()
                .satisfies(d -> assertThat(d.probe().address().path()).isEqualTo("/dev/ttyUSB0"));
        assertThat(list.remarks()).singleElement().asString().contains("message bus");
    }

    private int log(Hosts hosts, StringWriter said, Program.Probe... probes) throws Exception {
        Program.Log request =
                new Program.Log(List.of(probes), Optional.empty(), OptionalDouble.of(0.2), "log", Set.of());
        try (SqliteStore store = Workspaces.person(Optional.of(workspace()))) {
            return new LogRun(request, store, hosts, new PrintWriter(said)).run(new PrintWriter(said), "test");
        }
    }

    @Test
    void aProbeOfASerialProfileIsRefusedByRadio() {
        Ran ran = run("log", "--probe", "g=ble:" + ADDRESS, "--profile", "g=plain-line", "--workspace", workspace());
        assertThat(ran.code()).isEqualTo(4);
        assertThat(ran.err()).contains("profile \"plain-line\" describes no Bluetooth probe");
    }

    @Test
    void garbageFromOneProbeAndAFloodFromAnotherLoseNothingOfAThird() throws Exception {
        String third = "C0:FF:EE:00:00:03";
        RadioBench.Probe good = environment(ADDRESS);
        RadioBench.Probe garbage = environment(OTHER);
        RadioBench.Probe flood = environment(third);
        byte[] tooLong = new byte[600];
        int count = 300;
        background(() -> {
            RadioBench.await("all", () -> good.isListenedTo(2) && garbage.isListenedTo(2) && flood.isListenedTo(2));
            long start = System.nanoTime();
            for (int i = 0; i < 10 * count; i++) {
                while (System.nanoTime() - start < i * 1_000_000L) {
                    Thread.onSpinWait();
                }
                flood.send(1, (byte) i, (byte) (i >> 8));
                if (i % 10 == 0) {
                    good.send(1, (byte) (i / 10), (byte) (i / 10 >> 8));
                    garbage.send(1, i % 20 == 0 ? tooLong : new byte[] {(byte) i});
                }
            }
        });
        Ran ran = run(
                "log",
                "--probe",
                "good=ble:" + ADDRESS,
                "--probe",
                "bad=ble:" + OTHER,
                "--probe",
                "fast=ble:" + third,
                "--profile",
                "good=ble-environment",
                "--profile",
                "bad=ble-environment",
                "--profile",
                "fast=ble-environment",
                "--seconds",
                8,
                "--workspace",
                workspace());
        assertThat(ran.code()).as(ran.err()).isZero();
        try (SqliteStore store = stored()) {
            SampleBlock samples = store.samples(1, 0, 1, 0, Long.MAX_VALUE);
            assertThat(samples.size()).isEqualTo(count);
            for (int i = 0; i < count; i++) {
                assertThat(samples.values()[i]).isEqualTo(i / 100.0);
            }
            assertThat(store.samples(1, 2, 1, 0, Long.MAX_VALUE).size()).isEqualTo(10 * count);
            int[] rejected = {0};
            store.rejected(1, 1, r -> rejected[0]++);
            assertThat(rejected[0]).isEqualTo(count);
            assertThat(store.sampleCount(1, 1)).isZero();
            store.events(
                    1,
                    event -> assertThat(event)
                            .as("nothing was lost or overrun")
                            .satisfies(e -> assertThat(
                                            e instanceof SessionEvent.Link link
                                                    ? link.change().name()
                                                    : "")
                                    .isNotIn("LOST", "OVERRUN")));
        }
    }

    private RadioBench.Probe environment(String address) {
        RadioBench.Probe probe = bench.probe(address, "Sensor");
        for (String uuid : List.of("2A6D", "2A6E", "2A6F")) {
            probe.characteristic(RadioBench.ENVIRONMENT, uuid(uuid));
        }
        return probe;
    }
}
