package settlemark.session;

/** An open link to a probe. */
public interface ProbeLink extends AutoCloseable {
    void send(byte[] bytes) throws LinkException;

    /**
     * Has the device do an action of its profile, step by step; returns when the last is done.
     *
     * @throws LinkException with the reason, where there is no such action or a step failed
     */
    default void act(String actionId) throws LinkException {
        throw new LinkException("this probe takes no actions, so not \"" + actionId + "\"");
    }

    /** Closes within three seconds, whatever the device does; nothing is heard afterwards. */
    @Override
    void close();
}
