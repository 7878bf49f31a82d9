package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.cli.StoredDesk;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.record.ImportedSamples;
import settlemark.record.MalformedSamplesException;
import settlemark.record.SamplesImport;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeSetup;
import settlemark.session.RawBytes;
import settlemark.session.SampleBlock;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.session.WriteBatch;
import settlemark.store.SqliteStore;

/** {@code import}: looks at the whole file first, then stores it as a session that is marked as imported. */
final class ImportRun {
    /** What stands for a device in the address of its probes. */
    static final String SCHEME = "imported";

    private static final int BATCH = 200_000;
    private static final int LARGEST_BATCH = 2_000_000;

    private final StoredDesk.Import request;
    private final String version;
    private final List<Column> columns = new ArrayList<>();
    private int gathered;
    private long untilNanos;

    ImportRun(StoredDesk.Import request, String version) {
        this.request = request;
        this.version = version;
    }

    int run(PrintWriter out, PrintWriter err) throws StoreException, IOException {
        SamplesImport file = new SamplesImport(request.file());
        try {
            ImportedSamples found = file.look();
            List<ProbeSetup> probes = probes(found);
            try (SqliteStore store = Workspaces.person(request.workspace())) {
                SessionHeader header = header(store, found, probes);
                long session = store.begin(header, RawBytes.DROPPED);
                store(file, store, session, Math.max(0, found.endNanos()), err);
                err.println(found.samples() + " samples" + (found.simulated() ? " (SIMULATED)" : "") + " of session "
                        + found.key() + " are imported; " + RawBytes.COST);
                out.println("session " + session + " " + header.key());
                return Program.DONE;
            }
        } catch (MalformedSamplesException e) {
            err.println("settlemark: " + e.getMessage() + "; nothing was imported");
            return Program.DAMAGED;
        } catch (IllegalStateException e) {
            err.println(
                    "settlemark: " + request.file() + ": its channels cannot be those of a probe: " + e.getMessage());
            return Program.DAMAGED;
        }
    }

    /** What was stored before a failure stays, and must not pass for the whole. */
    private void store(SamplesImport file, SessionStore store, long session, long endNanos, PrintWriter err)
            throws StoreException, IOException, MalformedSamplesException {
        try {
            file.read((channel, time, value, status) -> take(store, session, channel, time, value, status));
            flush(store, session);
            store.end(session, endNanos);
        } catch (StoreException e) {
            err.println("session " + session + " may hold only the beginning of " + request.file()
                    + " and is not marked as ended; import the file again when the cause is mended");
            throw e;
        }
    }

    /** In the order of the file, each with its own channels; also fills {@link #columns}. */
    private List<ProbeSetup> probes(ImportedSamples found) {
        Map<String, List<ImportedSamples.Column>> byProbe = new LinkedHashMap<>();
        for (ImportedSamples.Column column : found.channels()) {
            List<ImportedSamples.Column> own = byProbe.computeIfAbsent(column.probe(), p -> new ArrayList<>());
            columns.add(new Column(List.copyOf(byProbe.keySet()).indexOf(column.probe()), own.size()));
            own.add(column);
        }
        List<ProbeSetup> probes = new ArrayList<>();
        for (Map.Entry<String, List<ImportedSamples.Column>> probe : byProbe.entrySet()) {
            Map<String, Role> roles = new LinkedHashMap<>();
            probe.getValue().forEach(c -> c.role().ifPresent(r -> roles.put(c.channel(), r)));
            probes.add(new ProbeSetup(
                    probe.getKey(),
                    new ProbeAddress(SCHEME, fileName()),
                    ImportedProfile.of(probes.size() + 1, found.simulated(), probe.getValue()),
                    roles));
        }
        return probes;
    }

    private String fileName() {
        Path name = request.file().getFileName();
        return name == null ? "" : name.toString();
    }

    private SessionHeader header(SessionStore store, ImportedSamples found, List<ProbeSetup> probes)
            throws StoreException {
        String key = found.key() + "-imported";
        for (int n = 2; store.find(key).isPresent(); n++) {
            key = found.key() + "-imported-" + n;
        }
        return new SessionHeader(
                key,
                request.title().orElse("imported from " + fileName()),
                found.startedAt(),
                found.zone(),
                Unit.INCH_OF_WATER,
                Unit.FAHRENHEIT,
                probes,
                Optional.empty(),
                Optional.empty(),
                version);
    }

    /** An export goes from stretch to stretch, and in each from channel to channel: a batch ends with a stretch. */
    private void take(SessionStore store, long session, int channel, long time, double value, SampleStatus status)
            throws StoreException {
        boolean stretchEnds = channel == 0 && gathered > columns.get(0).size();
        if (gathered >= LARGEST_BATCH || gathered >= BATCH && stretchEnds) {
            flush(store, session);
        }
        columns.get(channel).add(time, value, status);
        untilNanos = Math.max(untilNanos, time);
        gathered++;
    }

    private void flush(SessionStore store, long session) throws StoreException {
        List<SampleBlock> samples = new ArrayList<>();
        for (Column column : columns) {
            if (column.size() > 0) {
                samples.add(column.drain());
            }
        }
        if (!samples.isEmpty()) {
            store.append(session, new WriteBatch(0, List.of(), samples, List.of(), List.of(), untilNanos));
        }
        gathered = 0;
    }

    /** One channel's samples until they are stored. */
    private static final class Column {
        private final int probe;
        private final int channel;
        private long[] times = new long[1024];
        private double[] values = new double[1024];
        private byte[] statuses = new byte[1024];
        private int size;

        Column(int probe, int channel) {
            this.probe = probe;
            this.channel = channel;
        }

        int size() {
            return size;
        }

        void add(long time, double value, SampleStatus status) {
            if (size == times.length) {
                times = Arrays.copyOf(times, 2 * size);
                values = Arrays.copyOf(values, 2 * size);
                statuses = Arrays.copyOf(statuses, 2 * size);
            }
            times[size] = time;
            values[size] = value;
            statuses[size] = (byte) status.ordinal();
            size++;
        }

        SampleBlock drain() {
            SampleBlock block = new SampleBlock(
                    probe,
                    channel,
                    Arrays.copyOf(times, size),
                    Arrays.copyOf(values, size),
                    Arrays.copyOf(statuses, size));
            size = 0;
            return block;
        }
    }
}
