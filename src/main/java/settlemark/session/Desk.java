package settlemark.session;

import settlemark.job.Act;

/**
 * What a screen or a command does with a running session: look at it and act on it. Safe to call from any thread; never
 * waits.
 */
public interface Desk {
    /** The newest snapshot. */
    Snapshot snapshot();

    /** Reports an act; it is stamped now and seen in a later snapshot. */
    void act(Act act);
}
