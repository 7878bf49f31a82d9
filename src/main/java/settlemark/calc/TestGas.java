package settlemark.calc;

/**
 * Test gases of EN 437, dry, at 15 degC and 1013.25 mbar. G222, G23 and G24 as printed in an excerpt of EN
 * 437:2003+A1:2009, Table 2; the others from memory, which their results say.
 */
enum TestGas {
    G20(37.78, 34.02, 0.555, false),
    G21(45.28, 41.01, 0.684, false),
    G222(31.86, 28.53, 0.443, true),
    G23(34.95, 31.46, 0.586, true),
    G24(39.55, 35.70, 0.577, true),
    G25(32.49, 29.25, 0.612, false),
    G26(36.91, 33.36, 0.678, false),
    G27(30.98, 27.89, 0.629, false),
    G30(125.81, 116.09, 2.075, false),
    G31(95.65, 88.00, 1.550, false),
    G32(88.52, 82.78, 1.476, false);

    final double grossMegajoules;
    final double netMegajoules;
    final double relativeDensity;
    final boolean printed;

    TestGas(double grossMegajoules, double netMegajoules, double relativeDensity, boolean printed) {
        this.grossMegajoules = grossMegajoules;
        this.netMegajoules = netMegajoules;
        this.relativeDensity = relativeDensity;
        this.printed = printed;
    }
}
