package settlemark.job;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Role;
import settlemark.settle.ChannelReading;
import settlemark.settle.SettledTogether;
import settlemark.settle.StageReading;

/**
 * A job while it runs: takes the person's acts and the channels' states in the order of time and decides, from those
 * alone, when a reading is taken. The same acts and states give the same job again.
 *
 * <p>Longer than a class should be: every act and every sample changes the same steps, zeros and place. What could be told
 * apart (readings, judging, readiness, findings, clocking, safety) has classes of its own.
 *
 * <p>For one thread. An act that makes no sense where the job stands (confirming a finished step, capping a step that
 * adjusts nothing) changes nothing.
 */
public final class JobRun {
    /** Purpose of the first reading of a trapped pressure. */
    private static final String START = "start";

    private final JobPlan plan;
    private final List<StepRun> steps = new ArrayList<>();
    private final Map<Role, Double> zeros = new EnumMap<>(Role.class);
    private final List<JobState.NoteTaken> notes = new ArrayList<>();
    private final List<StageReading> taken = new ArrayList<>();
    private final Map<Role, ChannelNow> channels = new EnumMap<>(Role.class);
    private RatingPlate plate;
    private final SafetyWatch safety = new SafetyWatch();
    private final PrePurge prePurge = new PrePurge();
    private final LastVisit lastVisit = new LastVisit();
    private final InstrumentsInUse instruments = new InstrumentsInUse();
    private final SettingsInForce settings = new SettingsInForce();
    private Readiness readiness;
    private GasHeat heat;
    private int current;
    private String person = "";

    public JobRun(JobPlan plan, RatingPlate plate) {
        this.plan = plan;
        this.plate = plate;
        this.readiness = new Readiness(plate);
        this.heat = GasHeat.customary(plate.fuel());
        plan.steps().forEach(s -> steps.add(new StepRun(s.key(), s)));
        openCurrent(0);
    }

    /** What the person did at a session time. */
    public void act(long timeNanos, Act act) {
        if (act instanceof Act.Person said) {
            person = said.name();
        } else if (act instanceof Act.Plate entered) {
            replacePlate(entered.plate());
        } else if (act instanceof Act.Note note) {
            notes.add(new JobState.NoteTaken(timeNanos, note.step(), note.text()));
        } else if (act instanceof Act.Confirm confirm) {
            confirm(timeNanos, find(confirm.step()));
        } else if (act instanceof Act.Adjust adjust) {
            adjust(timeNanos, find(adjust.step()));
        } else if (act instanceof Act.CapOn cap) {
            capOn(timeNanos, find(cap.step()));
        } else if (act instanceof Act.TakeNow now) {
            takeByHand(timeNanos, find(now.step()), now.reason());
        } else if (act instanceof Act.TakePressures first) {
            pressuresFirst(find(first.step()));
        } else if (act instanceof Act.Skip skip) {
            skip(timeNanos, find(skip.step()), skip.reason());
        } else if (act instanceof Act.Repeat repeat) {
            repeat(timeNanos, find(repeat.step()));
        } else if (act instanceof Act.Tick tick) {
            tick(timeNanos, find(tick.step()), tick);
        } else if (act instanceof Act.Seen seen) {
            safety.seen(timeNanos, seen.notice());
        } else if (act instanceof Act.Heat given) {
            heat = given.heat();
        } else if (act instanceof Act.Entered entered) {
            entered(timeNanos, find(entered.step()), entered);
        } else if (act instanceof Act.Former former) {
            lastVisit.is(former);
        } else if (act instanceof Act.Instrument said) {
            instruments.is(timeNanos, said);
        } else if (act instanceof Act.Settings said) {
            settings(timeNanos, said);
        } else if (act instanceof Act.GoOn goOn) {
            goOn(timeNanos, goOn.why());
        } else {
            clock(timeNanos, act);
        }
    }

    /** The detectors begin afresh with them; what is armed waits for them. */
    private void settings(long timeNanos, Act.Settings said) {
        if (settings.are(timeNanos, said, person) && current < steps.size()) {
            steps.get(current).marks.add(new StepState.Mark(timeNanos, "other settings of settled"));
        }
    }

