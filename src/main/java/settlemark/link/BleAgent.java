package settlemark.link;

import java.util.OptionalInt;
import org.bluez.Agent1;
import org.bluez.exceptions.BluezRejectedException;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.UInt16;
import org.freedesktop.dbus.types.UInt32;
import settlemark.session.PairingPerson;

/** Answers the Bluetooth service's questions during a pairing by asking the person, and says yes to none by itself. */
final class BleAgent implements Agent1 {
    private final BluezObjects objects;
    private final PairingPerson person;
    private volatile boolean refused;

    BleAgent(BluezObjects objects, PairingPerson person) {
        this.objects = objects;
        this.person = person;
    }

    boolean hasRefused() {
        return refused;
    }

    @Override
    public void RequestConfirmation(DBusPath device, UInt32 passkey) throws BluezRejectedException {
        agreed(person.confirm(probe(device), passkey.intValue()));
    }

    @Override
    public void RequestAuthorization(DBusPath device) throws BluezRejectedException {
        agreed(person.allow(probe(device)));
    }

    @Override
    public UInt32 RequestPasskey(DBusPath device) throws BluezRejectedException {
        OptionalInt number = person.passkey(probe(device));
        agreed(number.isPresent() && number.getAsInt() >= 0 && number.getAsInt() <= 999_999);
        return new UInt32(number.getAsInt());
    }

    @Override
    public void DisplayPasskey(DBusPath device, UInt32 passkey, UInt16 entered) {
        // Told again after each key that is pressed on the probe.
        if (entered.intValue() == 0) {
            person.show(probe(device), passkey.intValue());
        }
    }

    /** Codes of the older kind of Bluetooth, which no Low Energy probe has. */
    @Override
    public String RequestPinCode(DBusPath device) throws BluezRejectedException {
        throw new BluezRejectedException("no PIN codes");
    }

    @Override
    public void DisplayPinCode(DBusPath device, String code) throws BluezRejectedException {
        throw new BluezRejectedException("no PIN codes");
    }

    @Override
    public void AuthorizeService(DBusPath device, String uuid) throws BluezRejectedException {
        throw new BluezRejectedException("no service of ours is asked for");
    }

    @Override
    public void Cancel() {
        person.brokenOff();
    }

    @Override
    public void Release() {}

    @Override
    public String getObjectPath() {
        return "/settlemark/agent";
    }

    private void agreed(boolean yes) throws BluezRejectedException {
        if (!yes) {
            refused = true;
            throw new BluezRejectedException("the person said no");
        }
    }

    private String probe(DBusPath device) {
        String address = BluezValues.text(objects.property(device.getPath(), Bluez.DEVICE, "Address"))
                .orElse(device.getPath());
        return BluezValues.text(objects.property(device.getPath(), Bluez.DEVICE, "Name"))
                .map(name -> name + " (" + address + ")")
                .orElse(address);
    }
}
