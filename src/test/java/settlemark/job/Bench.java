package settlemark.job;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import settlemark.measure.Accuracy;
import settlemark.measure.Conversion;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.settle.SettleLook;
import settlemark.settle.SettlePhase;
import settlemark.settle.SettleState;

/** A job with channels that a test sets by hand; time passes in seconds. */
final class Bench {
    static final RatingPlate PLATE = new RatingPlate(
            "two-stage furnace",
            Fuel.NATURAL_GAS,
            List.of(
                    new StagePlate("low", "low fire", 1.7, 0.2, Unit.INCH_OF_WATER, 56_000),
                    new StagePlate("high", "high fire", 3.5, 0.35, Unit.INCH_OF_WATER, 80_000)),
            new Limit(4.5, 10.5, Unit.INCH_OF_WATER, "plate"),
            new Limit(30, 60, Unit.FAHRENHEIT_DIFFERENCE, "plate"));

    final JobRun run;
    final Map<Role, ChannelNow> channels = new EnumMap<>(Role.class);
    long seconds;
    int breaks;

    Bench() {
        this(Plans.get("two-stage-natural-gas"));
    }

    Bench(JobPlan plan) {
        run = new JobRun(plan, PLATE);
    }

    static long nanos(double seconds) {
        return Math.round(seconds * 1e9);
    }

    void act(Act act) {
        run.act(nanos(seconds), act);
    }

    /** Time passes with the channels as they are, looked at each second. */
    void pass(int count) {
        for (int i = 0; i < count; i++) {
            seconds++;
            channels.replaceAll((role, now) -> at(role, now));
            run.observe(nanos(seconds), channels);
        }
    }

    /** A channel as it stands, at the present second. */
    ChannelNow now(Role role) {
        return at(role, Objects.requireNonNull(channels.get(role)));
    }

    private ChannelNow at(Role role, ChannelNow now) {
        return channel(role, now.value(), now.settledSinceNanos());
    }

    void settled(Role role, double value) {
        channels.put(role, channel(role, value, nanos(seconds)));
    }

    void moving(Role role, double value) {
        channels.put(role, channel(role, value, -1));
    }

    private ChannelNow channel(Role role, double value, long since) {
        boolean pressure = role.dimension() == Dimension.PRESSURE;
        boolean settled = since >= 0;
        SettleState state = new SettleState(
                settled ? SettlePhase.SETTLED : SettlePhase.MOVING,
                seconds,
                settled ? 0.01 : 0.4,
                0.02,
                0,
                0.05,
                0,
                seconds - 20,
                settled ? value : Double.NaN,
                settled ? 0.02 : Double.NaN,
                settled ? "settled" : "still moving");
        return new ChannelNow(
                unit(role),
                nanos(seconds),
                value,
                SampleStatus.OK,
                new SettleLook(state),
                since,
                pressure ? 20 : 60,
                pressure ? new Accuracy(0, 0, 0.01, 0) : Accuracy.UNKNOWN,
                Conversion.IDENTITY,
                0.01,
                pressure ? 0.1 : Double.NaN,
                pressure ? 5 : 15,
                breaks);
    }

    private static Unit unit(Role role) {
        return switch (role.dimension()) {
            case PRESSURE -> Unit.INCH_OF_WATER;
            case FRACTION -> role == Role.OXYGEN || role == Role.CARBON_DIOXIDE ? Unit.PERCENT : Unit.ucum("[ppm]");
            default -> Unit.FAHRENHEIT;
        };
    }

    StepState step(String key) {
        return run.state().step(key).orElseThrow();
    }

    /** Plate, probes, zero at +0.03 and -0.02, lock-up: ready to light. */
    void untilLockUp() {
        act(new Act.Confirm("plate"));
        act(new Act.Confirm("probes"));
        settled(Role.INLET, 0.03);
        settled(Role.MANIFOLD, -0.02);
        act(new Act.Confirm("zero"));
        pass(21);
        settled(Role.INLET, 7.83);
        act(new Act.Confirm("lock-up"));
        pass(21);
    }

    /** The same where the lock-up and the zero are called settled by rates, which takes twenty minutes each. */
    void untilLockUpByRates() {
        act(new Act.Confirm("plate"));
        act(new Act.Confirm("probes"));
        settled(Role.INLET, 0.03);
        settled(Role.MANIFOLD, -0.02);
        act(new Act.Confirm("zero"));
        pass(1202);
        settled(Role.INLET, 7.83);
        act(new Act.Confirm("lock-up"));
        pass(1202);
    }

    void firing(double manifold, double supply) {
        moving(Role.MANIFOLD, manifold);
        moving(Role.SUPPLY, supply);
        pass(5);
        settled(Role.INLET, 6.93);
        settled(Role.MANIFOLD, manifold);
        pass(1);
        settled(Role.SUPPLY, supply);
        settled(Role.RETURN, 70);
    }
}