    /** Whatever was armed or counted waits for the person again: nobody saw what happened in between. */
    private void goOn(long timeNanos, String why) {
        for (StepRun run : steps) {
            if (run.progress == Progress.ARMED) {
                run.disarm();
                run.adjusting = run.step.kind() == StepKind.LEFT;
            }
            run.clock.drop(why);
            run.beforeTheCap.moving(timeNanos);
        }
        if (current < steps.size()) {
            steps.get(current).marks.add(new StepState.Mark(timeNanos, why));
        }
    }

    private void entered(long timeNanos, @Nullable StepRun run, Act.Entered act) {
        if (run != null && run.step.kind().typed() && !run.done()) {
            run.open(timeNanos);
            run.typed.put(act.role(), TypedValue.of(act, timeNanos));
        }
    }

    private void clock(long timeNanos, Act act) {
        if (act instanceof Act.MeterDial dial) {
            clocking(dial.step()).ifPresent(run -> dial(run, dial.cubicFeet()));
        } else if (act instanceof Act.PointerAtMark mark) {
            clocking(mark.step()).ifPresent(run -> mark(timeNanos, run));
        } else if (act instanceof Act.Unmark last) {
            clocking(last.step()).ifPresent(run -> run.clock.unmark());
        } else if (act instanceof Act.EndRun end) {
            clocking(end.step()).filter(run -> run.endClocked(heat)).ifPresent(run -> clocked(timeNanos, run));
        } else if (act instanceof Act.DropRun drop && !drop.reason().isBlank()) {
            clocking(drop.step()).ifPresent(run -> run.clock.drop(drop.reason()));
        }
    }

    private Optional<StepRun> clocking(String key) {
        return Optional.ofNullable(find(key)).filter(run -> run.step.kind() == StepKind.CLOCK && !run.done());
    }

    /** The house has one meter: what is clocked later has the same dial until another is said. */
    private void dial(StepRun run, double cubicFeet) {
        steps.stream()
                .filter(s -> s == run || !s.done() && s.clock.runs().isEmpty())
                .forEach(s -> s.dialCubicFeet = cubicFeet);
    }

    private void mark(long timeNanos, StepRun run) {
        disarmOthers(run);
        current = steps.indexOf(run);
        run.open(timeNanos);
        run.markClock(timeNanos);
        lookAtBurner(run, channels.get(Role.MANIFOLD));
    }

    private void lookAtBurner(StepRun run, @Nullable ChannelNow manifold) {
        if (run.clock.running() && run.unsteady.isEmpty()) {
            run.unsteady = ClockedInput.unsteady(run, manifold, zeros, plate);
        }
    }

    private void clocked(long timeNanos, StepRun run) {
        Clocking clocking = run.clocking(heat);
        run.verdicts.clear();
        run.verdicts.addAll(clocking.verdicts(run.step, plate));
        run.remarks.addAll(ClockedInput.words(run.step, clocking, plate));
        run.finish(timeNanos, Progress.TAKEN);
        next(timeNanos);
    }

    /** The channels as they stand after a sample; takes the reading of an armed step where it is due. */
    public void observe(long timeNanos, Map<Role, ChannelNow> now) {
        channels.clear();
        channels.putAll(now);
        safety.see(timeNanos, channels, zeros, plate);
        ChannelNow manifold = channels.get(Role.MANIFOLD);
        beforeTheLight(timeNanos, manifold);
        if (manifold != null && !manifold.settle().settled() && !steadyByRule(Role.MANIFOLD)) {
            readiness.manifoldMoves(timeNanos);
        }
        for (StepRun run : steps) {
            if (run.adjusting && manifold != null) {
                if (manifold.settle().settled()) {
                    run.beforeTheCap.see(adjusted(timeNanos, run));
                } else {
                    run.beforeTheCap.moving(timeNanos);
                }
            }
            if (run.progress == Progress.ARMED && run.step.kind().measuring()) {
                watch(timeNanos, run, manifold);
            }
            lookAtBurner(run, manifold);
        }
    }

