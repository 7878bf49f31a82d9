package settlemark.ui;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import settlemark.job.Act;
import settlemark.job.Clocking;
import settlemark.job.FormerReading;
import settlemark.job.Fuel;
import settlemark.job.JobPlan;
import settlemark.job.JobState;
import settlemark.job.Limit;
import settlemark.job.PlanStep;
import settlemark.job.Progress;
import settlemark.job.RatingPlate;
import settlemark.job.ShortPlan;
import settlemark.job.StagePlate;
import settlemark.job.StepKind;
import settlemark.job.StepState;
import settlemark.job.Verdict;
import settlemark.measure.Channel;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.ChannelView;
import settlemark.session.LinkChange;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.ProbeView;
import settlemark.session.SessionHeader;
import settlemark.session.Snapshot;
import settlemark.session.Span;
import settlemark.session.Traces;
import settlemark.settle.ChannelReading;
import settlemark.settle.FromInstrument;
import settlemark.settle.Heading;
import settlemark.settle.SettleKind;
import settlemark.settle.SettlePhase;
import settlemark.settle.SettleSettings;
import settlemark.settle.SettleState;
import settlemark.settle.StageReading;

/** Snapshots of an invented job, one for each thing that the window has to show. Every number here is made up. */
final class Showroom {
    static final RatingPlate PLATE = new RatingPlate(
            "demo furnace, basement",
            Fuel.NATURAL_GAS,
            List.of(
                    new StagePlate("low", "low fire", 1.7, 0.17, Unit.INCH_OF_WATER, 56_000),
                    new StagePlate("high", "high fire", 3.5, 0.35, Unit.INCH_OF_WATER, 80_000)),
            new Limit(4.5, 10.5, Unit.INCH_OF_WATER, "plate"),
            new Limit(30, 60, Unit.FAHRENHEIT_DIFFERENCE, "plate"));

    private static final long SECOND = 1_000_000_000L;
    private static final int STEP_SECONDS = 200;
    private static final JobPlan PLAN = ShortPlan.twoStage();

    /** What each channel does from the start of each step on: its target there. Steps begin every 200 s. */
    private static final Map<String, Map<Role, Double>> TARGETS = Map.of(
            "plate", at(0.01, 0.01, 70.4, 70.5),
            "lock-up", at(7.80, 0.00, 70.5, 70.5),
            "found-low", at(6.97, 1.51, 104.9, 70.6),
            "found-high", at(6.84, 3.12, 118.2, 70.8),
            "left-low", at(6.95, 1.70, 106.7, 70.7),
            "left-high", at(6.80, 3.49, 122.3, 70.9),
            "shut", at(7.80, 0.00, 84.0, 70.8),
            "close", at(0.01, 0.00, 75.0, 70.7));

    private long revision = 1;
    private double nowSeconds = 400;
    private final Map<Role, SettleState> settle = new EnumMap<>(Role.class);
    private final Map<Role, FromInstrument> corrected = new EnumMap<>(Role.class);
    private final Map<Role, Boolean> stale = new EnumMap<>(Role.class);
    private final Map<Role, Double> bias = new EnumMap<>(Role.class);
    private String current = "plate";
    private Progress progress = Progress.OPEN;
    private boolean adjusting;
    private boolean closingZeroRead;
    private String person = "";
    private List<String> ticked = List.of();
    private List<String> skipped = List.of();
    private Optional<ProbeView.Health> health = Optional.empty();
    private List<String> remarks = List.of();
    private String failure = "";
    private List<Act.Former> visits = List.of();

    private static Map<Role, Double> at(double inlet, double manifold, double supply, double back) {
        return Map.of(Role.INLET, inlet, Role.MANIFOLD, manifold, Role.SUPPLY, supply, Role.RETURN, back);
    }

