package settlemark.calc;

/**
 * Components of a fuel gas, as ISO 6976:2016 tabulates them, read in an open reproduction of its tables: molar mass,
 * summation factor and gross molar heating value at 15 degC. Propene's figures are those of the edition of 1995.
 */
enum GasComponent {
    METHANE("methane", 16.04246, 0.04452, 891.51, 4),
    ETHANE("ethane", 30.06904, 0.0919, 1562.14, 6),
    PROPANE("propane", 44.09562, 0.1344, 2221.10, 8),
    BUTANE("n-butane", 58.12220, 0.1840, 2879.76, 10),
    ISOBUTANE("i-butane", 58.12220, 0.1722, 2870.58, 10),
    PENTANE("n-pentane", 72.14878, 0.2361, 3538.60, 12),
    ISOPENTANE("i-pentane", 72.14878, 0.2251, 3531.68, 12),
    HEXANE("n-hexane", 86.17536, 0.3001, 4198.24, 14),
    PROPENE("propene", 42.081, 0.1265, 2059.43, 6),
    HYDROGEN("hydrogen", 2.01588, 0, 286.15, 2),
    CARBON_MONOXIDE("carbon-monoxide", 28.010, 0.0224, 282.91, 0),
    NITROGEN("nitrogen", 28.0134, 0.0170, 0, 0),
    OXYGEN("oxygen", 31.9988, 0.0283, 0, 0),
    CARBON_DIOXIDE("carbon-dioxide", 44.0095, 0.0752, 0, 0);

    final String key;
    /** g/mol. */
    final double molarMass;

    final double summationFactor;
    /** kJ/mol. */
    final double gross;

    final int hydrogenAtoms;

    GasComponent(String key, double molarMass, double summationFactor, double gross, int hydrogenAtoms) {
        this.key = key;
        this.molarMass = molarMass;
        this.summationFactor = summationFactor;
        this.gross = gross;
        this.hydrogenAtoms = hydrogenAtoms;
    }
}
