package settlemark.ui;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import settlemark.session.Note;
import settlemark.session.Rejudging;
import settlemark.session.SessionStore;
import settlemark.session.StoreException;

/**
 * What looking through stored sessions asks of the program around the window. Called on the event thread and never waits;
 * every answer comes from another thread.
 */
public interface ReviewHost {
    /** Workspaces that are there, the person's own first. */
    List<Path> workspaces();

    /** Reads a little, soon. */
    <T> void read(Path workspace, Reading<T> reading, Consumer<T> done, Consumer<String> failed);

    /** Reads what may take long, one after the other. */
    <T> void study(Path workspace, Reading<T> reading, Consumer<T> done, Consumer<String> failed);

    /**
     * Writes what is seen into a new file beside the records.
     *
     * @param done gets the file
     */
    void keep(SeenView view, SeenView.Form form, Consumer<Path> done, Consumer<String> failed);

    /** Puts a note beside a stored session. */
    void note(Path workspace, long session, Note note, Runnable done, Consumer<String> failed);

    /**
     * Signs a second person's word on what was sealed of a session.
     *
     * @param done gets what was signed
     * @param failed gets why nothing was signed: no seal, or something was changed since
     */
    void judge(Path workspace, long session, Word word, Consumer<Said> done, Consumer<String> failed);

    /**
     * The newest word of a second person on what was sealed of a session; called within a reading, on its thread.
     *
     * @throws StoreException also where what is kept cannot be read
     */
    Optional<Said> word(SessionStore store, long session) throws StoreException;

    /**
     * A second person's word, to be signed.
     *
     * @param person who, not empty
     * @param reason why it goes back; may be empty where it is accepted
     * @param tried other settings of the rule and other limits under which it is judged again first
     */
    record Word(boolean accepted, String person, String reason, Rejudging tried) {}

    /**
     * A second person's word, as it was signed.
     *
     * @param person who
     * @param reason why it goes back; may be empty where it was accepted
     * @param under other settings and limits under which it was judged again, as they are typed; empty where it was not
     * @param changes the verdicts that became others
     */
    record Said(boolean accepted, String person, String reason, List<String> under, List<Rejudging.Change> changes) {
        public Said {
            under = List.copyOf(under);
            changes = List.copyOf(changes);
        }

        /** Under the settings and limits of the day. */
        public Said(boolean accepted, String person, String reason) {
            this(accepted, person, reason, List.of(), List.of());
        }
    }

    /**
     * How a job came out, as {@link #remember} was told when it was run through; called within a reading, on its thread.
     *
     * @return empty where it is not known, was found by another version of the program, or more was stored since
     */
    Optional<String> remembered(Path workspace, SessionStore store, SessionStore.Summary session) throws StoreException;

    /** Keeps how a job came out for the next time that sessions are listed; called within a reading, on its thread. */
    void remember(Path workspace, SessionStore store, SessionStore.Summary session, String cameOut)
            throws StoreException;

    /** What is read from a workspace; runs on another thread. */
    interface Reading<T> {
        T of(SessionStore store) throws StoreException;
    }
}