    /** The step at hand, opened some seconds ago. */
    Showroom at(String step, Progress newProgress, double secondsIn) {
        current = step;
        progress = newProgress;
        nowSeconds = start(step) + secondsIn;
        for (Role role : List.of(Role.INLET, Role.MANIFOLD, Role.SUPPLY, Role.RETURN)) {
            settled(role);
        }
        return this;
    }

    /** Three visits before, at which the low fire sank from year to year. */
    Showroom visited() {
        visits = List.of(
                visit("2023-09-21", 1.70, 3.50), visit("2024-10-03", 1.66, 3.49), visit("2025-09-30", 1.61, 3.50));
        return this;
    }

    private static Act.Former visit(String day, double low, double high) {
        List<FormerReading> left = new ArrayList<>();
        left.add(new FormerReading("", Role.INLET, 7.82, 0.04, Unit.INCH_OF_WATER));
        for (String stage : List.of("low", "high")) {
            double manifold = stage.equals("low") ? low : high;
            left.add(new FormerReading(stage, Role.INLET, 6.9, 0.04, Unit.INCH_OF_WATER));
            left.add(new FormerReading(stage, Role.MANIFOLD, manifold, 0.03, Unit.INCH_OF_WATER));
            left.add(new FormerReading(stage, Role.SUPPLY, 70 + 15 * manifold, 0.6, Unit.FAHRENHEIT));
            left.add(new FormerReading(stage, Role.RETURN, 70.5, 0.6, Unit.FAHRENHEIT));
        }
        return new Act.Former(day, left);
    }

    Showroom adjusting() {
        adjusting = true;
        return this;
    }

    Showroom closingZeroRead() {
        closingZeroRead = true;
        return this;
    }

    Showroom person(String name) {
        person = name;
        return this;
    }

    Showroom ticked(List<String> items) {
        ticked = items;
        return this;
    }

    Showroom skipped(String... keys) {
        skipped = List.of(keys);
        return this;
    }

    Showroom health(ProbeView.HealthClass kind, String words) {
        health = Optional.of(new ProbeView.Health(kind, words));
        return this;
    }

    Showroom remark(String words) {
        remarks = List.of(words);
        return this;
    }

    Showroom failing(String why) {
        failure = why;
        return this;
    }

    Showroom bias(Role role, double amount) {
        bias.put(role, amount);
        return this;
    }

    Showroom stale(Role role) {
        stale.put(role, true);
        return this;
    }

    Showroom filling(Role role, double toGo) {
        return put(role, SettlePhase.FILLING, Double.NaN, 0, toGo, Double.NaN);
    }

    Showroom moving(Role role, double limits) {
        return put(role, SettlePhase.MOVING, limits * settings(role).driftLimit(), 0, 0, Double.NaN);
    }

    Showroom swinging(Role role, double bands) {
        return put(
                role,
                SettlePhase.MOVING,
                settings(role).driftLimit() / 2,
                bands * settings(role).band(),
                0,
                Double.NaN);
    }

    Showroom alsoSwinging(Role role, double bands) {
        double could = Objects.requireNonNull(settle.get(role)).couldMove();
        return put(role, SettlePhase.MOVING, could, bands * settings(role).band(), 0, Double.NaN);
    }

    Showroom noisy(Role role) {
        return put(role, SettlePhase.TOO_NOISY, 1.4 * settings(role).driftLimit(), 0, 0, Double.NaN);
    }

    Showroom holding(Role role) {
        return put(role, SettlePhase.HOLDING, 0.7 * settings(role).driftLimit(), 0, 2, Double.NaN);
    }

    Showroom settled(Role role) {
        double limit = settings(role).driftLimit();
        double part = role == Role.MANIFOLD ? 0.65 : role == Role.INLET ? 0.45 : 0.4;
        return put(role, SettlePhase.SETTLED, part * limit, 0, 0, role.dimension() == Dimension.PRESSURE ? 0.02 : 0.3);
    }

