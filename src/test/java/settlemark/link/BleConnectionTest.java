package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.freedesktop.dbus.exceptions.DBusExecutionException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import settlemark.profile.Profile;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.ProbeLink;

/** A probe that is connected, as the link sees it over a real message bus. */
@Timeout(60)
final class BleConnectionTest {
    private static final String ADDRESS = BleBench.ADDRESS;

    private BleBench bench;
    private FakeDevice device;
    private FakeCharacteristic pressure;
    private final BleHeard heard = new BleHeard();

    @BeforeEach
    void setUp() throws Exception {
        bench = new BleBench();
        device = bench.probe(ADDRESS);
        pressure = device.characteristics.get(0);
    }

    @AfterEach
    void tearDown() throws Exception {
        bench.close();
    }

    @Test
    void theScanAsksForDuplicatesOfLowEnergyAndStopsBeforeTheCall() throws LinkException {
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        assertThat(bench.service.adapter.filter).isEqualTo(Map.of("DuplicateData", true, "Transport", "le"));
        assertThat(bench.service.calls())
                .containsSubsequence("StartDiscovery", "StopDiscovery", "Connect " + ADDRESS, "StartNotify 2a6d");
        assertThat(bench.service.adapter.isTrue("Discovering")).isFalse();
        assertThat(heard.changes()).containsExactly(LinkChange.UP);
    }

    @Test
    void aValueThatComesBeforeTheReplyIsKept() throws LinkException {
        pressure.onStartNotify = () -> pressure.send((byte) 7);
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        Await.until("the early value", 2000, () -> heard.numbers(0).equals(List.of(7)));
    }

    @Test
    void aThousandValuesASecondArriveInOrderAndNoneIsLost() throws LinkException {
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        int count = 5000;
        long start = System.nanoTime();
        for (int i = 0; i < count; i++) {
            while (System.nanoTime() - start < i * 1_000_000L) {
                Thread.onSpinWait();
            }
            pressure.send(BleHeard.bytes(i));
        }
        Await.until("all values", 20_000, () -> heard.count() == count);
        assertThat(heard.numbers(0)).isEqualTo(IntStream.range(0, count).boxed().toList());
        assertThat(heard.timeWentBack()).isFalse();
        assertThat(heard.changes()).containsExactly(LinkChange.UP);
    }

    @Test
    void startUpDescriptorsAndReadsComeInThatOrder() throws LinkException {
        pressure.descriptor(BleProfiles.uuid("2904"), new byte[] {6, -1, 0x24, 0x27, 1, 0, 0});
        FakeCharacteristic battery = device.characteristic(BleProfiles.BATTERY_SERVICE, BleProfiles.BATTERY);
        device.characteristic(BleProfiles.DEMO_SERVICE, BleProfiles.DEMO_COMMAND);
        battery.reading = () -> new byte[] {88};
        Profile profile = new BleProfiles()
                .described(BleProfiles.ESS, BleProfiles.PRESSURE, Double.NaN)
                .reads(BleProfiles.BATTERY_SERVICE, BleProfiles.BATTERY, 0.2)
                .startsBy(BleProfiles.DEMO_COMMAND, "A5 01")
                .profile();
        bench.open(ADDRESS, profile, heard);
        assertThat(bench.service.calls())
                .containsSubsequence(
                        "WriteValue 1e00 a501 request", "ReadDescriptor", "StartNotify 2a6d", "ReadValue 2a19");
        // Input 2 is the descriptor of input 0; input 1 is the battery, which is read again and again.
        Await.until("two reads", 3000, () -> heard.count(1) >= 3);
        assertThat(heard.chunks().get(0).input()).isEqualTo(2);
        assertThat(heard.numbers(1)).startsWith(88, 88);
    }

    @Test
    void anActionWritesAndIsRefusedByNameWhereThereIsNone() throws LinkException {
        device.characteristic(BleProfiles.DEMO_SERVICE, BleProfiles.DEMO_COMMAND);
        Profile profile = new BleProfiles()
                .notifies(BleProfiles.ESS, BleProfiles.PRESSURE, Double.NaN)
                .acts("zero", BleProfiles.DEMO_COMMAND, "5A", true)
                .acts("beep", BleProfiles.DEMO_COMMAND, "07", false)
                .profile();
        ProbeLink link = bench.open(ADDRESS, profile, heard);
        link.act("zero");
        link.act("beep");
        assertThat(bench.service.calls())
                .containsSubsequence("WriteValue 1e00 5a request", "WriteValue 1e00 07 command");
        assertThatThrownBy(() -> link.act("explode"))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("\"explode\"")
                .hasMessageContaining("zero, beep");
    }

