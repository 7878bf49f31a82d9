package settlemark.settle;

/** An attempt to prove, on what came last, that the remaining movement is bounded; looked at anew once a bin. */
sealed interface Proof permits LineProof, ApproachProof, HuntingProof {
    /** Whether there are data enough; the rest has a meaning only then. */
    boolean possible();

    /** Remaining movement and swings are within the limits. */
    boolean holds();

    /** A ramp may have begun a moment ago, too late for the bound to show it. */
    boolean turnsLately();

    /** Upper bound on the remaining movement. */
    double couldMove();

    /** What is expected to remain, without its uncertainty. */
    double expectedToMove();

    /** Half-width of the swings beyond noise. */
    double swing();

    /** How far the reading moved over the data looked at. */
    double moved();

    /** The reading. */
    double value();

    /** Its expanded uncertainty (about 95 %): noise, rounding and what may still come. */
    double uncertainty();

    /** Time of the first sample looked at. */
    double startSeconds();

    double spanSeconds();

    double residualVariance();

    /** How far from the reading the samples may lie without having left it. */
    double spread();

    /** What goes on after the reading is taken. */
    Ongoing left();
}
