package settlemark.session;

import java.util.ArrayList;
import java.util.List;
import settlemark.measure.Channel;
import settlemark.measure.SampleStatus;

/**
 * All channels of a log, up to hundreds, as a screen of many rows needs them; fed by the {@link LiveSession} that it
 * watches. For one thread; only its views may leave it.
 */
public final class Bench {
    private final List<List<BenchRun>> probes = new ArrayList<>();

    public Bench(SessionHeader header) {
        for (int p = 0; p < header.probes().size(); p++) {
            ProbeSetup setup = header.probes().get(p);
            List<BenchRun> runs = new ArrayList<>();
            for (Channel channel : setup.profile().channels()) {
                runs.add(new BenchRun(p, channel, setup.roles().get(channel.name()), header.settings()));
            }
            probes.add(runs);
        }
    }

    /** A sample of a channel, by its index in the profile and in its unit. */
    public void sample(int probe, int channel, long timeNanos, double value, SampleStatus status) {
        probes.get(probe).get(channel).sample(timeNanos, value, status);
    }

    void interrupted(int probe, long timeNanos, String why) {
        probes.get(probe).forEach(c -> c.interrupted(timeNanos, why));
    }

    /** @param snapshot of the session at the same instant */
    public BenchView view(Snapshot snapshot) {
        return new BenchView(
                snapshot,
                probes.stream()
                        .flatMap(List::stream)
                        .map(c -> c.row(snapshot.timeNanos()))
                        .toList());
    }
}
