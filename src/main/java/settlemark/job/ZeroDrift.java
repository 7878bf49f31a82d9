package settlemark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/**
 * What the closing zero does to the readings before it: by a reading's time the zero may have drifted by its part of the
 * whole drift, in proportion to time, and nobody knows which way around it went. So that much to either side goes into the
 * uncertainty of what is judged, rectangular (JCGM 100:2008, 4.3.7). The reading itself stays as it was taken.
 */
final class ZeroDrift {
    private final long zeroNanos;
    private final StageReading closing;

    /** @param zeroNanos when the zero in force was taken */
    ZeroDrift(long zeroNanos, StageReading closing) {
        this.zeroNanos = zeroNanos;
        this.closing = closing;
    }

    /** Judges a step again; says so where the outcome is another. */
    void widen(StepRun run, RatingPlate plate) {
        if (run.readings.isEmpty() || run.verdicts.isEmpty() || !judged(run.step.kind())) {
            return;
        }
        StageReading last = run.readings.get(run.readings.size() - 1);
        if (last.timeNanos() <= zeroNanos || last.timeNanos() >= closing.timeNanos()) {
            return;
        }
        StageReading wider = wider(last);
        List<Verdict> before = List.copyOf(run.verdicts);
        run.verdicts.clear();
        run.verdicts.addAll(
                run.step.kind() == StepKind.STATICS
                        ? AirStatics.judge(run.step, wider, plate)
                        : Judging.judge(run.step, wider, plate));
        for (int i = 0; i < run.verdicts.size(); i++) {
            Verdict now = run.verdicts.get(i);
            if (now.outcome() != before.get(i).outcome()) {
                run.remarks.add(String.format(
                        Locale.ROOT,
                        "With the zero's drift in its uncertainty %s is %s; before it was %s.",
                        now.subject(),
                        now.outcome().word(),
                        before.get(i).outcome().word()));
            }
        }
    }

    private static boolean judged(StepKind kind) {
        return switch (kind) {
            case LOCK_UP, THIS_APPLIANCE, ALL_APPLIANCES, FOUND, LEFT, SHUT, STATICS -> true;
            case PLATE, PROBES, ZERO, HOLD, CLOCK, COMBUSTION, CHECK, CLOSE, RECORD -> false;
        };
    }

    private StageReading wider(StageReading reading) {
        double part = (double) (reading.timeNanos() - zeroNanos) / (closing.timeNanos() - zeroNanos);
        List<ChannelReading> parts = new ArrayList<>();
        for (ChannelReading own : reading.channels()) {
            double drift = closing.channel(own.role())
                    .filter(c -> c.unit().equals(own.unit()) && Double.isFinite(c.value()))
                    .map(c -> Math.abs(c.value()) * part / Math.sqrt(3))
                    .orElse(0.0);
            parts.add(own.withStandardUncertainty(Math.hypot(own.standardUncertainty(), drift)));
        }
        return new StageReading(
                reading.step(), reading.purpose(), reading.timeNanos(), reading.byHand(), reading.handReason(), parts);
    }

    /** One sentence a channel that has drifted by more than its readings tell apart. */
    List<String> words(List<Verdict> drifts) {
        List<String> words = new ArrayList<>();
        for (Verdict drift : drifts) {
            if (Math.abs(drift.value()) > drift.expandedUncertainty()) {
                words.add(String.format(
                        Locale.ROOT,
                        "The %s was %+.2f %s: readings in between carry up to that much to either side in their"
                                + " uncertainty, in proportion to time.",
                        drift.subject(),
                        drift.value(),
                        drift.limit().unit().symbol()));
            }
        }
        return words;
    }
}
