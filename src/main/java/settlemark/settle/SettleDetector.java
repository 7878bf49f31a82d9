package settlemark.settle;

import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Decides for one channel when its reading has settled, sample by sample and from the past alone.
 *
 * <p>Settled means that the movement still to come is bounded with stated confidence: within the drift limit over the
 * horizon or, for an approach whose time constant is known, until its end. Noise can delay the proof but never make it.
 * Values are in one unit, that of the settings; times are in seconds on any scale that increases. The same samples give the
 * same events; nothing else is looked at.
 *
 * <p>Not thread-safe: one thread feeds it. It keeps a bounded amount of state (under 16 KiB with the default settings), takes
 * constant time for a sample and creates nothing unless an event or {@link #state} is wanted.
 */
public final class SettleDetector {
    /** Sums of decimal fractions of a second may be this far off a whole number. */
    static final double TIME_TOLERANCE_SECONDS = 1e-6;

    private static final double ALLOWED_RANGE_SHARE = 0.7;
    private static final double ALARM_SIGMAS = 4;
    /** A movement is found out within about half of the shortest window; what is older was still at rest. */
    private static final double RECENT_SHARE = 0.5;

    private final SettleSettings settings;
    private final Consumer<SettleEvent> listener;
    private final Reasons reasons;
    private final Resolution resolution;
    private final SampleRate rate = new SampleRate();
    private final SpikeGate gate;
    private final Set<Part> leftOut;
    /** The settings, with longer windows while samples come seldom. */
    private SettleSettings paced;

    private Evidence evidence;
    private LateTurn lateTurn;
    private final Cusum cusum = new Cusum();

    // All times within are counted from the first sample, so that a large origin costs no digits.
    private double originSeconds = Double.NaN;
    private double lastSeconds = Double.NaN;
    private boolean empty = true;
    private double holdingSinceSeconds = Double.NaN;
    private double alarmFloor;
    private Ongoing expected = Ongoing.NOTHING;
    private long ignored;
    private String lastBreak = "";
    private @Nullable SettleState recorded;
    private @Nullable SettleState current;
    private @Nullable SettleLook look;

    /** A detector that is only asked for its {@link #state}. */
    public SettleDetector(SettleSettings settings, double resolution) {
        this(settings, resolution, event -> {});
    }

    /**
     * A detector that also tells of each change of mind.
     *
     * @param settings in the unit of the samples
     * @param resolution the step in which the probe counts, in the unit of the samples; NaN to estimate it from the past
     * @param listener called on the thread that feeds the detector
     * @throws IllegalArgumentException where the resolution is negative or infinite
     */
    public SettleDetector(SettleSettings settings, double resolution, Consumer<SettleEvent> listener) {
        this(settings, resolution, listener, Set.of());
    }

    /** A detector without some of its parts. */
    SettleDetector(SettleSettings settings, double resolution, Consumer<SettleEvent> listener, Set<Part> leftOut) {
        if (resolution < 0 || Double.isInfinite(resolution)) {
            throw new IllegalArgumentException(
                    "resolution must be positive, 0 (none) or NaN (estimate it), got " + resolution);
        }
        this.settings = settings;
        this.paced = settings;
        this.leftOut = leftOut;
        this.listener = listener;
        this.reasons = new Reasons(settings);
        this.resolution = new Resolution(resolution, settings);
        this.gate = new SpikeGate(settings.driftLimit());
        this.evidence = new Evidence(settings, leftOut);
        this.lateTurn = new LateTurn(settings, leftOut.contains(Part.TURNS_PUT_OFF));
    }

    /**
     * Takes one measured sample in. A value that is not finite counts as {@link #interrupted}; a sample that is not later
     * than the one before is ignored and counted.
     */
    public void accept(double timeSeconds, double value) {
        if (!Double.isFinite(value)) {
            interrupted(timeSeconds, "no value");
            return;
        }
        if (!advance(timeSeconds)) {
            return;
        }
        resolution.see(value);
        switch (gate.judge(lastSeconds, value, resolution.step(), rate)) {
            case WAITING -> {}
            case ORDINARY -> take(lastSeconds, value);
            case CHANGED -> restartFromPending();
        }
    }

    /**
     * Something that is no measurement came instead of one, for instance over range: un-settles and starts afresh.
     *
     * @param why a few words for the reason line
     */
    public void interrupted(double timeSeconds, String why) {
        if (advance(timeSeconds)) {
            startAfresh(why);
            empty = true;
        }
    }

    /** Number of samples ignored because they were not later than the one before. */
    public long ignoredSamples() {
        return ignored;
    }

    /** A pause between samples that is longer than this is a gap, as things are now. */
    public double longestPauseSeconds() {
        return rate.longestPause(settings.gapSeconds());
    }

    /** What is known now; made when asked for, and the same object until something arrives. */
    public SettleState state() {
        SettleState known = current;
        if (known == null) {
            known = recorded == null ? describe() : recorded.at(lastSeconds + originSeconds);
            current = known;
        }
        return known;
    }

    /** The same, to be described only where somebody asks: for those who look at every sample. */
    public SettleLook look() {
        SettleLook known = look;
        if (known == null) {
            known = new SettleLook(this, recorded != null);
            look = known;
        }
        return known;
    }

    private void movedOn() {
        current = null;
        look = null;
    }

    /**
     * Where an approach is expected to end; empty while the data do not carry it, once the reading has settled, and on
     * channels whose time constant is not learnt. Made when asked for.
     */
    public Optional<Forecast> forecast() {
        return recorded == null ? Optional.ofNullable(evidence.forecast()) : Optional.empty();
    }

    /** Moves on to a time; false where it is not later than the last. Notices gaps. */
    private boolean advance(double timeSeconds) {
        boolean first = Double.isNaN(originSeconds) && Double.isFinite(timeSeconds);
        if (first) {
            originSeconds = timeSeconds;
        }
        double now = timeSeconds - originSeconds;
        if (!first && !(now > lastSeconds && now < Double.POSITIVE_INFINITY)) {
            ignored++;
            return false;
        }
        double pause = now - lastSeconds;
        lastSeconds = now;
        movedOn();
        if (!empty) {
            if (pause > settings.gapSeconds() && pause > longestPauseSeconds() + TIME_TOLERANCE_SECONDS) {
                startAfresh(reasons.gap(pause));
                if (rate.slow(pause)) {
                    pace(settings.pacedFor(pause));
                }
            } else {
                rate.spaced(pause);
                if (paced != settings && rate.periodSeconds() < settings.gapSeconds() / 2) {
                    startAfresh("samples come faster");
                    pace(settings);
                }
            }
        }
        empty = false;
        return true;
    }

    private void pace(SettleSettings changed) {
        paced = changed;
        evidence = new Evidence(changed, leftOut);
        lateTurn = new LateTurn(changed, leftOut.contains(Part.TURNS_PUT_OFF));
    }

    private void startAfresh(String why) {
        unsettle(why);
        lastBreak = why;
        holdingSinceSeconds = Double.NaN;
        evidence.clear();
        lateTurn.clear();
        gate.forget();
    }

    private void restartFromPending() {
        if (recorded != null) {
            unsettle(reasons.changed(gate.changedBy(), resolution.step()));
        }
        holdingSinceSeconds = Double.NaN;
        evidence.clear();
        lateTurn.clear();
        for (int i = 0; i < gate.pendingCount(); i++) {
            take(gate.pendingSeconds(i), gate.pendingValue(i));
        }
        gate.restart(resolution.step());
    }

    private void take(double seconds, double value) {
        SettleState reading = recorded;
        if (reading != null && cusum.leaves(value, Math.max(ALARM_SIGMAS * gate.sigma(), alarmFloor))) {
            unsettle(reasons.movedAway(reading.value(), resolution.step()));
            if (evidence.shortest().expectedToMove() > settings.driftLimit()) {
                forgetEarlier(seconds);
            }
        }
        if (evidence.add(seconds, value, resolution.step(), gate.sigma(), recorded == null)) {
            decide(seconds);
        }
    }

    private void decide(double nowSeconds) {
        if (recorded != null) {
            if (evidence.surelyMovesBeside(expected)) {
                unsettle(reasons.moving(evidence.shortest(), expected));
                forgetEarlier(nowSeconds);
            } else if (evidence.swingsTooFarBeside(expected)) {
                unsettle(reasons.swings(evidence.shortest().swingBeside(expected)));
                forgetEarlier(nowSeconds);
            }
            return;
        }
        Proof proof = evidence.surest();
        if (proof == null) {
            holdingSinceSeconds = Double.NaN;
            return;
        }
        if (Double.isNaN(holdingSinceSeconds)) {
            holdingSinceSeconds = nowSeconds;
        }
        if (nowSeconds - holdingSinceSeconds >= paced.dwellSeconds() - TIME_TOLERANCE_SECONDS
                && !lateTurn.putsOff(proof, nowSeconds)) {
            settle(proof, nowSeconds);
        }
    }

    private void forgetEarlier(double nowSeconds) {
        evidence.forgetBefore(nowSeconds - RECENT_SHARE * paced.windowSeconds().get(0));
    }

    private void settle(Proof proof, double nowSeconds) {
        double value = proof.value();
        cusum.start(value, settings.driftLimit() + ALLOWED_RANGE_SHARE * proof.spread());
        alarmFloor = Math.max(ALARM_SIGMAS * Math.sqrt(proof.residualVariance()), settings.driftLimit());
        expected = proof.left();
        holdingSinceSeconds = Double.NaN;
        lastBreak = "";
        String why = reasons.proved(proof);
        SettleState state = stateOf(SettlePhase.SETTLED, proof, 0, value, proof.uncertainty(), "settled: " + why);
        recorded = state;
        movedOn();
        listener.accept(new SettleEvent(
                nowSeconds + originSeconds, true, value, state.uncertainty(), state.windowStartSeconds(), why));
    }

    private void unsettle(String why) {
        if (recorded != null) {
            recorded = null;
            lateTurn.clear();
            holdingSinceSeconds = Double.NaN;
            lastBreak = why;
            movedOn();
            double now = lastSeconds + originSeconds;
            listener.accept(new SettleEvent(now, false, Double.NaN, Double.NaN, Double.NaN, why));
        }
    }

    private SettleState describe() {
        if (empty) {
            String text = lastBreak.isEmpty() ? "no reading yet" : "no reading: " + lastBreak;
            return stateOf(SettlePhase.NO_DATA, null, 0, text);
        }
        Proof proof = evidence.surest();
        if (proof != null) {
            double since = Double.isNaN(holdingSinceSeconds) ? lastSeconds : holdingSinceSeconds;
            double toGo = Math.max(0, since + paced.dwellSeconds() - lastSeconds);
            if (toGo == 0 && proof.turnsLately()) {
                return stateOf(SettlePhase.HOLDING, proof, 0, reasons.turnsLately());
            }
            return stateOf(SettlePhase.HOLDING, proof, toGo, reasons.holding(proof, toGo));
        }
        Proof nearest = evidence.nearest();
        double toGo = evidence.secondsToNextWindow(lastSeconds);
        if (nearest == null) {
            return stateOf(SettlePhase.FILLING, null, toGo, reasons.filling(toGo, lastBreak));
        }
        if (evidence.surelyMoves()) {
            LineProof shortest = evidence.shortest();
            return stateOf(SettlePhase.MOVING, shortest, 0, "not yet: " + reasons.moving(shortest, Ongoing.NOTHING));
        }
        if (nearest.swing() > settings.band()) {
            return stateOf(SettlePhase.MOVING, nearest, 0, "not yet: " + reasons.swings(nearest.swing()));
        }
        if (evidence.swungTooFar()) {
            return stateOf(SettlePhase.MOVING, nearest, 0, "not yet: " + reasons.swung(evidence.swung()));
        }
        LineProof objection = evidence.objection();
        if (objection != null) {
            return stateOf(SettlePhase.MOVING, objection, 0, "not yet: " + reasons.objects(objection));
        }
        if (evidence.tooShort(nearest)) {
            return stateOf(SettlePhase.FILLING, nearest, toGo, "not yet: " + reasons.movedLately(toGo));
        }
        if (nearest.expectedToMove() <= settings.driftLimit() && nearest.couldMove() > settings.driftLimit()) {
            return stateOf(SettlePhase.TOO_NOISY, nearest, toGo, reasons.tooNoisy(nearest, toGo));
        }
        return stateOf(SettlePhase.MOVING, nearest, 0, "not yet: " + reasons.couldMove(nearest));
    }

    private SettleState stateOf(SettlePhase phase, @Nullable Proof proof, double secondsToGo, String reason) {
        return stateOf(phase, proof, secondsToGo, Double.NaN, Double.NaN, reason);
    }

    private SettleState stateOf(
            SettlePhase phase,
            @Nullable Proof proof,
            double secondsToGo,
            double value,
            double uncertainty,
            String reason) {
        return new SettleState(
                phase,
                lastSeconds + originSeconds,
                proof == null ? Double.NaN : proof.couldMove(),
                settings.driftLimit(),
                proof == null ? Double.NaN : proof.swing(),
                settings.band(),
                secondsToGo,
                proof == null ? Double.NaN : proof.startSeconds() + originSeconds,
                value,
                uncertainty,
                reason);
    }
}
