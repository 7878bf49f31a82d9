package settlemark.rig;

/** Where one channel of an instrument has its values from. In the channel's unit. */
interface Pickup {
    /** Follows one step of the truth. */
    void step(RigTruth truth, double stepSeconds);

    /** Reads once; called once a frame. */
    double read(double periodSeconds);
}
