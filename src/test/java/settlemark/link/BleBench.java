package settlemark.link;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;
import settlemark.profile.Profile;
import settlemark.session.LinkException;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeLink;

/** A private bus with a fake Bluetooth service on it, and a host whose limits are short. */
final class BleBench implements AutoCloseable {
    static final String ADDRESS = "C0:FF:EE:00:00:01";
    static final String OTHER = "C0:FF:EE:00:00:02";

    static final BleSettings SHORT = new BleSettings(
            Duration.ofSeconds(6),
            Duration.ofMillis(800),
            Duration.ofSeconds(2),
            Duration.ofSeconds(4),
            Duration.ofMillis(600),
            Duration.ofSeconds(2),
            Duration.ofMillis(300),
            Duration.ofMillis(30),
            Duration.ofMillis(200),
            Duration.ofMillis(300),
            Duration.ofSeconds(1),
            Duration.ofMillis(50),
            4,
            20_000);

    final PrivateBus bus;
    final BleHost host;
    FakeBluez service;

    BleBench() throws Exception {
        Assumptions.assumeTrue(
                PrivateBus.isThere(), "no /usr/bin/dbus-daemon: install the package dbus-daemon to run this test");
        bus = new PrivateBus();
        service = new FakeBluez(bus.address());
        host = new BleHost(Fixtures.THREADS, Optional.empty(), bus.address(), SHORT);
    }

    /** A device of invented make with a pressure, as {@link #pressure} describes it. */
    FakeDevice probe(String address) {
        FakeDevice device = service.device(address, "Probe " + address.charAt(address.length() - 1));
        device.characteristic(BleProfiles.ESS, BleProfiles.PRESSURE);
        return device;
    }

    static Profile pressure(double periodSeconds) {
        return new BleProfiles()
                .notifies(BleProfiles.ESS, BleProfiles.PRESSURE, periodSeconds)
                .profile();
    }

    ProbeLink open(String address, Profile profile, BleHeard heard) throws LinkException {
        return host.open(new ProbeAddress("ble", address), profile, Fixtures.ticker(), heard);
    }

    /** The service dies and another takes its name. */
    void restartService() throws Exception {
        service.close();
        service = new FakeBluez(bus.address());
    }

    @Override
    public void close() throws java.io.IOException {
        host.close();
        service.close();
        bus.close();
    }
}
