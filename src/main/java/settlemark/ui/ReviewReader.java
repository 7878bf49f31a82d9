package settlemark.ui;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.DoublePredicate;
import settlemark.measure.Channel;
import settlemark.measure.Conversion;
import settlemark.measure.Role;
import settlemark.measure.SampleStatus;
import settlemark.measure.Unit;
import settlemark.session.LiveSession;
import settlemark.session.Overview;
import settlemark.session.ProbeKeys;
import settlemark.session.ProbeSetup;
import settlemark.session.RawBytes;
import settlemark.session.SampleBlock;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.SettleFit;
import settlemark.session.Snapshot;
import settlemark.session.Span;
import settlemark.session.StoreException;

/** Reads stored sessions for the review. Runs on the threads of the program around the window. */
final class ReviewReader {
    /** A window with fewer samples than this many a column is read sample by sample. */
    private static final int FEW = 4;

    private static final int GAP_COLUMNS = 2000;

    /** Columns of a session's overview that its beginning and end may lack. */
    private static final double EDGE_PART = 0.001;

    /** Of a probe whose channels have no role. */
    private static final long NO_ROLE_GAP_NANOS = 10_000_000_000L;

    private ReviewReader() {}

    /** A role and the place of its channel. */
    record Source(Role role, int probe, int channel, Conversion conversion) {}

    /** What is known without running the session through again. */
    static StoredSession quick(SessionStore store, Path workspace, SessionStore.Summary summary) throws StoreException {
        SessionHeader header = store.header(summary.number());
        StoredSession bare = new StoredSession(
                workspace,
                summary,
                header,
                store.readings(summary.number()),
                store.papers().notes(summary.number()),
                List.of(),
                Optional.empty());
        return with(bare, silences(store, bare), Optional.empty());
    }

    private static StoredSession with(StoredSession session, List<Span> gaps, Optional<Snapshot> replayed) {
        return new StoredSession(
                session.workspace(),
                session.summary(),
                session.header(),
                session.readings(),
                session.notes(),
                gaps,
                replayed);
    }

    /**
     * Runs the session through again, for its steps and verdicts. As it is where its bytes were not kept.
     *
     * @param goOn hears how far it has come, 0 to 1, and says whether to go on
     * @throws CancellationException where it was told not to go on
     */
    static StoredSession replayed(SessionStore store, StoredSession session, DoublePredicate goOn)
            throws StoreException {
        long number = session.summary().number();
        if (store.rawBytes(number) != RawBytes.KEPT) {
            return session;
        }
        LiveSession run = new LiveSession(session.header(), ProbeKeys.NONE);
        Silences silences = new Silences(session.header());
        double whole = session.whole().toNanos();
        store.events(number, event -> {
            if (!goOn.test(event.timeNanos() / whole)) {
                throw new CancellationException();
            }
            silences.take(event);
            run.take(event);
            run.drain();
        });
        return with(
                session,
                silences.gaps,
                Optional.of(run.snapshot(
                        session.header().startedAt().plusNanos(session.whole().toNanos()))));
    }

    /** Stretches in which a probe sent nothing for longer than its channels may be silent. */
    private static final class Silences {
        private final Map<Integer, Long> last = new HashMap<>();
        private final List<Span> gaps = new ArrayList<>();
        private final SessionHeader header;

        Silences(SessionHeader header) {
            this.header = header;
        }

        void take(SessionEvent event) {
            if (event instanceof SessionEvent.Bytes bytes) {
                long at = bytes.timeNanos();
                Long before = last.put(bytes.probe(), at);
                if (before != null && at - before > gapNanos(header.probes().get(bytes.probe()))) {
                    gaps.add(new Span(before, at));
                }
            }
        }
    }

    private static long gapNanos(ProbeSetup probe) {
        return probe.roles().values().stream()
                .mapToLong(SettleFit::longestStepNanos)
                .min()
                .orElse(NO_ROLE_GAP_NANOS);
    }

