package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.ProbeAddress;

/** What becomes of links when the bus, the service, the adapter or the probe is not there, and when it is back. */
@Timeout(60)
final class BleOutageTest {
    private static final String ADDRESS = BleBench.ADDRESS;

    private BleBench bench;
    private FakeDevice device;
    private final BleHeard heard = new BleHeard();

    @BeforeEach
    void setUp() throws Exception {
        bench = new BleBench();
        device = bench.probe(ADDRESS);
    }

    @AfterEach
    void tearDown() throws Exception {
        bench.close();
    }

    @Test
    void theServiceDiesAndTheProbeComesBackWithTheNextOne() throws Exception {
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        bench.service.close();
        Await.until("lost", 3000, () -> heard.count(LinkChange.LOST) >= 1);
        Await.until("the reason", 3000, () -> heard.said("the Bluetooth service does not run"));
        bench.service = new FakeBluez(bench.bus.address());
        FakeDevice again = bench.probe(ADDRESS);
        Await.until("back", 8000, () -> heard.count(LinkChange.BACK) == 1);
        again.characteristics.get(0).send((byte) 5);
        Await.until("a value", 2000, () -> heard.numbers(0).equals(List.of(5)));
        assertThat(bench.host.central().ears().handlers()).isEqualTo(1);
    }

    @Test
    void theBusItselfDiesAndTheProbeComesBackWithTheNextOne() throws Exception {
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        bench.bus.kill();
        Await.until("lost", 3000, () -> heard.count(LinkChange.LOST) >= 1);
        bench.service.close();
        bench.bus.start();
        bench.service = new FakeBluez(bench.bus.address());
        FakeDevice again = bench.probe(ADDRESS);
        Await.until("back", 8000, () -> heard.count(LinkChange.BACK) == 1);
        again.characteristics.get(0).send((byte) 6);
        Await.until("a value", 2000, () -> heard.numbers(0).equals(List.of(6)));
    }

    @Test
    void theAdapterIsPulledWithoutAWordAboutItsDevicesAndPutBack() throws Exception {
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        bench.service.remove(FakeBluez.HCI0);
        Await.until("the reason", 3000, () -> heard.said("this computer has no Bluetooth adapter: plug one in"));
        assertThat(bench.host.central().objects().paths(Bluez.DEVICE, "")).isEmpty();
        assertThat(bench.host.central().objects().paths(Bluez.CHARACTERISTIC, ""))
                .isEmpty();
        bench.service.removeBelow(FakeBluez.HCI0);
        device.drop();
        bench.service.adapter.set("Powered", false);
        bench.service.adapter.set("Discovering", false);
        bench.service.add(bench.service.adapter);
        Await.until("back", 8000, () -> heard.count(LinkChange.BACK) == 1);
        assertThat(bench.service.calls()).contains("Powered=true");
    }

    @Test
    void anAdapterThatIsSwitchedOffByAPersonIsLeftOffAndTakenUpWhenItIsOn() throws LinkException {
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        device.drop();
        bench.service.adapter.change("Powered", false);
        Await.until("the reason", 3000, () -> heard.said("is switched off: switch Bluetooth on"));
        bench.service.adapter.change("Discovering", false);
        assertThat(bench.service.calls()).doesNotContain("Powered=true");
        bench.service.adapter.change("Powered", true);
        Await.until("back", 8000, () -> heard.count(LinkChange.BACK) == 1);
    }

    @Test
    void aBlockedAdapterIsNamedWithTheKeyToPress() {
        bench.service.adapter.change("Powered", false);
        bench.service.adapter.change("PowerState", "off-blocked");
        assertThatThrownBy(() -> bench.open(ADDRESS, BleBench.pressure(1), heard))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("00:AA:01:00:00:00 is blocked: press the flight-mode key");
        assertThat(bench.service.calls()).isEmpty();
    }

    @Test
    void theComputerSleptSoEveryLinkIsSetUpAnew() throws LinkException {
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        bench.service.signal("/org/freedesktop/login1", "org.freedesktop.login1.Manager", "PrepareForSleep", "b", true);
        bench.service.signal(
                "/org/freedesktop/login1", "org.freedesktop.login1.Manager", "PrepareForSleep", "b", false);
        Await.until("lost", 3000, () -> heard.count(LinkChange.LOST) == 1);
        assertThat(heard.said("the computer slept")).isTrue();
        Await.until("back", 8000, () -> heard.count(LinkChange.BACK) == 1);
    }

    @Test
    void aProbeThatIsNotHeardIsExplainedInOrderAndTakenUpWhenItIs() throws LinkException {
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        device.onAir = false;
        device.drop();
        Await.until("lost", 2000, () -> heard.count(LinkChange.LOST) == 1);
        Await.until("the causes", 5000, () -> heard.said("is not heard"));
        assertThat(heard.words().get(2)).containsSubsequence("asleep", "out of range", "held by a telephone");
        long calls = bench.service.count("Connect " + ADDRESS);
        assertThat(calls).as("no call into the void").isEqualTo(1);
        device.onAir = true;
        Await.until("back", 8000, () -> heard.count(LinkChange.BACK) == 1);
    }

