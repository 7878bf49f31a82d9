package settlemark.app;

import java.util.List;
import java.util.function.Consumer;
import settlemark.session.LinkException;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.Ticker;

/** How what the rig's instruments say comes to the session of a headless demo. */
interface DemoWiring extends AutoCloseable {
    /** The probes, as the session's header names them. */
    List<ProbeSetup> probes() throws LinkException;

    /**
     * Connects; from now on what is said is taken in, on the thread that runs the demo.
     *
     * @param ticker gives the rig's time
     */
    void open(SessionHeader header, Ticker ticker, Consumer<SessionEvent> taken) throws LinkException;

    /** Steps of the rig between two looks, in nanoseconds. */
    long stepNanos();

    /** Returns when all that the rig has said so far has come in, or is given up. */
    void settle() throws LinkException;

    @Override
    void close();
}
