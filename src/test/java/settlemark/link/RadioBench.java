package settlemark.link;

import java.io.IOException;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ThreadFactory;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import org.freedesktop.dbus.exceptions.DBusException;
import org.junit.jupiter.api.Assumptions;
import settlemark.profile.Profile;
import settlemark.session.LinkException;

/** The fake Bluetooth service for tests of other packages: a private bus, an adapter that hears and one that serves. */
public final class RadioBench implements AutoCloseable {
    public static final String SERVED = FakeServingAdapter.ADDRESS;
    /** Assigned numbers: Environmental Sensing and its pressure. */
    public static final String ENVIRONMENT = BleProfiles.ESS;

    public static final String PRESSURE = BleProfiles.PRESSURE;

    private final PrivateBus bus;
    private final FakeBluez service;
    private final FakeServingAdapter serving;

    public RadioBench() throws IOException, DBusException {
        Assumptions.assumeTrue(
                PrivateBus.isThere(), "no /usr/bin/dbus-daemon: install the package dbus-daemon to run this test");
        bus = new PrivateBus();
        service = new FakeBluez(bus.address());
        serving = service.serving();
    }

    /** A device that others hear. */
    public final class Probe {
        private final FakeDevice device;

        private Probe(FakeDevice device) {
            this.device = device;
        }

        /** @return index for {@link #send} */
        public int characteristic(String serviceUuid, String uuid) {
            device.characteristic(serviceUuid, uuid);
            return device.characteristics.size() - 1;
        }

        public void send(int characteristic, byte... bytes) {
            device.characteristics.get(characteristic).send(bytes);
        }

        public boolean isListenedTo(int characteristic) {
            return device.characteristics.get(characteristic).notifying;
        }

        public void serviceData(String uuid, byte... bytes) {
            device.serviceData(uuid, bytes);
        }

        public void advertises(String... serviceUuids) {
            device.set("UUIDs", serviceUuids);
        }

        public void onAir(boolean on) {
            device.onAir = on;
        }

        /** The radio link breaks. */
        public void drop() {
            device.drop();
        }

        public void set(String property, Object value) {
            device.set(property, value);
        }
    }

    public Probe probe(String address, String name) {
        return new Probe(service.device(address, name));
    }

    /** The device that a program serves. */
    public Probe served() {
        return new Probe(serving.only());
    }

    /** The numbers that a device asks for are typed, instead of compared. */
    public void asksForNumbers() {
        service.agents.numbers = false;
    }

    public boolean wasCalled(String call) {
        return service.calls().contains(call);
    }

    public void switchOff() {
        service.adapter.change("Powered", false);
    }

    public void unplugAdapters() {
        service.remove(FakeBluez.HCI0);
        service.remove("/org/bluez/hci1");
    }

    /** The service refuses whoever asks for its objects, as the bus does for an account without rights. */
    public void refuse() {
        service.refuses = true;
    }

    public void stopService() {
        service.close();
    }

    public BleHost host(Optional<String> adapter) {
        return new BleHost(Fixtures.THREADS, adapter, bus.address(), BleBench.SHORT);
    }

    /** On a bus that is not there. */
    public static BleHost hostWithoutBus() {
        return new BleHost(Fixtures.THREADS, Optional.empty(), "unix:path=/nonexistent/bus/socket", BleBench.SHORT);
    }

    public BlePeripheral serve(Profile profile, String name, String adapter, BiConsumer<UUID, byte[]> written)
            throws LinkException {
        ThreadFactory threads = Fixtures.THREADS;
        return BlePeripheral.start(
                new BlePeripheral.Settings(profile, name, Optional.of(adapter), threads), bus.address(), written);
    }

    /** Waits until something is so. */
    public static void await(String what, BooleanSupplier condition) {
        Await.until(what, 60_000, condition);
    }

    @Override
    public void close() throws IOException {
        service.close();
        bus.close();
    }
}