    @Test
    void aProbeThatIsNotThereAtAllEndsTheOpening() {
        device.onAir = false;
        assertThatThrownBy(() -> bench.open(ADDRESS, BleBench.pressure(1), heard))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("probe " + ADDRESS + " is not heard");
        assertThat(heard.changes()).isEmpty();
        assertThat(bench.service.adapter.isTrue("Discovering")).isFalse();
    }

    @Test
    void aDeviceThatVanishesBetweenTheScanAndTheCallIsLookedForAgain() throws LinkException {
        device.connectFaults.add(new org.freedesktop.dbus.errors.UnknownObject("gone"));
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        assertThat(bench.service.count("Connect " + ADDRESS)).isEqualTo(2);
    }

    @Test
    void anAdapterThatIsNotReadyIsSaidInWords() {
        bench.service.adapter.startFault = new org.bluez.Error.NotReady("Resource Not Ready");
        assertThatThrownBy(() -> bench.open(ADDRESS, BleBench.pressure(1), heard))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("is switched off");
    }

    @Test
    void oneAdapterOfSeveralIsChosenByItsAddress() throws LinkException {
        FakeAdapter second = new FakeAdapter(bench.service, "/org/bluez/hci1");
        second.set("Address", "00:AA:01:00:00:01");
        bench.service.add(second);
        bench.open(ADDRESS + "@00:aa:01:00:00:00", BleBench.pressure(Double.NaN), heard);
        assertThatThrownBy(
                        () -> bench.open(BleBench.OTHER + "@00:AA:01:00:00:07", BleBench.pressure(1), new BleHeard()))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("no Bluetooth adapter 00:AA:01:00:00:07")
                .hasMessageContaining("00:AA:01:00:00:00 and 00:AA:01:00:00:01");
    }

    @Test
    void fiveProbesWhereFourFit() throws Exception {
        List<BleHeard> all = new ArrayList<>();
        for (int i = 1; i <= 4; i++) {
            String address = "C0:FF:EE:00:01:0" + i;
            bench.probe(address);
            BleHeard one = new BleHeard();
            all.add(one);
            bench.open(address, BleBench.pressure(Double.NaN), one);
        }
        assertThatThrownBy(() -> bench.open(ADDRESS, BleBench.pressure(1), heard))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("serves 4 probes already");
        assertThat(all).allMatch(h -> h.changes().equals(List.of(LinkChange.UP)));
        assertThatThrownBy(() -> bench.open("C0:FF:EE:00:01:01", BleBench.pressure(1), heard))
                .hasMessageContaining("is open already");
    }

    @Test
    void probesThatReturnTogetherAreCalledOneAfterTheOther() throws Exception {
        List<FakeDevice> devices = new ArrayList<>();
        List<BleHeard> all = new ArrayList<>();
        for (int i = 1; i <= 4; i++) {
            String address = "C0:FF:EE:00:01:0" + i;
            FakeDevice one = bench.probe(address);
            one.resolveMillis = 200;
            devices.add(one);
            all.add(new BleHeard());
            bench.open(address, BleBench.pressure(Double.NaN), all.get(i - 1));
        }
        int before = bench.service.calls().size();
        devices.forEach(FakeDevice::drop);
        Await.until("all back", 10_000, () -> all.stream().allMatch(h -> h.count(LinkChange.BACK) == 1));
        // Each call is followed by the subscription of its own probe before the next: never two at a time.
        List<String> calls = bench.service.calls();
        List<String> order = calls.subList(before, calls.size()).stream()
                .filter(c -> c.startsWith("Connect"))
                .toList();
        assertThat(order).hasSize(4).doesNotHaveDuplicates();
        assertThat(bench.service.mostAtATime()).isEqualTo(1);
    }

    @Test
    void withoutABusThereIsAPlainSentence(@TempDir Path folder) {
        BleHost host =
                new BleHost(Fixtures.THREADS, Optional.empty(), "unix:path=" + folder.resolve("none"), BleBench.SHORT);
        assertThatThrownBy(() ->
                        host.open(new ProbeAddress("ble", ADDRESS), BleBench.pressure(1), Fixtures.ticker(), heard))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("Bluetooth needs the system's message bus")
                .hasMessageContaining("Serial gauges work without it");
        assertThatThrownBy(host::found).isInstanceOf(LinkException.class);
        assertThatThrownBy(host::look).isInstanceOf(LinkException.class).hasMessageContaining("systemctl start dbus");
    }

    @Test
    void withoutTheServiceThereIsAPlainSentence() {
        bench.service.close();
        assertThatThrownBy(() -> bench.open(ADDRESS, BleBench.pressure(1), heard))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("the Bluetooth service does not run on this computer: install bluez");
    }

    @Test
    void withoutAnAdapterThereIsAPlainSentence() {
        bench.service.remove(FakeBluez.HCI0);
        assertThatThrownBy(() -> bench.open(ADDRESS, BleBench.pressure(1), heard))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("this computer has no Bluetooth adapter");
    }

    @Test
    void anAddressThatIsNoneAndAProfileThatIsForACableAreRefused() {
        assertThatThrownBy(() -> bench.open("the blue one", BleBench.pressure(1), heard))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("six pairs of digits")
                .hasMessageContaining("\"the blue one\"");
        assertThatThrownBy(() -> bench.open(ADDRESS, Fixtures.PROFILE, heard))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("describes no Bluetooth probe");
    }
}
