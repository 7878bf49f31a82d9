package settlemark.session;

import java.util.OptionalInt;

/** The person who is asked while a probe is paired. Called from a thread that may wait; an answer ends the waiting. */
public interface PairingPerson {
    /**
     * Whether the probe shows this number.
     *
     * @param number six digits
     */
    boolean confirm(String probe, int number);

    /** Whether the probe, which has neither keys nor display, may be paired at all. */
    boolean allow(String probe);

    /** The number that the probe shows or that is printed on it, 0 to 999999; empty to break off. */
    OptionalInt passkey(String probe);

    /** Shows a number that must be entered on the probe; returns at once. */
    void show(String probe, int number);

    /** The probe or the service broke off; whatever is asked is no longer needed. */
    void brokenOff();
}
