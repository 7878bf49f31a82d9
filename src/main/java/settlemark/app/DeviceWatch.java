package settlemark.app;

import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import settlemark.session.DeviceFinder;
import settlemark.session.DeviceList;

/**
 * Looks around on a thread of its own. It keeps its hosts between the looks, and the links that a session opens come from
 * the same ones, so that one adapter has one owner.
 */
final class DeviceWatch implements DeviceFinder, AutoCloseable {
    private static final DeviceList NOTHING = new DeviceList(List.of(), List.of());

    private final Hosts hosts;
    private final DeviceSearch search;
    private final AtomicBoolean looking = new AtomicBoolean();
    private volatile DeviceList devices = NOTHING;

    /** @param hosts of which it becomes the owner */
    DeviceWatch(Hosts hosts, DeviceSearch search) {
        this.hosts = hosts;
        this.search = search;
    }

    /** For opening what the person chose. */
    Hosts hosts() {
        return hosts;
    }

    @Override
    public DeviceList devices() {
        return devices;
    }

    @Override
    public boolean isLooking() {
        return looking.get();
    }

    @Override
    public void look() {
        if (looking.compareAndSet(false, true)) {
            Thread thread = new Thread(this::run, "work-look");
            thread.setDaemon(true);
            thread.start();
        }
    }

    private void run() {
        try {
            devices = search.look();
        } finally {
            looking.set(false);
        }
    }

    @Override
    public void close() {
        hosts.close();
    }
}
