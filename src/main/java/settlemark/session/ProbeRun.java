package settlemark.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import settlemark.decode.DecodeSink;
import settlemark.decode.MeasurementNote;
import settlemark.decode.ProbeDecoder;
import settlemark.decode.Rejected;
import settlemark.measure.Channel;
import settlemark.measure.Chunk;
import settlemark.measure.Dimension;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.profile.FactSource;
import settlemark.profile.Secrets;

/** A probe while the session runs: its decoder, what waits to be written, and its health. */
final class ProbeRun implements DecodeSink {
    static final double LOW_BATTERY_PERCENT = 20;
    static final String BATTERY = "battery";

    private final ProbeSetup setup;
    private final int index;
    private final List<Channel> channels;
    private final ProbeDecoder decoder;
    private final List<SampleColumn> columns = new ArrayList<>();
    private final DecodeSink onward;
    private final SortedMap<Integer, ProbeView.Fact> facts = new TreeMap<>();
    private final List<WriteBatch.ProbeRejected> refused = new ArrayList<>();

    private LinkChange link = LinkChange.UP;
    private String words = "";
    private String lastRejected = "";
    private long losses;
    private long lastNanos = -1;
    private double batteryPercent = Double.NaN;

    /** @param onward gets each sample after it was put aside for writing */
    ProbeRun(ProbeSetup setup, Secrets secrets, int index, DecodeSink onward) {
        this.setup = setup;
        this.index = index;
        this.channels = setup.profile().channels();
        this.decoder = new ProbeDecoder(setup.profile(), secrets);
        this.onward = onward;
        channels.forEach(c -> columns.add(new SampleColumn()));
    }

    void bytes(Chunk chunk) {
        lastNanos = chunk.timeNanos();
        decoder.accept(chunk, this);
    }

    void link(LinkChange change, String said) {
        if (change == LinkChange.NOTED) {
            return;
        }
        link = change;
        words = said;
        if (change == LinkChange.LOST || change == LinkChange.OVERRUN) {
            losses++;
            decoder.reset();
        } else if (change == LinkChange.ENDED) {
            decoder.finish(this);
        }
    }

    @Override
    public void sample(int channel, long timeNanos, double value, SampleStatus status) {
        columns.get(channel).add(timeNanos, value, status);
        Channel what = channels.get(channel);
        if (what.dimension() == Dimension.FRACTION && what.name().equals(BATTERY) && status == SampleStatus.OK) {
            batteryPercent = what.unit().to(Unit.PERCENT).apply(value);
        }
        onward.sample(channel, timeNanos, value, status);
    }

    @Override
    public void rejected(Rejected rejected) {
        lastRejected = rejected.reason();
        refused.add(new WriteBatch.ProbeRejected(index, rejected));
        onward.rejected(rejected);
    }

    @Override
    public void note(int message, long timeNanos, MeasurementNote note) {
        onward.note(message, timeNanos, note);
    }

    @Override
    public void fact(int fact, long timeNanos, String said) {
        ProbeView.Fact known = facts.get(fact);
        if (known == null || !known.words().equals(said)) {
            FactSource source = setup.profile().facts().get(fact);
            facts.put(fact, new ProbeView.Fact(source.id(), source.label(), said, timeNanos));
        }
    }

    void drain(List<SampleBlock> samples, List<WriteBatch.ProbeRejected> rejected) {
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).size() > 0) {
                samples.add(columns.get(i).drain(index, i));
            }
        }
        rejected.addAll(refused);
        refused.clear();
    }

    ProbeView view(long nowNanos) {
        boolean stale = ChannelRun.stale(nowNanos, lastNanos, periodSeconds());
        return new ProbeView(
                setup,
                link,
                words,
                decoder.samples(),
                decoder.rejectedFrames(),
                lastRejected,
                losses,
                lastNanos,
                stale,
                batteryPercent,
                health(nowNanos, stale),
                List.copyOf(facts.values()));
    }

    private double periodSeconds() {
        return channels.stream().mapToDouble(Channel::periodSeconds).min().orElse(Double.NaN);
    }

    private Optional<ProbeView.Health> health(long nowNanos, boolean stale) {
        if (link == LinkChange.LOST || link == LinkChange.ENDED) {
            return Optional.of(new ProbeView.Health(ProbeView.HealthClass.FAILURE, setup.name() + ": " + words));
        }
        if (stale) {
            return Optional.of(new ProbeView.Health(
                    ProbeView.HealthClass.FAILURE,
                    String.format(Locale.ROOT, "%s: no data for %.0f s", setup.name(), (nowNanos - lastNanos) / 1e9)));
        }
        if (batteryPercent < LOW_BATTERY_PERCENT) {
            return Optional.of(new ProbeView.Health(
                    ProbeView.HealthClass.MAINTENANCE_REQUIRED,
                    String.format(Locale.ROOT, "%s battery %.0f %%", setup.name(), batteryPercent)));
        }
        return Optional.empty();
    }
}
