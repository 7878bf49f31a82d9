package settlemark.rig;

/** A first-order lag, advanced exactly for an input that holds still during the step. */
final class Lag {
    private double value;

    Lag(double start) {
        value = start;
    }

    double value() {
        return value;
    }

    /** Moves towards the input; the time constant may change from step to step. */
    void step(double input, double stepSeconds, double tauSeconds) {
        value = input + (value - input) * StrictMath.exp(-stepSeconds / tauSeconds);
    }
}
