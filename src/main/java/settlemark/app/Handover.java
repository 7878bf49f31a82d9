package settlemark.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import settlemark.cli.Program;
import settlemark.record.StageTable;
import settlemark.seal.SealFiles;
import settlemark.seal.SealedPart;
import settlemark.seal.SessionParts;
import settlemark.session.StoreException;
import settlemark.store.SqliteStore;

/** Hands a made record over. */
final class Handover {
    private Handover() {}

    /** Names the record's files and seals them together with the session. */
    static int hand(SqliteStore store, long session, Optional<RecordMaking.Made> made, PrintWriter out, PrintWriter err)
            throws StoreException, IOException {
        return hand(store, session, made, Phrases.of(Optional.empty()), out, err);
    }

    static int hand(
            SqliteStore store,
            long session,
            Optional<RecordMaking.Made> made,
            SealFiles.PassPhrase phrase,
            PrintWriter out,
            PrintWriter err)
            throws StoreException, IOException {
        return hand(store, session, made, () -> SessionParts.of(store, session), phrase, out, err);
    }

    /**
     * Names the record's files and seals them together with the session.
     *
     * @param parts those of the session
     * @param phrase asked where the key for seals is protected
     */
    static int hand(
            SqliteStore store,
            long session,
            Optional<RecordMaking.Made> made,
            Meanwhile.Work<List<SealedPart>> parts,
            SealFiles.PassPhrase phrase,
            PrintWriter out,
            PrintWriter err)
            throws StoreException, IOException {
        if (made.isEmpty()) {
            throw noJob(session);
        }
        out.print(StageTable.text(made.get().record()));
        made.get().files().forEach(out::println);
        try {
            out.println(Sealing.seal(store, session, parts.done(), made.get().files(), Instant.now(), phrase));
        } catch (IOException e) {
            // A workspace on a read-only disk has a record all the same.
            err.println("settlemark: the record is not sealed: " + e.getMessage());
        }
        out.flush();
        return code(made.get());
    }

    static IOException noJob(long session) {
        return new IOException("session " + session + " is a log without a job: there is no record to make");
    }

    static int code(RecordMaking.Made made) {
        return made.record().job().leftOutside() ? Program.CHECK_FAILED : Program.DONE;
    }
}
