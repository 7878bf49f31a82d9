package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.cli.StoredDesk;
import settlemark.record.ExportSource;
import settlemark.record.SessionExport;
import settlemark.session.Rereading;
import settlemark.session.SampleBlock;
import settlemark.session.SessionHeader;
import settlemark.session.SessionStore;
import settlemark.session.Span;
import settlemark.session.StoreException;
import settlemark.store.ParquetFile;

/** {@code export}: a session's samples into files. */
final class ExportRun {
    private final SessionStore store;
    private final SessionStore.Summary session;
    private final StoredDesk.Export request;

    ExportRun(SessionStore store, SessionStore.Summary session, StoredDesk.Export request) {
        this.store = store;
        this.session = session;
        this.request = request;
    }

    int run(PrintWriter out, PrintWriter err) throws StoreException, IOException {
        SessionHeader header = store.header(session.number());
        ExportSource source = new OfTheDay(header.probes().size());
        if (request.rereading().isPresent()) {
            int number = request.rereading().getAsInt();
            List<Rereading> all = store.rereadings().of(session.number());
            Optional<Rereading> found =
                    all.stream().filter(r -> r.number() == number).findFirst();
            if (found.isEmpty()) {
                err.println("settlemark: session " + session.number() + " has no rereading " + number + "; it has "
                        + all.stream().map(Rereading::number).toList());
                return Program.USAGE;
            }
            header = header.reread(found.get());
            source = new Again(found.get());
        }
        SessionExport export = new SessionExport(session.number(), header, source, store.papers());
        if (request.csv().isPresent()) {
            csv(export, request.csv().get(), out, err);
        }
        if (request.parquet().isPresent()) {
            out.println(export.samples(request.parquet().get(), ParquetFile::write));
        }
        return Program.DONE;
    }

    private void csv(SessionExport export, Path to, PrintWriter out, PrintWriter err)
            throws StoreException, IOException {
        if (Files.isDirectory(to)) {
            export.all(to).forEach(out::println);
            return;
        }
        out.println(export.samples(to));
        int papers = store.papers().notes(session.number()).size()
                + store.papers().attachments(session.number()).size();
        if (papers > 0) {
            err.println("the session's notes and attachments, " + papers
                    + " in all, are not in this file; name a folder with --csv to have them too");
        }
    }

    private final class OfTheDay implements ExportSource {
        private final int probes;

        OfTheDay(int probes) {
            this.probes = probes;
        }

        @Override
        public long durationNanos() {
            return session.durationNanos();
        }

        @Override
        public long samples() throws StoreException {
            long all = 0;
            for (int probe = 0; probe < probes; probe++) {
                all += store.sampleCount(session.number(), probe);
            }
            return all;
        }

        @Override
        public SampleBlock samples(int probe, int channel, Span span) throws StoreException {
            return store.samples(session.number(), probe, channel, span.fromNanos(), span.toNanos());
        }
    }

    private final class Again implements ExportSource {
        private final Rereading rereading;

        Again(Rereading rereading) {
            this.rereading = rereading;
        }

        @Override
        public long durationNanos() {
            return session.durationNanos();
        }

        @Override
        public long samples() throws StoreException {
            long all = 0;
            for (int probe = 0; probe < rereading.probes().size(); probe++) {
                all += store.rereadings().sampleCount(rereading, probe);
            }
            return all;
        }

        @Override
        public SampleBlock samples(int probe, int channel, Span span) throws StoreException {
            return store.rereadings().samples(rereading, probe, channel, span.fromNanos(), span.toNanos());
        }
    }
}
