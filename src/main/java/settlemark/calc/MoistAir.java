package settlemark.calc;

/** Properties of moist air. */
final class MoistAir {
    /** Gas constants of dry air and of water vapour, J/(kg K): 8.314462618 over 28.966e-3 and 18.01528e-3. */
    private static final double DRY = 8.314462618 / 28.966e-3;

    private static final double VAPOUR = 8.314462618 / 18.01528e-3;

    private MoistAir() {}

    /**
     * Saturation pressure of water in Pa, by Hyland and Wexler 1983 as ASHRAE Handbook Fundamentals prints it.
     *
     * @param kelvin 173.15 to 473.15; over ice below 273.15
     */
    static double saturationPa(double kelvin) {
        double t = kelvin;
        if (t < 273.15) {
            return Math.exp(-5.6745359e3 / t
                    + 6.3925247
                    - 9.677843e-3 * t
                    + 6.2215701e-7 * t * t
                    + 2.0747825e-9 * t * t * t
                    - 9.484024e-13 * t * t * t * t
                    + 4.1635019 * Math.log(t));
        }
        return Math.exp(-5.8002206e3 / t
                + 1.3914993
                - 4.8640239e-2 * t
                + 4.1764768e-5 * t * t
                - 1.4452093e-8 * t * t * t
                + 6.5459673 * Math.log(t));
    }

    /** kg/m3. */
    static double density(double pressurePa, double kelvin, double relativeHumidity) {
        double vapourPa = relativeHumidity * saturationPa(kelvin);
        return (pressurePa - vapourPa) / (DRY * kelvin) + vapourPa / (VAPOUR * kelvin);
    }

    /** Dew point in kelvin of a vapour pressure, by bisection of the saturation pressure. */
    static double dewPoint(double vapourPa) {
        double low = 173.15;
        double high = 473.15;
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            if (saturationPa(middle) < vapourPa) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
