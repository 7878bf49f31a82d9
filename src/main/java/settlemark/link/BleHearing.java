package settlemark.link;

import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * When each device was last heard, and how often its connection was lost. Any advertisement counts as heard, whether or
 * not its content changed.
 */
final class BleHearing {
    /** Changes that say something about the connection or about what this computer knows, not about the radio. */
    private static final Set<String> NOT_HEARD =
            Set.of("Connected", "ServicesResolved", "Paired", "Bonded", "Trusted", "Blocked", "Alias", "WakeAllowed");

    /** What a controller says that does not measure (Bluetooth Core Specification, HCI, LE Advertising Report). */
    private static final int RSSI_UNKNOWN = 127;

    private final Map<String, Heard> heard = new ConcurrentHashMap<>();
    private final Map<String, Long> losses = new ConcurrentHashMap<>();
    private final AtomicLong allLosses = new AtomicLong();
    private volatile Consumer<String> onLoss = path -> {};

    /**
     * When a device was last heard, by {@link System#nanoTime()}.
     *
     * @param rssiDbm signal strength, and when it was told
     */
    record Heard(long nanos, OptionalInt rssiDbm, long rssiNanos) {}

    /** @param call told of each loss on the bus's thread, with the path of what was lost, empty for all */
    void onLoss(Consumer<String> call) {
        onLoss = call;
    }

    void heard(String path, Map<String, Object> properties) {
        if (NOT_HEARD.containsAll(properties.keySet())) {
            return;
        }
        long now = System.nanoTime();
        OptionalInt rssi = BluezValues.number(properties.get("RSSI")).stream()
                .mapToInt(Integer::intValue)
                .filter(dbm -> dbm != RSSI_UNKNOWN)
                .findFirst();
        heard.merge(
                path,
                new Heard(now, rssi, now),
                (old, fresh) -> rssi.isPresent() ? fresh : new Heard(now, old.rssiDbm(), old.rssiNanos()));
        Heard here = new Heard(now, OptionalInt.empty(), now);
        heard.put(Bluez.adapterOf(path), here);
    }

    @Nullable
    Heard of(String path) {
        return heard.get(path);
    }

    boolean heardSince(String path, long nanos) {
        Heard last = heard.get(path);
        return last != null && last.nanos() - nanos >= 0;
    }

    /** When anything was last heard by an adapter; very long ago where nothing was. */
    long lastNanos(String adapter) {
        Heard last = heard.get(adapter);
        return last == null ? System.nanoTime() - Long.MAX_VALUE / 2 : last.nanos();
    }

    /** A number that changes with each loss of a device, of its adapter, of the service or of the bus. */
    long mark(String device) {
        return allLosses.get()
                + losses.computeIfAbsent(device, d -> 0L)
                + losses.computeIfAbsent(Bluez.adapterOf(device), a -> 0L);
    }

    void lost(String path) {
        // Only of those that were asked for, since strangers come and go for ever.
        losses.computeIfPresent(path, (p, count) -> count + 1);
        // What was heard before says nothing about what comes after.
        heard.remove(path);
        onLoss.accept(path);
    }

    void allLost() {
        allLosses.incrementAndGet();
        heard.clear();
        onLoss.accept("");
    }
}
