package settlemark.ui;

/** Where sounds go. Without a sound device nothing is heard, and that is no error. */
public interface Tones {
    /** Samples a second. */
    int RATE = 22_050;

    /** Nobody listens. */
    Tones NONE = samples -> {};

    /**
     * Plays after what is playing; never waits.
     *
     * @param samples mono, 16 bits, {@value #RATE} a second
     */
    void play(short[] samples);
}
