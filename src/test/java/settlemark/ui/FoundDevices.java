package settlemark.ui;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import settlemark.profile.ProfileLibrary;
import settlemark.session.DeviceView;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeHost.FoundProbe;
import settlemark.session.Reception;

/** What a look finds. */
final class FoundDevices {
    private FoundDevices() {}

    /** A demo set that is heard by radio. */
    static DeviceView radio(int number) {
        Reception reception = new Reception(OptionalInt.of(-60 - number), 0.4, false, false, 81, Map.of(), Map.of());
        ProbeAddress address = new ProbeAddress(ProbeAddress.BLE, "C0:FF:EE:00:00:0" + number);
        return new DeviceView(
                new FoundProbe(address, "Probe " + number, Optional.empty(), address.path(), Optional.of(reception)),
                List.of(ProfileLibrary.get(SET)),
                Optional.empty(),
                new DeviceView.Battery(81, false),
                Optional.empty());
    }

    private static final String SET = "demo-set-ble";
}