    private void beforeTheLight(long timeNanos, @Nullable ChannelNow manifold) {
        Double zero = zeros.get(Role.MANIFOLD);
        if (manifold != null && zero != null) {
            prePurge.see(timeNanos, manifold.value() - zero, manifold.unit(), plate);
        }
    }

    /** A rule that stands alone has found it steady, or it stays where it was taken, though there is no proof. */
    private boolean steadyByRule(Role role) {
        for (StepRun run : steps) {
            if (run.progress == Progress.ARMED && (run.takenFirst.has(role) || steadyByRule(run, role))) {
                return true;
            }
        }
        return false;
    }

    private static boolean steadyByRule(StepRun run, Role role) {
        return !run.step.settledBy().needsProof(role) && run.rules.holds(role);
    }

    private void watch(long timeNanos, StepRun run, @Nullable ChannelNow manifold) {
        if (run.step.kind() == StepKind.HOLD) {
            hold(timeNanos, run);
            return;
        }
        if (run.step.kind() == StepKind.SHUT && manifold != null) {
            run.fall.see(manifold.timeNanos(), manifold.value() - zeros.getOrDefault(Role.MANIFOLD, 0.0));
        }
        if (run.step.kind().firing() && manifold != null) {
            StagePlate stage = plate.stage(run.step.stage());
            double value = manifold.value() - zeros.getOrDefault(Role.MANIFOLD, 0.0);
            double inUnit = manifold.unit().to(stage.unit()).apply(value);
            run.creep.see(timeNanos, value, inUnit > Readiness.litAt(stage));
        }
        ChannelNow inlet = channels.get(Role.INLET);
        if (run.step.kind() == StepKind.LOCK_UP && inlet != null) {
            run.climb
                    .see(run.armedNanos, inlet.timeNanos(), inlet.value(), inlet.unit())
                    .ifPresent(words -> {
                        run.remarks.add(words);
                        safety.climbing(timeNanos, words, inlet.value(), inlet.unit());
                    });
        }
        run.rules.see(run.armedNanos, channels, zeros);
        takeFirst(timeNanos, run);
        run.waitingFor = readiness.waitingFor(run, timeNanos, channels, zeros);
        together(timeNanos, run);
        if (run.waitingFor.isEmpty()) {
            take(timeNanos, run, "");
        }
    }

    private static void pressuresFirst(@Nullable StepRun run) {
        if (run != null && run.progress == Progress.ARMED && run.step.inParts()) {
            run.takenFirst.want();
        }
    }

    /** Pressures that were asked for first are taken once they stand, and dropped where one moves. */
    private void takeFirst(long timeNanos, StepRun run) {
        run.takenFirst.moved(timeNanos, channels).ifPresent(words -> {
            run.remarks.add(words);
            run.marks.add(new StepState.Mark(timeNanos, StepState.PRESSURES_DROPPED));
        });
        List<Role> pressures = TakenFirst.pressures(run.step);
        if (run.takenFirst.due()
                && readiness
                        .waitingFor(run, pressures, timeNanos, channels, zeros)
                        .isEmpty()) {
            run.takenFirst.take(reading(run, purpose(run.step.kind()), pressures, timeNanos, "", zeros), channels);
            run.marks.add(new StepState.Mark(timeNanos, StepState.PRESSURES_TAKEN));
        }
    }

    /** What was ready and has moved since is said, and marked on the chart. */
    private void together(long timeNanos, StepRun run) {
        Optional<Role> mover = readiness.notSettled(run, timeNanos, channels);
        String why = mover.map(role -> Readings.reason(role, run, channels)).orElse("");
        if (run.together.see(timeNanos / 1e9, mover.map(Role::word).orElse(""), why)
                && run.together.standing() == SettledTogether.Standing.SPOILED) {
            run.marks.add(new StepState.Mark(timeNanos, mover.orElseThrow().word() + " moved"));
        }
        if (run.together.standing() == SettledTogether.Standing.SPOILED) {
            run.waitingFor = run.waitingFor + " (" + run.together.words() + ")";
        } else if (!run.waitingFor.isEmpty()) {
            run.waitingFor = run.waitingFor + run.takenFirst.standing();
        }
    }

