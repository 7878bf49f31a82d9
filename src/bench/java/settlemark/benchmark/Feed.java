package settlemark.benchmark;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import settlemark.decode.Encoder;
import settlemark.measure.Chunk;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.WriteBatch;

/**
 * What probes of eight channels give while a person works: a second after the other, each frame with its bytes as they
 * came, the samples that they gave, and their times some microseconds late.
 */
final class Feed {
    static final int CHANNELS = 8;
    private static final long SECOND_NANOS = 1_000_000_000L;

    private final Random random = new Random(20260718);
    private final List<Encoder> encoders = new ArrayList<>();
    private final int rate;
    private long scans;
    private long events;

    /** @param rate of each channel, in samples a second */
    Feed(int probes, int rate) {
        this.rate = rate;
        for (int probe = 0; probe < probes; probe++) {
            encoders.add(new Encoder(Streams.EIGHT_CHANNELS));
        }
    }

    SessionHeader header(String key) {
        List<ProbeSetup> probes = IntStream.range(0, encoders.size())
                .mapToObj(p -> new ProbeSetup(
                        "probe-" + p, new ProbeAddress("serial", "bench-" + p), Streams.EIGHT_CHANNELS, Map.of()))
                .toList();
        return new SessionHeader(
                key,
                "Bench",
                Instant.EPOCH,
                ZoneOffset.UTC,
                Unit.PASCAL,
                Unit.CELSIUS,
                probes,
                Optional.empty(),
                Optional.empty(),
                "bench");
    }

    int samplesPerSecond() {
        return encoders.size() * CHANNELS * rate;
    }

    /** The next second. */
    WriteBatch next() {
        List<SessionEvent> came = new ArrayList<>();
        List<SampleBlock> samples = new ArrayList<>();
        for (int probe = 0; probe < encoders.size(); probe++) {
            second(probe, came, samples);
        }
        long first = events;
        events += came.size();
        scans += rate;
        return new WriteBatch(first, came, samples, List.of(), List.of(), scans * SECOND_NANOS / rate);
    }

    private void second(int probe, List<SessionEvent> came, List<SampleBlock> samples) {
        long[] times = new long[rate];
        double[][] values = new double[CHANNELS][rate];
        SampleStatus[] plain = new SampleStatus[CHANNELS];
        Arrays.fill(plain, SampleStatus.OK);
        double[] scan = new double[CHANNELS];
        for (int i = 0; i < rate; i++) {
            times[i] = (scans + i) * (SECOND_NANOS / rate) + (long) Math.abs(random.nextGaussian() * 5000);
            for (int channel = 0; channel < CHANNELS; channel++) {
                double wander = 35 + channel + 5 * Math.sin((scans + i) * 0.0007 + channel);
                scan[channel] = Math.rint(wander * 100 + random.nextGaussian() * 1.5) / 100;
                values[channel][i] = scan[channel];
            }
            byte[] bytes = encoders.get(probe).encode(scan, plain);
            came.add(new SessionEvent.Bytes(probe, new Chunk(times[i], bytes)));
        }
        for (int channel = 0; channel < CHANNELS; channel++) {
            samples.add(new SampleBlock(probe, channel, times, values[channel], new byte[rate]));
        }
    }
}
