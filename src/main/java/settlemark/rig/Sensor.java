package settlemark.rig;

import java.util.Random;
import java.util.function.ToDoubleFunction;
import settlemark.measure.Conversion;

/** One simulated sensor: it follows the truth with its lag and reads it with its errors. */
final class Sensor implements Pickup {
    private static final double WARM_UP_TAU_SECONDS = 900;
    private static final double SWIRL_TAU_SECONDS = 1.5;

    private final ToDoubleFunction<RigTruth> tap;
    private final Conversion toChannelUnit;
    private final SensorErrors errors;
    private final Random random;
    private final Lag felt;
    private final Lag warmth = new Lag(0);
    private double swirl;

    /** @param toChannelUnit from the tap's unit in the truth to the channel's */
    Sensor(
            ToDoubleFunction<RigTruth> tap,
            Conversion toChannelUnit,
            SensorErrors errors,
            RigTruth start,
            Random random) {
        this.tap = tap;
        this.toChannelUnit = toChannelUnit;
        this.errors = errors;
        this.random = random;
        felt = new Lag(toChannelUnit.apply(tap.applyAsDouble(start)));
    }

    SensorErrors errors() {
        return errors;
    }

    @Override
    public void step(RigTruth truth, double stepSeconds) {
        felt.step(toChannelUnit.apply(tap.applyAsDouble(truth)), stepSeconds, errors.lagSeconds());
        warmth.step(1, stepSeconds, WARM_UP_TAU_SECONDS);
    }

    @Override
    public double read(double periodSeconds) {
        double keep = StrictMath.exp(-periodSeconds / SWIRL_TAU_SECONDS);
        swirl = keep * swirl + errors.swirl() * Math.sqrt(1 - keep * keep) * random.nextGaussian();
        return (1 + errors.gain()) * felt.value()
                + errors.zero()
                + errors.drift() * warmth.value()
                + swirl
                + errors.noise() * random.nextGaussian();
    }
}
