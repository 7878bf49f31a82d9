package settlemark.session;

/** An open link to a probe. */
public interface ProbeLink extends AutoCloseable {
    void send(byte[] bytes) throws LinkException;

    /** Closes within three seconds, whatever the device does; nothing is heard afterwards. */
    @Override
    void close();
}
