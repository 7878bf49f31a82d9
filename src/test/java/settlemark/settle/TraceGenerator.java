package settlemark.settle;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/**
 * Makes traces as gauges on a furnace give them, each from its seed: what happens (the family), how strongly, how noisy,
 * how often the probe sends and in which step it counts are all drawn. Training and held-out traces have seeds that do not
 * meet: even ones are for training.
 */
final class TraceGenerator {
    static final List<String> FAMILIES = List.of(
            "step",
            "screw",
            "exp",
            "exp2",
            "hunt in",
            "hunt out",
            "slow hunt in",
            "slow hunt out",
            "beat in",
            "beat out",
            "flat",
            "noise burst",
            "spikes",
            "gaps",
            "rate change",
            "stage change",
            "warm-up",
            "cap on");
    /** A second mode slower than the look-ahead: outside what the method promises, reported beside. */
    static final String BEYOND = "cabinet";

    /** What a ramp begins from. */
    enum RampFrom {
        REST("from rest"),
        APPROACH_END("after an approach"),
        APPROACH_START("under an approach");

        final String words;

        RampFrom(String words) {
            this.words = words;
        }
    }

    static final List<Double> RAMPS = List.of(0.5, 0.9, 1.1, 1.25, 1.5, 2.0, 3.0);

    private final SettleKind kind;
    private final SettleSettings settings;
    private final double limit;
    private final Random random;
    private final long seed;
    private final boolean gas;
    private final Course course;
    private double endSeconds;
    private double resolution;
    private double sigma;
    private double burstFrom = Double.POSITIVE_INFINITY;
    private double burstUntil;
    private double burstFactor = 1;
    private double spikeShare;
    private double gapShare;
    private double changeOfRate = 1;

    private TraceGenerator(SettleKind kind, long seed) {
        this.kind = kind;
        this.seed = seed;
        settings = SettleSettings.defaults(kind);
        limit = settings.driftLimit();
        random = new Random(seed * 7919 + kind.ordinal() * 104729L);
        random.nextDouble();
        gas = kind == SettleKind.GAS;
        course = new Course(settings);
    }

    static SimulatedTrace family(SettleKind kind, String family, long seed) {
        TraceGenerator generator = new TraceGenerator(kind, seed + 1_000_000L * (FAMILIES.indexOf(family) + 1));
        generator.draw(family);
        return generator.sample(family);
    }

