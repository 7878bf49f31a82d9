package settlemark.record;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import settlemark.job.Clocking;
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
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.ProfileLibrary;
import settlemark.session.JobRecord;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.RecordWriter;
import settlemark.session.SampleBlock;
import settlemark.session.SessionHeader;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** The invented job of the record's tests: Ash Lane 12, a two-stage furnace on natural gas, from the demo rig. */
final class AshLane {
    static final long SECOND = 1_000_000_000L;
    static final Unit INCH = Unit.INCH_OF_WATER;
    static final Unit DEGREE = Unit.FAHRENHEIT;

    private String title = "Ash Lane 12, two-stage furnace, natural gas";
    private String person = "R. Invented";
    private String note = "Filter was dusty; customer told.";
    private boolean simulated = true;
    private String skipped = "";
    private int extraEvents;
    private final List<StepState> steps = new ArrayList<>();
    private final List<JobRecord.ReadingWindow> windows = new ArrayList<>();

    static AshLane job() {
        return new AshLane();
    }

    AshLane title(String text) {
        title = text;
        return this;
    }

    AshLane person(String text) {
        person = text;
        return this;
    }

    AshLane note(String text) {
        note = text;
        return this;
    }

    AshLane real() {
        simulated = false;
        return this;
    }

    AshLane skipping(String step) {
        skipped = step;
        return this;
    }

    AshLane manyEvents(int count) {
        extraEvents = count;
        return this;
    }

    static RatingPlate plate() {
        return new RatingPlate(
                "Two-stage upflow furnace, invented",
                Fuel.NATURAL_GAS,
                List.of(
                        new StagePlate("low", "low fire", 1.7, 0.2, INCH, 56_000),
                        new StagePlate("high", "high fire", 3.5, 0.35, INCH, 80_000)),
                new Limit(4.5, 10.5, INCH, "plate"),
                new Limit(30, 60, DEGREE.difference(), "plate"));
    }

    JobRecord record() {
        JobPlan plan = ShortPlan.twoStage();
        for (PlanStep step : plan.steps()) {
            add(step);
        }
        JobState state = new JobState(
                plan,
                plate(),
                steps,
                steps.size(),
                Map.of(Role.INLET, 0.012, Role.MANIFOLD, -0.004),
                person,
                List.of(new JobState.NoteTaken(2600 * SECOND, "left-low", note)));
        List<JobRecord.Happened> events = new ArrayList<>();
        events.add(new JobRecord.Happened(1500 * SECOND, "air: the link was lost for 38 s and came back"));
        for (int i = 0; i < extraEvents; i++) {
            events.add(new JobRecord.Happened((1600 + i) * SECOND, "event number " + i));
        }
        return new JobRecord(header(plan), state, windows, instruments(), events);
    }

    private SessionHeader header(JobPlan plan) {
        ProbeSetup gauge = new ProbeSetup(
                "gauge",
                new ProbeAddress("rig", "gauge"),
                ProfileLibrary.get(simulated ? "demo-gauge" : "plain-line"),
                simulated ? Map.of("port-1", Role.INLET, "port-2", Role.MANIFOLD) : Map.of());
        ProbeSetup air = new ProbeSetup(
                "air",
                new ProbeAddress("rig", "air"),
                ProfileLibrary.get(simulated ? "demo-air" : "plain-line"),
                simulated ? Map.of("probe-1", Role.SUPPLY, "probe-2", Role.RETURN) : Map.of());
        return new SessionHeader(
                "2026-11-25-1002-ash-lane",
                title,
                Instant.parse("2026-11-25T15:02:00.250Z"),
                ZoneId.of("America/New_York"),
                INCH,
                DEGREE,
                List.of(gauge, air),
                Optional.of(plan),
                Optional.of(plate()),
                "0.1.0");
    }

    private static List<JobRecord.Instrument> instruments() {
        return List.of(
                new JobRecord.Instrument(
                        "gauge",
                        "Two-port demo gauge",
                        "demo-gauge",
                        "3f7a9c0d1e2b4f5a6978d0c1b2a3948576fedcba0123456789abcdef01234567",
                        List.of(Role.INLET, Role.MANIFOLD),
                        List.of("inlet \u00B1(0.5 % of reading + 0.01 inH\u2082O)", "manifold the same"),
                        32_410,
                        3,
                        0),
                new JobRecord.Instrument(
                        "air",
                        "Demo receiver with two air probes",
                        "demo-air",
                        "b81c9b8a06c1f3d5e7092b4d6f8a0c2e4f60718293a4b5c6d7e8f9012345abcd",
                        List.of(Role.SUPPLY, Role.RETURN),
                        List.of("supply \u00B10.5 \u00B0F", "return \u00B10.5 \u00B0F"),
                        3_240,
                        0,
                        1));
    }

