package settlemark.link;

import java.util.Optional;
import settlemark.session.LinkException;
import settlemark.session.ProbeAddress;

/** A program that has a Bluetooth host and does not use it; run by a test in a process of its own. */
public final class BleIdleMain {
    private BleIdleMain() {}

    public static void main(String[] arguments) {
        BleHost bluetooth = new BleHost(Fixtures.THREADS, Optional.empty());
        SerialHost serial = new SerialHost(Fixtures.THREADS);
        System.out.println(bluetooth.scheme() + " and " + serial.scheme());
        try {
            serial.open(new ProbeAddress("serial", "/dev/none"), Fixtures.PROFILE, Fixtures.ticker(), new BleHeard());
        } catch (LinkException e) {
            System.out.println("refused: " + e.getMessage());
        }
        bluetooth.close();
    }
}
