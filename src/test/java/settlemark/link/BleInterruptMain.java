package settlemark.link;

import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import settlemark.session.LinkException;
import settlemark.session.ProbeAddress;

/** A program that reads a probe until it is interrupted; run by a test in a process of its own. */
public final class BleInterruptMain {
    private BleInterruptMain() {}

    /** @param arguments address of the bus, and of the probe */
    public static void main(String[] arguments) throws LinkException {
        BleHost host = new BleHost(Fixtures.THREADS, Optional.empty(), arguments[0], BleBench.SHORT);
        host.open(
                new ProbeAddress("ble", arguments[1]),
                BleBench.pressure(Double.NaN),
                Fixtures.ticker(),
                new BleHeard());
        System.out.println("open");
        System.out.flush();
        while (true) {
            LockSupport.park();
        }
    }
}
