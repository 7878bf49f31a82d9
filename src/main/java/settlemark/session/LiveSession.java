package settlemark.session;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import settlemark.decode.DecodeSink;
import settlemark.decode.MeasurementNote;
import settlemark.decode.Rejected;
import settlemark.job.Act;
import settlemark.job.ChannelNow;
import settlemark.job.InstrumentUse;
import settlemark.job.JobRun;
import settlemark.job.JobState;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.settle.StageReading;

/**
 * The one pipeline, live and in replay: events in, samples, readings and snapshots out. Everything follows from the
 * header and the events in their order, so the same events give the same readings, however the bytes were cut and
 * however fast they come.
 *
 * <p>For one thread; only the snapshots may leave it.
 */
public final class LiveSession {
    private static final int EVENTS_SHOWN = 100;

    private final SessionHeader header;
    private final ProbeKeys keys;
    private final List<ProbeRun> probes = new ArrayList<>();
    private final List<ChannelRun> channels = new ArrayList<>();
    private final Optional<JobRun> job;
    /** Each channel as it last stood. */
    private final Map<Role, ChannelNow> now = new EnumMap<>(Role.class);

    private final Deque<JobRecord.Happened> happened = new ArrayDeque<>();
    private final List<JobRecord.Happened> allHappened = new ArrayList<>();
    private final List<SessionEvent> unwritten = new ArrayList<>();
    private final List<StageReading> unwrittenReadings = new ArrayList<>();
    private long sequence;
    private long timeNanos;
    private long revision;
    private Snapshot.Stored stored = Snapshot.Stored.NOTHING;
    private @Nullable Bench bench;

    /** Of probes whose frames are plain. */
    public LiveSession(SessionHeader header) {
        this(header, ProbeKeys.NONE);
    }

    public LiveSession(SessionHeader header, ProbeKeys keys) {
        this.header = header;
        this.keys = keys;
        this.job = header.plan().map(plan -> new JobRun(plan, header.plate().orElseThrow()));
        for (int i = 0; i < header.probes().size(); i++) {
            addProbe(i, header.probes().get(i));
        }
        channels.sort(Comparator.comparing(c -> c.role));
    }

    private void addProbe(int index, ProbeSetup setup) {
        int count = setup.profile().channels().size();
        ChannelRun[] ofProbe = new ChannelRun[count];
        setup.roles().forEach((name, role) -> {
            int at = setup.profile()
                    .channelIndex(name)
                    .orElseThrow(() -> new IllegalArgumentException("profile "
                            + setup.profile().id() + " has no channel \"" + name + "\" to be the " + role.word()));
            ofProbe[at] = new ChannelRun(
                    role, index, setup.profile().channels().get(at), header.unit(role), header.settings());
            channels.add(ofProbe[at]);
        });
        probes.add(new ProbeRun(setup, keys.of(setup), index, new DecodeSink() {
            @Override
            public void sample(int channel, long at, double value, SampleStatus status) {
                if (bench != null) {
                    bench.sample(index, channel, at, value, status);
                }
                ChannelRun run = ofProbe[channel];
                if (run != null) {
                    run.sample(at, value, status);
                    observe(at);
                }
            }

            @Override
            public void note(int message, long at, MeasurementNote said) {
                for (int i = 0; i < ofProbe.length; i++) {
                    if (ofProbe[i] != null && setup.profile().sources().get(i).message() == message) {
                        ofProbe[i].noted(said);
                    }
                }
                LiveSession.this.note(at, setup.name() + ": " + words(said));
            }

            @Override
            public void rejected(Rejected rejected) {
                // Counted by the probe; the stream goes on with the next frame.
            }
        }));
    }

    private static String words(MeasurementNote note) {
        String accuracy = Double.isNaN(note.uncertaintyPercent())
                ? "the device states no accuracy"
                : String.format(Locale.ROOT, "the device states \u00b1%.1f %% of reading", note.uncertaintyPercent());
        return Double.isNaN(note.updateIntervalSeconds())
                ? accuracy
                : accuracy + String.format(Locale.ROOT, ", a value each %.0f s", note.updateIntervalSeconds());
    }

    private void observe(long at) {
        if (job.isEmpty()) {
            return;
        }
        for (ChannelRun channel : channels) {
            if (channel.heard()) {
                now.put(channel.role, channel.now());
            }
        }
        job.get().observe(at, now);
    }

