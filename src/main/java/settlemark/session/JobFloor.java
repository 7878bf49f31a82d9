package settlemark.session;

/** Where a job goes on that a person does by typing: a desk whose time passes when it is told to wait. */
public interface JobFloor extends Desk {
    /** Lets a moment pass, so that a later snapshot can show something new. */
    void pass() throws StoreException, LinkException, InterruptedException;

    /** Whether simulated hands do what a step asks. */
    boolean handsAreSimulated();

    /** Simulated hands do what the step at hand asks, or rest; nothing where the hands are real. */
    void handsAtWork(boolean atWork) throws StoreException;
}
