package settlemark.job;

/** How far a step has come. */
public enum Progress {
    /** Nobody has come to it yet. */
    WAITING,
    /** It is the step at hand, but nothing is armed. */
    OPEN,
    /** The person has done the act; the reading takes itself when it has settled. */
    ARMED,
    TAKEN,
    SKIPPED
}
