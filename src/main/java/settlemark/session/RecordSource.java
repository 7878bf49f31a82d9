package settlemark.session;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import settlemark.job.JobState;
import settlemark.job.StepState;
import settlemark.measure.Accuracy;
import settlemark.measure.Channel;
import settlemark.measure.Conversion;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.settle.ChannelReading;
import settlemark.settle.StageReading;

/** Makes what a record is made from out of a stored session, by running its events through the pipeline again. */
public final class RecordSource {
    private static final long BEFORE_NANOS = 60_000_000_000L;
    private static final long AFTER_NANOS = 2_000_000_000L;
    private static final int MOST_KEPT_EVENTS = 64;

    private final Samples samples;
    private final SessionHeader header;

    private RecordSource(Samples samples, SessionHeader header) {
        this.samples = samples;
        this.header = header;
    }

    private interface Samples {
        SampleBlock of(int probe, int channel, long fromNanos, long toNanos) throws StoreException;
    }

    /**
     * The record of a stored job.
     *
     * @param keys of probes whose frames are protected
     * @return empty where the session is a plain log without a job
     */
    public static Optional<JobRecord> of(SessionStore store, long session, ProbeKeys keys) throws StoreException {
        LiveSession replayed = replay(store, session, keys);
        Samples samples = (probe, channel, from, to) -> store.samples(session, probe, channel, from, to);
        return new RecordSource(samples, replayed.header()).record(replayed, Optional.empty());
    }

    /**
     * The record of a stored job as it was decoded again.
     *
     * @param keys of probes whose frames are protected
     * @return empty where the session is a plain log without a job
     */
    public static Optional<JobRecord> of(SessionStore store, Rereading rereading, ProbeKeys keys)
            throws StoreException {
        Correction correction = Correction.of(store.header(rereading.session()), rereading);
        LiveSession replayed = new LiveSession(correction.former().reread(rereading), keys);
        SessionStore.Sink<SessionEvent> again = into(replayed);
        store.events(rereading.session(), event -> again.take(correction.event(event)));
        Samples samples = (probe, channel, from, to) -> store.rereadings().samples(rereading, probe, channel, from, to);
        return new RecordSource(samples, replayed.header())
                .record(replayed, Optional.of(again(rereading, correction.former())));
    }

    private static JobRecord.Again again(Rereading rereading, SessionHeader former) {
        List<JobRecord.Instead> instead = new ArrayList<>();
        for (int i = 0; i < rereading.probes().size(); i++) {
            Profile before = former.probes().get(i).profile();
            ProbeSetup after = rereading.probes().get(i);
            if (!before.digest().equals(after.profile().digest())) {
                instead.add(new JobRecord.Instead(
                        after.name(), after.profile().id(), after.profile().digest(), before.digest()));
            }
        }
        return new JobRecord.Again(rereading.number(), rereading.madeAt(), instead);
    }

    private Optional<JobRecord> record(LiveSession replayed, Optional<JobRecord.Again> again) throws StoreException {
        Optional<JobState> job = replayed.job();
        if (job.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new JobRecord(
                header, job.get(), windows(job.get()), instruments(replayed), replayed.allHappened(), again));
    }

    /** The whole session taken through the pipeline again; one that was stored without its bytes is refused. */
    public static LiveSession replay(SessionStore store, long session, ProbeKeys keys) throws StoreException {
        RawBytes.require(store, session);
        LiveSession replayed = new LiveSession(store.header(session), keys);
        store.events(session, into(replayed));
        // What goes on from here is stored from the next event on.
        replayed.drain();
        return replayed;
    }

    /** Takes events in, and lets what would be stored of them go before it is much. */
    private static SessionStore.Sink<SessionEvent> into(LiveSession replayed) {
        return new SessionStore.Sink<>() {
            private int kept;

            @Override
            public void take(SessionEvent event) {
                replayed.take(event);
                kept = (kept + 1) % MOST_KEPT_EVENTS;
                if (kept == 0) {
                    replayed.drain();
                }
            }
        };
    }