    /** Empty columns of the overview. */
    private static List<Span> silences(SessionStore store, StoredSession session) throws StoreException {
        List<Span> gaps = new ArrayList<>();
        Span whole = session.whole();
        double column = (double) whole.toNanos() / GAP_COLUMNS;
        for (int probe = 0; probe < session.header().probes().size(); probe++) {
            int first = probe;
            Optional<Source> any = sources(session.header()).stream()
                    .filter(s -> s.probe() == first)
                    .findFirst();
            if (any.isPresent() && column > SettleFit.longestStepNanos(any.get().role())) {
                long[] counts = store.overview(
                                session.summary().number(),
                                probe,
                                List.of(any.get().channel()),
                                whole,
                                GAP_COLUMNS,
                                Overview.Edges.ALIGNED)
                        .get(0)
                        .counts();
                empty(counts, column, gaps);
            }
        }
        return gaps;
    }

    private static void empty(long[] counts, double column, List<Span> gaps) {
        int edge = (int) Math.ceil(GAP_COLUMNS * EDGE_PART);
        int from = -1;
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] == 0) {
                from = from < 0 ? i : from;
            } else {
                // One empty column may be where a group of samples happens to begin.
                if (from >= edge && i - from > 1) {
                    gaps.add(new Span(Math.round(from * column), Math.round(i * column)));
                }
                from = -1;
            }
        }
    }

    /** Channels that have a role, in the order of the roles. */
    static List<Source> sources(SessionHeader header) {
        List<Source> sources = new ArrayList<>();
        for (int p = 0; p < header.probes().size(); p++) {
            ProbeSetup probe = header.probes().get(p);
            List<Channel> channels = probe.profile().channels();
            for (int c = 0; c < channels.size(); c++) {
                Role role = probe.roles().get(channels.get(c).name());
                if (role != null) {
                    Unit unit = header.unit(role);
                    sources.add(new Source(role, p, c, channels.get(c).unit().to(unit)));
                }
            }
        }
        sources.sort(Comparator.comparing(Source::role));
        return sources;
    }

    /** A stretch of time as so many columns of a picture need it; never more samples than that. */
    static WindowTraces window(SessionStore store, StoredSession session, Span span, int columns)
            throws StoreException {
        List<WindowTraces.Line> lines = new ArrayList<>();
        for (Source source : sources(session.header())) {
            lines.add(line(store, session, source, span, Math.max(1, columns)));
        }
        return new WindowTraces(span, lines);
    }

    private static WindowTraces.Line line(
            SessionStore store, StoredSession session, Source source, Span span, int columns) throws StoreException {
        long number = session.summary().number();
        double zero = session.zeroOffset(source.role());
        Unit unit = session.header().unit(source.role());
        long gap = SettleFit.longestStepNanos(source.role());
        Overview seen = store.overview(
                        number, source.probe(), List.of(source.channel()), span, columns, Overview.Edges.ALIGNED)
                .get(0);
        long count = Arrays.stream(seen.counts()).sum();
        if (count <= (long) FEW * columns) {
            long beside = gap + (span.toNanos() - span.fromNanos()) / columns;
            SampleBlock block = store.samples(
                    number, source.probe(), source.channel(), span.fromNanos() - beside, span.toNanos() + beside);
            double[] values = new double[block.size()];
            for (int i = 0; i < values.length; i++) {
                boolean measured = block.status(i) == SampleStatus.OK;
                values[i] = measured ? source.conversion().apply(block.values()[i]) - zero : Double.NaN;
            }
            return new WindowTraces.Line(source.role(), unit, block.timesNanos(), values, gap, true);
        }
        // What stands at the very beginning is the sample before it.
        SampleBlock before =
                store.samples(number, source.probe(), source.channel(), span.fromNanos() - gap, span.fromNanos());
        WindowTraces.Line line = WindowTraces.Line.of(source, unit, seen, zero, gap);
        int last = before.size() - 1;
        return last >= 0 && before.status(last) == SampleStatus.OK
                ? line.behind(before.timesNanos()[last], source.conversion().apply(before.values()[last]) - zero)
                : line;
    }
}