    @Test
    void aProbeThatLeavesAndReturnsFiftyTimesIsHeardOnceEachTime() throws LinkException {
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        int handlers = bench.host.central().ears().handlers();
        for (int round = 1; round <= 50; round++) {
            int expected = round;
            device.drop();
            Await.until("back " + round, 8000, () -> heard.count(LinkChange.BACK) == expected && pressure.notifying);
            pressure.send(BleHeard.bytes(round));
            Await.until("value " + round, 2000, () -> heard.count() == expected);
            assertThat(bench.host.central().ears().handlers())
                    .isEqualTo(handlers)
                    .isEqualTo(1);
        }
        assertThat(heard.numbers(0))
                .isEqualTo(IntStream.rangeClosed(1, 50).boxed().toList());
        assertThat(heard.count(LinkChange.LOST)).isEqualTo(50);
        assertThat(bench.host.central().oddSignals()).isZero();
    }

    @Test
    void aConnectionThatEndsWhenItsValuesAreAskedForNamesThePairingThoughTheEndIsToldLater() throws LinkException {
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        pressure.onStartNotify = () -> {
            CompletableFuture.delayedExecutor(10, TimeUnit.MILLISECONDS).execute(device::drop);
            throw new BluezFailed("Operation failed with ATT error: 0x0e");
        };
        device.drop();
        Await.until("the cause", 20_000, () -> heard.said("only to a paired computer"));
    }

    /** The service knows no better word for it than this. */
    private static final class BluezFailed extends DBusExecutionException {
        private static final long serialVersionUID = 1L;

        BluezFailed(String words) {
            super(words);
        }
    }

    @Test
    void connectedAndNotifyingButSilentIsStaleThenAskedAnewThenConnectedAnew() throws LinkException {
        bench.open(ADDRESS, BleBench.pressure(0.1), heard);
        pressure.send((byte) 1);
        Await.until("stale", 3000, () -> heard.count(LinkChange.LOST) == 1);
        assertThat(heard.said("has sent nothing for")).isTrue();
        assertThat(device.isTrue("Connected")).isTrue();
        Await.until("a second call", 5000, () -> bench.service.count("Connect " + ADDRESS) >= 2);
        assertThat(bench.service.calls())
                .containsSubsequence("StartNotify 2a6d", "StopNotify 2a6d", "StartNotify 2a6d", "Disconnect");
        assertThat(heard.count(LinkChange.BACK)).isZero();
        Await.until("a third subscription", 5000, () -> pressure.notifying);
        pressure.send((byte) 2);
        Await.until("back with the first value", 3000, () -> heard.count(LinkChange.BACK) == 1);
    }

    @Test
    void theSameValueAgainAndAgainIsAlive() throws LinkException {
        bench.open(ADDRESS, BleBench.pressure(0.1), heard);
        for (int i = 0; i < 30; i++) {
            int expected = i + 1;
            pressure.send((byte) 9);
            Await.until("value", 1000, () -> heard.count() == expected);
            java.util.concurrent.locks.LockSupport.parkNanos(50_000_000);
        }
        assertThat(heard.changes()).containsExactly(LinkChange.UP);
    }

    @Test
    void aProbeThatChangesItsServicesUnderTheLinkIsConnectedAnew() throws LinkException {
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        bench.service.remove(pressure.path);
        Await.until("connected anew", 8000, () -> heard.count(LinkChange.BACK) == 1);
        assertThat(bench.service.count("Connect " + ADDRESS)).isEqualTo(2);
        pressure.send((byte) 8);
        Await.until("a value", 2000, () -> heard.numbers(0).equals(List.of(8)));
    }

    @Test
    void servicesThatAreShownLateAreWaitedFor() throws LinkException {
        device.exportMillis = 400;
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        assertThat(heard.changes()).containsExactly(LinkChange.UP);
    }