    private void add(PlanStep step) {
        if (step.key().equals(skipped)) {
            steps.add(state(step, Progress.SKIPPED, List.of(), List.of(), List.of(), List.of(), "no access today"));
            return;
        }
        switch (step.key()) {
            case "zero" -> measured(step, 300, "zero", Verdicts.NONE, 0.012, -0.004);
            case "lock-up" -> measured(step, 480, "lock-up", Verdicts.INLET, 7.80, 0.003);
            case "found-low" -> measured(step, 1000, "found", Verdicts.of(1.7, 0.2), 6.97, 1.51, 104.8, 70.6);
            case "found-high" -> measured(step, 1800, "found", Verdicts.of(3.5, 0.35), 6.84, 3.12, 118.0, 70.8);
            case "left-low" -> left(step, 2600, 1.70, 1.73, 6.95, 106.9, 70.7, Verdicts.of(1.7, 0.2));
            case "left-high" -> left(step, 3100, 3.49, 3.53, 6.80, 121.4, 71.0, Verdicts.of(3.5, 0.35));
            case "shut" -> measured(step, 3300, "shut", Verdicts.SHUT, Double.NaN, 0.004);
            case "close" -> measured(step, 3500, "close", Verdicts.DRIFT, 0.004, 0.002);
            default -> steps.add(state(step, Progress.TAKEN, List.of(), List.of(), List.of(), List.of(), ""));
        }
    }

    private StepState state(
            PlanStep step,
            Progress progress,
            List<StageReading> readings,
            List<Verdict> verdicts,
            List<StepState.Mark> marks,
            List<String> remarks,
            String skip) {
        long done = readings.isEmpty()
                ? steps.stream().mapToLong(StepState::doneNanos).max().orElse(60 * SECOND)
                : readings.get(readings.size() - 1).timeNanos();
        Map<String, Long> ticks = new HashMap<>();
        if (step.kind() == StepKind.CLOSE) {
            ticks.put("Ports closed and caps on, leak-tested with the burner firing", 3560 * SECOND);
            ticks.put("Thermostat and staging put back to normal", 3580 * SECOND);
        }
        if (step.kind() == StepKind.FOUND) {
            step.ticks().forEach(item -> ticks.put(item, done - 150 * SECOND));
        }
        return new StepState(
                step.key(),
                step,
                progress,
                false,
                false,
                0,
                0,
                done,
                readings,
                verdicts,
                ticks,
                marks,
                remarks,
                "",
                skip,
                Clocking.none(Fuel.NATURAL_GAS),
                Map.of());
    }

    private void measured(PlanStep step, long second, String purpose, Verdicts verdicts, double... values) {
        StageReading reading = reading(step, second, purpose, values);
        window(reading, 150, values);
        List<String> remarks = step.kind() == StepKind.SHUT
                ? List.of("the manifold fell from 3.49 to 0.01 inH\u2082O within 2 s")
                : List.of();
        steps.add(state(step, Progress.TAKEN, List.of(reading), verdicts.judge(reading), List.of(), remarks, ""));
    }

    private void left(
            PlanStep step,
            long second,
            double manifold,
            double adjusted,
            double inlet,
            double supply,
            double air,
            Verdicts verdicts) {
        StageReading first = reading(step, second - 120, "adjusted", inlet, adjusted, supply - 3, air);
        StageReading last = reading(step, second, "left", inlet, manifold, supply, air);
        window(first, 120, inlet, adjusted, supply - 3, air);
        window(last, 180, inlet, manifold, supply, air);
        StepState.Mark cap = new StepState.Mark((second - 90) * SECOND, "cap on");
        String shift =
                "putting the cap on moved the manifold by " + Figures.value(manifold - adjusted, 2) + " inH\u2082O";
        steps.add(state(
                step, Progress.TAKEN, List.of(first, last), verdicts.judge(last), List.of(cap), List.of(shift), ""));
    }

    private StageReading reading(PlanStep step, long second, String purpose, double... values) {
        List<ChannelReading> channels = new ArrayList<>();
        for (Role role : roles(values)) {
            boolean pressure = role == Role.INLET || role == Role.MANIFOLD;
            double u = pressure ? 0.0093 : role == Role.SUPPLY ? 0.24 : 0.14;
            long from = (second - (pressure ? 40 : 90)) * SECOND;
            boolean byHand = step.key().equals("found-high") && role == Role.SUPPLY;
            channels.add(new ChannelReading(
                    role,
                    values[role.ordinal()],
                    u,
                    byHand ? Double.NaN : u,
                    pressure && !purpose.equals("zero") ? 0.012 : 0,
                    pressure ? INCH : DEGREE,
                    from,
                    second * SECOND,
                    !byHand,
                    byHand
                            ? "not settled: could still move 1.3, limit 0.5"
                            : pressure
                                    ? "moved 0.004 in the last 40 s, could still move 0.013, limit 0.02"
                                    : "moved 0.31 in the last 90 s, could still move 0.2, limit 0.5"));
        }
        boolean hand = step.key().equals("found-high");
        return new StageReading(
                step.key(),
                purpose,
                second * SECOND,
                hand,
                hand ? "supply still creeping, customer waits" : "",
                channels);
    }

