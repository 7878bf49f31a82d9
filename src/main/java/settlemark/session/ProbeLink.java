package settlemark.session;

/** An open link to a probe. */
public interface ProbeLink extends AutoCloseable {
    void send(byte[] bytes) throws LinkException;

    /**
     * Has the device do one of its profile's actions, as soon as the line is free; what became of it is said to the
     * listener, where it is not thrown.
     *
     * @throws LinkException where the profile has no such action, the link does none, or a step has already failed
     */
    default void act(String actionId) throws LinkException {
        throw new LinkException("this link has no actions, so \"" + actionId + "\" cannot be done");
    }

    /** What stays the same of the device when its plug goes elsewhere; empty where nothing is known. */
    default String identity() {
        return "";
    }

    /** Closes within three seconds, whatever the device does; nothing is heard afterwards. */
    @Override
    void close();
}
