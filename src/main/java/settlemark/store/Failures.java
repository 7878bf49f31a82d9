package settlemark.store;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.util.Optional;
import java.util.function.Supplier;
import org.sqlite.SQLiteErrorCode;
import settlemark.session.StoreException;
import tools.jackson.core.JacksonException;

/**
 * Turns what SQLite says, and what cannot be understood in the file, into what a person can act on.
 *
 * @param file the workspace, named in every message
 */
record Failures(Path file) {
    /** The low byte of a result code is its kind (sqlite.org/rescode.html). */
    private static final int PRIMARY_CODE = 0xff;

    /** @param what was tried and did not happen, such as {@code "cannot be opened"} */
    StoreException of(String what, SQLException e) {
        Optional<String> library = NativeLibrary.refusal(e, MountTable.ofThisMachine());
        if (library.isPresent()) {
            return new StoreException(StoreException.Cause.FAULT, library.get(), e);
        }
        return switch (code(e)) {
            case SQLITE_FULL ->
                fault(
                        "the disk is full, and it " + what + "; nothing stored is lost; free space where "
                                + file.getParent() + " lies, and try again",
                        e);
            case SQLITE_NOTADB ->
                damaged(what + ": it is not a workspace, or its first page is destroyed; name another file", e);
            case SQLITE_CORRUPT ->
                damaged(
                        what + ": it is damaged (" + e.getMessage() + "); keep the file and its -wal, and go on in"
                                + " another with --workspace",
                        e);
            case SQLITE_READONLY, SQLITE_PERM ->
                fault(what + ": the file or its folder is read-only; make both writable, or name another file", e);
            case SQLITE_CANTOPEN ->
                fault(what + ": the system does not let it be opened; check the rights to the file and its folder", e);
            case SQLITE_BUSY, SQLITE_LOCKED ->
                fault(what + ": another program holds it; end that program and try again", e);
            case SQLITE_IOERR ->
                fault(
                        what + ": the disk refused (" + e.getMessage() + "); nothing stored is lost; check the disk and"
                                + " its free space",
                        e);
            case SQLITE_CONSTRAINT, SQLITE_MISMATCH, SQLITE_MISUSE, SQLITE_RANGE ->
                throw new IllegalStateException("workspace " + file + " " + what, e);
            default -> fault(what + " (" + e.getMessage() + ")", e);
        };
    }

    /**
     * Reads something back out of its stored form.
     *
     * @param what it is, such as {@code "event 3 of session 1"}
     */
    <T> T decode(String what, Supplier<T> reading) throws StoreException {
        return decode(() -> what, reading);
    }

    /** The same for what is read often: it is put into words only where it is damaged. */
    <T> T decode(Supplier<String> what, Supplier<T> reading) throws StoreException {
        try {
            return reading.get();
        } catch (JacksonException | IllegalArgumentException | IllegalStateException | DateTimeException e) {
            throw notUnderstood(what.get(), e);
        }
    }

    /** What is read by the hundred thousand; no lambda, as one that captures is slow to make until it is compiled. */
    interface Stored<T> {
        /** @throws IllegalArgumentException or its like where it cannot be understood */
        T read();

        /** What it is, such as {@code "event 3 of session 1"}. */
        String what();
    }

    <T> T decode(Stored<T> stored) throws StoreException {
        try {
            return stored.read();
        } catch (JacksonException | IllegalArgumentException | IllegalStateException | DateTimeException e) {
            throw notUnderstood(stored.what(), e);
        }
    }

    private StoreException notUnderstood(String what, RuntimeException e) {
        return damaged("is damaged: " + what + " cannot be understood (" + e.getMessage() + ")", e);
    }

    StoreException fault(String words, Exception cause) {
        return new StoreException(StoreException.Cause.FAULT, "workspace " + file + ": " + words, cause);
    }

    StoreException fault(String words) {
        return new StoreException(StoreException.Cause.FAULT, "workspace " + file + ": " + words);
    }

    StoreException damaged(String words, Exception cause) {
        return new StoreException(StoreException.Cause.DAMAGED, "workspace " + file + " " + words, cause);
    }

    StoreException damaged(String words) {
        return new StoreException(StoreException.Cause.DAMAGED, "workspace " + file + " " + words);
    }

    static SQLiteErrorCode code(SQLException e) {
        return SQLiteErrorCode.getErrorCode(e.getErrorCode() & PRIMARY_CODE);
    }
}
