package settlemark.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import settlemark.decode.Encoder;
import settlemark.measure.Channel;
import settlemark.measure.Conversion;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.Profile;

/** A simulated instrument: sensors on the truth, and frames of bytes by its profile at its own rate. */
final class Instrument {
    private static final Map<Role, ToDoubleFunction<RigTruth>> TAPS = Map.of(
            Role.INLET, RigTruth::inletAtGaugeInH2o,
            Role.MANIFOLD, RigTruth::manifoldAtGaugeInH2o,
            Role.SUPPLY, RigTruth::supplyDegF,
            Role.RETURN, RigTruth::returnDegF);
    /** Zero offsets as the gauge comes out of its case, inH2O. */
    private static final Map<Role, Double> ZEROS_IN_H2O = Map.of(Role.INLET, 0.03, Role.MANIFOLD, -0.02);

    private static final double START_BATTERY_PERCENT = 87;
    private static final double LARGE_DRIFT_IN_H2O = 0.15;
    private static final int DEFAULT_BAUD = 9600;

    private final Encoder encoder;
    private final Wire wire;
    private final DropOuts dropOuts;
    private final boolean losesFrames;
    /** By channel. */
    private final List<Pickup> pickups = new ArrayList<>();

    private final SampleStatus[] statuses;
    private final double[] values;
    private final double periodSeconds;
    private final long periodNanos;
    private Consumer<double[]> reader = read -> {};
    private long nextFrameNanos;
    private long sentFrames;
    private long lostFrames;

    Instrument(DemoInstrument kind, RigTruth start, DemoRig.Settings settings, Random seeds) {
        Profile profile = kind.profile();
        losesFrames = settings.dropOuts();
        encoder = new Encoder(profile);
        wire = new Wire(profile.serial().map(line -> line.baud()).orElse(DEFAULT_BAUD), fork(seeds));
        dropOuts = new DropOuts(fork(seeds));
        for (Channel channel : profile.channels()) {
            Role role = kind.roles().get(channel.name());
            pickups.add(
                    role == null
                            ? new Battery(START_BATTERY_PERCENT)
                            : sensor(channel, role, settings.faults(), start, seeds));
        }
        values = new double[pickups.size()];
        statuses = new SampleStatus[pickups.size()];
        Arrays.fill(statuses, SampleStatus.OK);
        periodSeconds = profile.channels().get(0).periodSeconds();
        periodNanos = Math.round(periodSeconds * 1e9);
        nextFrameNanos = fork(seeds).nextInt((int) periodNanos);
    }

    private static Sensor sensor(Channel channel, Role role, Set<RigFault> faults, RigTruth start, Random seeds) {
        Unit tapUnit = role.dimension() == Dimension.PRESSURE ? Unit.INCH_OF_WATER : Unit.FAHRENHEIT;
        Conversion toChannelUnit = tapUnit.to(channel.unit());
        Random draws = fork(seeds);
        SensorErrors errors = role.dimension() == Dimension.PRESSURE
                ? SensorErrors.pressure(draws, ZEROS_IN_H2O.getOrDefault(role, 0.0))
                : SensorErrors.temperature(draws);
        if (role.dimension() == Dimension.PRESSURE && faults.contains(RigFault.ZERO_DRIFT)) {
            errors = errors.drifting(LARGE_DRIFT_IN_H2O);
        }
        return new Sensor(
                TAPS.getOrDefault(tap(role, faults), truth -> Double.NaN), toChannelUnit, errors, start, fork(seeds));
    }

    private static Role tap(Role role, Set<RigFault> faults) {
        boolean swapped = faults.contains(RigFault.SWAPPED_HOSES);
        return swapped && role == Role.INLET ? Role.MANIFOLD : swapped && role == Role.MANIFOLD ? Role.INLET : role;
    }

    private static Random fork(Random seeds) {
        return new Random(seeds.nextLong());
    }

    Wire wire() {
        return wire;
    }

    List<Pickup> pickups() {
        return List.copyOf(pickups);
    }

    /** @param listener gets what is read for each frame that is not lost, by channel */
    void listen(Consumer<double[]> listener) {
        reader = listener;
    }

    long sentFrames() {
        return sentFrames;
    }

    long lostFrames() {
        return lostFrames;
    }

    /** Follows one step of the truth and sends the frame that is due, if one is. */
    void step(RigTruth truth, double stepSeconds) {
        for (Pickup pickup : pickups) {
            pickup.step(truth, stepSeconds);
        }
        if (truth.timeNanos() >= nextFrameNanos) {
            nextFrameNanos += periodNanos;
            frame(truth.timeNanos());
        }
    }

    private void frame(long timeNanos) {
        for (int i = 0; i < values.length; i++) {
            values[i] = pickups.get(i).read(periodSeconds);
        }
        // A lost frame was made too: the frames' own counter tells of it.
        byte[] bytes = encoder.encode(values, statuses);
        if (losesFrames && dropOuts.lost()) {
            lostFrames++;
        } else {
            sentFrames++;
            wire.send(timeNanos, bytes);
            reader.accept(values.clone());
        }
    }
}
