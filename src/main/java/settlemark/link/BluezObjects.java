package settlemark.link;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * The Bluetooth service's objects as it last told of them: path, interface, property. Kept by ourselves from its signals,
 * so that nothing outlives its removal. What is heard while the first list is on its way is put on top of it. Safe to use
 * from several threads.
 */
final class BluezObjects {
    private final Map<String, Map<String, Map<String, Object>>> objects = new TreeMap<>();
    private @Nullable List<Runnable> meanwhile;

    synchronized void clear() {
        objects.clear();
        meanwhile = null;
        notifyAll();
    }

    /** From here on changes wait for {@link #load}. */
    synchronized void expectLoad() {
        meanwhile = new ArrayList<>();
    }

    /** @param managed the answer of GetManagedObjects */
    synchronized void load(@Nullable Object managed) {
        objects.clear();
        if (BluezValues.plain(managed) instanceof Map<?, ?> map) {
            map.forEach((path, interfaces) -> put(String.valueOf(path), interfaces));
        }
        List<Runnable> waiting = meanwhile == null ? List.of() : meanwhile;
        meanwhile = null;
        waiting.forEach(Runnable::run);
        notifyAll();
    }

    synchronized void added(String path, @Nullable Object interfaces) {
        after(() -> put(path, interfaces));
    }

    synchronized void removed(String path, List<String> interfaces) {
        after(() -> {
            Map<String, Map<String, Object>> object = objects.get(path);
            if (object != null) {
                interfaces.forEach(object::remove);
                if (object.isEmpty()) {
                    objects.remove(path);
                }
            }
        });
    }

    synchronized void removedBelow(String path) {
        after(() -> objects.keySet().removeIf(p -> p.startsWith(path + "/")));
    }

    synchronized void changed(String path, String type, Map<String, Object> changed, List<String> invalidated) {
        after(() -> {
            // A change of an object that is not there belongs to one that was removed.
            Map<String, Map<String, Object>> object = objects.get(path);
            if (object != null) {
                Map<String, Object> properties = object.computeIfAbsent(type, t -> new HashMap<>());
                properties.putAll(changed);
                invalidated.forEach(properties::remove);
            }
        });
    }

    private void after(Runnable change) {
        if (meanwhile == null) {
            change.run();
            notifyAll();
        } else {
            meanwhile.add(change);
        }
    }

    private void put(String path, @Nullable Object interfaces) {
        if (BluezValues.plain(interfaces) instanceof Map<?, ?> map) {
            Map<String, Map<String, Object>> object = objects.computeIfAbsent(path, p -> new HashMap<>());
            map.forEach((type, properties) -> object.put(String.valueOf(type), BluezValues.properties(properties)));
        }
    }

    synchronized @Nullable Object property(String path, String type, String name) {
        return Optional.ofNullable(objects.get(path))
                .map(object -> object.get(type))
                .map(properties -> properties.get(name))
                .orElse(null);
    }

    synchronized boolean has(String path, String type) {
        return Optional.ofNullable(objects.get(path))
                .map(object -> object.containsKey(type))
                .orElse(false);
    }

    /** Paths of the objects with an interface whose path is or lies below another's, in order; empty for all. */
    synchronized List<String> paths(String type, String below) {
        List<String> paths = new ArrayList<>();
        objects.forEach((path, object) -> {
            if (object.containsKey(type) && (below.isEmpty() || path.startsWith(below + "/"))) {
                paths.add(path);
            }
        });
        return paths;
    }

    /** Waits until something holds, at most that long; returns whether it does. */
    synchronized boolean await(BooleanSupplier holds, Duration limit, BooleanSupplier giveUp) {
        long end = System.nanoTime() + limit.toNanos();
        while (!holds.getAsBoolean()) {
            long leftMillis = (end - System.nanoTime()) / 1_000_000;
            if (leftMillis <= 0 || giveUp.getAsBoolean()) {
                return false;
            }
            try {
                // Short waits, because giving up wakes nobody here.
                wait(Math.min(50, leftMillis));
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return false;
            }
        }
        return true;
    }
}
