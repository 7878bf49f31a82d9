package settlemark.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.decode.MeasurementNote;
import settlemark.job.ChannelNow;
import settlemark.job.InstrumentUse;
import settlemark.measure.Accuracy;
import settlemark.measure.Channel;
import settlemark.measure.Conversion;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.settle.Forecast;
import settlemark.settle.FromInstrument;
import settlemark.settle.Heading;
import settlemark.settle.SettleChoices;
import settlemark.settle.SettleDetector;
import settlemark.settle.SettleEvent;
import settlemark.settle.SettleKind;
import settlemark.settle.SettleSettings;

/** A channel with a role, while the session runs: converts to the job's unit, watches for settled, keeps the trace. */
final class ChannelRun {
    private static final double FALLBACK_PERIOD_SECONDS = 1;
    /** A channel is not called stale sooner than this, since deliveries over a real link come in bunches. */
    private static final double LEAST_STALE_SECONDS = 1;

    final Role role;
    final int probe;
    private Channel channel;
    private final Unit unit;
    private final Conversion conversion;
    private final double resolution;
    private final double zeroLimit;
    private SettleSettings settings;
    private SettleDetector detector;
    private Heading heading;
    private final TraceBuffer trace = new TraceBuffer();
    private final List<Span> spans = new ArrayList<>();
    private final List<SettleEvent> changes = new ArrayList<>();

    private long timeNanos = -1;
    private double value = Double.NaN;
    private SampleStatus status = SampleStatus.NOT_READY;
    private long settledSinceNanos = -1;
    private int breaks;
    /** As the job sees it; none since something came. */
    private @Nullable ChannelNow now;

    ChannelRun(Role role, int probe, Channel channel, Unit unit, SettleChoices choices) {
        this.role = role;
        this.probe = probe;
        this.channel = channel;
        this.unit = unit;
        this.conversion = channel.unit().to(unit);
        double scale = Math.abs(conversion.slope());
        this.resolution = channel.resolution() * scale;
        this.zeroLimit = channel.zeroLimit() * scale;
        this.settings = SettleFit.settings(role, unit, choices);
        this.detector = new SettleDetector(settings, resolution, this::changed);
        this.heading = new Heading(settings, resolution);
    }

    void sample(long at, double raw, SampleStatus says) {
        now = null;
        timeNanos = at;
        status = says;
        if (says == SampleStatus.OK && Double.isFinite(raw)) {
            value = conversion.apply(raw);
            detector.accept(at / 1e9, value);
            heading.accept(at / 1e9, value);
        } else {
            value = Double.NaN;
            breaks++;
            detector.interrupted(at / 1e9, words(says));
        }
        trace.add(at, value);
    }

    private static String words(SampleStatus status) {
        return status.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** The device's own statement about its accuracy and its rate goes before the profile's. */
    void noted(MeasurementNote note) {
        now = null;
        Accuracy accuracy = Double.isNaN(note.uncertaintyPercent())
                ? channel.accuracy()
                : new Accuracy(note.uncertaintyPercent() / 100, 0, 0, 0);
        double period =
                Double.isNaN(note.updateIntervalSeconds()) ? channel.periodSeconds() : note.updateIntervalSeconds();
        channel = new Channel(
                channel.name(),
                channel.label(),
                channel.dimension(),
                channel.unit(),
                channel.resolution(),
                accuracy,
                period,
                channel.zeroLimit(),
                channel.warmUpSeconds());
    }

    /** The link was lost: what comes after it does not continue what came before. */
    void interrupted(long at, String why) {
        if (timeNanos >= 0) {
            describe();
            now = null;
            breaks++;
            // A break at the very time of the last sample comes after it.
            detector.interrupted(Math.max(at, timeNanos + 1) / 1e9, why);
            trace.add(at, Double.NaN);
            heading.accept(at / 1e9, Double.NaN);
        }
    }

    /** Other settings hold from now on: the detector begins afresh, a reading that stood is taken back. */
    void judgeBy(long at, SettleChoices choices) {
        SettleSettings others = SettleFit.settings(role, unit, choices);
        if (!others.equals(settings)) {
            describe();
            if (timeNanos >= 0) {
                breaks++;
                detector.interrupted(Math.max(at, timeNanos + 1) / 1e9, "other settings of settled");
            }
            settings = others;
            detector = new SettleDetector(others, resolution, this::changed);
            heading = new Heading(others, resolution);
        }
    }

    /** The job goes on seeing it as it stood until the next sample comes, and the detector is about to move on. */
    private void describe() {
        detector.look().state();
    }

    private void changed(SettleEvent event) {
        changes.add(event);
        long at = Math.round(event.timeSeconds() * 1e9);
        if (event.settled()) {
            if (settledSinceNanos < 0) {
                settledSinceNanos = at;
            }
        } else if (settledSinceNanos >= 0) {
            spans.add(new Span(settledSinceNanos, Math.max(settledSinceNanos, at)));
            settledSinceNanos = -1;
        }
    }

    /** Every change of the detector's mind so far. */
    List<SettleEvent> changes() {
        return List.copyOf(changes);
    }

    Unit unit() {
        return unit;
    }

    boolean heard() {
        return timeNanos >= 0;
    }

    ChannelNow now() {
        ChannelNow known = now;
        if (known == null) {
            known = new ChannelNow(
                    unit,
                    timeNanos,
                    value,
                    status,
                    detector.look(),
                    settledSinceNanos,
                    settings.windowSeconds().get(0),
                    channel.accuracy(),
                    conversion,
                    resolution,
                    zeroLimit,
                    detector.longestPauseSeconds(),
                    breaks);
            now = known;
        }
        return known;
    }

    /** @param instrument what measures here, with its channel there; empty where nothing is known of it, or no zero */
    ChannelView view(long nowNanos, double zero, Optional<InstrumentUse> instrument) {
        FromInstrument corrected =
                instrument.map(use -> use.at(role, unit, value - zero)).orElse(FromInstrument.NONE);
        double added = corrected.corrects() ? corrected.correction() : 0;
        List<Span> settled = new ArrayList<>(spans);
        if (settledSinceNanos >= 0) {
            settled.add(new Span(settledSinceNanos, Math.max(settledSinceNanos, timeNanos)));
        }
        return new ChannelView(
                role,
                probe,
                channel,
                unit,
                value - zero + added,
                status,
                timeNanos,
                stale(nowNanos, timeNanos, channel.periodSeconds()),
                zero,
                resolution,
                detector.state(),
                settings,
                trace.trace(),
                settled,
                corrected,
                detector.forecast()
                        .map(f -> new Forecast(f.value() - zero + added, f.uncertainty(), f.secondsToSettled()))
                        .orElse(null),
                heading(zero - added));
    }

    private Heading.@Nullable Estimate heading(double zero) {
        if (settings.kind() != SettleKind.GAS) {
            return null;
        }
        return heading.estimate()
                .map(e -> new Heading.Estimate(e.value() - zero, e.uncertainty()))
                .orElse(null);
    }

    /** Liveness is judged from the data alone: three periods without any. */
    static boolean stale(long nowNanos, long lastNanos, double periodSeconds) {
        double period = Double.isNaN(periodSeconds) ? FALLBACK_PERIOD_SECONDS : periodSeconds;
        return lastNanos >= 0 && (nowNanos - lastNanos) / 1e9 > Math.max(LEAST_STALE_SECONDS, 3 * period);
    }
}