    /** From now on every sample is shown to a bench too, of channels without a role as well. */
    public void watchedBy(Bench watching) {
        bench = watching;
    }

    /** Takes the next event in. */
    public void take(SessionEvent event) {
        unwritten.add(event);
        timeNanos = Math.max(timeNanos, event.timeNanos());
        revision++;
        if (event instanceof SessionEvent.Bytes bytes) {
            probes.get(bytes.probe()).bytes(bytes.chunk());
        } else if (event instanceof SessionEvent.Link link) {
            linkChanged(link);
        } else if (event instanceof SessionEvent.Done done) {
            if (done.act() instanceof Act.Settings said) {
                channels.forEach(c -> c.judgeBy(done.timeNanos(), said.to()));
            }
            job.ifPresent(j -> j.act(done.timeNanos(), done.act()));
        } else if (event instanceof SessionEvent.Clock clock) {
            clockChanged(clock);
        }
        if (job.isPresent()) {
            unwrittenReadings.addAll(job.get().drainTaken());
        }
    }

    private void linkChanged(SessionEvent.Link link) {
        probes.get(link.probe()).link(link.change(), link.words());
        if (link.change() == LinkChange.LOST || link.change() == LinkChange.OVERRUN) {
            channels.stream()
                    .filter(c -> c.probe == link.probe())
                    .forEach(c -> c.interrupted(link.timeNanos(), link.words()));
            if (bench != null) {
                bench.interrupted(link.probe(), link.timeNanos(), link.words());
            }
        }
        if (link.change() != LinkChange.UP) {
            note(link.timeNanos(), header.probes().get(link.probe()).name() + ": " + link.words());
        }
    }

    private void clockChanged(SessionEvent.Clock clock) {
        if (clock.slept()) {
            channels.forEach(c -> c.interrupted(clock.timeNanos(), clock.words()));
        }
        note(clock.timeNanos(), clock.words());
    }

    private void note(long at, String words) {
        JobRecord.Happened event = new JobRecord.Happened(at, words);
        allHappened.add(event);
        happened.addLast(event);
        if (happened.size() > EVENTS_SHOWN) {
            happened.removeFirst();
        }
    }

    /** Time goes on though nothing happens. */
    public void passTo(long nowNanos) {
        if (nowNanos > timeNanos) {
            timeNanos = nowNanos;
            revision++;
        }
    }

    /** What has come since the last call, to be written in one commit. */
    public WriteBatch drain() {
        List<SampleBlock> samples = new ArrayList<>();
        List<WriteBatch.ProbeRejected> rejected = new ArrayList<>();
        probes.forEach(p -> p.drain(samples, rejected));
        WriteBatch batch = new WriteBatch(sequence, unwritten, samples, rejected, unwrittenReadings, timeNanos);
        sequence += unwritten.size();
        unwritten.clear();
        unwrittenReadings.clear();
        return batch;
    }

    /** The writer says what is durable. */
    public void stored(Snapshot.Stored durable) {
        stored = durable;
        revision++;
    }

    /** @param wall what the wall clock says now, for labels */
    public Snapshot snapshot(Instant wall) {
        Optional<JobState> state = job.map(JobRun::state);
        Map<Role, Double> zeros = state.map(JobState::zeroOffsets).orElse(Map.of());
        return new Snapshot(
                revision,
                timeNanos,
                wall,
                header,
                probeViews(state),
                channels.stream()
                        .map(c -> c.view(
                                timeNanos, zeros.getOrDefault(c.role, 0.0), state.flatMap(s -> s.corrects(c.role))))
                        .toList(),
                state,
                stored,
                List.copyOf(happened));
    }

    public SessionHeader header() {
        return header;
    }

    public Optional<JobState> job() {
        return job.map(JobRun::state);
    }

    /** Everything that happened besides samples, from the start. */
    List<JobRecord.Happened> allHappened() {
        return List.copyOf(allHappened);
    }

    List<ChannelRun> channels() {
        return List.copyOf(channels);
    }

    List<ProbeView> probeViews() {
        return probeViews(job());
    }

    private List<ProbeView> probeViews(Optional<JobState> state) {
        List<InstrumentUse> instruments = state.map(JobState::instruments).orElse(List.of());
        LocalDate day = header.startedAt().atZone(header.zone()).toLocalDate();
        return probes.stream()
                .map(p -> p.view(timeNanos))
                .map(v -> v.orElse(OverdueMark.of(v.setup(), instruments, day)))
                .toList();
    }
}