    private Showroom put(Role role, SettlePhase phase, double could, double swing, double toGo, double uncertainty) {
        SettleSettings settings = settings(role);
        settle.put(
                role,
                new SettleState(
                        phase,
                        nowSeconds,
                        could,
                        settings.driftLimit(),
                        swing,
                        settings.band(),
                        toGo,
                        nowSeconds - 60,
                        Double.NaN,
                        uncertainty,
                        "made up"));
        return this;
    }

    Showroom seconds(double newNow) {
        nowSeconds = newNow;
        return this;
    }

    double seconds() {
        return nowSeconds;
    }

    Snapshot snapshot() {
        List<ChannelView> channels = new ArrayList<>();
        for (Role role : List.of(Role.INLET, Role.MANIFOLD, Role.SUPPLY, Role.RETURN)) {
            channels.add(channel(role));
        }
        SessionHeader header = header();
        List<ProbeView> probes = new ArrayList<>();
        for (int i = 0; i < header.probes().size(); i++) {
            boolean silent = i == 0 && stale.getOrDefault(Role.INLET, false);
            probes.add(new ProbeView(
                    header.probes().get(i),
                    LinkChange.UP,
                    "up",
                    (long) (nowSeconds * 10),
                    0,
                    "",
                    0,
                    nanos(nowSeconds),
                    silent,
                    i == 0 ? 81 : 14,
                    i == 1 ? health : Optional.empty(),
                    List.of()));
        }
        return new Snapshot(
                revision++,
                nanos(nowSeconds),
                header.startedAt().plusNanos(nanos(nowSeconds)),
                header,
                probes,
                channels,
                Optional.of(job()),
                new Snapshot.Stored(nanos(nowSeconds - 0.4), (long) (nowSeconds * 40), failure),
                List.of());
    }

    /** An instrument that adds something to what it indicates. */
    Showroom corrected(Role role, String serial, double correction) {
        corrected.put(role, new FromInstrument(serial, correction, 0.01, ""));
        return this;
    }

    // The checker does not see in a class file that the nested record may be null.
    @SuppressWarnings("NullAway")
    private ChannelView channel(Role role) {
        int count = (int) Math.min(nowSeconds * 10, 9000);
        long[] times = new long[count];
        double[] values = new double[count];
        Random noise = new Random(role.ordinal());
        boolean pressure = role.dimension() == Dimension.PRESSURE;
        for (int i = 0; i < count; i++) {
            double t = nowSeconds - (count - 1 - i) / 10.0;
            times[i] = nanos(t);
            values[i] = value(role, t) + noise.nextGaussian() * (pressure ? 0.008 : 0.05);
        }
        boolean old = stale.getOrDefault(role, false);
        SettleState state = settle.getOrDefault(
                role, new SettleState(SettlePhase.NO_DATA, 0, Double.NaN, 1, 0, 1, 0, 0, Double.NaN, Double.NaN, ""));
        List<Span> spans = state.settled() ? List.of(new Span(nanos(nowSeconds - 60), nanos(nowSeconds))) : List.of();
        SettleSettings settings = settings(role);
        return new ChannelView(
                role,
                pressure ? 0 : 1,
                Objects.requireNonNull(CHANNELS.get(role)),
                unit(role),
                count == 0 ? Double.NaN : values[count - 1],
                SampleStatus.OK,
                old ? nanos(nowSeconds - 12) : nanos(nowSeconds),
                old,
                current.equals("plate") || !pressure ? 0 : 0.004,
                pressure ? 0.01 : 0.1,
                state,
                settings,
                Traces.of(times, values),
                spans,
                Objects.requireNonNull(corrected.getOrDefault(role, FromInstrument.NONE)),
                null,
                pressure ? heading(settings, times, values) : null);
    }

    /** As the session would tell it; the zero is too small to matter here. */
    private static Heading.@Nullable Estimate heading(SettleSettings settings, long[] times, double[] values) {
        Heading heading = new Heading(settings, 0.01);
        for (int i = 0; i < times.length; i++) {
            heading.accept(times[i] / 1e9, values[i]);
        }
        return heading.estimate().orElse(null);
    }

