package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.measure.Quantity;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** What the air's static pressures say: the total external static is the supply's less the return's. */
final class AirStatics {
    static final String TOTAL = "total static";

    private AirStatics() {}

    /** Empty where one of the two was not read. */
    static Optional<Quantity> total(StageReading reading) {
        Optional<ChannelReading> supply = reading.channel(Role.SUPPLY_STATIC);
        Optional<ChannelReading> back = reading.channel(Role.RETURN_STATIC);
        if (supply.isEmpty() || back.isEmpty()) {
            return Optional.empty();
        }
        ChannelReading s = supply.get();
        Quantity r = new Quantity(
                        back.get().value(),
                        back.get().standardUncertainty(),
                        back.get().unit())
                .to(s.unit());
        double total = s.value() - r.value();
        return Double.isFinite(total)
                ? Optional.of(
                        new Quantity(total, Math.hypot(s.standardUncertainty(), r.standardUncertainty()), s.unit()))
                : Optional.empty();
    }

    static List<Verdict> judge(PlanStep step, StageReading reading, RatingPlate plate) {
        List<Verdict> verdicts = new ArrayList<>();
        total(reading).ifPresent(total -> {
            if (!plate.statics().isOpen()) {
                verdicts.add(verdict(TOTAL, total, plate.statics()));
            }
            step.limits().stream()
                    .filter(own -> own.subject().equals(TOTAL))
                    .forEach(own ->
                            verdicts.add(verdict(TOTAL + " by " + own.limit().source(), total, own.limit())));
        });
        return verdicts;
    }

    private static Verdict verdict(String subject, Quantity total, Limit limit) {
        Limit here = limit.to(total.unit());
        return Verdict.judge(subject, total.value(), total.expandedUncertainty(), here);
    }

    static List<String> words(StageReading reading, RatingPlate plate) {
        List<String> words = new ArrayList<>();
        if (plate.statics().isOpen()) {
            words.add("The plate gives no most total external static, so it was not judged by the plate.");
        }
        reading.channel(Role.RETURN_STATIC)
                .filter(c -> c.value() > 0)
                .ifPresent(c ->
                        words.add("The return's static pressure is above nothing: are the two hoses exchanged, or is"
                                + " the port behind the blower?"));
        reading.channel(Role.SUPPLY_STATIC)
                .filter(c -> c.value() < 0)
                .ifPresent(
                        c -> words.add("The supply's static pressure is below nothing: are the two hoses exchanged?"));
        return words;
    }
}
