package settlemark.link;

import static settlemark.link.BleVmChecks.pause;
import static settlemark.link.BleVmChecks.require;
import static settlemark.link.BleVmChecks.rising;
import static settlemark.link.BleVmChecks.waitFor;

import java.util.List;
import java.util.Locale;
import settlemark.session.LinkChange;
import settlemark.session.LinkException;
import settlemark.session.ProbeLink;

/** What goes away and comes back: the gap is marked, and values come again within ten seconds. */
final class BleVmOutages {
    private static final long BACK_MILLIS = 10_000;

    private final BleVmBench bench;

    BleVmOutages(BleVmBench bench) {
        this.bench = bench;
    }

    List<BleVmScenario> all() {
        return List.of(
                new BleVmScenario("the probe ends the connection and comes back", this::disconnect),
                new BleVmScenario("the probe is away until it is missed", this::missed),
                new BleVmScenario("the radio stands still for a while", this::still),
                new BleVmScenario("bluetoothd is killed", this::daemonKilled),
                new BleVmScenario("the controllers vanish and return", this::controllersVanish),
                new BleVmScenario("Bluetooth is blocked and released", this::blocked),
                new BleVmScenario("the adapter is switched off and on", this::switchedOff));
    }

    private String disconnect() throws LinkException, BluezError {
        return outage("hci1", "the connection", () -> {
            try {
                bench.disconnectFrom("hci1");
            } catch (BluezError e) {
                throw new AssertionError(e);
            }
            return 0;
        });
    }

    private String missed() throws LinkException, BluezError {
        bench.peer("serve f fast hci1 Settle_fast");
        BleHeard heard = new BleHeard();
        try (ProbeLink link = bench.open("hci1", "fast", heard)) {
            require(!link.toString().isEmpty(), "a link");
            bench.peer("stream f 0 10 100000");
            Await.until("values before", 10_000, () -> heard.count() >= 20);
            bench.peer("close f");
            bench.disconnectFrom("hci1");
            waitFor("the causes", 40_000, heard, () -> heard.said("is not heard"));
            bench.peer("serve f fast hci1 Settle_fast");
            bench.peer("stream f 0 10 100000");
            long millis = waitFor("back", BACK_MILLIS, heard, () -> heard.count(LinkChange.BACK) >= 1);
            return "back " + millis + " ms after its return";
        } finally {
            bench.peer("close f");
        }
    }

    private String still() throws LinkException {
        return outage("hci1", "the probe", () -> {
            bench.guest("kill -STOP $(cat /run/btvirt.pid)");
            pause(8000);
            bench.guest("kill -CONT $(cat /run/btvirt.pid)");
            return 8000;
        });
    }

    private String daemonKilled() throws LinkException {
        return outage("hci1", "bluetoothd", () -> {
            bench.guest("kill -9 $(cat /run/bluetoothd.pid)");
            return 1000;
        });
    }

    private String controllersVanish() throws LinkException {
        return outage("hci1", "the controllers", () -> {
            bench.guest("kill -9 $(cat /run/btvirt.pid)");
            return 3000;
        });
    }

    private String blocked() throws LinkException {
        return outage("hci1", "the radio", () -> {
            bench.guest("for r in /sys/class/rfkill/rfkill*; do echo 1 > $r/soft; done");
            pause(4000);
            bench.guest("for r in /sys/class/rfkill/rfkill*; do echo 0 > $r/soft; done");
            return 4000;
        });
    }

    /** As in the system's settings. The kernel may fail at it (seen about once in twelve times), and nothing else does. */
    private String switchedOff() throws LinkException {
        return outage("hci1", "the adapter", () -> {
            bench.power("hci0", false);
            pause(4000);
            bench.power("hci0", true);
            return 4000;
        });
    }

    /** Streams through an outage: the gap is marked, and after the return values come again within ten seconds. */
    private String outage(String adapter, String what, Outage outage) throws LinkException {
        bench.peer("serve f fast " + adapter + " Settle_fast");
        BleHeard heard = new BleHeard();
        try (ProbeLink link = bench.open(adapter, "fast", heard)) {
            require(!link.toString().isEmpty(), "a link");
            bench.peer("stream f 0 10 100000");
            Await.until("values before", 10_000, () -> heard.count() >= 20);
            long start = System.nanoTime();
            long awayMillis = outage.happens();
            long lost = Await.until(what + " lost", 15_000, () -> heard.count(LinkChange.LOST) >= 1);
            waitFor(what + " back", awayMillis + 60_000, heard, () -> heard.count(LinkChange.BACK) >= 1);
            long backMillis = (System.nanoTime() - start) / 1_000_000 - awayMillis;
            int before = heard.count();
            Await.until("values after", 10_000, () -> heard.count() >= before + 20);
            rising(heard);
            require(backMillis <= BACK_MILLIS, "back " + backMillis + " ms after its return; said " + heard.words());
            return String.format(
                    Locale.ROOT,
                    "lost seen after %d ms, back %.1f s after its return, said %s",
                    lost,
                    backMillis / 1e3,
                    heard.words().subList(1, heard.words().size()));
        } finally {
            bench.peer("close f");
        }
    }

    @FunctionalInterface
    private interface Outage {
        /** @return for how long the probe cannot be there, in milliseconds */
        long happens();
    }
}
