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
    private static final String RISE = "rise";

    private Judging() {}

    static List<Verdict> judge(PlanStep step, StageReading reading, RatingPlate plate) {
        List<Verdict> verdicts = new ArrayList<>();
        switch (step.kind()) {
            case LOCK_UP, THIS_APPLIANCE, ALL_APPLIANCES ->
                inlet(reading, plate.inlet()).ifPresent(verdicts::add);
            case FOUND, LEFT -> {
                inlet(reading, plate.inlet()).ifPresent(verdicts::add);
                Limit manifold = plate.stage(step.stage()).manifoldLimit();
                channel(Role.MANIFOLD.word(), reading, Role.MANIFOLD, manifold).ifPresent(verdicts::add);
                rise(RISE, reading, plate.rise()).ifPresent(verdicts::add);
            }
            case SHUT ->
                channel(
                                Role.MANIFOLD.word(),
                                reading,
                                Role.MANIFOLD,
                                Limit.around(0, SHUT_WIDTH, Unit.INCH_OF_WATER, PRACTICE))
                        .ifPresent(verdicts::add);
            case PLATE, PROBES, ZERO, HOLD, CLOCK, STATICS, COMBUSTION, CHECK, CLOSE, RECORD -> {}
        }
        step.limits().forEach(own -> judge(own, reading).ifPresent(verdicts::add));
        return verdicts;
    }

    /** A plan's own limit stands beside the plate's, never in its place. */
    private static Optional<Verdict> judge(StepLimit own, StageReading reading) {
        String subject = own.subject() + " by " + own.limit().source();
        if (own.subject().equals(RISE)) {
            return rise(subject, reading, own.limit());
        }
        return Role.ofWord(own.subject()).flatMap(role -> channel(subject, reading, role, own.limit()));
    }

    /**
     * How far trapped pressures moved between two readings of one gauge in one place: its accuracy cancels, what the
     * two readings do not settle to and its resolution do not.
     *
     * @param start the first reading, empty where the person took the second by hand before there was one
     */
    static List<Verdict> change(PlanStep step, Optional<StageReading> start, StageReading end) {
        List<Verdict> verdicts = new ArrayList<>();
        for (StepLimit own : step.limits()) {
            if (own.isChange()) {
                String word = own.subject().substring(0, own.subject().length() - StepLimit.CHANGE.length());
                Optional<ChannelReading> from =
                        start.flatMap(s -> Role.ofWord(word).flatMap(s::channel));
                Optional<ChannelReading> to = Role.ofWord(word).flatMap(end::channel);
                if (from.isPresent() && to.isPresent()) {
                    double u = Math.hypot(ownUncertainty(from.get()), ownUncertainty(to.get()));
                    double moved = to.get().value() - from.get().value();
                    verdicts.add(judged(own.subject(), moved, u, to.get().unit(), own.limit()));
                }
            }
        }
        return verdicts;
    }

    /** Expanded, without the gauge's accuracy where the detector knows the reading's own. */
    private static double ownUncertainty(ChannelReading part) {
        return Double.isNaN(part.settleUncertainty()) ? part.expandedUncertainty() : part.settleUncertainty();
    }

    /** How far the zero of each pressure channel drifted between the opening and the closing zero. */
    static List<Verdict> drift(StageReading closing) {
        Limit limit = Limit.around(0, DRIFT_WIDTH, Unit.INCH_OF_WATER, PRACTICE);
        List<Verdict> verdicts = new ArrayList<>();
        for (ChannelReading part : closing.channels()) {
            // Both zeros are of one gauge in one place: its accuracy cancels, the two settled readings do not.
            double u = ownUncertainty(part);
            verdicts.add(
                    judged(part.role().word() + " zero drift", part.value(), u * Math.sqrt(2), part.unit(), limit));
        }
        return verdicts;
    }

    private static Optional<Verdict> inlet(StageReading reading, Limit limit) {
        return channel(Role.INLET.word(), reading, Role.INLET, limit);
    }

    private static Optional<Verdict> channel(String subject, StageReading reading, Role role, Limit limit) {
        return reading.channel(role)
                .filter(p -> Double.isFinite(p.value()) && !limit.isOpen())
                .map(p -> judged(subject, p.value(), p.expandedUncertainty(), p.unit(), limit));
    }

    private static Optional<Verdict> rise(String subject, StageReading reading, Limit limit) {
        Optional<ChannelReading> supply = reading.channel(Role.SUPPLY);
        Optional<ChannelReading> back = reading.channel(Role.RETURN);
        if (supply.isEmpty() || back.isEmpty() || limit.isOpen()) {
            return Optional.empty();
        }
        double rise = supply.get().value() - back.get().value();
        double u = Math.hypot(supply.get().expandedUncertainty(), back.get().expandedUncertainty());
        return Double.isFinite(rise)
                ? Optional.of(judged(subject, rise, u, supply.get().unit().difference(), limit))
                : Optional.empty();
    }

    private static Verdict judged(String subject, double value, double expanded, Unit unit, Limit limit) {
        return Verdict.judge(subject, value, expanded, limit.to(unit));
    }
}