    double value(Role role, double t) {
        double tau = role == Role.SUPPLY ? 55 : role == Role.RETURN ? 80 : 4;
        double value = of(Objects.requireNonNull(TARGETS.get("plate")), role);
        for (PlanStep step : PLAN.steps()) {
            double from = start(step.key());
            Map<Role, Double> targets = TARGETS.get(step.key());
            if (targets != null && t > from && from <= start(current)) {
                double in = Math.min(t, from + STEP_SECONDS) - from;
                double target = of(targets, role) + (step.key().equals(current) ? bias.getOrDefault(role, 0.0) : 0);
                value = target + (value - target) * Math.exp(-in / tau);
            }
        }
        return value;
    }

    private static double of(Map<Role, Double> targets, Role role) {
        return Objects.requireNonNull(targets.get(role));
    }

    private static double start(String key) {
        List<PlanStep> steps = PLAN.steps();
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i).key().equals(key)) {
                return i * (double) STEP_SECONDS;
            }
        }
        throw new IllegalArgumentException("no step " + key);
    }

    JobState job() {
        List<StepState> steps = new ArrayList<>();
        int index = 0;
        int at = 0;
        for (PlanStep step : PLAN.steps()) {
            boolean before = start(step.key()) < start(current);
            if (step.key().equals(current)) {
                at = index;
            }
            steps.add(skipped.contains(step.key()) ? skippedStep(step) : before ? taken(step) : ahead(step));
            index++;
        }
        int place = current.equals("record") && progress == Progress.TAKEN ? steps.size() : at;
        Map<Role, Double> zeros = place > 2 ? Map.of(Role.INLET, 0.004, Role.MANIFOLD, 0.002) : Map.of();
        return new JobState(
                PLAN, PLATE, steps, place, zeros, person, List.of(), List.of(), List.of(), visits, List.of());
    }

    private StepState skippedStep(PlanStep step) {
        long end = nanos(start(step.key()) + STEP_SECONDS - 5);
        return step(step, Progress.SKIPPED, end, List.of(), List.of(), "no access to the duct");
    }

    private StepState taken(PlanStep step) {
        long end = nanos(start(step.key()) + STEP_SECONDS - 5);
        List<StageReading> readings = new ArrayList<>();
        if (step.kind() == StepKind.LEFT) {
            readings.add(reading(step, "adjusted", end - 70 * SECOND, 0.04));
        }
        if (step.kind().measuring()) {
            readings.add(reading(step, step.kind() == StepKind.LEFT ? "left" : "reading", end, 0));
        }
        List<Verdict> verdicts = new ArrayList<>();
        if (step.kind().firing()) {
            verdicts(step, readings.get(readings.size() - 1), verdicts);
        }
        return step(step, Progress.TAKEN, end, readings, verdicts, "");
    }

    private static void verdicts(PlanStep step, StageReading reading, List<Verdict> verdicts) {
        ChannelReading manifold = reading.channel(Role.MANIFOLD).orElseThrow();
        verdicts.add(Verdict.judge(
                "manifold",
                manifold.value(),
                manifold.expandedUncertainty(),
                PLATE.stage(step.stage()).manifoldLimit()));
        double rise = CellValues.rise(reading).orElseThrow();
        verdicts.add(Verdict.judge("rise", rise, 0.7, PLATE.rise()));
    }

    private StepState ahead(PlanStep step) {
        boolean now = step.key().equals(current);
        List<StageReading> readings = new ArrayList<>();
        if (now && step.kind() == StepKind.LEFT && progress == Progress.ARMED) {
            readings.add(reading(step, "adjusted", nanos(nowSeconds - 100), 0.04));
        }
        if (now && closingZeroRead) {
            readings.add(reading(step, "zero", nanos(nowSeconds - 20), 0));
        }
        return step(step, now ? progress : Progress.WAITING, -1, readings, List.of(), "");
    }

    private StepState step(
            PlanStep step,
            Progress how,
            long doneNanos,
            List<StageReading> readings,
            List<Verdict> verdicts,
            String skipReason) {
        Map<String, Long> ticks = new HashMap<>();
        if (step.kind() == StepKind.CLOSE) {
            ticked.forEach(t -> ticks.put(t, 1L));
        }
        List<StepState.Mark> marks = step.kind() == StepKind.LEFT && how != Progress.WAITING && !adjusting
                ? List.of(new StepState.Mark(
                        how == Progress.ARMED ? nanos(nowSeconds - 100) : doneNanos - 70 * SECOND, "cap on"))
                : List.of();
        return new StepState(
                step.key(),
                step,
                how,
                how == Progress.OPEN && adjusting,
                false,
                how == Progress.WAITING ? -1 : nanos(start(step.key())),
                how == Progress.ARMED ? nanos(nowSeconds - 100) : -1,
                doneNanos,
                readings,
                verdicts,
                ticks,
                marks,
                step.key().equals(current) ? remarks : List.of(),
                "",
                skipReason,
                Clocking.none(Fuel.NATURAL_GAS),
                Map.of());
    }

    private StageReading reading(PlanStep step, String purpose, long end, double more) {
        List<ChannelReading> channels = new ArrayList<>();
        for (Role role : step.required()) {
            boolean pressure = role.dimension() == Dimension.PRESSURE;
            double value = value(role, end / 1e9) + (role == Role.MANIFOLD ? more : 0);
            channels.add(new ChannelReading(
                    role,
                    value,
                    pressure ? 0.012 : 0.25,
                    pressure ? 0.01 : 0.2,
                    pressure ? 0.004 : 0,
                    unit(role),
                    end - 60 * SECOND,
                    end,
                    true,
                    "made up"));
        }
        return new StageReading(step.key(), purpose, end, false, "", channels);
    }

    static SettleSettings settings(Role role) {
        return SettleSettings.defaults(role.dimension() == Dimension.PRESSURE ? SettleKind.GAS : SettleKind.AIR);
    }

    static Unit unit(Role role) {
        return role.dimension() == Dimension.PRESSURE ? Unit.INCH_OF_WATER : Unit.FAHRENHEIT;
    }

    private static final Profile GAUGE = ProfileLibrary.get("demo-gauge");
    private static final Profile AIR = ProfileLibrary.get("demo-air");
    private static final Map<Role, Channel> CHANNELS = Map.of(
            Role.INLET, channel(GAUGE, "port-1"),
            Role.MANIFOLD, channel(GAUGE, "port-2"),
            Role.SUPPLY, channel(AIR, "probe-1"),
            Role.RETURN, channel(AIR, "probe-2"));

    private static Channel channel(Profile profile, String name) {
        return profile.channels().get(profile.channelIndex(name).orElseThrow());
    }

    static SessionHeader header() {
        ProbeSetup gauge = new ProbeSetup(
                "gauge",
                new ProbeAddress("rig", "gauge"),
                GAUGE,
                Map.of("port-1", Role.INLET, "port-2", Role.MANIFOLD));
        ProbeSetup air = new ProbeSetup(
                "air", new ProbeAddress("rig", "air"), AIR, Map.of("probe-1", Role.SUPPLY, "probe-2", Role.RETURN));
        return new SessionHeader(
                "2026-03-14-1002-ash-lane",
                "Ash Lane 12, two-stage furnace, natural gas",
                Instant.parse("2026-03-14T10:02:00Z"),
                ZoneOffset.UTC,
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                List.of(gauge, air),
                Optional.of(PLAN),
                Optional.of(PLATE),
                "test");
    }

    static long nanos(double seconds) {
        return Math.round(seconds * 1e9);
    }
}
