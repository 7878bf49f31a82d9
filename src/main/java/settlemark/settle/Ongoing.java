package settlemark.settle;

/**
 * What goes on after a reading is taken, and so is no new movement: the rest of an approach, or a slow swing.
 *
 * @param amount that is left of an approach at a time, with its sign
 * @param tauSeconds its time constant
 * @param atSeconds when
 * @param swingPerSecond the greatest speed of a swing
 */
record Ongoing(double amount, double tauSeconds, double atSeconds, double swingPerSecond) {
    static final Ongoing NOTHING = new Ongoing(0, 1, 0, 0);

    static Ongoing approach(double amount, double tauSeconds, double atSeconds) {
        return new Ongoing(amount, tauSeconds, atSeconds, 0);
    }

    static Ongoing swing(double perSecond) {
        return new Ongoing(0, 1, 0, perSecond);
    }

    double at(double seconds) {
        return amount == 0 ? 0 : amount * Math.exp((atSeconds - seconds) / tauSeconds);
    }

    /** Movement of the approach between two times. */
    double between(double fromSeconds, double toSeconds) {
        return at(fromSeconds) - at(toSeconds);
    }
}
