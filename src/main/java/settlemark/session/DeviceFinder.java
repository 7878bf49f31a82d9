package settlemark.session;

/** Looks around for devices on behalf of a screen. Safe to call from any thread; never waits. */
public interface DeviceFinder {
    /** What the last look found; the same object until the next one ends. */
    DeviceList devices();

    /** Whether a look goes on. */
    boolean isLooking();

    /** Begins another look; does nothing while one goes on. Connects to nothing. */
    void look();
}
