package settlemark.calc;

/** The fuels that formulas know. */
final class Fuel {
    static final String NATURAL_GAS = "natural-gas";
    static final String METHANE = "methane";
    static final String PROPANE = "propane";
    static final String[] ALL = {NATURAL_GAS, METHANE, PROPANE};

    private Fuel() {}
}
