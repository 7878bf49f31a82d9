package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.cli.StoredDesk;
import settlemark.record.RecordCopies;
import settlemark.seal.SealedPart;
import settlemark.seal.SessionParts;
import settlemark.session.RecordForm;
import settlemark.session.Rereading;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;
import settlemark.store.ParquetFile;
import settlemark.store.SqliteStore;

/** Makes a stored job's record by command. */
final class RecordRun {
    private final StoredDesk.Record request;
    private final SqliteStore store;
    private final PrintWriter out;
    private final PrintWriter err;

    private RecordRun(StoredDesk.Record request, SqliteStore store, PrintWriter out, PrintWriter err) {
        this.request = request;
        this.store = store;
        this.out = out;
        this.err = err;
    }

    static int run(StoredDesk.Record request, PrintWriter out, PrintWriter err) throws StoreException, IOException {
        try (SqliteStore store = open(request)) {
            return new RecordRun(request, store, out, err).run();
        }
    }

    /** For writing, so that the seal is kept too; where that cannot be, the record is made all the same. */
    private static SqliteStore open(StoredDesk.Record request) throws StoreException {
        try {
            return Workspaces.existing(request.workspace());
        } catch (StoreException e) {
            if (request.remember() || e.kind() == StoreException.Cause.DAMAGED) {
                throw e;
            }
            return Workspaces.reading(request.workspace());
        }
    }

    private int run() throws StoreException, IOException {
        Optional<SessionStore.Summary> found = StoredRun.find(store, request.session(), err);
        if (found.isEmpty() || !StoredRun.knows(store.header(found.get().number()), request.keys(), err)) {
            return Program.USAGE;
        }
        RecordForm form = form();
        if (request.remember()) {
            RecordForms.keep(store.settings(), form);
        }
        long session = found.get().number();
        if (request.copies().any()) {
            return copies(session, form);
        }
        return request.rereading().isPresent()
                ? reread(session, request.rereading().getAsInt(), form)
                : sealed(session, form);
    }

    /** What the seal needs of the session is gathered while the record is made. */
    private int sealed(long session, RecordForm form) throws StoreException, IOException {
        if (store.header(session).plan().isEmpty()) {
            return hand(session, made(session, form));
        }
        try (Meanwhile<List<SealedPart>> parts =
                new Meanwhile<>("gathering what the seal holds", () -> SessionParts.of(store, session))) {
            Optional<RecordMaking.Made> made = made(session, form);
            return Handover.hand(store, session, made, parts::result, Phrases.of(request.phraseFile()), out, err);
        }
    }

    private Optional<RecordMaking.Made> made(long session, RecordForm form) throws StoreException, IOException {
        return RecordMaking.make(store, session, request.keys(), Sealing.fingerprint(store, session), form, folder());
    }

    private RecordForm form() throws StoreException {
        RecordForm usual = RecordForms.of(store.settings());
        return new RecordForm(
                request.paper().orElse(usual.paper()), request.units().orElse(usual.units()));
    }

    private Path folder() {
        return Workspaces.records(store, request.folder());
    }

    private int copies(long session, RecordForm form) throws StoreException, IOException {
        if (request.copies().parquet().isPresent()) {
            ParquetFile.requireDriver();
        }
        RecordMaking.Writing writing = (record, samples) -> written(new RecordCopies(record, samples, form));
        Optional<RecordMaking.Made> made;
        if (request.rereading().isPresent()) {
            Optional<Rereading> rereading =
                    rereading(session, request.rereading().getAsInt());
            if (rereading.isEmpty()) {
                return Program.USAGE;
            }
            made = RecordMaking.make(store, rereading.get(), request.keys(), writing);
        } else {
            made = RecordMaking.make(store, session, request.keys(), writing);
        }
        if (made.isEmpty()) {
            throw Handover.noJob(session);
        }
        made.get().files().forEach(out::println);
        out.flush();
        err.println("These are unsealed copies. The record with its seal: settlemark record " + session);
        return Handover.code(made.get());
    }

    private List<Path> written(RecordCopies copies) throws StoreException, IOException {
        List<Path> files = new ArrayList<>();
        if (request.copies().pdf().isPresent()) {
            files.add(copies.pdf(request.copies().pdf().get()));
        }
        if (request.copies().json().isPresent()) {
            files.add(copies.json(request.copies().json().get()));
        }
        if (request.copies().csv().isPresent()) {
            files.addAll(copies.csv(request.copies().csv().get()));
        }
        if (request.copies().parquet().isPresent()) {
            files.addAll(copies.tables(request.copies().parquet().get(), ".parquet", ParquetFile::table));
        }
        return files;
    }

    private Optional<Rereading> rereading(long session, int number) throws StoreException {
        List<Rereading> all = store.rereadings().of(session);
        Optional<Rereading> rereading =
                all.stream().filter(r -> r.number() == number).findFirst();
        if (rereading.isEmpty()) {
            err.println("settlemark: session " + session + " has no rereading " + number + "; "
                    + (all.isEmpty()
                            ? "it has none: make one with \"settlemark reread\""
                            : "it has " + all.stream().map(Rereading::number).toList()));
        }
        return rereading;
    }

    private int reread(long session, int number, RecordForm form) throws StoreException, IOException {
        Optional<Rereading> rereading = rereading(session, number);
        if (rereading.isEmpty()) {
            return Program.USAGE;
        }
        return hand(
                session,
                RecordMaking.make(
                        store, rereading.get(), request.keys(), Sealing.fingerprint(store, session), form, folder()));
    }

    private int hand(long session, Optional<RecordMaking.Made> made) throws StoreException, IOException {
        return Handover.hand(store, session, made, Phrases.of(request.phraseFile()), out, err);
    }
}
