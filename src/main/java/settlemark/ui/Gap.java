package settlemark.ui;

import settlemark.session.ChannelView;
import settlemark.settle.ChannelReading;
import settlemark.settle.SettlePhase;
import settlemark.settle.SettleSettings;
import settlemark.settle.SettleState;

/**
 * How far a value could still move, against how far it may: what the bar under a number shows and says.
 *
 * @param phase the detector's, {@link SettlePhase#NO_DATA} where the value is stale
 * @param ratio what remains over its limit: 1 fills the space between the posts; NaN for no bar
 * @param filled part of the first window that is gathered, 0 to 1
 * @param word the state
 * @param could how far it could still move, in words; empty where that is not known yet
 * @param limit the limit in words
 */
record Gap(SettlePhase phase, double ratio, double filled, String word, String could, String limit) {
    /** From here on both ends of the bar are arrows: it no longer fits the track. */
    static final double ARROWS = 1.8;

    /** For so long a value that has moved away is called that. */
    private static final long LOST_NANOS = 20_000_000_000L;

    static Gap of(ChannelView view, long nowNanos) {
        int spans = view.settledSpans().size();
        long until = spans == 0 ? -1 : view.settledSpans().get(spans - 1).toNanos();
        return of(view.settle(), view.settings(), view.stale(), view.timeNanos(), until, nowNanos);
    }

    /** @param settledUntilNanos when it was last settled, -1 where it never was */
    static Gap of(
            SettleState settle,
            SettleSettings settings,
            boolean stale,
            long lastNanos,
            long settledUntilNanos,
            long nowNanos) {
        int decimals = Numbers.decimals(settings.driftLimit());
        String limit = Words.say("limit {0}", Numbers.plain(settings.driftLimit()));
        if (stale || lastNanos < 0 || settle.phase() == SettlePhase.NO_DATA) {
            return new Gap(SettlePhase.NO_DATA, Double.NaN, 0, noData(lastNanos, nowNanos), "", limit);
        }
        if (settle.phase() == SettlePhase.FILLING) {
            double window = settings.windowSeconds().get(0);
            double filled = Math.max(0, Math.min(1, 1 - settle.secondsToGo() / window));
            String word = Words.say("gathering, {0} to go", Numbers.seconds(settle.secondsToGo()));
            return new Gap(SettlePhase.FILLING, Double.NaN, filled, word, "", limit);
        }
        // While it still drifts, its swings are only the drift seen from nearby.
        boolean swings = settle.swing() > settle.band() && !(settle.couldMove() > settle.limit());
        String could = Words.say("could still move {0}", Numbers.bound(settle.couldMove(), decimals));
        String word = settle.phase() == SettlePhase.MOVING && !swings && justLost(settledUntilNanos, nowNanos)
                ? Words.say("moved away")
                : word(settle, swings, decimals);
        if (swings) {
            limit += Words.say(", band \u00b1{0}", Numbers.plain(settle.band()));
        }
        return new Gap(settle.phase(), ratio(settle, swings), 1, word, could, limit);
    }

    /** A reading that was taken: nothing moves any more. */
    static Gap of(ChannelReading reading, double limit) {
        int decimals = Numbers.decimals(limit);
        String word = (reading.settled() ? Words.say("read settled, ") : Words.say("by hand, not settled, "))
                + Numbers.plusMinus(reading.expandedUncertainty(), decimals);
        SettlePhase phase = reading.settled() ? SettlePhase.SETTLED : SettlePhase.MOVING;
        return new Gap(phase, Double.NaN, 1, word, "", Words.say("U with k = 2"));
    }

    static int decimals(ChannelView view) {
        return Numbers.decimals(view.settings().driftLimit());
    }

    boolean settled() {
        return phase == SettlePhase.SETTLED;
    }

    String sentence() {
        return could.isEmpty() ? limit : could + ", " + limit;
    }

    /** The sentence where there is little room for it. */
    String brief() {
        return could.isEmpty() ? limit : could.replace(Words.say("could still move"), Words.say("move")) + ", " + limit;
    }

    static String noData(long lastNanos, long nowNanos) {
        return lastNanos < 0 ? Words.say("no data yet") : Words.say("no data {0}", Numbers.age(nowNanos - lastNanos));
    }

    /** It had settled a moment ago, and has not since. */
    private static boolean justLost(long settledUntilNanos, long nowNanos) {
        return settledUntilNanos >= 0 && nowNanos - settledUntilNanos < LOST_NANOS;
    }

    private static double ratio(SettleState settle, boolean swings) {
        double drift = Double.isNaN(settle.couldMove()) ? 2 : settle.couldMove() / settle.limit();
        return swings ? Math.max(drift, settle.swing() / settle.band()) : drift;
    }

    private static String word(SettleState settle, boolean swings, int decimals) {
        return switch (settle.phase()) {
            case MOVING ->
                swings ? Words.say("swings {0}", Numbers.plusMinus(settle.swing(), decimals)) : Words.say("moving");
            case TOO_NOISY -> Words.say("too noisy to prove");
            case HOLDING -> Words.say("proving, {0}", Numbers.seconds(settle.secondsToGo()));
            case SETTLED -> Words.say("settled, {0}", Numbers.plusMinus(settle.uncertainty(), decimals));
            case NO_DATA, FILLING -> throw new IllegalStateException("handled before: " + settle.phase());
        };
    }
}
