package settlemark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import settlemark.session.Rejudging;
import settlemark.session.StoreException;

/** What the commands ask of sealed sessions: keys, reviews, papers, and the way to another computer. */
public interface SessionDesk {
    /** Accepts or returns what was sealed. */
    int review(Review request, PrintWriter out, PrintWriter err) throws StoreException, IOException;

    /** Shows, makes or protects the key that a workspace seals with. */
    int key(Key request, PrintWriter out, PrintWriter err) throws StoreException, IOException;

    /** Writes a whole session, sealed, into one new file. */
    int export(Transfer request, PrintWriter out, PrintWriter err) throws StoreException, IOException;

    /** Takes such a file in, once it is what was sealed. */
    int takeIn(Transfer request, PrintWriter out, PrintWriter err) throws StoreException, IOException;

    /** Puts a note or files beside a session. */
    int add(Paper request, PrintWriter out, PrintWriter err) throws StoreException, IOException;

    /** Lists what lies beside a session. */
    int papers(String session, Optional<Path> workspace, PrintWriter out, PrintWriter err)
            throws StoreException, IOException;

    /**
     * @param subject session by number or key, {@code latest}, or the file of a seal or of a record beside its seal
     * @param accepted false where it is returned
     * @param comment why; empty only where it is accepted
     * @param again other limits and settings under which it is judged again
     * @param key of the person who reviews, empty for the workspace's
     * @param phraseFile with the key's pass phrase in its first line
     */
    record Review(
            String subject,
            boolean accepted,
            String person,
            String comment,
            Rejudging again,
            Optional<Path> workspace,
            Optional<Path> key,
            Optional<Path> phraseFile) {}

    /** What is done to a key. */
    enum KeyAct {
        SHOW,
        NEW,
        PROTECT,
        UNPROTECT
    }

    /**
     * @param file the key's, empty for the one beside the workspace
     * @param publicOut new file for the public half
     * @param phraseFile with the pass phrase that it has, in its first line
     * @param newPhraseFile with the one that it is to have
     */
    record Key(
            KeyAct act,
            Optional<Path> file,
            Optional<Path> workspace,
            Optional<Path> publicOut,
            Optional<Path> phraseFile,
            Optional<Path> newPhraseFile) {}

    /**
     * @param session to be written; not looked at where one is taken in
     * @param file new, or the one to take in
     * @param key public key that a session taken in must be sealed with
     */
    record Transfer(
            String session, Path file, Optional<Path> workspace, Optional<Path> phraseFile, Optional<Path> key) {}

    /**
     * @param note empty for none
     * @param files photographs and others
     * @param keepLocation whether photographs stay as they are, with what the camera wrote into them
     */
    record Paper(String session, String note, List<Path> files, boolean keepLocation, Optional<Path> workspace) {
        public Paper {
            files = List.copyOf(files);
        }
    }
}