    private static List<Role> roles(double... values) {
        List<Role> roles = new ArrayList<>();
        for (Role role : Role.values()) {
            if (role.ordinal() < values.length && !Double.isNaN(values[role.ordinal()])) {
                roles.add(role);
            }
        }
        return roles;
    }

    private void window(StageReading reading, int seconds, double... values) {
        List<JobRecord.RoleTrace> traces = new ArrayList<>();
        long to = reading.timeNanos();
        for (Role role : roles(values)) {
            boolean pressure = role == Role.INLET || role == Role.MANIFOLD;
            int perSecond = pressure ? 10 : 1;
            Random random = new Random(role.ordinal() + to);
            int count = seconds * perSecond + 1;
            long[] times = new long[count];
            double[] trace = new double[count];
            for (int i = 0; i < count; i++) {
                times[i] = to - seconds * SECOND + i * SECOND / perSecond;
                double age = (to - times[i]) / 1e9;
                double start = pressure ? 0.25 : 6;
                double approach = start * Math.exp(-(seconds - age) / (pressure ? 8 : 40));
                boolean moves = role == Role.MANIFOLD || role == Role.SUPPLY;
                trace[i] = values[role.ordinal()]
                        - (moves ? approach : 0)
                        + random.nextGaussian() * (pressure ? 0.008 : 0.1);
                if (role == Role.RETURN && reading.step().equals("found-high") && age > 100 && age < 138) {
                    trace[i] = Double.NaN;
                }
            }
            traces.add(new JobRecord.RoleTrace(role, pressure ? INCH : DEGREE, times, trace));
        }
        windows.add(new JobRecord.ReadingWindow(reading.step(), reading, to - seconds * SECOND, to, traces));
    }

    /** What each step of this job is judged by. */
    private record Verdicts(String what, double target, double tolerance) {
        static final Verdicts NONE = new Verdicts("none", 0, 0);
        static final Verdicts INLET = new Verdicts("inlet", 0, 0);
        static final Verdicts SHUT = new Verdicts("shut", 0, 0);
        static final Verdicts DRIFT = new Verdicts("drift", 0, 0);

        static Verdicts of(double target, double tolerance) {
            return new Verdicts("firing", target, tolerance);
        }

        List<Verdict> judge(StageReading reading) {
            List<Verdict> verdicts = new ArrayList<>();
            Limit inlet = plate().inlet();
            switch (what) {
                case "inlet" -> verdicts.add(judge(reading, Role.INLET, inlet));
                case "firing" -> {
                    verdicts.add(judge(reading, Role.INLET, inlet));
                    verdicts.add(judge(reading, Role.MANIFOLD, Limit.around(target, tolerance, INCH, "plate")));
                    double rise = value(reading, Role.SUPPLY) - value(reading, Role.RETURN);
                    verdicts.add(Verdict.judge("rise", rise, 0.56, plate().rise()));
                }
                case "shut" ->
                    verdicts.add(judge(
                            reading,
                            Role.MANIFOLD,
                            new Limit(Double.NEGATIVE_INFINITY, 0.05, INCH, "common practice")));
                case "drift" ->
                    verdicts.add(Verdict.judge(
                            "inlet zero drift", 0.004, 0.019, Limit.around(0, 0.05, INCH, "common practice")));
                default -> {}
            }
            return verdicts;
        }

        private static Verdict judge(StageReading reading, Role role, Limit limit) {
            ChannelReading channel = reading.channel(role).orElseThrow();
            return Verdict.judge(role.word(), channel.value(), channel.expandedUncertainty(), limit);
        }

        private static double value(StageReading reading, Role role) {
            return reading.channel(role).orElseThrow().value();
        }
    }

    /** Three samples on every channel, the last one without a number. */
    static RecordWriter.SampleSource samples() {
        return (probe, channel) -> new SampleBlock(
                probe,
                channel,
                new long[] {0, 100_000_000L, 3_600_123_456_789L},
                new double[] {channel + 0.25, -1.5, Double.NaN},
                new byte[] {0, 0, (byte) SampleStatus.OPEN_CIRCUIT.ordinal()});
    }
}
