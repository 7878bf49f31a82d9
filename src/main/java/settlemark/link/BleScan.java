package settlemark.link;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.freedesktop.dbus.types.Variant;

/**
 * The scan of one adapter: on while somebody wants it and nobody needs quiet. Repeated advertisements are asked for,
 * because a probe that only advertises would else be heard once.
 */
final class BleScan {
    private static final long OFF_NANOS = 2_000_000_000L;

    private final BleCentral central;
    private final String adapter;
    private final Set<Object> wanted = new HashSet<>();
    private final Set<Object> quiet = new HashSet<>();
    private boolean running;
    private long sinceNanos;
    private volatile boolean discarded;

    BleScan(BleCentral central, String adapter) {
        this.central = central;
        this.adapter = adapter;
    }

    synchronized void want(Object who) throws BleFault {
        wanted.add(who);
        apply();
    }

    synchronized void leave(Object who) {
        if (wanted.remove(who)) {
            stopIfDue();
        }
    }

    /** No scan until {@link #resume}: a scan at full duty kills a young link. */
    synchronized void pause(Object who) {
        quiet.add(who);
        stopIfDue();
    }

    synchronized void resume(Object who) {
        quiet.remove(who);
        try {
            apply();
        } catch (BleFault e) {
            // Whoever wants the scan asks again and hears why.
            running = false;
        }
    }

    /** Starts a scan anew that seems to have died: the service says so, or nobody at all is heard. */
    synchronized void tend() throws BleFault {
        long now = System.nanoTime();
        long silence = now - Math.max(sinceNanos, central.lastHeardNanos(adapter));
        boolean off = !BluezValues.isTrue(central.objects().property(adapter, Bluez.ADAPTER, "Discovering"));
        if (running && (silence > central.settings().scanSilence().toNanos() || off && now - sinceNanos > OFF_NANOS)) {
            stop();
            apply();
        }
    }

    private void apply() throws BleFault {
        if (discarded || running || wanted.isEmpty() || !quiet.isEmpty()) {
            return;
        }
        Map<String, Variant<?>> filter = new HashMap<>();
        filter.put("Transport", new Variant<>("le"));
        filter.put("DuplicateData", new Variant<>(true));
        try {
            central.call(adapter, Bluez.ADAPTER, "SetDiscoveryFilter", "a{sv}", filter);
            start();
            running = true;
            sinceNanos = System.nanoTime();
        } catch (BluezError e) {
            throw BleFault.passing(
                    e.is("NotReady") ? BleWords.off(central.adapterName(adapter)) : BleWords.general("the scan", e));
        }
    }

    private void start() throws BluezError {
        try {
            central.call(adapter, Bluez.ADAPTER, "StartDiscovery", "");
        } catch (BluezError e) {
            // Then it runs, started by ourselves.
            if (!e.is("InProgress")) {
                throw e;
            }
        }
    }

    private void stopIfDue() {
        if (running && (wanted.isEmpty() || !quiet.isEmpty())) {
            stop();
        }
    }

    /** Its adapter or the service has gone, and its scan with it. Called on the bus's thread. */
    void discard() {
        discarded = true;
    }

    private void stop() {
        running = false;
        if (discarded) {
            // Another scan may run there by now.
            return;
        }
        try {
            central.call(adapter, Bluez.ADAPTER, "StopDiscovery", "");
        } catch (BluezError e) {
            // Another program's scan, or none: either way ours has ended.
            return;
        }
    }
}
