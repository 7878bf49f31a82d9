package settlemark.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import settlemark.profile.Profile;
import settlemark.profile.Sighting;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.ProbeLink;

/** Probes that only advertise, and looking around. */
@Timeout(60)
final class BleAdvertisingTest {
    private static final String ADDRESS = BleBench.ADDRESS;
    private static final String DATA = BleProfiles.uuid("FCD2");

    private BleBench bench;
    private FakeDevice device;
    private final BleHeard heard = new BleHeard();

    @BeforeEach
    void setUp() throws Exception {
        bench = new BleBench();
        device = bench.service.device(ADDRESS, "Beacon");
    }

    @AfterEach
    void tearDown() throws Exception {
        bench.close();
    }

    @Test
    void everyAdvertisementIsAChunkAlsoWhereTheyAreTheSame() throws LinkException {
        device.serviceData(DATA, (byte) 1, (byte) 2);
        bench.open(ADDRESS, new BleProfiles().serviceData(DATA, 0.1).profile(), heard);
        Await.until("ten of them", 5000, () -> heard.count() >= 10);
        assertThat(heard.numbers(0)).allMatch(n -> n == 0x0201);
        assertThat(heard.changes()).containsExactly(LinkChange.UP);
        assertThat(bench.service.count("Connect " + ADDRESS)).isZero();
        assertThat(bench.service.adapter.filter).containsEntry("DuplicateData", true);
    }

    @Test
    void dataOfTheCompanyIsToldFromDataOfOthers() throws LinkException {
        device.companyData(0xFFFF, (byte) 7);
        device.companyData(0x1234, (byte) 8);
        device.serviceData(DATA, (byte) 9);
        bench.open(ADDRESS, new BleProfiles().companyData(0xFFFF, 0.1).profile(), heard);
        Await.until("some", 5000, () -> heard.count() >= 3);
        assertThat(heard.numbers(0)).allMatch(n -> n == 7);
    }

    @Test
    void aBeaconThatFallsSilentIsLostAndComesBackWithItsNextWord() throws LinkException {
        device.serviceData(DATA, (byte) 1);
        bench.open(ADDRESS, new BleProfiles().serviceData(DATA, 0.1).profile(), heard);
        Await.until("the first", 5000, () -> heard.count() >= 1);
        device.onAir = false;
        Await.until("lost", 5000, () -> heard.count(LinkChange.LOST) == 1);
        assertThat(heard.said("is not heard")).isTrue();
        device.onAir = true;
        Await.until("back", 5000, () -> heard.count(LinkChange.BACK) == 1);
    }

    @Test
    void anyWordOfTheDeviceCountsAsHeard() throws LinkException {
        device.serviceData(DATA, (byte) 1);
        bench.open(ADDRESS, new BleProfiles().serviceData(DATA, 0.1).profile(), heard);
        Await.until("the first", 5000, () -> heard.count() >= 1);
        device.onAir = false;
        for (int i = 0; i < 30; i++) {
            bench.service.tell(
                    device.path, device.type, java.util.Map.of("RSSI", new org.freedesktop.dbus.types.Variant<>((short)
                            -61)));
            java.util.concurrent.locks.LockSupport.parkNanos(50_000_000);
        }
        assertThat(heard.changes()).containsExactly(LinkChange.UP);
    }

    @Test
    void oddAdvertisementsOfOthersHarmNothing() throws LinkException {
        FakeDevice odd = bench.service.device(BleBench.OTHER, "Odd");
        odd.serviceData(DATA);
        odd.companyData(0xFFFF, new byte[200]);
        device.serviceData(DATA, (byte) 1);
        bench.open(ADDRESS, new BleProfiles().serviceData(DATA, 0.1).profile(), heard);
        bench.service.tell(
                device.path, device.type, java.util.Map.of("ServiceData", new org.freedesktop.dbus.types.Variant<>(5)));
        bench.service.tell(
                device.path,
                device.type,
                java.util.Map.of("ManufacturerData", new org.freedesktop.dbus.types.Variant<>("text")));
        int before = heard.count();
        Await.until("more", 5000, () -> heard.count() >= before + 5);
        assertThat(heard.numbers(0)).allMatch(n -> n == 1);
        assertThat(bench.host.central().oddSignals()).isZero();
    }

    @Test
    void aConnectedProbeAndABeaconShareTheAdapterAndBothAreHeard() throws LinkException {
        device.serviceData(DATA, (byte) 1);
        FakeDevice probe = bench.probe(BleBench.OTHER);
        BleHeard other = new BleHeard();
        bench.open(ADDRESS, new BleProfiles().serviceData(DATA, 0.1).profile(), heard);
        bench.open(BleBench.OTHER, BleBench.pressure(Double.NaN), other);
        int before = heard.count();
        Await.until("the beacon after the connection", 5000, () -> heard.count() >= before + 5);
        probe.characteristics.get(0).send((byte) 4);
        Await.until("the probe", 3000, () -> other.numbers(0).equals(List.of(4)));
        assertThat(bench.service.calls())
                .containsSubsequence("StartDiscovery", "StopDiscovery", "Connect " + BleBench.OTHER, "StartDiscovery");
    }

    @Test
    void aLinkThatListensTakesNoActionsAndEndsItsScan() throws LinkException {
        device.serviceData(DATA, (byte) 1);
        Profile profile = new BleProfiles()
                .serviceData(DATA, 0.1)
                .acts("zero", BleProfiles.DEMO_COMMAND, "5A", true)
                .profile();
        ProbeLink link = bench.open(ADDRESS, profile, heard);
        assertThatThrownBy(() -> link.act("zero"))
                .isInstanceOf(LinkException.class)
                .hasMessageContaining("only advertises");
        link.close();
        assertThat(bench.service.adapter.isTrue("Discovering")).isFalse();
        assertThat(bench.host.central().ears().handlers()).isZero();
    }

    @Test
    void lookingAroundTellsWhatIsInReach() throws LinkException {
        device.serviceData(DATA, (byte) 1);
        device.companyData(0xFFFF, (byte) 1);
        FakeDevice away = bench.service.device(BleBench.OTHER, "Away");
        away.onAir = false;
        List<BleSeen> seen = bench.host.look();
        assertThat(seen).hasSize(1);
        BleSeen one = seen.get(0);
        assertThat(one.address()).isEqualTo(ADDRESS);
        assertThat(one.name()).isEqualTo("Beacon");
        assertThat(one.services()).containsExactly(UUID.fromString(DATA));
        assertThat(one.companies()).containsExactly(0xFFFF);
        assertThat(one.rssiDbm()).hasValue(-60);
        assertThat(one.ageSeconds()).isBetween(0.0, 1.0);
        assertThat(one.words()).isEqualTo("Beacon, services FCD2, company FFFF, -60 dBm");
        assertThat(one.sighting())
                .isEqualTo(new Sighting.Radio("Beacon", List.of(UUID.fromString(DATA)), List.of(0xFFFF)));
        assertThat(bench.host.found())
                .singleElement()
                .satisfies(f -> assertThat(f.address()).hasToString("ble:" + ADDRESS));
        assertThat(bench.service.adapter.isTrue("Discovering")).isFalse();
    }
}
