package settlemark.link;

import org.bluez.GattService1;

/** A service of a fake device. */
final class FakeService extends FakeObject implements GattService1 {
    FakeService(FakeBluez service, String path, String uuid) {
        super(service, path, "org.bluez.GattService1");
        set("UUID", uuid);
        set("Primary", true);
    }
}
