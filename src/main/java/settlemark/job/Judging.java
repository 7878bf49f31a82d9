package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** Holds a step's reading against the plate and the customary limits. */
final class Judging {
    /** Manifold with the valve shut, inches of water either side of nothing; common practice after a good zero. */
    private static final double SHUT_WIDTH = 0.03;
    /** How far the zero may drift over a job, inches of water; common practice. */
    private static final double DRIFT_WIDTH = 0.05;

    private static final String PRACTICE = "common practice";

    private Judging() {}

    static List<Verdict> judge(PlanStep step, StageReading reading, RatingPlate plate) {
        List<Verdict> verdicts = new ArrayList<>();
        switch (step.kind()) {
            case LOCK_UP -> inlet(reading, plate.inlet()).ifPresent(verdicts::add);
            case FOUND, LEFT -> {
                inlet(reading, plate.inlet()).ifPresent(verdicts::add);
                Limit manifold = plate.stage(step.stage()).manifoldLimit();
                channel(reading, Role.MANIFOLD, manifold).ifPresent(verdicts::add);
                rise(reading, plate.rise()).ifPresent(verdicts::add);
            }
            case SHUT ->
                channel(reading, Role.MANIFOLD, Limit.around(0, SHUT_WIDTH, Unit.INCH_OF_WATER, PRACTICE))
                        .ifPresent(verdicts::add);
            case PLATE, PROBES, ZERO, CLOSE, RECORD -> {}
        }
        return verdicts;
    }

    /** How far the zero of each pressure channel drifted between the opening and the closing zero. */
    static List<Verdict> drift(StageReading closing) {
        Limit limit = Limit.around(0, DRIFT_WIDTH, Unit.INCH_OF_WATER, PRACTICE);
        List<Verdict> verdicts = new ArrayList<>();
        for (ChannelReading part : closing.channels()) {
            // Both zeros are of one gauge in one place: its accuracy cancels, the two settled readings do not.
            double u =
                    Double.isNaN(part.settleUncertainty()) ? part.standardUncertainty() * 2 : part.settleUncertainty();
            verdicts.add(
                    judged(part.role().word() + " zero drift", part.value(), u * Math.sqrt(2), part.unit(), limit));
        }
        return verdicts;
    }

    private static Optional<Verdict> inlet(StageReading reading, Limit limit) {
        return channel(reading, Role.INLET, limit);
    }

    private static Optional<Verdict> channel(StageReading reading, Role role, Limit limit) {
        return reading.channel(role)
                .filter(p -> Double.isFinite(p.value()))
                .map(p -> judged(role.word(), p.value(), p.expandedUncertainty(), p.unit(), limit));
    }

    private static Optional<Verdict> rise(StageReading reading, Limit limit) {
        Optional<ChannelReading> supply = reading.channel(Role.SUPPLY);
        Optional<ChannelReading> back = reading.channel(Role.RETURN);
        if (supply.isEmpty() || back.isEmpty()) {
            return Optional.empty();
        }
        double rise = supply.get().value() - back.get().value();
        double u = Math.hypot(supply.get().expandedUncertainty(), back.get().expandedUncertainty());
        return Double.isFinite(rise)
                ? Optional.of(judged("rise", rise, u, supply.get().unit().difference(), limit))
                : Optional.empty();
    }

    private static Verdict judged(String subject, double value, double expanded, Unit unit, Limit limit) {
        return Verdict.judge(subject, value, expanded, limit.to(unit));
    }
}