    /** A trapped pressure is read twice; in between it may move as it likes, that is what is looked for. */
    private void hold(long timeNanos, StepRun run) {
        run.waitingFor = readiness.waitingForHold(run, timeNanos, channels);
        if (!run.waitingFor.isEmpty()) {
            return;
        }
        if (run.watchedFromNanos >= 0) {
            take(timeNanos, run, "");
            return;
        }
        StageReading start = reading(run, START, run.step.required(), timeNanos, "", zeros);
        boolean gone = run.whenTrapped != null && TrappedPressure.gone(run.whenTrapped, start);
        StageReading from = gone ? Objects.requireNonNull(run.whenTrapped) : start;
        run.readings.add(from);
        taken.add(from);
        run.watchedFromNanos = from.timeNanos();
        run.marks.add(new StepState.Mark(from.timeNanos(), "watched from here"));
        if (gone) {
            run.remarks.add(TrappedPressure.GONE);
            take(timeNanos, run, "");
        }
    }

    public JobState state() {
        return new JobState(
                plan,
                plate,
                steps.stream().map(s -> s.state(heat)).toList(),
                current,
                zeros,
                person,
                notes,
                safety.notices(),
                instruments.all(),
                lastVisit.visits(),
                settings.all());
    }

    /** Readings taken since the last call. */
    public List<StageReading> drainTaken() {
        List<StageReading> result = List.copyOf(taken);
        taken.clear();
        return result;
    }

    private @Nullable StepRun find(String key) {
        return steps.stream().filter(s -> s.key.equals(key)).findFirst().orElse(null);
    }

    private void replacePlate(RatingPlate entered) {
        boolean measured = steps.stream().anyMatch(s -> !s.verdicts.isEmpty());
        if (!measured) {
            // Another fuel holds another heat, unless somebody has said which.
            heat = heat.equals(GasHeat.customary(plate.fuel())) ? GasHeat.customary(entered.fuel()) : heat;
            plate = entered;
            readiness = new Readiness(entered);
        }
    }

    private void confirm(long timeNanos, @Nullable StepRun run) {
        if (run == null || run.done() || run.progress == Progress.ARMED || run.adjusting) {
            return;
        }
        if (run.step.kind() == StepKind.CLOCK || run.step.kind() == StepKind.CHECK && !run.allTicked()) {
            return;
        }
        if (run.step.kind().measuring()) {
            if (run.step.kind() == StepKind.CLOSE && !run.readings.isEmpty() || nothingTrapped(run)) {
                return;
            }
            arm(timeNanos, run);
        } else {
            run.open(timeNanos);
            run.finish(timeNanos, Progress.TAKEN);
            next(timeNanos);
        }
    }

    private void arm(long timeNanos, StepRun run) {
        disarmOthers(run);
        current = steps.indexOf(run);
        run.arm(timeNanos);
        if (run.step.kind() == StepKind.HOLD) {
            run.whenTrapped = reading(run, START, run.step.required(), timeNanos, "", zeros);
        }
    }

    /** Where no pressure is trapped none can be seen to go: the watch is not begun, and the step says why. */
    private boolean nothingTrapped(StepRun run) {
        if (run.step.kind() != StepKind.HOLD) {
            return false;
        }
        String words = TrappedPressure.nothing(run.step.required(), channels, zeros, plate);
        if (!words.isEmpty() && !run.remarks.contains(words)) {
            run.remarks.add(words);
        }
        return !words.isEmpty();
    }

    /** The hands are at another step now: an armed one must not take what belongs to it. */
    private void disarmOthers(StepRun run) {
        steps.stream().filter(s -> s != run && s.progress == Progress.ARMED).forEach(StepRun::disarm);
    }

    private void adjust(long timeNanos, @Nullable StepRun run) {
        if (run != null && run.step.kind() == StepKind.LEFT && !run.done()) {
            disarmOthers(run);
            current = steps.indexOf(run);
            run.open(timeNanos);
            run.disarm();
            run.adjusting = true;
            run.marks.add(new StepState.Mark(timeNanos, "adjusting"));
        }
    }

