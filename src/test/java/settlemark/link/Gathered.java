package settlemark.link;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import settlemark.decode.DecodeSink;
import settlemark.decode.ProbeDecoder;
import settlemark.decode.Rejected;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.session.LinkChange;
import settlemark.session.LinkListener;

/** Decodes what a link hears, and keeps it by channel. */
final class Gathered implements LinkListener, DecodeSink {
    private final Profile profile;
    private final ProbeDecoder decoder;
    private final Map<String, List<String>> values = new TreeMap<>();
    private final List<String> rejected = new ArrayList<>();
    private final List<String> said = new ArrayList<>();
    private final List<LinkChange> changes = new ArrayList<>();
    private final List<Long> nanos = new ArrayList<>();

    Gathered(Profile profile) {
        this.profile = profile;
        this.decoder = new ProbeDecoder(profile);
    }

    @Override
    public synchronized void arrived(Chunk chunk) {
        nanos.add(chunk.timeNanos());
        decoder.accept(chunk, this);
    }

    @Override
    public synchronized void changed(long timeNanos, LinkChange change, String words) {
        if (change == LinkChange.LOST) {
            decoder.reset();
        }
        changes.add(change);
        said.add(change + ": " + words);
    }

    @Override
    public void sample(int channel, long timeNanos, double value, SampleStatus status) {
        values.computeIfAbsent(profile.channels().get(channel).name(), n -> new ArrayList<>())
                .add(status == SampleStatus.OK ? Double.toString(value) : status.toString());
    }

    @Override
    public void fact(int fact, long timeNanos, String words) {
        values.computeIfAbsent(profile.facts().get(fact).id(), n -> new ArrayList<>())
                .add(words);
    }

    @Override
    public void rejected(Rejected what) {
        rejected.add(what.reason());
    }

    synchronized List<String> of(String channel) {
        return List.copyOf(values.getOrDefault(channel, List.of()));
    }

    synchronized List<String> rejected() {
        return List.copyOf(rejected);
    }

    synchronized List<String> said() {
        return List.copyOf(said);
    }

    synchronized List<LinkChange> changes() {
        return List.copyOf(changes);
    }

    synchronized List<Long> nanos() {
        return List.copyOf(nanos);
    }
}