    @Test
    void servicesThatAreNeverShownEndTheOpening() {
        device.exportMillis = -1;
        assertThatThrownBy(() -> bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("did not tell its services");
        assertThat(device.isTrue("Connected")).isFalse();
        assertThat(bench.host.central().ears().handlers()).isZero();
    }

    @Test
    void aProbeOfAnotherProfileIsRefusedWithTheReason() {
        Profile other = new BleProfiles()
                .notifies(BleProfiles.DEMO_SERVICE, BleProfiles.DEMO_VALUE, 1)
                .profile();
        assertThatThrownBy(() -> bench.open(ADDRESS, other, heard))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("Probe 1 (" + ADDRESS + ")")
                .hasMessageContaining("profile \"invented\"")
                .hasMessageContaining("no characteristic " + BleProfiles.DEMO_VALUE)
                .hasMessageContaining("only services 181A");
        assertThat(device.isTrue("Connected")).isFalse();
    }

    @Test
    void aLinkThatBreaksOffWhileItIsSetUpIsTriedAgain() throws LinkException {
        for (int i = 0; i < 4; i++) {
            device.connectFaults.add(new org.bluez.Error.Failed("le-connection-abort-by-local"));
        }
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        assertThat(bench.service.count("Connect " + ADDRESS)).isEqualTo(5);
        assertThat(heard.changes()).containsExactly(LinkChange.UP);
    }

    @Test
    void whatAnotherProgramHoldsIsNotDisconnected() throws LinkException {
        device.connectFaults.add(new org.bluez.Error.InProgress("Operation already in progress"));
        device.connectFaults.add(new org.bluez.Error.InProgress("Operation already in progress"));
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        assertThat(bench.service.count("Connect " + ADDRESS)).isEqualTo(3);
        List<String> calls = bench.service.calls();
        assertThat(calls.subList(0, calls.lastIndexOf("Connect " + ADDRESS))).doesNotContain("Disconnect");
    }

    @Test
    void aProbeThatDisconnectsInTheMiddleOfAReadComesBack() throws LinkException {
        FakeCharacteristic battery = device.characteristic(BleProfiles.BATTERY_SERVICE, BleProfiles.BATTERY);
        java.util.concurrent.atomic.AtomicInteger reads = new java.util.concurrent.atomic.AtomicInteger();
        battery.reading = () -> {
            if (reads.incrementAndGet() == 2) {
                device.drop();
                throw new org.bluez.Error.Failed("Not connected");
            }
            return new byte[] {42};
        };
        Profile profile = new BleProfiles()
                .reads(BleProfiles.BATTERY_SERVICE, BleProfiles.BATTERY, 0.1)
                .profile();
        bench.open(ADDRESS, profile, heard);
        Await.until("values after the return", 8000, () -> heard.count(LinkChange.BACK) == 1 && heard.count() >= 4);
        assertThat(heard.changes()).containsExactly(LinkChange.UP, LinkChange.LOST, LinkChange.BACK);
        assertThat(heard.words().get(1)).contains("has disconnected");
        assertThat(heard.numbers(0)).allMatch(n -> n == 42);
    }

    @Test
    void valuesOfAnotherTypeAreCountedAndHarmNothing() throws LinkException {
        bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        pressure.sendOdd("text");
        pressure.sendOdd(42);
        pressure.sendOdd(new String[] {"a"});
        bench.service.tell(pressure.path, pressure.type, Map.of());
        pressure.send();
        pressure.send((byte) 3);
        Await.until("the good value", 3000, () -> heard.count() == 1);
        assertThat(heard.numbers(0)).containsExactly(3);
        assertThat(bench.host.central().oddSignals()).isEqualTo(3);
    }

    @Test
    void aCharacteristicThatDemandsEncryptionEndsTheOpeningWithAReason() {
        device.characteristic(BleProfiles.BATTERY_SERVICE, BleProfiles.BATTERY).reading = () -> {
            throw new org.bluez.Error.NotPermitted("Insufficient Encryption");
        };
        Profile profile = new BleProfiles()
                .reads(BleProfiles.BATTERY_SERVICE, BleProfiles.BATTERY, 1)
                .profile();
        assertThatThrownBy(() -> bench.open(ADDRESS, profile, heard))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("pair it first");
    }

    @Test
    void aClosedLinkIsSilentAndLetsTheProbeGo() throws LinkException {
        ProbeLink link = bench.open(ADDRESS, BleBench.pressure(Double.NaN), heard);
        link.close();
        assertThat(device.isTrue("Connected")).isFalse();
        pressure.send((byte) 1);
        assertThat(bench.host.central().ears().handlers()).isZero();
        assertThat(heard.chunks()).isEmpty();
        assertThat(heard.changes()).containsExactly(LinkChange.UP);
        assertThatThrownBy(() -> link.send(new byte[] {1})).isInstanceOf(LinkException.class);
    }
}