    private void capOn(long timeNanos, @Nullable StepRun run) {
        if (run == null || run.step.kind() != StepKind.LEFT || run.done() || run.progress == Progress.ARMED) {
            return;
        }
        StageReading adjusted = run.beforeTheCap.reading(timeNanos).orElseGet(() -> adjusted(timeNanos, run));
        if (!adjusted.channels().isEmpty()) {
            run.readings.add(adjusted);
            taken.add(adjusted);
        }
        arm(timeNanos, run);
        run.marks.add(new StepState.Mark(timeNanos, "cap on"));
    }

    private StageReading adjusted(long timeNanos, StepRun run) {
        return reading(run, "adjusted", List.of(Role.INLET, Role.MANIFOLD), timeNanos, "", zeros);
    }

    /** With the corrections of the instruments. */
    private StageReading reading(
            StepRun run,
            String purpose,
            List<Role> roles,
            long timeNanos,
            String handReason,
            Map<Role, Double> zerosInForce) {
        return instruments.correct(
                run.step.kind(),
                Readings.take(run, purpose, roles, timeNanos, handReason, channels, zerosInForce),
                run.typed.keySet());
    }

    private void takeByHand(long timeNanos, @Nullable StepRun run, String reason) {
        if (run != null && run.step.kind() == StepKind.CLOCK && !run.done() && !reason.isBlank()) {
            clockByHand(timeNanos, run, reason);
            return;
        }
        boolean known = run != null
                        && run.step.kind().typed()
                        && !Readings.roles(run, channels).isEmpty()
                || run != null
                        && !run.step.kind().typed()
                        && run.step.required().stream()
                                .allMatch(r -> channels.containsKey(r)
                                        && Double.isFinite(channels.get(r).value()));
        if (run != null && known && run.step.kind().measuring() && !run.done() && !reason.isBlank()) {
            current = steps.indexOf(run);
            run.open(timeNanos);
            if (!run.waitingFor.isEmpty()) {
                run.remarks.add("Taken by hand while " + run.waitingFor + ".");
            }
            take(timeNanos, run, reason);
        }
    }

    /** With the runs that there are, though they are too few or do not agree. */
    private void clockByHand(long timeNanos, StepRun run, String reason) {
        run.clock.end();
        if (!run.clocking(heat).counting().isEmpty()) {
            run.remarks.add("Taken by hand: " + reason + ".");
            clocked(timeNanos, run);
        }
    }

    private void skip(long timeNanos, @Nullable StepRun run, String reason) {
        if (run != null && !run.done() && !reason.isBlank()) {
            run.open(timeNanos);
            run.skipReason = reason;
            run.finish(timeNanos, Progress.SKIPPED);
            next(timeNanos);
        }
    }

    private void repeat(long timeNanos, @Nullable StepRun old) {
        if (old == null || !old.done() || old.superseded) {
            return;
        }
        old.superseded = true;
        String plain = old.step.key();
        long count = steps.stream().filter(s -> s.step.key().equals(plain)).count();
        StepRun again = new StepRun(plain + "#" + (count + 1), old.step);
        int at = steps.indexOf(old) + 1;
        steps.add(at, again);
        current = at;
        again.open(timeNanos);
    }

    private void tick(long timeNanos, @Nullable StepRun run, Act.Tick tick) {
        if (run == null || run.done() || !run.step.ticks().contains(tick.item())) {
            return;
        }
        run.open(timeNanos);
        if (tick.done()) {
            run.ticked.put(tick.item(), timeNanos);
        } else {
            run.ticked.remove(tick.item());
        }
        finishTicked(timeNanos, run);
    }

