package settlemark.link;

import java.nio.file.Path;
import settlemark.profile.SerialLine;
import settlemark.session.LinkException;

/** Opens serial devices. */
interface TtyOpener {
    /** @throws LinkException with the remedy */
    Tty open(Path node, SerialLine line) throws LinkException;

    /** Which other programs are seen to have the device open; empty where none is. */
    default String alsoUsedBy(Path node) {
        return "";
    }

    /** Runs a thread when the program is told to end, before devices are closed behind their links' backs. */
    default void beforeShutdown(Thread thread) {}
}
