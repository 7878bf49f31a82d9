package settlemark.rig;

/** An adjusting screw, turned by hand at one turn a second within its travel. Clockwise is positive. */
final class Screw {
    private static final double TURNS_PER_SECOND = 1;
    private static final double TRAVEL_TURNS = 5;
    private double turns;
    private double wanted;

    void turn(double more) {
        wanted = Math.max(-TRAVEL_TURNS, Math.min(TRAVEL_TURNS, wanted + more));
    }

    /** Stands there at once, as somebody has left it. */
    void stand(double turnsFromFound) {
        wanted = Math.max(-TRAVEL_TURNS, Math.min(TRAVEL_TURNS, turnsFromFound));
        turns = wanted;
    }

    /** Turns from where it was found. */
    double turns() {
        return turns;
    }

    void step(double stepSeconds) {
        double most = TURNS_PER_SECOND * stepSeconds;
        turns += Math.max(-most, Math.min(most, wanted - turns));
    }
}