    private List<JobRecord.ReadingWindow> windows(JobState job) throws StoreException {
        List<JobRecord.ReadingWindow> windows = new ArrayList<>();
        for (StepState step : job.steps()) {
            for (StageReading reading : step.readings()) {
                JobRecord.ReadingWindow window = window(step.key(), reading);
                // What was typed has no trace.
                if (!window.traces().isEmpty()) {
                    windows.add(window);
                }
            }
        }
        return windows;
    }

    private JobRecord.ReadingWindow window(String step, StageReading reading) throws StoreException {
        long first = reading.channels().stream()
                .mapToLong(ChannelReading::fromNanos)
                .min()
                .orElse(reading.timeNanos());
        long from = Math.max(0, first - BEFORE_NANOS);
        long to = reading.timeNanos() + AFTER_NANOS;
        List<JobRecord.RoleTrace> traces = new ArrayList<>();
        for (ChannelReading part : reading.channels()) {
            if (typed(part.role())) {
                continue;
            }
            traces.add(trace(part, from, to));
        }
        return new JobRecord.ReadingWindow(step, reading, from, to, traces);
    }

    private boolean typed(Role role) {
        return (role.statics() || role.gasAnalysis() || role == Role.STACK)
                && header.probes().stream().noneMatch(p -> p.roles().containsValue(role));
    }

    private JobRecord.RoleTrace trace(ChannelReading part, long from, long to) throws StoreException {
        for (int p = 0; p < header.probes().size(); p++) {
            ProbeSetup probe = header.probes().get(p);
            List<Channel> channels = probe.profile().channels();
            for (int c = 0; c < channels.size(); c++) {
                if (probe.roles().get(channels.get(c).name()) == part.role()) {
                    SampleBlock block = samples.of(p, c, from, to);
                    return trace(part, block, channels.get(c).unit().to(part.unit()));
                }
            }
        }
        return new JobRecord.RoleTrace(part.role(), part.unit(), new long[0], new double[0]);
    }

    private static JobRecord.RoleTrace trace(ChannelReading part, SampleBlock block, Conversion conversion) {
        double[] values = new double[block.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = block.status(i) == SampleStatus.OK
                    ? conversion.apply(block.values()[i]) - part.zeroOffset()
                    : Double.NaN;
        }
        return new JobRecord.RoleTrace(part.role(), part.unit(), block.timesNanos(), values);
    }

    private List<JobRecord.Instrument> instruments(LiveSession replayed) {
        List<JobRecord.Instrument> instruments = new ArrayList<>();
        for (ProbeView view : replayed.probeViews()) {
            ProbeSetup setup = view.setup();
            List<Role> roles = setup.roles().values().stream().sorted().toList();
            List<String> accuracy = setup.profile().channels().stream()
                    .filter(c -> setup.roles().containsKey(c.name()))
                    .map(RecordSource::words)
                    .toList();
            instruments.add(new JobRecord.Instrument(
                    setup.name(),
                    setup.profile().name(),
                    setup.profile().id(),
                    setup.profile().digest(),
                    roles,
                    accuracy,
                    view.samples(),
                    view.rejectedFrames(),
                    view.losses(),
                    view.batteryPercent(),
                    view.serialNumber().orElse("")));
        }
        return instruments;
    }

    private static String words(Channel channel) {
        Accuracy accuracy = channel.accuracy();
        Unit unit = channel.unit();
        if (accuracy.equals(Accuracy.UNKNOWN)) {
            return channel.label() + ": accuracy not stated";
        }
        List<String> parts = new ArrayList<>();
        if (accuracy.ofReading() > 0) {
            parts.add(String.format(Locale.ROOT, "%s %% of reading", plain(accuracy.ofReading() * 100)));
        }
        if (accuracy.ofRange() > 0) {
            parts.add(String.format(
                    Locale.ROOT,
                    "%s %% of %s %s",
                    plain(accuracy.ofRange() * 100),
                    plain(accuracy.range()),
                    unit.symbol()));
        }
        if (accuracy.constant() > 0) {
            String scale = unit.dimension() == Dimension.TEMPERATURE ? "" : " ";
            parts.add(plain(accuracy.constant()) + scale + unit.symbol());
        }
        return channel.label() + ": \u00b1(" + String.join(" + ", parts) + ")";
    }

    private static String plain(double value) {
        return new BigDecimal(value)
                .round(new MathContext(4))
                .stripTrailingZeros()
                .toPlainString();
    }
}
