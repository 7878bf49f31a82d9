package settlemark.rig;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Chunk;
import settlemark.rig.RigTruth.Stage;
import settlemark.session.DemoHands;

/**
 * The demo rig: a simulated two-stage furnace on natural gas with a two-port gauge and two air probes on it, which speak
 * bytes. Everything here is invented and simulated.
 *
 * <p>Time comes from outside and starts at 0; {@link #advanceTo} brings the rig there, in steps of 20 ms, and hands over
 * the chunks that became due, in the order of time. The same seed and the same hands at the same times give the same
 * bytes, however the time was cut into calls. Chunks carry the rig's time, so a session in real time drives the rig with
 * its own ticker.
 *
 * <p>Safe for any thread. A sink is called on the thread that advances the rig and must return at once.
 */
public final class DemoRig implements DemoHands {
    /** Where the invented scenario takes place. */
    public static final String PLACE = "Ash Lane 12, two-stage furnace, natural gas";

    private static final long STEP_NANOS = 20_000_000;
    private static final double STEP_SECONDS = STEP_NANOS / 1e9;

    private final Appliance appliance;
    private final Furnace furnace;
    private final Map<DemoInstrument, Instrument> instruments = new EnumMap<>(DemoInstrument.class);
    private final Map<DemoInstrument, Consumer<Chunk>> sinks = new EnumMap<>(DemoInstrument.class);

    /**
     * What may differ between rigs.
     *
     * @param seed of noise, sensor errors, drop-outs and the cutting into chunks
     * @param dropOuts whether the instruments lose frames now and then
     * @param faults what is wrong with the furnace or its instruments
     * @param appliance which furnace
     */
    public record Settings(long seed, boolean dropOuts, Set<RigFault> faults, Appliance appliance) {
        public Settings {
            faults = Set.copyOf(faults);
        }

        /** The two-stage furnace on natural gas. */
        public Settings(long seed, boolean dropOuts, Set<RigFault> faults) {
            this(seed, dropOuts, faults, Appliance.TWO_STAGE);
        }

        /** A healthy furnace, though its stages stand off the plate. */
        public Settings(long seed, boolean dropOuts) {
            this(seed, dropOuts, Set.of());
        }
    }

    public DemoRig(Settings settings) {
        Random seeds = new Random(settings.seed());
        appliance = settings.appliance();
        furnace = new Furnace(STEP_NANOS, settings.faults(), appliance);
        RigTruth start = furnace.truth();
        for (DemoInstrument kind : DemoInstrument.values()) {
            instruments.put(kind, new Instrument(kind, start, settings, new Random(seeds.nextLong())));
        }
    }

    /** Hands an instrument's chunks to a sink from now on; what came before is gone, as on a real line. */
    public synchronized void connect(DemoInstrument instrument, Consumer<Chunk> sink) {
        sinks.put(instrument, sink);
    }

    /** Hands over what an instrument reads for each frame that is not lost, by the channels of its profile. */
    synchronized void listen(DemoInstrument instrument, Consumer<double[]> listener) {
        instrument(instrument).listen(listener);
    }

    public synchronized void disconnect(DemoInstrument instrument) {
        sinks.remove(instrument);
    }

    /** Brings the rig to this time, in nanoseconds from its start; does nothing where it is there already. */
    public synchronized void advanceTo(long timeNanos) {
        while (furnace.timeNanos() + STEP_NANOS <= timeNanos) {
            furnace.step();
            RigTruth truth = furnace.truth();
            for (Instrument instrument : instruments.values()) {
                instrument.step(truth, STEP_SECONDS);
            }
            deliver(truth.timeNanos());
        }
    }

    private void deliver(long timeNanos) {
        for (DemoInstrument next = nextToLook(); ; next = nextToLook()) {
            Wire wire = instrument(next).wire();
            if (wire.nextLookNanos() > timeNanos) {
                return;
            }
            @Nullable Chunk chunk = wire.look();
            @Nullable Consumer<Chunk> sink = sinks.get(next);
            if (chunk != null && sink != null) {
                sink.accept(chunk);
            }
        }
    }

    private DemoInstrument nextToLook() {
        long gauge = instrument(DemoInstrument.GAUGE).wire().nextLookNanos();
        long air = instrument(DemoInstrument.AIR).wire().nextLookNanos();
        return gauge <= air ? DemoInstrument.GAUGE : DemoInstrument.AIR;
    }

    Instrument instrument(DemoInstrument kind) {
        Instrument instrument = instruments.get(kind);
        if (instrument == null) {
            throw new IllegalStateException("no instrument " + kind);
        }
        return instrument;
    }

    /** What is really so, at the last whole step. */
    public synchronized RigTruth truth() {
        return furnace.truth();
    }

    /** Frames that an instrument has sent so far, lost ones not counted. */
    public synchronized long sentFrames(DemoInstrument instrument) {
        return instrument(instrument).sentFrames();
    }

    /** Frames that were lost on the way so far. */
    public synchronized long lostFrames(DemoInstrument instrument) {
        return instrument(instrument).lostFrames();
    }

    @Override
    public synchronized void call(Call call) {
        furnace.call(call);
    }

    /**
     * Turns a screw of the pressure regulator, at one turn a second. The screws lie under the cap: with the cap on this
     * does nothing, as {@link #state} shows.
     *
     * @throws IllegalArgumentException where there is no such stage or the turns are no number
     */
    @Override
    public synchronized void turnScrew(String stage, double turns) {
        if (!Double.isFinite(turns)) {
            throw new IllegalArgumentException("turns must be a finite number, got " + turns);
        }
        furnace.turnScrew(stageOf(stage), turns);
    }

    /**
     * A stage stands as somebody has left it before the rig's time began.
     *
     * @throws IllegalArgumentException where there is no such screw
     */
    public synchronized void leftAt(String stage, double manifoldInH2o) {
        furnace.stand(stageOf(stage), manifoldInH2o);
    }

    private static Stage stageOf(String stage) {
        return switch (stage) {
            case "low" -> Stage.LOW;
            case "high" -> Stage.HIGH;
            default ->
                throw new IllegalArgumentException("the valve has a low and a high screw, not \"" + stage + "\"");
        };
    }

    @Override
    public synchronized void cap(boolean on) {
        furnace.cap(on);
    }

    /** Opens both ports to the air; the taps are closed meanwhile and nothing escapes. */
    @Override
    public synchronized void portsOpen(boolean open) {
        furnace.portsOpen(open);
    }

    @Override
    public synchronized void manualValve(boolean open) {
        furnace.cock(!open);
    }

    /** Lights or puts out another appliance of 40,000 Btu/h on the same supply. */
    @Override
    public synchronized void otherAppliance(boolean burning) {
        furnace.otherLoad(burning);
    }

    @Override
    public synchronized double meterCubicFeet() {
        return furnace.meterCubicFeet();
    }

    @Override
    public synchronized Optional<Analysis> analysis() {
        RigTruth truth = furnace.truth();
        return Optional.of(FlueGas.of(truth, appliance));
    }

    @Override
    public synchronized State state() {
        RigTruth truth = furnace.truth();
        return new State(
                furnace.call(),
                truth.capOn(),
                truth.portsOpen(),
                furnace.turns(Stage.LOW),
                furnace.turns(Stage.HIGH),
                furnace.meterCubicFeet());
    }
}
