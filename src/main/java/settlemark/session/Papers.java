package settlemark.session;

import java.time.Instant;
import java.util.List;

/**
 * Notes and attachments of a workspace's sessions. Each call that writes is one transaction, durable when it returns.
 * Nothing that was streamed changes by them.
 */
public interface Papers {
    /** Media type of a seal that is kept with its session. */
    String SEAL_TYPE = "application/vnd.settlemark.seal+json";

    /** Media type of a review that is kept with its session. */
    String REVIEW_TYPE = "application/vnd.settlemark.review+json";

    /** Adds a note; a session that is not there is refused with IllegalArgumentException. */
    void note(long session, Note note) throws StoreException;

    /** Oldest first. */
    List<Note> notes(long session) throws StoreException;

    /**
     * Adds a file; a session that is not there, and a name or size that is not allowed, are refused with
     * IllegalArgumentException.
     */
    Attachment attach(long session, String name, String mediaType, Instant addedAt, byte[] content)
            throws StoreException;

    /** In the order in which they were added. */
    List<Attachment> attachments(long session) throws StoreException;

    /**
     * The content of one.
     *
     * @throws StoreException also where it is not what it was when it was added
     */
    byte[] content(Attachment attachment) throws StoreException;
}