    private void take(long timeNanos, StepRun run, String handReason) {
        StageReading reading = run.takenFirst.into(reading(
                run,
                purpose(run.step.kind()),
                Readings.roles(run, channels),
                timeNanos,
                handReason,
                purposeZeros(run)));
        if (run.step.kind() == StepKind.ZERO && !Findings.zeroAccepted(run, reading, channels)) {
            run.disarm();
            return;
        }
        run.readings.add(reading);
        taken.add(reading);
        run.verdicts.clear();
        switch (run.step.kind()) {
            case ZERO -> reading.channels().forEach(c -> zeros.put(c.role(), c.value()));
            case CLOSE -> closed(run, reading);
            case HOLD -> run.verdicts.addAll(Judging.change(run.step, begun(run), reading));
            case STATICS -> run.verdicts.addAll(AirStatics.judge(run.step, reading, plate));
            case COMBUSTION -> {
                run.verdicts.addAll(Combustion.judge(run.step, reading, plate));
                safety.flue(timeNanos, run.verdicts);
            }
            case PLATE, PROBES, CLOCK, CHECK, RECORD, LOCK_UP, THIS_APPLIANCE, ALL_APPLIANCES, FOUND, LEFT, SHUT ->
                run.verdicts.addAll(Judging.judge(run.step, reading, plate));
        }
        run.takenFirst.words(reading).ifPresent(run.remarks::add);
        Findings.remark(run, reading, heat, plate);
        run.remarks.addAll(Slips.words(run, reading, steps, plate));
        run.remarks.addAll(lastVisit.words(run.step, reading));
        run.remarks.addAll(InstrumentsInUse.words(reading));
        run.remarks.addAll(settings.words(reading));
        reading.channel(Role.MANIFOLD).ifPresent(m -> manifoldRead(run, m));
        if (run.step.kind() == StepKind.CLOSE) {
            run.disarm();
            finishTicked(timeNanos, run);
        } else {
            run.finish(timeNanos, Progress.TAKEN);
            next(timeNanos);
        }
    }

    private void manifoldRead(StepRun run, ChannelReading manifold) {
        if (run.step.kind() == StepKind.LOCK_UP) {
            prePurge.rest(manifold.value());
        } else if (run.step.kind().firing()) {
            readiness.stageRead(run.step.stage(), manifold.value());
            run.creep.words(manifold.unit()).ifPresent(run.remarks::add);
            prePurge.words(manifold.unit()).ifPresent(run.remarks::add);
        }
    }

    private void closed(StepRun run, StageReading closing) {
        run.verdicts.addAll(Judging.drift(closing));
        long zero = steps.stream()
                .filter(s -> s.step.kind() == StepKind.ZERO && s.progress == Progress.TAKEN)
                .mapToLong(s -> s.doneNanos)
                .max()
                .orElse(-1);
        if (zero >= 0) {
            ZeroDrift drift = new ZeroDrift(zero, closing);
            steps.stream().filter(s -> s != run).forEach(s -> drift.widen(s, plate));
            run.remarks.addAll(drift.words(run.verdicts));
        }
    }

    private Optional<StageReading> begun(StepRun run) {
        return run.watchedFromNanos < 0 ? Optional.empty() : run.state(heat).reading(START);
    }

    /** A new zero is read against nothing; everything else against the zero in force. */
    private Map<Role, Double> purposeZeros(StepRun run) {
        return run.step.kind() == StepKind.ZERO ? new HashMap<>() : zeros;
    }

    private static String purpose(StepKind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private void finishTicked(long timeNanos, StepRun run) {
        boolean closed = run.step.kind() == StepKind.CLOSE && !run.readings.isEmpty();
        if ((closed || run.step.kind() == StepKind.CHECK) && run.allTicked()) {
            run.finish(timeNanos, Progress.TAKEN);
            next(timeNanos);
        }
    }

    /** The next step that is not done becomes the one at hand. */
    private void next(long timeNanos) {
        int start = current;
        current = steps.size();
        for (int i = 0; i < steps.size(); i++) {
            int index = (start + i) % steps.size();
            if (!steps.get(index).done()) {
                current = index;
                break;
            }
        }
        openCurrent(timeNanos);
    }

    private void openCurrent(long timeNanos) {
        if (current < steps.size()) {
            steps.get(current).open(timeNanos);
        }
    }
}
