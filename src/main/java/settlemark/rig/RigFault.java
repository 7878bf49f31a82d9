package settlemark.rig;

import java.util.Locale;

/** What can be planted in the simulated furnace or its instruments. */
public enum RigFault {
    /** A long trunk of half-inch pipe: enough for this appliance, not for all of them. */
    UNDERSIZED_PIPE("the supply pipe is too narrow for all appliances"),
    /** The service regulator does not lock up: its outlet keeps climbing with nothing firing. */
    REGULATOR_CREEP("the service regulator does not lock up"),
    /** The shut valve lets a little gas by. */
    LETTING_BY("the shut valve lets gas by"),
    /** Main orifices an eighth too large in area. */
    WRONG_ORIFICE("the main orifices are too large"),
    /** The cap moves the regulator by a lot. */
    CAP_SHIFT("the cap shifts the regulator"),
    /** The gas valve's regulator climbs for minutes while its body warms. */
    VALVE_CREEP("the gas valve creeps while it warms"),
    /** The blower runs on too low a tap. */
    SLOW_BLOWER("the blower runs too slowly"),
    /** The gauge's zeros move while it warms up. */
    ZERO_DRIFT("the gauge's zero drifts"),
    /** The control never goes to high fire. */
    STAGE_MISSING("high fire is never reached"),
    /** The gauge's hoses are on each other's taps. */
    SWAPPED_HOSES("the hoses are swapped");

    private final String words;

    RigFault(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** As typed on a command line, {@code undersized-pipe}. */
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
