package settlemark.settle;

/**
 * What is left of an approach, at a time.
 *
 * @param amount with its sign
 * @param tauSeconds time constant
 * @param atSeconds when
 */
record ApproachLeft(double amount, double tauSeconds, double atSeconds) {
    static final ApproachLeft NOTHING = new ApproachLeft(0, 1, 0);

    double at(double seconds) {
        return amount == 0 ? 0 : amount * Math.exp((atSeconds - seconds) / tauSeconds);
    }

    /** Movement between two times. */
    double between(double fromSeconds, double toSeconds) {
        return at(fromSeconds) - at(toSeconds);
    }
}