    /** @param times the limit */
    static SimulatedTrace ramp(SettleKind kind, double times, RampFrom from, long seed) {
        long cell = 50 + 2L * RAMPS.indexOf(times) + from.ordinal() + (from == RampFrom.APPROACH_START ? 50 : 0);
        TraceGenerator generator = new TraceGenerator(kind, seed + 1_000_000L * cell);
        generator.drawRamp(times, from);
        return generator.sample("ramp " + times + " " + from.words);
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private double sign() {
        return random.nextBoolean() ? 1 : -1;
    }

    private double level() {
        return switch (kind) {
            case GAS -> between(1.2, 9);
            case AIR -> between(60, 80);
            case STACK -> between(60, 90);
        };
    }

    private double tau() {
        return gas ? between(0.3, 2.5) : kind == SettleKind.AIR ? between(15, 110) : between(15, 80);
    }

    private double size() {
        return gas ? sign() * between(0.1, 1.8) : kind == SettleKind.AIR ? between(25, 70) : between(120, 330);
    }

    private void drawInstrument() {
        switch (kind) {
            case GAS -> {
                resolution = random.nextInt(4) == 0 ? 0.001 : 0.01;
                sigma = between(0.002, 0.012);
            }
            case AIR -> {
                resolution = 0.1;
                sigma = between(0.02, 0.12);
            }
            case STACK -> {
                resolution = random.nextBoolean() ? 1 : 0.1;
                sigma = between(0.1, 0.6);
            }
        }
    }

    private static DoubleUnaryOperator exponential(double from, double to, double tau) {
        return t -> to + (from - to) * Math.exp(-t / tau);
    }

    private void draw(String family) {
        drawInstrument();
        double from = level();
        double start = gas ? between(15, 40) : between(20, 80);
        course.rest(0, from);
        endSeconds = gas ? between(250, 360) : between(700, 1100);
        switch (family) {
            case "step", "cap on" -> steps(family, from, start);
            case "screw" -> screw(from, start);
            case "exp", "spikes", "gaps", "rate change", "noise burst" -> {
                double to = from + size();
                course.approach(start, to, exponential(from, to, tau()));
                disturb(family);
            }
            case "exp2" -> {
                double fast = tau();
                twoModes(
                        from,
                        start,
                        fast,
                        Math.min(settings.horizonSeconds(), fast * between(2, 4)),
                        between(0.1, 0.3));
            }
            case "cabinet" -> twoModes(from, start, tau(), gas ? 20 : 300, 0.2);
            case "flat" -> sigma = between(0, 0.3) * resolution;
            case "stage change" -> {
                double to = from + size();
                double next = start + (gas ? between(60, 120) : between(250, 450));
                double tau = tau();
                course.approach(start, to, exponential(from, to, tau));
                double here = course.at(next);
                double last = from + (to - from) * between(0.5, 0.8);
                course.approach(next, last, exponential(here, last, tau * between(0.7, 1.3)));
            }
            case "warm-up" -> {
                double whole = sign() * limit * between(2, 15);
                double tau = settings.horizonSeconds() * between(2, 6);
                course.drift(start, t -> from + whole * -Math.expm1(-t / tau));
                endSeconds += 2 * tau;
            }
            default -> hunting(family, from, start);
        }
    }

    private void steps(String family, double from, double start) {
        double to = from + (family.equals("cap on") ? sign() * limit * between(1.2, 8) : size());
        course.approach(start, to, exponential(from, to, gas ? between(0.2, 0.8) : between(3, 10)));
        double next = start + (gas ? between(60, 150) : between(250, 400));
        double again = to + (family.equals("cap on") ? sign() * limit * between(1.2, 8) : size());
        course.approach(next, again, exponential(to, again, gas ? between(0.2, 0.8) : between(3, 10)));
    }

    /** A screw is turned a few times, each turn a ramp of one to three seconds that the pressure follows. */
    private void screw(double from, double start) {
        double at = start;
        double value = from;
        int turns = 2 + random.nextInt(5);
        for (int i = 0; i < turns; i++) {
            double target = value + (gas ? sign() * between(0.05, 0.6) : size() / 3);
            double turning = between(0.5, 3);
            double tau = gas ? between(0.3, 1.2) : tau();
            double began = value;
            course.approach(at, target, t -> turned(t, began, target, turning, tau));
            double pause = gas ? between(5, 60) : between(60, 300);
            value = course.at(at + pause);
            at += pause;
        }
        endSeconds = at + (gas ? between(60, 120) : between(400, 600));
    }

    /** First-order answer to a ramp from one value to the other. */
    static double turned(double t, double from, double to, double turningSeconds, double tau) {
        double rate = (to - from) / turningSeconds;
        double during = Math.min(t, turningSeconds);
        double lag = rate * tau * -Math.expm1(-during / tau);
        double reached = from + rate * during - lag;
        return t <= turningSeconds ? reached : to + (reached - to) * Math.exp(-(t - turningSeconds) / tau);
    }

    private void twoModes(double from, double start, double fast, double slow, double share) {
        double to = from + size();
        course.approach(
                start, to, t -> to + (from - to) * ((1 - share) * Math.exp(-t / fast) + share * Math.exp(-t / slow)));
        endSeconds += gas ? 0 : 3 * slow;
    }

    private void disturb(String family) {
        switch (family) {
            case "spikes" -> spikeShare = between(0.003, 0.02);
            case "gaps" -> gapShare = between(0.002, 0.01);
            case "rate change" -> changeOfRate = random.nextBoolean() ? between(3, 8) : between(0.15, 0.4);
            case "noise burst" -> {
                burstFrom = endSeconds * between(0.4, 0.7);
                burstUntil = burstFrom + (gas ? between(5, 25) : between(30, 90));
                burstFactor = between(3, 8);
            }
            default -> {}
        }
    }

    private void hunting(String family, double from, double start) {
        double to = from + size();
        double tau = tau();
        double later = start + 8 * tau + (gas ? 5 : 20);
        course.approach(start, to, exponential(from, to, tau));
        boolean inside = family.endsWith("in");
        double swing = settings.band() * (inside ? between(0.3, 0.7) : between(1.6, 3.5));
        double period = gas ? between(3, 15) : between(8, 40);
        if (family.startsWith("slow")) {
            period = gas ? between(15, 60) : between(60, 240);
        }
        double speed = 2 * Math.PI / period;
        DoubleUnaryOperator wave = t -> Math.sin(speed * t);
        if (family.startsWith("beat")) {
            double other = speed * (1 + sign() * between(0.06, 0.2));
            wave = t -> (Math.sin(speed * t) - Math.sin(other * t)) / 2;
        }
        DoubleUnaryOperator of = wave;
        course.hunting(later, to, swing, t -> to + swing * of.applyAsDouble(t));
        endSeconds = later + (gas ? 320 : 1000);
    }

    private void drawRamp(double times, RampFrom origin) {
        drawInstrument();
        double perSecond = sign() * times * limit / settings.horizonSeconds();
        double from = level();
        course.rest(0, from);
        double start = gas ? between(15, 40) : between(20, 80);
        if (origin == RampFrom.REST) {
            start += gas ? between(0, 60) : between(0, 200);
            course.drift(start, t -> from + perSecond * t);
            endSeconds = start + (gas ? between(200, 320) : between(600, 900));
            return;
        }
        double to = from + size();
        double tau = tau();
        DoubleUnaryOperator rise = exponential(from, to, tau);
        double turn = start + tau * between(3.5, 7);
        endSeconds = turn + (gas ? between(200, 320) : between(600, 900));
        if (origin == RampFrom.APPROACH_START) {
            course.drift(start, t -> rise.applyAsDouble(t) + perSecond * t);
            return;
        }
        course.approach(start, to, rise);
        double reached = rise.applyAsDouble(turn - start);
        double left = to - reached;
        course.drift(turn, t -> reached + perSecond * t + left * -Math.expm1(-t / tau));
    }

    private SimulatedTrace sample(String family) {
        double rate = gas ? between(0.7, 8) : between(0.5, 2);
        List<double[]> rows = new ArrayList<>();
        double t = between(0, 1 / rate);
        while (t < endSeconds) {
            double loud = t >= burstFrom && t < burstUntil ? burstFactor : 1;
            double value = course.at(t) + sigma * loud * random.nextGaussian();
            if (random.nextDouble() < spikeShare) {
                value += sign() * limit * between(3, 60);
            }
            rows.add(new double[] {t, Math.rint(value / resolution) * resolution});
            double pace = t > endSeconds * 0.45 ? rate * changeOfRate : rate;
            t += between(0.85, 1.15) / pace;
            if (random.nextDouble() < gapShare) {
                t += settings.gapSeconds() * between(0.5, 4);
            }
        }
        Traces.Trace samples = new Traces.Trace(
                rows.stream().mapToDouble(r -> r[0]).toArray(),
                rows.stream().mapToDouble(r -> r[1]).toArray());
        return new SimulatedTrace(seed, resolution, samples, course.truth(kind, family, endSeconds));
    }
}
