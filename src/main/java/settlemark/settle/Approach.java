package settlemark.settle;

/**
 * What a straight line through the last window says about an exponential approach x = P - A exp(-t/tau).
 *
 * <p>With u = window/tau, the least-squares slope m and mean of the window obey, exactly and at any time,
 * remaining movement at the window's end = m rho, and P - mean = m kappa. Valid for a continuous, evenly filled window.
 */
final class Approach {
    private static final int BISECTIONS = 40;

    private Approach() {}

    /** Seconds by which the slope is multiplied to give what remains after the window. */
    static double rhoSeconds(double tauSeconds, double windowSeconds) {
        double u = windowSeconds / tauSeconds;
        return windowSeconds
                * windowSeconds
                * windowSeconds
                / (12 * tauSeconds * tauSeconds * ((u / 2 - 1) * Math.expm1(u) + u));
    }

    /** Seconds by which the slope is multiplied to give the way from the window's mean to the end. */
    static double kappaSeconds(double tauSeconds, double windowSeconds) {
        double u = windowSeconds / tauSeconds;
        return rhoSeconds(tauSeconds, windowSeconds) * Math.expm1(u) / u;
    }

    /** The time constant whose kappa is the given one, between the two bounds. */
    static double tauSeconds(double kappaSeconds, double windowSeconds, double leastSeconds, double mostSeconds) {
        double low = leastSeconds;
        double high = mostSeconds;
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = (low + high) / 2;
            if (kappaSeconds(middle, windowSeconds) < kappaSeconds) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
