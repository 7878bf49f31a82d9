package settlemark.job;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** Takes the readings of a running job: with its zeros and corrections, judged, and with what is to be said of them. */
final class Taking {
    /** Purpose of the first reading of a trapped pressure. */
    static final String START = "start";

    private final JobSoFar job;
    final LastVisit lastVisit = new LastVisit();
    final InstrumentsInUse instruments = new InstrumentsInUse();
    final SettingsInForce settings = new SettingsInForce();

    Taking(JobSoFar job) {
        this.job = job;
    }

    void take(long timeNanos, StepRun run, String handReason) {
        StageReading reading = run.takenFirst.into(reading(
                run,
                purpose(run.step.kind()),
                Readings.roles(run, job.channels),
                timeNanos,
                handReason,
                purposeZeros(run)));
        if (run.step.kind() == StepKind.ZERO && !Findings.zeroAccepted(run, reading, job.channels)) {
            run.disarm();
            return;
        }
        run.readings.add(reading);
        job.taken.add(reading);
        run.verdicts.clear();
        switch (run.step.kind()) {
            case ZERO -> reading.channels().forEach(c -> job.zeros.put(c.role(), c.value()));
            case CLOSE -> closed(run, reading);
            case HOLD -> run.verdicts.addAll(Judging.change(run.step, begun(run), reading));
            case STATICS -> run.verdicts.addAll(AirStatics.judge(run.step, reading, job.plate));
            case COMBUSTION -> {
                run.verdicts.addAll(Combustion.judge(run.step, reading, job.plate));
                job.safety.flue(timeNanos, run.verdicts);
            }
            case PLATE, PROBES, CLOCK, CHECK, RECORD, LOCK_UP, THIS_APPLIANCE, ALL_APPLIANCES, FOUND, LEFT, SHUT ->
                run.verdicts.addAll(Judging.judge(run.step, reading, job.plate));
        }
        run.takenFirst.words(reading).ifPresent(run.remarks::add);
        Findings.remark(run, reading, job.heat, job.plate);
        run.remarks.addAll(Slips.words(run, reading, job.steps.all(), job.plate));
        run.remarks.addAll(lastVisit.words(run.step, reading));
        run.remarks.addAll(InstrumentsInUse.words(reading));
        run.remarks.addAll(settings.words(reading));
        reading.channel(Role.MANIFOLD).ifPresent(m -> manifoldRead(run, m));
        if (run.step.kind() == StepKind.CLOSE) {
            run.disarm();
            finishTicked(timeNanos, run);
        } else {
            run.finish(timeNanos, Progress.TAKEN);
            job.steps.next(timeNanos);
        }
    }

    /** With the corrections of the instruments. */
    StageReading reading(
            StepRun run,
            String purpose,
            List<Role> roles,
            long timeNanos,
            String handReason,
            Map<Role, Double> zerosInForce) {
        return instruments.correct(
                run.step.kind(),
                Readings.take(run, purpose, roles, timeNanos, handReason, job.channels, zerosInForce),
                run.typed.keySet());
    }

    StageReading adjusted(long timeNanos, StepRun run) {
        return reading(run, "adjusted", List.of(Role.INLET, Role.MANIFOLD), timeNanos, "", job.zeros);
    }

    private void manifoldRead(StepRun run, ChannelReading manifold) {
        if (run.step.kind() == StepKind.LOCK_UP) {
            job.prePurge.rest(manifold.value());
            AirAtRest.words(job.channels).ifPresent(run.remarks::add);
        } else if (run.step.kind().firing()) {
            job.readiness.stageRead(run.step.stage(), manifold.value());
            run.creep.words(manifold.unit()).ifPresent(run.remarks::add);
            job.prePurge.words(manifold.unit()).ifPresent(run.remarks::add);
        }
    }

    private void closed(StepRun run, StageReading closing) {
        run.verdicts.addAll(Judging.drift(closing));
        long zero = job.steps.all().stream()
                .filter(s -> s.step.kind() == StepKind.ZERO && s.progress == Progress.TAKEN)
                .mapToLong(s -> s.doneNanos)
                .max()
                .orElse(-1);
        if (zero >= 0) {
            ZeroDrift drift = new ZeroDrift(zero, closing);
            job.steps.all().stream().filter(s -> s != run).forEach(s -> drift.widen(s, job.plate));
            run.remarks.addAll(drift.words(run.verdicts));
        }
    }

    private Optional<StageReading> begun(StepRun run) {
        return run.watchedFromNanos < 0 ? Optional.empty() : run.state(job.heat).reading(START);
    }

    /** A new zero is read against nothing; everything else against the zero in force. */
    private Map<Role, Double> purposeZeros(StepRun run) {
        return run.step.kind() == StepKind.ZERO ? new HashMap<>() : job.zeros;
    }

    static String purpose(StepKind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    void finishTicked(long timeNanos, StepRun run) {
        boolean closed = run.step.kind() == StepKind.CLOSE && !run.readings.isEmpty();
        if ((closed || run.step.kind() == StepKind.CHECK) && run.allTicked()) {
            run.finish(timeNanos, Progress.TAKEN);
            job.steps.next(timeNanos);
        }
    }
}
