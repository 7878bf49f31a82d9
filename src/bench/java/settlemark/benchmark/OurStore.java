package settlemark.benchmark;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import settlemark.measure.Unit;
import settlemark.profile.Profile;
import settlemark.session.Overview;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.SampleBlock;
import settlemark.session.SessionHeader;
import settlemark.session.Span;
import settlemark.session.WriteBatch;
import settlemark.store.SqliteStore;
import settlemark.store.WorkspacePlace;

/** The program's own store. */
final class OurStore implements Contender {
    private static final String FILE = "w.settlemark";
    private static final List<Integer> CHANNELS =
            IntStream.range(0, Scans.CHANNELS).boxed().toList();

    private final String name;
    private final Overview.Edges edges;
    private @Nullable SqliteStore store;
    private @Nullable ExecutorService packer;
    private long session;

    OurStore(String name, Overview.Edges edges) {
        this.name = name;
        this.edges = edges;
    }

    @Override
    public String name() {
        return name;
    }

    private SqliteStore store() {
        if (store == null) {
            throw new IllegalStateException("not open");
        }
        return store;
    }

    @Override
    public void create(Path folder) throws Exception {
        packer = Executors.newSingleThreadExecutor();
        store = SqliteStore.open(WorkspacePlace.chosen(folder.resolve(FILE)), OurStore::noProfile, packer);
        ProbeSetup probe =
                new ProbeSetup("bench", new ProbeAddress("serial", "bench"), Streams.EIGHT_CHANNELS, Map.of());
        session = store.begin(new SessionHeader(
                "bench",
                "Bench",
                Instant.EPOCH,
                ZoneOffset.UTC,
                Unit.PASCAL,
                Unit.CELSIUS,
                List.of(probe),
                Optional.empty(),
                Optional.empty(),
                "bench"));
    }

    private static Profile noProfile(String text) {
        throw new IllegalArgumentException("not needed");
    }

    @Override
    public void commit(Scans scans) throws Exception {
        List<SampleBlock> blocks = new ArrayList<>();
        for (int channel : CHANNELS) {
            double[] values = scans.values[channel].clone();
            long[] times = scans.times(channel).clone();
            blocks.add(new SampleBlock(0, channel, times, values, new byte[values.length]));
        }
        store().append(session, new WriteBatch(0, List.of(), blocks, List.of(), List.of(), 0));
    }

    @Override
    public void finish() throws Exception {
        store().end(session, 0);
        store().close();
        if (packer != null) {
            packer.shutdown();
        }
    }

    @Override
    public void open(Path folder) throws Exception {
        store = SqliteStore.openForReading(folder.resolve(FILE), OurStore::noProfile);
        session = 1;
    }

    @Override
    public double[][][] overview(long endNanos, int columns) throws Exception {
        List<Overview> overviews = store().overview(session, 0, CHANNELS, new Span(0, endNanos - 1), columns, edges);
        double[][][] extremes = new double[Scans.CHANNELS][columns][];
        for (int channel : CHANNELS) {
            Overview overview = overviews.get(channel);
            for (int i = 0; i < columns; i++) {
                extremes[channel][i] = new double[] {overview.mins()[i], overview.maxs()[i]};
            }
        }
        return extremes;
    }

    @Override
    public long window(long fromNanos, long toNanos) throws Exception {
        long samples = 0;
        for (int channel : CHANNELS) {
            samples += store().samples(session, 0, channel, fromNanos, toNanos).size();
        }
        return samples;
    }

    @Override
    public void close() throws Exception {
        store().close();
    }
}
