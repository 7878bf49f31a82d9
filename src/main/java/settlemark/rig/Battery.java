package settlemark.rig;

/** An instrument's battery: it loses one percent in half an hour and never quite dies. */
final class Battery implements Pickup {
    private static final double PERCENT_PER_SECOND = 1.0 / 1800;
    private double percent;

    Battery(double startPercent) {
        percent = startPercent;
    }

    @Override
    public void step(RigTruth truth, double stepSeconds) {
        percent = Math.max(1, percent - stepSeconds * PERCENT_PER_SECOND);
    }

    @Override
    public double read(double periodSeconds) {
        return Math.rint(percent);
    }
}
