package settlemark.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.NavigableMap;
import java.util.TreeMap;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.measure.Role;
import settlemark.rig.RigTruth;
import settlemark.settle.ChannelReading;

/** Holds the readings of a simulated job against what was really so, which no instrument knows. */
final class TruthCheck {
    private final NavigableMap<Long, RigTruth> truths = new TreeMap<>();

    void note(long timeNanos, RigTruth truth) {
        truths.put(timeNanos, truth);
    }

    /** @param misses readings that are further from the truth than their expanded uncertainty, a sentence each */
    record Result(int readings, List<String> misses) {}

    /** Of the steps that fire: their readings were made by instruments that were zeroed. */
    Result of(JobState job) {
        List<String> misses = new ArrayList<>();
        int count = 0;
        for (StepState step : job.steps()) {
            if (step.step().kind().firing() && step.reading().isPresent()) {
                for (ChannelReading part : step.reading().get().channels()) {
                    count++;
                    // The value stands for the end of its window: what was true when it was last found settled.
                    double truth = expected(truths.floorEntry(part.toNanos()).getValue(), part.role());
                    if (Math.abs(part.value() - truth) > part.expandedUncertainty()) {
                        misses.add(String.format(
                                Locale.ROOT,
                                "%s %s: read %.3f within %.3f, but %.3f was true",
                                step.key(),
                                part.role().word(),
                                part.value(),
                                part.expandedUncertainty(),
                                truth));
                    }
                }
            }
        }
        return new Result(count, misses);
    }

    private static double expected(RigTruth truth, Role role) {
        return switch (role) {
            case INLET -> truth.inletAtGaugeInH2o();
            case MANIFOLD -> truth.manifoldAtGaugeInH2o();
            case SUPPLY -> truth.supplyDegF();
            case RETURN -> truth.returnDegF();
            case STACK, SUPPLY_STATIC, RETURN_STATIC, OXYGEN, CARBON_DIOXIDE, CARBON_MONOXIDE, ROOM_CARBON_MONOXIDE ->
                throw new IllegalArgumentException("the rig has no probe for " + role.word());
        };
    }
}
