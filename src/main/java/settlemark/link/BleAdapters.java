package settlemark.link;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.freedesktop.dbus.types.Variant;

/** Which adapter to use, and whether it can be: there, not blocked, switched on. */
final class BleAdapters {
    private static final long SLEPT_NANOS = 30_000_000_000L;

    private final BleCentral central;

    /** Addresses of adapters that were in use, and of those among them that have gone since. */
    private final Set<String> used = ConcurrentHashMap.newKeySet();

    private final Set<String> away = ConcurrentHashMap.newKeySet();
    private volatile long sleptNanos = System.nanoTime() - SLEPT_NANOS;

    BleAdapters(BleCentral central) {
        this.central = central;
    }

    /** @return the path of the adapter, switched on */
    String choose(Optional<String> wanted) throws BleFault {
        List<String> there = central.objects().paths(Bluez.ADAPTER, "");
        if (there.isEmpty()) {
            throw BleFault.lasting(BleWords.noAdapter());
        }
        String path = wanted.isEmpty() ? there.get(0) : find(wanted.get(), there);
        check(path);
        return path;
    }

    private String find(String wanted, List<String> there) throws BleFault {
        for (String path : there) {
            if (central.adapterName(path).equalsIgnoreCase(wanted) || path.endsWith("/" + wanted)) {
                return path;
            }
        }
        throw BleFault.lasting(BleWords.noSuchAdapter(
                wanted, there.stream().map(central::adapterName).toList()));
    }

    private void check(String path) throws BleFault {
        String name = central.adapterName(path);
        if (BluezValues.isTrue(central.objects().property(path, Bluez.ADAPTER, "Powered"))) {
            used.add(name);
            away.remove(name);
            return;
        }
        String state = BluezValues.text(central.objects().property(path, Bluez.ADAPTER, "PowerState"))
                .orElse("");
        // Older services have no such property.
        boolean silent =
                state.isEmpty() && BleRfkill.isBlocked(BleRfkill.SYSTEM, path.substring(path.lastIndexOf('/') + 1));
        if (silent || state.equals("off-blocked")) {
            throw BleFault.lasting(BleWords.blocked(name));
        }
        if (!away.contains(name)) {
            // Somebody switched it off on purpose.
            throw BleFault.lasting(BleWords.off(name));
        }
        switchOn(path, name);
        throw BleFault.passing("Bluetooth adapter " + name + " is starting; it is tried again");
    }

    /** An adapter that was in use and came back after it was unplugged, or after a sleep. */
    private void switchOn(String path, String name) throws BleFault {
        try {
            central.call(path, Bluez.PROPERTIES, "Set", "ssv", Bluez.ADAPTER, "Powered", new Variant<>(true));
        } catch (BluezError e) {
            throw e.is("Blocked") || e.says("locked") || e.says("rfkill")
                    ? BleFault.lasting(BleWords.blocked(name))
                    : BleFault.passing(BleWords.general(name, e));
        }
    }

    void left(String path) {
        String name = central.adapterName(path);
        if (used.contains(name)) {
            away.add(name);
        }
    }

    void allLeft() {
        away.addAll(used);
    }

    void slept() {
        sleptNanos = System.nanoTime();
        allLeft();
    }

    boolean sleptLately() {
        return System.nanoTime() - sleptNanos < SLEPT_NANOS;
    }
}
