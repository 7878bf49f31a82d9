package settlemark.link;

import java.util.List;
import settlemark.profile.Step;
import settlemark.session.LinkException;

/** How one kind of Bluetooth link goes: set up, kept up, left. Its methods run on the link's thread, but for one. */
interface BleCourse {
    /**
     * Sets the link up; returns when the probe is there.
     *
     * @return words for the listener
     * @throws BleFault why not
     */
    String begin() throws BleFault;

    /**
     * Does what is due.
     *
     * @return nanoseconds until something is due again
     * @throws BleFault when the link is lost
     */
    long tend() throws BleFault;

    /** Bytes of an input have arrived. */
    void arrived(int input);

    /** Whether bytes come by themselves, so that the link counts as back only with the first of them. */
    boolean speaksByItself();

    /** Leaves the probe, as far as it is still there. */
    void end();

    /** Does the steps of an action; called from any thread. */
    void perform(List<Step> steps) throws LinkException;
}
