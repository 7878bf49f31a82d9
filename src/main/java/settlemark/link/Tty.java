package settlemark.link;

/** An open serial device, as the operating system gives it. Negative results mean that it has gone. */
interface Tty {
    /** Waits up to a tenth of a second for bytes; returns how many came, 0 for none, negative where the device failed. */
    int read(byte[] buffer);

    /** Whether the system said that the device is gone. That it did not proves nothing. */
    default boolean disconnected() {
        return false;
    }

    /** Waits until the system took the bytes; fewer than asked or negative where the device failed. */
    int write(byte[] bytes, int offset, int length);

    /** Bytes that the system took and the line has not carried yet; 0 where it does not say. */
    int awaitingWrite();

    /** Lets a blocked write go on by dropping what waits in both directions. */
    void release();

    /** May hang where a driver does. */
    void close();
}
