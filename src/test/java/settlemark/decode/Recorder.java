package settlemark.decode;

import java.util.ArrayList;
import java.util.List;
import settlemark.measure.Chunk;
import settlemark.measure.Sample;
import settlemark.measure.SampleStatus;
import settlemark.profile.Profile;
import settlemark.profile.ProfileReader;

/** Keeps all that a decoder finds, in order. */
final class Recorder implements DecodeSink {
    final List<Sample> samples = new ArrayList<>();
    final List<Rejected> rejections = new ArrayList<>();
    /** Facts as "index: words". */
    final List<String> facts = new ArrayList<>();
    /** Notes as "message: note". */
    final List<String> notes = new ArrayList<>();
    /** Samples and rejections as they came. */
    final List<Record> events = new ArrayList<>();

    @Override
    public void sample(int channel, long timeNanos, double value, SampleStatus status) {
        Sample sample = new Sample(channel, timeNanos, value, status);
        samples.add(sample);
        events.add(sample);
    }

    @Override
    public void rejected(Rejected rejected) {
        rejections.add(rejected);
        events.add(rejected);
    }

    @Override
    public void fact(int fact, long timeNanos, String words) {
        facts.add(fact + ": " + words);
    }

    @Override
    public void note(int message, long timeNanos, MeasurementNote note) {
        notes.add(message + ": " + note);
    }

    List<Double> values(int channel) {
        return samples.stream()
                .filter(sample -> sample.channel() == channel)
                .map(Sample::value)
                .toList();
    }

    List<String> reasons() {
        return rejections.stream().map(Rejected::reason).toList();
    }

    static Recorder of(Profile profile, Chunk... chunks) {
        Recorder recorder = new Recorder();
        ProbeDecoder decoder = new ProbeDecoder(profile);
        for (Chunk chunk : chunks) {
            decoder.accept(chunk, recorder);
        }
        return recorder;
    }

    /** A profile that must be good. */
    static Profile profile(String yaml) {
        return ProfileReader.read("test.yaml", yaml.getBytes(java.nio.charset.StandardCharsets.UTF_8))
                .orThrow();
    }
}
